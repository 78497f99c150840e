/** One file of an archive. */
export interface PackedFile {
  /** As in the archive, '/' between folders, never absolute and never with '..'. */
  readonly path: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The archive is not what it should be; the message says where. */
export class BrokenArchive extends Error {}

const BLOCK = 512;
/** The engine has 2 GB at most, and a model takes about twice its files while it is loaded. */
export const MOST_MODEL_BYTES = 768 * 1024 * 1024;
/** Models have about twenty files. */
export const MOST_MODEL_FILES = 500;
/** A long name, or a list of a file's attributes, is no longer. */
const MOST_HEADER_BYTES = 64 * 1024;

/** Reads a .tar.gz as it arrives, like {@link unpackTar}. */
export function unpackTarGz(packed: ReadableStream<Uint8Array<ArrayBuffer>>): AsyncGenerator<PackedFile> {
  return unpackTar(packed.pipeThrough(new DecompressionStream('gzip')));
}

/**
 * Reads a .tar as it arrives: one file at a time, so that a large model is never in memory twice.
 * Understands POSIX ustar and the GNU and pax headers for long names (the formats that GNU tar and Python write).
 * @throws {BrokenArchive} when it cannot be unpacked, is cut short, a header's checksum is wrong, it holds links or names that lead out of it, or is larger than any model
 */
export async function* unpackTar(packed: ReadableStream<Uint8Array<ArrayBuffer>>): AsyncGenerator<PackedFile> {
  const source = new Blocks(packed.getReader());
  const limits = new Limits();
  let longName: string | undefined;
  for (;;) {
    const header = await source.take(BLOCK);
    if (header === undefined) throw new BrokenArchive('the archive ends before its closing mark: it was cut short');
    if (header.every((byte) => byte === 0)) return source.drain();
    const { name, size, type } = readHeader(header);
    if (type === 'L' || type === 'x' || type === 'g') limits.header(size, name);
    else limits.file(longName ?? name, size);
    const bytes = await source.take(size);
    const padding = await source.take((BLOCK - (size % BLOCK)) % BLOCK);
    if (bytes === undefined || padding === undefined) throw new BrokenArchive(`the archive is cut short inside ${name}`);
    if (type === 'L') longName = text(bytes);
    else if (type === 'x') longName = paxPath(bytes) ?? longName;
    else if (type !== 'g') {
      const path = tidyPath(longName ?? name);
      longName = undefined;
      if (type === '1' || type === '2') throw new BrokenArchive(`"${path}" is a link, and only files are taken: pack what it leads to`);
      if ((type === '0' || type === '\0') && path !== '') yield { path, bytes };
    }
  }
}

/** Counts what was unpacked, before room is made for it: a small archive may claim to be without end. */
export class Limits {
  #files = 0;
  #bytes = 0;

  /** @throws {BrokenArchive} */
  file(name: string, bytes: number): void {
    this.#files += 1;
    this.#bytes += bytes;
    if (this.#files > MOST_MODEL_FILES) throw new BrokenArchive(`it holds more than ${MOST_MODEL_FILES} files, and a speech model has about twenty`);
    if (this.#bytes > MOST_MODEL_BYTES) throw new BrokenArchive(`unpacked it is larger than ${MOST_MODEL_BYTES / 2 ** 20} MB (at "${name.slice(0, 100)}"), and the engine has no room for such a model`);
  }

  /** @throws {BrokenArchive} */
  header(bytes: number, name: string): void {
    this.file(name, 0);
    if (bytes > MOST_HEADER_BYTES) throw new BrokenArchive(`a header near "${name.slice(0, 100)}" is longer than any name`);
  }
}

/** Takes exact counts of bytes from a stream of chunks of any size. */
class Blocks {
  readonly #reader: ReadableStreamDefaultReader<Uint8Array>;
  #left: Uint8Array = new Uint8Array(0);

  constructor(reader: ReadableStreamDefaultReader<Uint8Array>) {
    this.#reader = reader;
  }

  /** The next `count` bytes, or undefined when the stream ends before. */
  async take(count: number): Promise<Uint8Array<ArrayBuffer> | undefined> {
    const taken = new Uint8Array(count);
    let filled = 0;
    while (filled < count) {
      if (this.#left.length === 0) {
        const { done, value } = await this.#read();
        if (done) return undefined;
        this.#left = value;
      }
      const part = this.#left.subarray(0, count - filled);
      taken.set(part, filled);
      filled += part.length;
      this.#left = this.#left.subarray(part.length);
    }
    return taken;
  }

  /** Reads to the end: only there does gzip's own checksum tell whether all before it was whole. */
  async drain(): Promise<void> {
    for (let left = MOST_MODEL_BYTES; left > 0;) {
      const { done, value } = await this.#read();
      if (done) return;
      left -= value.length;
    }
    throw new BrokenArchive('it goes on without end behind its closing mark');
  }

  async #read(): Promise<ReadableStreamReadResult<Uint8Array>> {
    try {
      return await this.#reader.read();
    } catch (error) {
      throw new BrokenArchive(`it cannot be unpacked as gzip (${error instanceof Error ? error.message : String(error)})`);
    }
  }
}

function readHeader(header: Uint8Array): { name: string; size: number; type: string } {
  const name = text(header.subarray(0, 100));
  const sum = parseInt(text(header.subarray(148, 156)).trim(), 8);
  // The checksum is reckoned with its own eight bytes read as spaces (POSIX.1, pax, "ustar Interchange Format").
  const reckoned = header.reduce((total, byte, at) => total + (at >= 148 && at < 156 ? 32 : byte), 0);
  if (sum !== reckoned) throw new BrokenArchive(`a header is damaged near "${name}"`);
  const size = parseInt(text(header.subarray(124, 136)).trim() || '0', 8);
  if (!Number.isSafeInteger(size) || size < 0) throw new BrokenArchive(`the size of "${name}" cannot be read`);
  const ustar = text(header.subarray(257, 262)) === 'ustar';
  const prefix = ustar && header[263] === 48 ? text(header.subarray(345, 500)) : '';
  return { name: prefix === '' ? name : `${prefix}/${name}`, size, type: String.fromCharCode(header[156] ?? 0) };
}

function text(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  return new TextDecoder().decode(end < 0 ? bytes : bytes.subarray(0, end));
}

function paxPath(bytes: Uint8Array): string | undefined {
  return /^\d+ path=(.*)$/m.exec(new TextDecoder().decode(bytes))?.[1];
}

/**
 * A path inside the archive, without '.' and double strokes.
 * @throws {BrokenArchive} when it leads out of the archive
 */
export function tidyPath(path: string): string {
  if (/^([/\\]|[A-Za-z]:)/.test(path)) throw new BrokenArchive(`"${path}" begins at the root of a disk: names must lie inside the archive`);
  const steps = path.split(/[/\\]/).filter((step) => step !== '' && step !== '.');
  if (steps.includes('..')) throw new BrokenArchive(`"${path}" points outside the archive`);
  return steps.join('/');
}
