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
    const least = Math.min(...alive.map(({ cost }) => cost));
    const owing = new Map<number, number>();
    for (const { state, cost } of alive) owing.set(state, Math.min(owing.get(state) ?? Infinity, cost - least));
    const [only] = owing.keys();
    if (only === undefined) return { state: this.#nowhere, cost: 0 };
    if (owing.size === 1) return { state: only, cost: least };
    const key = [...owing].sort(([one], [other]) => one - other).join(' ');
    const joined = this.#joined.get(key) ?? this.#joinAll(owing);
    this.#joined.set(key, joined);
    return { state: joined.state, cost: least + joined.cost };
  }

  #joinAll(owing: ReadonlyMap<number, number>): Owing {
    const targets = new Map<number, Owing[]>();
    let ends = NO_END;
    for (const [state, owed] of owing) {
      const { ends: ending, arcs } = this.#at(state);
      if (ending !== NO_END) ends = ends === NO_END ? ending + owed : Math.min(ends, ending + owed);
      for (let at = 0; at < arcs.length; at += NUMBERS_AN_ARC) {
        const reached: Owing = { state: arcs[at + 1] ?? 0, cost: (arcs[at + 2] ?? 0) + owed };
        const known = targets.get(arcs[at] ?? 0);
        if (known) known.push(reached);
        else targets.set(arcs[at] ?? 0, [reached]);
      }
    }
    const arcs = [...targets].sort(([one], [other]) => one - other).flatMap(([word, reached]) => {
      const { state, cost } = this.#join(reached);
      return [word, state, cost];
    });
    return { state: this.#state({ ends, arcs: Int32Array.from(arcs) }), cost: 0 };
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

function isSame(one: Draft, other: Draft): boolean {
  return one.ends === other.ends && one.arcs.length === other.arcs.length && one.arcs.every((number, at) => number === other.arcs[at]);
}
