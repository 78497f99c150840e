/** The pieces folder, by way of the local server. */
export const SHELF = '/api/pieces';

/** Saves a file under a name that is free. Throws what the server says against it. */
export async function saveOnShelf(name: string, content: string | Blob, type: string): Promise<{ readonly name: string; readonly folder: string }> {
  const response = await fetch(`${SHELF}/${encodeURIComponent(name)}`, { method: 'PUT', headers: { 'content-type': type, 'x-benchcall': '1' }, body: content });
  if (!response.ok) throw new Error(await response.text());
  return (await response.json()) as { name: string; folder: string };
}

/** Hands a file to the browser's downloads. */
export function download(name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A fetch that got no answer fails with a TypeError, in the browser's own words. */
export function reason(error: unknown): string {
  if (error instanceof TypeError) return 'the bench’s server does not answer; see whether it is running';
  return error instanceof Error ? error.message : String(error);
}
