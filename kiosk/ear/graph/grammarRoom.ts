import { ARC_BYTES, arcTable, STATE_BYTES, stateTable } from './constTables.ts';
import type { Fst } from './fst.ts';
import { grammarFile } from './openFst.ts';

/** Room for the grammar of a piece somewhat larger than the demo piece (14 800 states, 135 000 arcs); or, if more is needed, for somewhat larger ones. */
const USUAL = { states: 20_000, arcs: 180_000 };
const ROOM = 1.25;
/** So many arcs and states at least that nothing leads to mark the grammar in the engine's memory. */
const MARKED = 20;
/** Where an arc has its cost; a state has it first. */
const COST_AT = 8;

/**
 * A grammar of a fixed size in memory, in which others can be put. The engine reads its grammar once, with the model, and never frees a model (8.5 MB
 * each): so a grammar that follows the question must take the place of the one before. It keeps states and arcs as two tables just as they are in the
 * file; there they are found by marks at their ends, word for word; if they are not found exactly once, nothing is touched.
 */
export class GrammarRoom {
  readonly #states: number;
  readonly #arcs: number;
  /** The file that the engine has to load; kept until it was found. */
  #first: Uint8Array<ArrayBuffer>;
  #at: { readonly states: number; readonly arcs: number } | undefined;

  /** @param mark different for every room in the same memory */
  constructor(grammar: Fst, mark: number) {
    this.#states = Math.max(USUAL.states, Math.ceil(grammar.states * ROOM)) + MARKED;
    this.#arcs = Math.max(USUAL.arcs, Math.ceil(grammar.input.length * ROOM)) + MARKED;
    this.#first = this.#file(grammar, mark);
  }

  /** The file that the engine has to load; empty once it was found in its memory. */
  get file(): Uint8Array<ArrayBuffer> {
    return this.#first;
  }

  /** Finds the tables in the engine's memory, once the model is loaded. @returns false when they are not where they should be */
  find(memory: Uint8Array): boolean {
    const states = onlyPlace(memory, this.#first.subarray(this.#statesFrom(), this.#arcsFrom()), STATE_BYTES);
    const arcs = onlyPlace(memory, this.#first.subarray(this.#arcsFrom()), ARC_BYTES - COST_AT);
    if (states === undefined || arcs === undefined) return false;
    this.#at = { states, arcs };
    this.#first = new Uint8Array(0);
    return true;
  }

  /**
   * Puts another grammar in the place of the one there; what that had more stays, and nothing leads to it. No recogniser may be using it.
   * @returns false when there is no room for it, and nothing was changed
   */
  put(grammar: Fst, memory: Uint8Array): boolean {
    if (this.#at === undefined || grammar.states > this.#states - MARKED || grammar.input.length > this.#arcs - MARKED) return false;
    memory.set(stateTable(grammar), this.#at.states);
    memory.set(arcTable(grammar), this.#at.arcs);
    return true;
  }

  #statesFrom(): number {
    return this.#arcsFrom() - this.#states * STATE_BYTES;
  }

  #arcsFrom(): number {
    return this.#first.length - this.#arcs * ARC_BYTES;
  }

  #file(grammar: Fst, mark: number): Uint8Array<ArrayBuffer> {
    const filled = grammar.input.length;
    const fst: Fst = {
      states: this.#states, firstArc: new Int32Array(this.#states + 1).fill(this.#arcs), input: new Int32Array(this.#arcs).fill(1), output: new Int32Array(this.#arcs).fill(1),
      cost: marks(this.#arcs, mark), target: new Int32Array(this.#arcs), ending: marks(this.#states, mark),
    };
    fst.firstArc.set(grammar.firstArc);
    for (const table of ['input', 'output', 'cost', 'target', 'ending'] as const) fst[table].set(grammar[table]);
    // The first state that is not of the grammar has all arcs that are left.
    fst.firstArc[grammar.states] = filled;
    return grammarFile(fst);
  }
}

/** Numbers that stand nowhere else, and that 32 bits hold exactly. */
function marks(count: number, mark: number): Float32Array {
  const table = new Float32Array(count);
  for (let at = 0; at < count; at += 1) table[at] = (at % 1000) + 1024 * mark;
  return table;
}

/** Where a table is in memory, at an even word, if it is there exactly once. It is looked for by its last mark, which no other table has. */
function onlyPlace(memory: Uint8Array, table: Uint8Array, markFromEnd: number): number | undefined {
  const all = new Int32Array(memory.buffer, memory.byteOffset, memory.byteLength >> 2);
  const wanted = new Int32Array(table.slice().buffer);
  const sought = wanted.length - markFromEnd / 4;
  let found: number | undefined;
  for (let end = all.indexOf(wanted[sought] ?? 0); end >= 0; end = all.indexOf(wanted[sought] ?? 0, end + 1)) {
    const at = end - sought;
    if (at < 0 || !isAt(all, at, wanted)) continue;
    if (found !== undefined) return undefined;
    found = at;
  }
  return found === undefined ? undefined : found * 4;
}

/** From the beginning: the ends, all marks, are alike a thousand apart. */
function isAt(memory: Int32Array, at: number, wanted: Int32Array): boolean {
  for (let index = 0; index < wanted.length; index += 1) if (memory[at + index] !== wanted[index]) return false;
  return true;
}
