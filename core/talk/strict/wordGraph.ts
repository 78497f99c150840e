import { assertNever } from '../../result.ts';
import type { Expression } from './expression.ts';

/** A deterministic automaton over words, without circles, as small as it can be. Costs are hundredths of a natural logarithm. */
export interface WordGraph {
  readonly start: number;
  /** For each state what may follow; the states come after all that they lead to. */
  readonly states: readonly WordState[];
}

export interface WordState {
  /** What ending here costs; undefined where no sentence ends. */
  readonly ends: number | undefined;
  readonly arcs: readonly WordArc[];
}

export interface WordArc { readonly word: string; readonly target: number; readonly cost: number }

/** A state, and what was already paid on the way to it beyond what its companions paid. */
interface Owing { readonly state: number; readonly cost: number }

/** The sentences of an expression, and no others. */
export function wordGraph(expression: Expression): WordGraph {
  const builder = new WordGraphBuilder();
  return builder.graph(builder.before(expression, builder.end));
}

/** A state while it is built: for each arc a word's number, target and cost, in the order of the words. */
interface Draft { readonly ends: number; readonly arcs: Int32Array }
/** In the place of what ending costs, where no sentence ends. */
const NO_END = -1;
const NUMBERS_AN_ARC = 3;

/**
 * Builds from the last word to the first, so that what has the same continuation is one state from the beginning; and joins what begins with the same
 * word as soon as it is put side by side. So the automaton never is larger than it ends up (J. Daciuk et al., "Incremental construction of minimal
 * acyclic finite-state automata", Computational Linguistics 26, 2000, from the other end).
 */
class WordGraphBuilder {
  readonly #states: Draft[] = [];
  readonly #words = new Map<string, number>();
  /** States by a number made of all that they are. */
  readonly #known = new Map<number, number[]>();
  readonly #built = new Map<Expression, Map<number, number>>();
  readonly #joined = new Map<string, Owing>();
  readonly end = this.#state({ ends: 0, arcs: new Int32Array(0) });
  readonly #nowhere = this.#state({ ends: NO_END, arcs: new Int32Array(0) });

  /** The state from which the expression leads to `next`. */
  before(expression: Expression, next: number): number {
    const ofExpression = this.#built.get(expression) ?? new Map<number, number>();
    this.#built.set(expression, ofExpression);
    const state = ofExpression.get(next) ?? this.#build(expression, next);
    ofExpression.set(next, state);
    return state;
  }

  /** What the start leads to and what leads to an end. */
  graph(start: number): WordGraph {
    const spelled = [...this.#words.keys()];
    const number = new Map<number, number>();
    const kept: WordState[] = [];
    const visit = (state: number): number => {
      const known = number.get(state);
      if (known !== undefined) return known;
      const { ends, arcs } = this.#at(state);
      const alive = Array.from({ length: arcs.length / NUMBERS_AN_ARC }, (_, at): WordArc => ({
        word: spelled[arcs[at * NUMBERS_AN_ARC] ?? 0] ?? '', target: visit(arcs[at * NUMBERS_AN_ARC + 1] ?? 0), cost: arcs[at * NUMBERS_AN_ARC + 2] ?? 0,
      })).filter(({ target }) => target >= 0);
      const here = ends === NO_END && alive.length === 0 ? -1 : kept.push({ ends: ends === NO_END ? undefined : ends, arcs: alive }) - 1;
      number.set(state, here);
      return here;
    };
    return { start: visit(start), states: kept };
  }

  #build(expression: Expression, next: number): number {
    if (next === this.#nowhere) return next;
    switch (expression.kind) {
      case 'word': return this.#state({ ends: NO_END, arcs: Int32Array.of(this.#numberOf(expression.word), next, 0) });
      case 'all': return expression.parts.reduceRight((state, part) => this.before(part, state), next);
      case 'either': return this.#either(expression.options.map((option) => ({ state: this.before(option.expression, next), cost: option.cost })));
      default: return assertNever(expression);
    }
  }

  #numberOf(word: string): number {
    const number = this.#words.get(word) ?? this.#words.size;
    this.#words.set(word, number);
    return number;
  }

  /** Here nothing is paid yet, so that the least cost has to stay in the state: on its arcs. */
  #either(options: readonly Owing[]): number {
    const { state, cost } = this.#join(options);
    if (cost === 0) return state;
    const { ends, arcs } = this.#at(state);
    return this.#state({ ends: ends === NO_END ? ends : ends + cost, arcs: arcs.map((number, at) => (at % NUMBERS_AN_ARC === 2 ? number + cost : number)) });
  }

  /** One state for several that are reached by the same words, and what all of them owe at least. */
  #join(options: readonly Owing[]): Owing {
    const [first] = options;
    if (first !== undefined && options.length === 1) return first;
    const alive = options.filter(({ state }) => state !== this.#nowhere);
    const least = alive.reduce((sofar, { cost }) => Math.min(sofar, cost), Infinity);
    const owing = cheapestOfEach(alive, least);
    const [only] = owing;
    if (only === undefined) return { state: this.#nowhere, cost: 0 };
    if (owing.length === 1) return { state: only.state, cost: least };
    let key = '';
    for (const { state, cost } of owing) key += `${state},${cost} `;
    const joined = this.#joined.get(key) ?? this.#joinAll(owing);
    this.#joined.set(key, joined);
    return { state: joined.state, cost: least + joined.cost };
  }

  #joinAll(owing: readonly Owing[]): Owing {
    const drafts = owing.map(({ state }) => this.#at(state));
    const ends = drafts.reduce((sofar, draft, at) => (draft.ends === NO_END ? sofar : Math.min(sofar, draft.ends + (owing[at]?.cost ?? 0))), Infinity);
    const reached = inOrderOfWords(drafts, owing);
    const arcs: number[] = [];
    for (let at = 0; at < reached.length; ) {
      const word = reached[at] ?? 0;
      let end = at + NUMBERS_AN_ARC;
      while (end < reached.length && reached[end] === word) end += NUMBERS_AN_ARC;
      if (end === at + NUMBERS_AN_ARC) arcs.push(word, reached[at + 1] ?? 0, reached[at + 2] ?? 0);
      else {
        const { state, cost } = this.#join(pairsIn(reached, at, end));
        arcs.push(word, state, cost);
      }
      at = end;
    }
    return { state: this.#state({ ends: ends === Infinity ? NO_END : ends, arcs: Int32Array.from(arcs) }), cost: 0 };
  }

  #at(state: number): Draft {
    return this.#states[state] ?? { ends: NO_END, arcs: new Int32Array(0) };
  }

  /** The state of that kind: the one there is, or a new one. */
  #state(draft: Draft): number {
    const key = draft.arcs.reduce((sum, number) => (Math.imul(sum, 31) + number) | 0, draft.ends);
    const alike = this.#known.get(key) ?? [];
    this.#known.set(key, alike);
    const known = alike.find((state) => isSame(this.#at(state), draft));
    if (known !== undefined) return known;
    alike.push(this.#states.push(draft) - 1);
    return this.#states.length - 1;
  }
}

/** By their numbers, each once with the least that it owes beyond `least`. */
function cheapestOfEach(options: readonly Owing[], least: number): readonly Owing[] {
  const sorted = options.toSorted((one, other) => one.state - other.state || one.cost - other.cost);
  return sorted.filter(({ state }, at) => state !== sorted[at - 1]?.state).map(({ state, cost }) => ({ state, cost: cost - least }));
}

/** The arcs of all, each with what its state owed before, in the order of the words: three numbers an arc. */
function inOrderOfWords(drafts: readonly Draft[], owing: readonly Owing[]): Int32Array {
  const count = drafts.reduce((sum, { arcs }) => sum + arcs.length / NUMBERS_AN_ARC, 0);
  const [unsorted, order] = [new Int32Array(count * NUMBERS_AN_ARC), new Float64Array(count)];
  let at = 0;
  drafts.forEach(({ arcs }, draft) => {
    for (let arc = 0; arc < arcs.length; arc += NUMBERS_AN_ARC, at += 1) {
      unsorted.set([arcs[arc] ?? 0, arcs[arc + 1] ?? 0, (arcs[arc + 2] ?? 0) + (owing[draft]?.cost ?? 0)], at * NUMBERS_AN_ARC);
      order[at] = (arcs[arc] ?? 0) * count + at;
    }
  });
  const sorted = new Int32Array(unsorted.length);
  order.sort().forEach((placed, to) => {
    const from = (placed % count) * NUMBERS_AN_ARC;
    sorted.set(unsorted.subarray(from, from + NUMBERS_AN_ARC), to * NUMBERS_AN_ARC);
  });
  return sorted;
}

function pairsIn(reached: Int32Array, from: number, to: number): readonly Owing[] {
  return Array.from({ length: (to - from) / NUMBERS_AN_ARC }, (_, at) => ({ state: reached[from + at * NUMBERS_AN_ARC + 1] ?? 0, cost: reached[from + at * NUMBERS_AN_ARC + 2] ?? 0 }));
}

function isSame(one: Draft, other: Draft): boolean {
  return one.ends === other.ends && one.arcs.length === other.arcs.length && one.arcs.every((number, at) => number === other.arcs[at]);
}
