import type { WordGraph } from '../../../core/talk/strict/wordGraph.ts';
import { FstBuilder } from './fst.ts';
import type { Fst } from './fst.ts';

/** What the ways beside the plain sentence cost, in natural logarithms. Measured: see test/bench/hearing/README.md. */
export interface GraphCosts {
  /** Every word of a sentence; what is no sentence pays by the frame instead (see lexicon.ts). */
  readonly eachWord: number;
  /** A noise before the address word. */
  readonly noiseBefore: number;
  /** A noise before a sentence without the address word. */
  readonly noiseBeforeUnaddressed: number;
}

export const GRAPH_COSTS: GraphCosts = { eachWord: 0.3, noiseBefore: 4, noiseBeforeUnaddressed: 8 };

/** The numbers by which the engine knows words. */
export interface WordNumbers {
  readonly numberOf: (word: string) => number | undefined;
  readonly unknown: number;
  /** Undefined when the model cannot hear it. */
  readonly address: number | undefined;
}

/**
 * The grammar that the engine listens by: the sentences, as they are or after the address word; and beside them the unknown word, again and again, for
 * everything else that people say. A sentence that goes on with something else is no sentence: "what a mess" must not be "what". Words that the model
 * cannot hear lead nowhere.
 */
export function sentenceGraph({ start, states }: WordGraph, { numberOf, unknown, address }: WordNumbers, costs: GraphCosts = GRAPH_COSTS): Fst {
  const builder = new FstBuilder();
  const [begin, addressed, noisy, otherwise] = [builder.state(), builder.state(), builder.state(), builder.state()];
  const first = builder.state();
  for (let each = 1; each < states.length; each += 1) builder.state();
  const word = (from: number, label: number, target: number, cost: number) => { builder.arc(from, target, label, label, cost); };
  const leads = (from: number, state: number, more: number) => {
    for (const { word: said, target, cost } of states[state]?.arcs ?? []) {
      const label = numberOf(said);
      if (label !== undefined) word(from, label, first + target, costs.eachWord + cost / 100 + more);
    }
  };
  leads(begin, start, 0);
  leads(noisy, start, costs.noiseBeforeUnaddressed - costs.noiseBefore);
  leads(addressed, start, 0);
  if (address !== undefined) for (const from of [begin, noisy]) word(from, address, addressed, costs.eachWord);
  word(begin, unknown, otherwise, 0);
  word(begin, unknown, noisy, costs.noiseBefore);
  word(addressed, unknown, otherwise, 0);
  word(otherwise, unknown, otherwise, 0);
  states.forEach(({ ends }, state) => {
    leads(first + state, state, 0);
    if (ends !== undefined) builder.end(first + state, ends / 100);
  });
  for (const state of [begin, addressed, otherwise]) builder.end(state);
  return builder.done();
}
