import { failure, success, type Result } from '../../core/result.ts';

/** What the head of an OpenFst file tells of it. */
export interface FstFile {
  /** 'const', 'ngram', 'olabel_lookahead' … */
  readonly type: string;
  /** The words that it names itself, with their numbers; absent when it has none. */
  readonly words?: ReadonlyMap<string, number>;
}

const FST_MAGIC = 2_125_659_606;
const SYMBOLS_MAGIC = 2_125_658_996;
const ADD_ON_MAGIC = 446_681_434;
const HAS_INPUT_SYMBOLS = 1;
const HAS_OUTPUT_SYMBOLS = 2;
/** What a state and an arc take at least in each kind of file (fst/const-fst.h, fst/vector-fst.h). */
const BYTES_OF: ReadonlyMap<string, { readonly state: number; readonly arc: number }> = new Map([
  ['const', { state: 20, arc: 16 }], ['vector', { state: 12, arc: 16 }],
]);
const LONGEST_NAME = 4_096;
const MOST_WORDS = 5_000_000;
const UTF8 = new TextDecoder();

/**
 * Reads the head of an OpenFst file as fst/fst.h and fst/symbol-table.h of OpenFst 1.8 write it, and whether the file is as long as its head says. What follows is
 * the engine's business.
 */
export function readFst(bytes: Uint8Array): Result<FstFile, string> {
  const reader = new Reader(bytes);
  try {
    const outer = readHeader(reader);
    if (!outer.type.endsWith('lookahead')) {
      refuseShort(outer, reader);
      return success({ type: outer.type, ...(outer.words ? { words: outer.words } : {}) });
    }
    // Inside, after a mark of its own, lies the transducer itself.
    if (reader.int32() !== ADD_ON_MAGIC) return failure('it is damaged behind its head');
    const inner = readHeader(reader);
    refuseShort(inner, reader);
    const words = outer.words ?? inner.words;
    return success({ type: outer.type, ...(words ? { words } : {}) });
  } catch (error) {
    if (error instanceof Unreadable) return failure(error.message);
    throw error;
  }
}

class Unreadable extends Error {}

interface Header extends FstFile { readonly states: number; readonly arcs: number }

function readHeader(reader: Reader): Header {
  if (reader.left === 0) throw new Unreadable('it is empty');
  if (reader.int32() !== FST_MAGIC) throw new Unreadable('it is no OpenFst file');
  const type = reader.string();
  const arcs = reader.string();
  if (arcs !== 'standard') throw new Unreadable(`its arcs are "${arcs.slice(0, 40)}", and the engine reads "standard"`);
  reader.skip(4);
  const flags = reader.int32();
  // Its properties and its start.
  reader.skip(16);
  const [states, count] = [reader.int64(), reader.int64()];
  if ((flags & HAS_INPUT_SYMBOLS) !== 0) readSymbols(reader);
  const words = (flags & HAS_OUTPUT_SYMBOLS) === 0 ? undefined : readSymbols(reader);
  return { type, states, arcs: count, ...(words ? { words } : {}) };
}

function readSymbols(reader: Reader): ReadonlyMap<string, number> {
  if (reader.int32() !== SYMBOLS_MAGIC) throw new Unreadable('the table of its words is damaged');
  reader.string();
  reader.skip(8);
  const size = reader.int64();
  if (size < 0 || size > MOST_WORDS) throw new Unreadable(`the table of its words says that it has ${size} of them`);
  const words = new Map<string, number>();
  for (let index = 0; index < size; index += 1) {
    const word = reader.string();
    words.set(word, reader.int64());
  }
  return words;
}

function refuseShort({ type, states, arcs }: Header, reader: Reader): void {
  const each = BYTES_OF.get(type);
  if (each === undefined) return;
  if (states < 0 || arcs < 0) throw new Unreadable('its head is damaged');
  const wanted = states * each.state + arcs * each.arc;
  if (wanted > reader.left) throw new Unreadable(`it is cut short: ${wanted} bytes should follow its head, and ${reader.left} do`);
}

/** Reads numbers with the lowest byte first. */
class Reader {
  readonly #view: DataView;
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  get left(): number {
    return this.#bytes.length - this.#at;
  }

  int32(): number {
    return this.#view.getInt32(this.skip(4), true);
  }

  /** @throws {Unreadable} beyond what a number here holds exactly */
  int64(): number {
    const value = Number(this.#view.getBigInt64(this.skip(8), true));
    if (!Number.isSafeInteger(value)) throw new Unreadable('its head is damaged');
    return value;
  }

  string(): string {
    const length = this.int32();
    if (length < 0 || length > LONGEST_NAME) throw new Unreadable('its head is damaged');
    const from = this.skip(length);
    return UTF8.decode(this.#bytes.subarray(from, from + length));
  }

  /** Where the skipped bytes begin. */
  skip(bytes: number): number {
    const from = this.#at;
    if (bytes > this.left) throw new Unreadable('it is cut short');
    this.#at += bytes;
    return from;
  }
}
