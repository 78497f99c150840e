import { readDictionary } from './dictionary.ts';
import type { Dictionary } from './dictionary.ts';

/** @throws {Error} when the file is not there or not whole */
export async function fetchDictionary(url: string): Promise<Dictionary> {
  const response = await fetch(url, { cache: 'no-cache' });
  if (!response.ok || response.body === null) throw new Error(`the kiosk's server answered ${response.status} when asked for the dictionary`);
  return readDictionary(await new Response(response.body.pipeThrough(new DecompressionStream('gzip'))).text());
}
