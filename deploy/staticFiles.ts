import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { extname, join } from 'node:path';
import type { Answer } from './answer.ts';

const TYPES: ReadonlyMap<string, string> = new Map([
  ['.html', 'text/html; charset=utf-8'], ['.js', 'text/javascript; charset=utf-8'], ['.css', 'text/css; charset=utf-8'],
  ['.json', 'application/json; charset=utf-8'], ['.map', 'application/json; charset=utf-8'], ['.txt', 'text/plain; charset=utf-8'],
  ['.svg', 'image/svg+xml'], ['.png', 'image/png'], ['.woff', 'font/woff'], ['.woff2', 'font/woff2'], ['.wasm', 'application/wasm'], ['.wav', 'audio/wav'],
  ['.gz', 'application/gzip'],
]);

/** Names of our own making only: no dot at the start of a part, hence no way up and no hidden file. */
const PLAIN_PATH = /^(\/[A-Za-z0-9_@-][A-Za-z0-9_@.-]*)+$/;

/** The answer for a file under `folder`, or undefined when there is none of that name. `path` is decoded and starts with '/'. */
export async function staticFile(folder: string, path: string, ifNoneMatch: string | undefined): Promise<Answer | undefined> {
  const name = path === '/' ? '/index.html' : path;
  if (!PLAIN_PATH.test(name)) return undefined;
  const type = TYPES.get(extname(name));
  return type === undefined ? undefined : fileAnswer(join(folder, name), type, ifNoneMatch);
}

/** A file as an answer that the browser may keep but must ask about each time: a new build is seen at the next load. */
export async function fileAnswer(file: string, type: string, ifNoneMatch: string | undefined): Promise<Answer | undefined> {
  const found = await stat(file).catch(() => undefined);
  if (!found?.isFile()) return undefined;
  const etag = `"${found.size.toString(36)}-${Math.floor(found.mtimeMs).toString(36)}"`;
  const headers = { etag, 'cache-control': 'no-cache' };
  if (ifNoneMatch === etag) return { status: 304, headers };
  return { status: 200, headers: { ...headers, 'content-type': type, 'content-length': String(found.size) }, body: createReadStream(file) };
}
