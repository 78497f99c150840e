import { crc32 } from 'node:zlib';
import { openPromise, type Entry, type ZipFile } from 'yauzl';
import { BrokenArchive, Limits, tidyPath, type PackedFile } from '../../kiosk/ear/unpack.ts';

/** The kind of a file, in the upper half of the attributes that Unix zips keep. */
const KIND_MASK = 0o170000;
const LINK = 0o120000;

/**
 * The files of a zip. Sizes are counted before room is made, and yauzl stops at an entry that unpacks to another size than it states.
 * @throws {BrokenArchive} when it is damaged, locked by a password, holds links or names that lead out of it, or is larger than any model
 */
export async function* unzip(file: string): AsyncGenerator<PackedFile> {
  const zip = await damaged(() => openPromise(file, { autoClose: false }));
  try {
    const limits = new Limits();
    for await (const entry of entriesOf(zip)) {
      limits.file(entry.fileName, entry.uncompressedSize);
      if (entry.fileName.endsWith('/')) continue;
      refuseOdd(entry);
      const path = tidyPath(entry.fileName);
      yield { path, bytes: await damaged(() => contentOf(zip, entry)) };
    }
  } finally {
    zip.close();
  }
}

async function* entriesOf(zip: ZipFile): AsyncGenerator<Entry> {
  const entries = zip.eachEntry()[Symbol.asyncIterator]();
  for (;;) {
    const next = await damaged(() => entries.next());
    if (next.done === true) return;
    yield next.value;
  }
}

function refuseOdd(entry: Entry): void {
  if (entry.isEncrypted()) throw new BrokenArchive(`"${entry.fileName}" is locked by a password`);
  if (((entry.externalFileAttributes >>> 16) & KIND_MASK) === LINK) throw new BrokenArchive(`"${entry.fileName}" is a link, and only files are taken: pack what it leads to`);
}

async function contentOf(zip: ZipFile, entry: Entry): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = new Uint8Array(entry.uncompressedSize);
  let filled = 0;
  for await (const chunk of (await zip.openReadStreamPromise(entry)) as AsyncIterable<Buffer>) {
    if (filled + chunk.length > bytes.length) throw new Error('it is longer than it says');
    bytes.set(chunk, filled);
    filled += chunk.length;
  }
  if (filled < bytes.length) throw new Error('it is shorter than it says');
  if (crc32(bytes) !== entry.crc32) throw new Error(`the checksum of "${entry.fileName}" is wrong`);
  return bytes;
}

/** Whatever a zip library says about a zip is the zip's own fault, but not what the disk says. */
async function damaged<Value>(work: () => Promise<Value>): Promise<Value> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof BrokenArchive || ['EACCES', 'EPERM', 'ENOENT'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
    throw new BrokenArchive(`it cannot be unpacked as zip (${error instanceof Error ? error.message : String(error)})`);
  }
}
