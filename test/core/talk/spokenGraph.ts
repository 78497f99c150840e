import type { Expression } from '../../../core/talk/strict/expression.ts';
import { NO_END } from '../../../core/talk/strict/wordGraph.ts';
import type { WordGraph } from '../../../core/talk/strict/wordGraph.ts';
import { WordGraphs } from '../../../core/talk/strict/wordGraphs.ts';

/** A word graph in words, to be walked through. */
export interface SpokenGraph { readonly start: number; readonly states: readonly SpokenState[] }
interface SpokenState { readonly ends: number | undefined; readonly arcs: readonly { readonly word: string; readonly target: number; readonly cost: number }[] }

/** Makes graphs one after another, each with the help of those before it. */
export function spokenGraphs(): (expression: Expression) => SpokenGraph {
  const spelled: string[] = [''];
  const numbers = new Map<string, number>();
  const graphs = new WordGraphs((word) => {
    const number = numbers.get(word) ?? spelled.push(word) - 1;
    numbers.set(word, number);
    return number;
  });
  return (expression) => inWords(graphs.graphOf(expression), spelled);
}

/** A graph made from nothing. */
export function spokenGraph(expression: Expression): SpokenGraph {
  return spokenGraphs()(expression);
}

function inWords({ start, firstArc, ends, label, target, cost }: WordGraph, spelled: readonly string[]): SpokenGraph {
  return {
    start,
    states: Array.from(ends, (ending, state): SpokenState => ({
      ends: ending === NO_END ? undefined : ending,
      arcs: Array.from(label.subarray(firstArc[state], firstArc[state + 1]), (number, index) => {
        const arc = (firstArc[state] ?? 0) + index;
        return { word: spelled[number] ?? '', target: target[arc] ?? 0, cost: cost[arc] ?? 0 };
      }),
    })),
  };
}

/** What a sentence costs, or undefined when it is none. */
export function costOf(graph: SpokenGraph, sentence: string): number | undefined {
  let state = graph.start;
  let paid = 0;
  for (const word of sentence.split(' ')) {
    const arc = graph.states[state]?.arcs.find((each) => each.word === word);
    if (arc === undefined) return undefined;
    state = arc.target;
    paid += arc.cost;
  }
  const ends = graph.states[state]?.ends;
  return ends === undefined ? undefined : paid + ends;
}

/** A number for each state, in all graphs that share `kinds`: the same where the same may follow for the same costs. @returns that of the start */
export function kindOf({ start, states }: SpokenGraph, kinds: Map<string, number>): number {
  const kindOfState: number[] = [];
  for (const { ends, arcs } of states) {
    const key = `${ends ?? 'goes on'} ${arcs.map(({ word, target, cost }) => `${word} ${kindOfState[target] ?? ''} ${cost}`).sort().join(',')}`;
    const kind = kinds.get(key) ?? kinds.size;
    kinds.set(key, kind);
    kindOfState.push(kind);
  }
  return kindOfState[start] ?? -1;
}
