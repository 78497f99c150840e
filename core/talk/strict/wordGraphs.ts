import { assertNever } from '../../result.ts';
import { NOTHING } from './expression.ts';
import type { Expression } from './expression.ts';
import { ANY, Joins, NOWHERE, THE_END } from './joins.ts';
import { Lists, withRoom } from './lists.ts';
import { graphFrom, NUMBERS_AN_ARC } from './wordGraph.ts';
import type { WordGraph } from './wordGraph.ts';

/** Past so many times what a graph took by itself, what was built is forgotten, and the next graph built from nothing. */
const MOST_GROWTH = 2;

/**
 * Makes graphs of sentences, one after another. What is built stays, so that the next graph costs only what is different in it: after a question most is as it
 * was before. That is safe because everything is known by what it is (an expression by its words, a state by what may follow), never by when it was made.
 */
export class WordGraphs {
  readonly #labelOf: (word: string) => number | undefined;
  #built: Builder;
  /** What was built for the last graph that was built mostly anew. */
  #sizeOfOne = Infinity;

  /** @param labelOf the number of a word, 1 up; a sentence with a word that has none is left out */
  constructor(labelOf: (word: string) => number | undefined) {
    this.#labelOf = labelOf;
    this.#built = new Builder(labelOf);
  }

  /** The sentences of an expression, and no others. */
  graphOf(expression: Expression): WordGraph {
    if (this.#built.size > MOST_GROWTH * this.#sizeOfOne) this.#built = new Builder(this.#labelOf);
    const before = this.#built.size;
    const graph = this.#built.graphOf(expression);
    if (this.#built.size > MOST_GROWTH * before) this.#sizeOfOne = this.#built.size;
    return graph;
  }
}

/** How an expression begins in the table of expressions. */
const [WORD, ALL, EITHER] = [0, 1, 2];
const UNKNOWN = -1;

/**
 * Builds from the last word to the first, so that what has the same continuation is one state from the beginning; and joins what begins with the same
 * word as soon as it is put side by side. So the automaton never is larger than it ends up (J. Daciuk et al., "Incremental construction of minimal
 * acyclic finite-state automata", Computational Linguistics 26, 2000, from the other end).
 */
class Builder {
  readonly #labelOf: (word: string) => number | undefined;
  /** A word's label; parts, last first; or options, each with its cost. */
  readonly #expressions = new Lists();
  readonly #joins = new Joins();
  /** An expression and the state after it; for each of them the state before it. */
  readonly #asked = new Lists();
  readonly #before: number[] = [];
  #list = new Int32Array(1 << 10);

  constructor(labelOf: (word: string) => number | undefined) {
    this.#labelOf = labelOf;
  }

  get size(): number {
    return this.#joins.states.length + this.#asked.length;
  }

  graphOf(expression: Expression): WordGraph {
    return graphFrom(this.#joins.states, this.#stateBefore(this.#numberOf(expression, new Map()), THE_END));
  }

  /** @param numbered what was seen already in this expression */
  #numberOf(expression: Expression, numbered: Map<Expression, number>): number {
    const known = numbered.get(expression);
    if (known !== undefined) return known;
    const list = this.#listOf(expression, numbered);
    this.#list = withRoom(this.#list, list.length);
    for (let at = 0; at < list.length; at += 1) this.#list[at] = list[at] ?? 0;
    const number = this.#expressions.numberOf(this.#list, 0, list.length);
    numbered.set(expression, number);
    return number;
  }

  #listOf(expression: Expression, numbered: Map<Expression, number>): readonly number[] {
    switch (expression.kind) {
      case 'word': return [WORD, this.#labelOf(expression.word) ?? 0];
      case 'all': {
        const list = [ALL];
        for (let at = expression.parts.length - 1; at >= 0; at -= 1) list.push(this.#numberOf(expression.parts[at] ?? NOTHING, numbered));
        return list;
      }
      case 'either': {
        const list = [EITHER];
        for (const option of expression.options) list.push(this.#numberOf(option.expression, numbered), option.cost);
        return list;
      }
      default: return assertNever(expression);
    }
  }

  /** The state from which the expression leads to `next`. */
  #stateBefore(expression: number, next: number): number {
    if (next === NOWHERE) return NOWHERE;
    const from = this.#expressions.start(expression);
    if (this.#expressions.numbers[from] === WORD) return this.#joins.word(this.#expressions.numbers[from + 1] ?? 0, next);
    this.#list[0] = expression;
    this.#list[1] = next;
    const asked = this.#asked.numberOf(this.#list, 0, 2);
    if (asked === this.#before.length) this.#before.push(UNKNOWN);
    const known = this.#before[asked] ?? UNKNOWN;
    if (known !== UNKNOWN) return known;
    const to = this.#expressions.end(expression);
    const state = this.#expressions.numbers[from] === ALL ? this.#inOrder(from + 1, to, next) : this.#either(from + 1, to, next);
    this.#before[asked] = state;
    return state;
  }

  #inOrder(from: number, to: number, next: number): number {
    let state = next;
    for (let at = from; at < to; at += 1) state = this.#stateBefore(this.#expressions.numbers[at] ?? 0, state);
    return state;
  }

  #either(from: number, to: number, next: number): number {
    const count = (to - from) / 2;
    const options = this.#joins.room(count * NUMBERS_AN_ARC);
    for (let option = 0; option < count; option += 1) {
      const at = from + 2 * option;
      this.#option(options + option * NUMBERS_AN_ARC, this.#expressions.numbers[at] ?? 0, this.#expressions.numbers[at + 1] ?? 0, next);
    }
    return this.#joins.either(options);
  }

  /** What begins with a word is an arc, and needs no state of its own. */
  #option(place: number, expression: number, cost: number, next: number): void {
    const from = this.#expressions.start(expression);
    const to = this.#expressions.end(expression);
    const kind = this.#expressions.numbers[from];
    const first = kind === ALL && to > from + 1 ? this.#expressions.start(this.#expressions.numbers[to - 1] ?? 0) : from;
    if (this.#expressions.numbers[first] !== WORD) {
      this.#joins.option(place, ANY, this.#stateBefore(expression, next), cost);
      return;
    }
    const target = kind === WORD ? next : this.#inOrder(from + 1, to - 1, next);
    const label = this.#expressions.numbers[first + 1] ?? 0;
    if (label === 0 || target === NOWHERE) this.#joins.option(place, ANY, NOWHERE, cost);
    else this.#joins.option(place, label, target, cost);
  }
}
