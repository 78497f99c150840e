import { arcTable, stateTable } from './constTables.ts';
import { labelReach } from './labelReach.ts';
import { withOutputs } from './fst.ts';
import type { Fst } from './fst.ts';

/** What a transducer is like, as bits of an OpenFst header (fst/properties.h). The engine believes them: `fstinfo --fst_verify_properties` tests them. */
const EXPANDED = 0x1n;
const NOT_ACCEPTOR = 0x2_0000n;
const NOT_INPUT_DETERMINISTIC = 0x8_0000n;
const NOT_OUTPUT_DETERMINISTIC = 0x20_0000n;
const EPSILONS = 0x40_0000n;
const INPUT_EPSILONS = 0x100_0000n;
const OUTPUT_EPSILONS = 0x400_0000n;
const NOT_INPUT_SORTED = 0x2000_0000n;
const OUTPUT_SORTED = 0x4000_0000n;
const WEIGHTED = 0x1_0000_0000n;
const CYCLIC = 0x4_0000_0000n;
const CYCLIC_AT_START = 0x10_0000_0000n;
const NOT_TOP_SORTED = 0x80_0000_0000n;
const ACCESSIBLE = 0x100_0000_0000n;
const CAN_END = 0x400_0000_0000n;
const NOT_STRING = 0x2000_0000_0000n;
const WEIGHTED_CYCLES = 0x4000_0000_0000n;
const ALL_CYCLIC = WEIGHTED | CYCLIC | CYCLIC_AT_START | NOT_TOP_SORTED | ACCESSIBLE | CAN_END | NOT_STRING | WEIGHTED_CYCLES;

/** A lexicon (buildLexicon) with words of more than one sound; whether it is deterministic depends on them. */
const LEXICON_PROPERTIES = EXPANDED | NOT_ACCEPTOR | EPSILONS | INPUT_EPSILONS | OUTPUT_EPSILONS | NOT_INPUT_SORTED
  | OUTPUT_SORTED | ALL_CYCLIC;

const ACCEPTOR = 0x1_0000n;
const INPUT_DETERMINISTIC = 0x4_0000n;
const OUTPUT_DETERMINISTIC = 0x10_0000n;
const NO_EPSILONS = 0x80_0000n;
const NO_INPUT_EPSILONS = 0x200_0000n;
const NO_OUTPUT_EPSILONS = 0x800_0000n;
const INPUT_SORTED = 0x1000_0000n;

/** Any word after any word (anyWords). */
const ANY_WORDS_PROPERTIES = EXPANDED | ACCEPTOR | INPUT_DETERMINISTIC | OUTPUT_DETERMINISTIC | NO_EPSILONS | NO_INPUT_EPSILONS | NO_OUTPUT_EPSILONS
  | INPUT_SORTED | OUTPUT_SORTED | ALL_CYCLIC;

const FST_MAGIC = 2_125_659_606;
const ADD_ON_MAGIC = 446_681_434;
const CONST_VERSION = 2;
const ADD_ON_VERSION = 1;

/**
 * A lexicon as OpenFst's 'olabel_lookahead' file: a constant transducer with its words renumbered, and the reach of each state.
 * @returns the file, and the new number of each old word; a grammar must use the new ones
 */
export function lookaheadFile(lexicon: Fst): { bytes: Uint8Array<ArrayBuffer>; renumbered: ReadonlyMap<number, number> } {
  const reach = labelReach(lexicon);
  const fst = withOutputs(lexicon, (label) => reach.renumbered.get(label) ?? 0);
  const properties = LEXICON_PROPERTIES | (isDeterministic(fst, fst.input) ? INPUT_DETERMINISTIC : NOT_INPUT_DETERMINISTIC)
    | (isDeterministic(fst, fst.output) ? OUTPUT_DETERMINISTIC : NOT_OUTPUT_DETERMINISTIC);
  const file = new Writer();
  writeHeader(file, 'olabel_lookahead', ADD_ON_VERSION, properties, { start: -1, states: 0, arcs: 0 });
  file.int32(ADD_ON_MAGIC);
  writeConst(file, fst, properties);
  file.bool(true);
  // No reach of input labels; that of output labels follows.
  file.bool(false);
  file.bool(true);
  // For output labels, and without the old numbers.
  file.bool(false);
  file.bool(false);
  file.int32(reach.endLabel);
  file.int64(reach.stretches.length);
  for (const stretches of reach.stretches) writeStretches(file, stretches);
  return { bytes: file.bytes(), renumbered: reach.renumbered };
}

/** A grammar in which any of so many words may follow any other, each as likely, as OpenFst's 'const' file. */
export function anyWordsFile(words: number): Uint8Array<ArrayBuffer> {
  const file = new Writer();
  writeConst(file, anyWords(words), ANY_WORDS_PROPERTIES);
  return file.bytes();
}

/** Whether no state has two arcs with the same label; words that sound alike make two of the same input. */
function isDeterministic(fst: Fst, labels: Int32Array): boolean {
  for (let state = 0; state < fst.states; state += 1) {
    const here = labels.subarray(fst.firstArc[state], fst.firstArc[state + 1]);
    if (new Set(here).size < here.length) return false;
  }
  return true;
}

/** A grammar of words without epsilons; whether it is deterministic is left open. */
const GRAMMAR_PROPERTIES = EXPANDED | ACCEPTOR | NO_EPSILONS | NO_INPUT_EPSILONS | NO_OUTPUT_EPSILONS | INPUT_SORTED | OUTPUT_SORTED;

/** A grammar (see sentenceGraph) as OpenFst's 'const' file, of which the engine keeps states and arcs in memory just as they are here. */
export function grammarFile(grammar: Fst): Uint8Array<ArrayBuffer> {
  const file = new Writer();
  writeConst(file, grammar, GRAMMAR_PROPERTIES);
  return file.bytes();
}

function anyWords(words: number): Fst {
  const labels = Int32Array.from({ length: words }, (_, index) => index + 1);
  return {
    states: 1, firstArc: Int32Array.of(0, words), input: labels, output: labels, cost: new Float32Array(words).fill(Math.log(words)),
    target: new Int32Array(words), ending: Float32Array.of(0),
  };
}

function writeStretches(file: Writer, stretches: readonly number[]): void {
  let covered = 0;
  file.int64(stretches.length / 2);
  stretches.forEach((bound, index) => {
    file.int32(bound);
    covered += index % 2 === 0 ? -bound : bound;
  });
  file.int32(covered);
}

function writeConst(file: Writer, fst: Fst, properties: bigint): void {
  writeHeader(file, 'const', CONST_VERSION, properties, { start: 0, states: fst.states, arcs: fst.input.length });
  file.append(stateTable(fst));
  file.append(arcTable(fst));
}

function writeHeader(file: Writer, type: string, version: number, properties: bigint, size: { start: number; states: number; arcs: number }): void {
  file.int32(FST_MAGIC);
  file.string(type);
  file.string('standard');
  file.int32(version);
  file.int32(0);
  file.bits64(properties);
  file.int64(size.start);
  file.int64(size.states);
  file.int64(size.arcs);
}

/** Writes numbers with the lowest byte first, as OpenFst does on the machines that we know. */
class Writer {
  #view = new DataView(new ArrayBuffer(1 << 16));
  #length = 0;

  int32(value: number): void {
    const at = this.#room(4);
    this.#view.setInt32(at, value, true);
  }

  append(bytes: Uint8Array): void {
    const at = this.#room(bytes.length);
    new Uint8Array(this.#view.buffer).set(bytes, at);
  }

  int64(value: number): void {
    this.bits64(BigInt(value));
  }

  bits64(value: bigint): void {
    const at = this.#room(8);
    this.#view.setBigInt64(at, BigInt.asIntN(64, value), true);
  }

  bool(value: boolean): void {
    const at = this.#room(1);
    this.#view.setUint8(at, value ? 1 : 0);
  }

  string(text: string): void {
    const bytes = new TextEncoder().encode(text);
    this.int32(bytes.length);
    this.append(bytes);
  }

  bytes(): Uint8Array<ArrayBuffer> {
    return new Uint8Array(this.#view.buffer.slice(0, this.#length));
  }

  /** Makes room for so many bytes. Call it before asking for #view, which may be another afterwards. */
  #room(bytes: number): number {
    const at = this.#length;
    this.#length += bytes;
    if (this.#length > this.#view.byteLength) {
      const larger = new Uint8Array(Math.max(this.#length, this.#view.byteLength * 2));
      larger.set(new Uint8Array(this.#view.buffer));
      this.#view = new DataView(larger.buffer);
    }
    return at;
  }
}
