/**
 * The little of an operating system (WASI preview 1) that the voice asks for: its arguments, a clock that stands still, and a few files that live in
 * memory. Only the calls that flite.wasm imports are here. A call on what is not there gets its error number, as a system would give it.
 */

/** The process ended by itself; not a fault unless the code says so. */
export class ProcessExit extends Error {
  readonly code: number;
  constructor(code: number) {
    super(`the program ended with code ${code}`);
    this.code = code;
  }
}

export interface Wasi {
  readonly imports: WebAssembly.Imports;
  /** To be called before the program runs: its memory, and its command line, whose first word is the program's own name. */
  attach(memory: WebAssembly.Memory, words: readonly string[]): void;
  /** What a file holds now; undefined when nobody made it. */
  file(name: string): Uint8Array | undefined;
  /** What was written to standard output and standard error, in order. */
  said(): string;
}

interface MemoryFile {
  bytes: Uint8Array;
  length: number;
}

interface OpenFile {
  readonly file: MemoryFile;
  position: number;
}

const OK = 0;
const BAD_DESCRIPTOR = 8;
const NO_SUCH_FILE = 44;
const SPIPE = 70;
const ROOT = 3;
const FIRST_FREE = 4;
const CHARACTER_DEVICE = 2;
const DIRECTORY = 3;
const REGULAR_FILE = 4;
const ALL_RIGHTS = 0xffff_ffff_ffff_ffffn;
const CREATE = 1;
const TRUNCATE = 8;
const FROM_START = 0;
const FROM_HERE = 1;

/** A system for one run of a program; `files` is what lies in its root folder when it starts. */
export function createWasi(files: ReadonlyMap<string, Uint8Array>): Wasi {
  let memory: WebAssembly.Memory | undefined;
  const bytes = () => new Uint8Array(attached().buffer);
  const view = () => new DataView(attached().buffer);
  const attached = () => {
    if (memory === undefined) throw new Error('the program runs before its memory was attached');
    return memory;
  };
  const folder = new Map<string, MemoryFile>([...files].map(([name, content]) => [name, { bytes: content, length: content.length }]));
  const open = new Map<number, OpenFile>();
  const printed: string[] = [];
  let commandLine: readonly Uint8Array[] = [];
  let nextDescriptor = FIRST_FREE;

  /** The buffers of a scattered read or write, as windows on the program's memory. */
  function* buffers(list: number, count: number): Generator<Uint8Array> {
    for (let index = 0; index < count; index++) {
      const start = view().getUint32(list + 8 * index, true);
      yield bytes().subarray(start, start + view().getUint32(list + 8 * index + 4, true));
    }
  }

  const calls = {
    args_sizes_get(countAt: number, sizeAt: number): number {
      view().setUint32(countAt, commandLine.length, true);
      view().setUint32(sizeAt, commandLine.reduce((sum, word) => sum + word.length, 0), true);
      return OK;
    },
    args_get(pointersAt: number, textAt: number): number {
      let text = textAt;
      commandLine.forEach((word, index) => {
        view().setUint32(pointersAt + 4 * index, text, true);
        bytes().set(word, text);
        text += word.length;
      });
      return OK;
    },
    /** Stands still, so that the same words always make the same sound. */
    clock_time_get(_clock: number, _precision: bigint, timeAt: number): number {
      view().setBigUint64(timeAt, 0n, true);
      return OK;
    },
    fd_prestat_get(descriptor: number, at: number): number {
      if (descriptor !== ROOT) return BAD_DESCRIPTOR;
      view().setUint32(at, 0, true);
      view().setUint32(at + 4, 1, true);
      return OK;
    },
    fd_prestat_dir_name(_descriptor: number, at: number): number {
      bytes().set(new TextEncoder().encode('/'), at);
      return OK;
    },
    fd_fdstat_get(descriptor: number, at: number): number {
      if (descriptor > ROOT && !open.has(descriptor)) return BAD_DESCRIPTOR;
      bytes().fill(0, at, at + 24);
      view().setUint8(at, descriptor === ROOT ? DIRECTORY : descriptor < ROOT ? CHARACTER_DEVICE : REGULAR_FILE);
      view().setBigUint64(at + 8, ALL_RIGHTS, true);
      view().setBigUint64(at + 16, ALL_RIGHTS, true);
      return OK;
    },
    fd_fdstat_set_flags: (): number => OK,
    path_open(_folder: number, _lookup: number, nameAt: number, nameLength: number, how: number, _rights: bigint, _inheriting: bigint, _flags: number, descriptorAt: number): number {
      const name = new TextDecoder().decode(bytes().slice(nameAt, nameAt + nameLength));
      let file = folder.get(name);
      if (file === undefined) {
        if ((how & CREATE) === 0) return NO_SUCH_FILE;
        file = { bytes: new Uint8Array(0), length: 0 };
        folder.set(name, file);
      }
      if ((how & TRUNCATE) !== 0) file.length = 0;
      open.set(nextDescriptor, { file, position: 0 });
      view().setUint32(descriptorAt, nextDescriptor++, true);
      return OK;
    },
    fd_close(descriptor: number): number {
      return open.delete(descriptor) || descriptor <= ROOT ? OK : BAD_DESCRIPTOR;
    },
    fd_seek(descriptor: number, offset: bigint, whence: number, positionAt: number): number {
      const opened = open.get(descriptor);
      if (opened === undefined) return descriptor <= ROOT ? SPIPE : BAD_DESCRIPTOR;
      const base = whence === FROM_START ? 0 : whence === FROM_HERE ? opened.position : opened.file.length;
      opened.position = base + Number(offset);
      view().setBigUint64(positionAt, BigInt(opened.position), true);
      return OK;
    },
    fd_read(descriptor: number, list: number, count: number, readAt: number): number {
      const opened = open.get(descriptor);
      if (opened === undefined) return BAD_DESCRIPTOR;
      let read = 0;
      for (const buffer of buffers(list, count)) {
        const part = opened.file.bytes.subarray(opened.position, Math.min(opened.position + buffer.length, opened.file.length));
        buffer.set(part);
        opened.position += part.length;
        read += part.length;
      }
      view().setUint32(readAt, read, true);
      return OK;
    },
    fd_write(descriptor: number, list: number, count: number, writtenAt: number): number {
      const opened = open.get(descriptor);
      if (opened === undefined && descriptor > 2) return BAD_DESCRIPTOR;
      let written = 0;
      for (const buffer of buffers(list, count)) {
        if (opened === undefined) printed.push(new TextDecoder().decode(buffer.slice()));
        else append(opened, buffer);
        written += buffer.length;
      }
      view().setUint32(writtenAt, written, true);
      return OK;
    },
    proc_exit(code: number): never {
      throw new ProcessExit(code);
    },
  };

  return {
    imports: { wasi_snapshot_preview1: calls },
    attach(given, words) {
      memory = given;
      commandLine = words.map((word) => new TextEncoder().encode(`${word}\0`));
    },
    file: (name) => {
      const file = folder.get(name);
      return file?.bytes.subarray(0, file.length);
    },
    said: () => printed.join(''),
  };
}

function append(opened: OpenFile, part: Uint8Array): void {
  const end = opened.position + part.length;
  const { file } = opened;
  if (end > file.bytes.length) {
    const larger = new Uint8Array(Math.max(end, 2 * file.bytes.length));
    larger.set(file.bytes.subarray(0, file.length));
    file.bytes = larger;
  }
  file.bytes.set(part, opened.position);
  opened.position = end;
  file.length = Math.max(file.length, end);
}
