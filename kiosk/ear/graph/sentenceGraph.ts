import { NO_END } from '../../../core/talk/strict/wordGraph.ts';
import type { WordGraph } from '../../../core/talk/strict/wordGraph.ts';
import { emptyFst } from './fst.ts';
import type { Fst } from './fst.ts';

/** What the ways beside the plain sentence cost, in natural logarithms. Measured: see test/bench/hearing/README.md. */
export interface GraphCosts {
  /** Every word of a sentence; what is no sentence pays by the frame instead (see lexicon.ts). */
  readonly eachWord: number;
  /** An article before a sentence without the address word: nobody needs to say it, and "the" is what noise leaves of "bench". */
  readonly fillerFirst: number;
  /** A noise before the address word. */
  readonly noiseBefore: number;
  /** A noise before a sentence without the address word. */
  readonly noiseBeforeUnaddressed: number;
}

export const GRAPH_COSTS: GraphCosts = { eachWord: 0.3, fillerFirst: 2, noiseBefore: 4, noiseBeforeUnaddressed: 8 };

/** The numbers by which the engine knows the words beside the sentences; those in the sentences are labelled so already. */
export interface WordNumbers {
  readonly unknown: number;
  /** Undefined when the model cannot hear it. */
  readonly address: number | undefined;
  readonly fillers: ReadonlySet<number>;
}

interface Arc { readonly label: number; readonly target: number; readonly cost: number }

/** Before the sentences stand the states for what is not one: where all begins, after the address word, after a noise, and in anything else that is said. */
const [BEGIN, ADDRESSED, NOISY, OTHERWISE, FIRST] = [0, 1, 2, 3, 4];

/**
 * The grammar that the engine listens by: the sentences, as they are or after the address word; and beside them the unknown word, again and again, for
 * everything else that people say. A sentence that goes on with something else is no sentence: "what a mess" must not be "what".
 * @param sentences with words labelled as the engine numbers them
 */
export function sentenceGraph(sentences: WordGraph, { unknown, address, fillers }: WordNumbers, costs: GraphCosts = GRAPH_COSTS): Fst {
  const call = address === undefined ? [] : [{ label: address, target: ADDRESSED, cost: costs.eachWord }];
  const other: Arc = { label: unknown, target: OTHERWISE, cost: 0 };
  const firsts = (more: number) => firstArcs(sentences, costs.eachWord, more);
  const unaddressed = (more: number) => firsts(more).map((arc) => (fillers.has(arc.label) ? { ...arc, cost: arc.cost + costs.fillerFirst } : arc));
  const before = [
    [...unaddressed(0), ...call, other, { label: unknown, target: NOISY, cost: costs.noiseBefore }],
    [...firsts(0), other],
    [...unaddressed(costs.noiseBeforeUnaddressed - costs.noiseBefore), ...call],
    [other],
  ].map((arcs) => arcs.toSorted((one, next) => one.label - next.label));
  const count = before.reduce((sum, { length }) => sum + length, 0);
  const fst = emptyFst(FIRST + sentences.ends.length, count + sentences.label.length);
  putArcs(fst, before);
  for (const state of [BEGIN, ADDRESSED, OTHERWISE]) fst.ending[state] = 0;
  putSentences(fst, sentences, count, costs.eachWord);
  return fst;
}

function firstArcs({ start, firstArc, label, target, cost }: WordGraph, eachWord: number, more: number): Arc[] {
  const from = firstArc[start] ?? 0;
  return Array.from(label.subarray(from, firstArc[start + 1]), (each, index): Arc => (
    { label: each, target: FIRST + (target[from + index] ?? 0), cost: eachWord + (cost[from + index] ?? 0) / HUNDREDTHS + more }));
}

const HUNDREDTHS = 100;

/** The arcs of the states from the first on. */
function putArcs(fst: Fst, arcs: readonly (readonly Arc[])[]): void {
  let filled = 0;
  arcs.forEach((ofState, state) => {
    for (const { label, target, cost } of ofState) {
      [fst.input[filled], fst.output[filled], fst.target[filled], fst.cost[filled]] = [label, label, target, cost];
      filled += 1;
    }
    fst.firstArc[state + 1] = filled;
  });
}

/** The states of the sentences and their arcs, which come after so many others. */
function putSentences(fst: Fst, { firstArc, ends, label, target, cost }: WordGraph, arcsBefore: number, eachWord: number): void {
  fst.input.set(label, arcsBefore);
  fst.output.set(label, arcsBefore);
  for (let arc = 0; arc < target.length; arc += 1) {
    fst.target[arcsBefore + arc] = FIRST + (target[arc] ?? 0);
    fst.cost[arcsBefore + arc] = eachWord + (cost[arc] ?? 0) / HUNDREDTHS;
  }
  for (let state = 0; state < ends.length; state += 1) {
    fst.firstArc[FIRST + state + 1] = arcsBefore + (firstArc[state + 1] ?? 0);
    const ending = ends[state] ?? NO_END;
    if (ending !== NO_END) fst.ending[FIRST + state] = ending / HUNDREDTHS;
  }
}
