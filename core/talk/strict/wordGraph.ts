import type { Lists } from './lists.ts';

/**
 * A deterministic automaton over words, without circles, as small as it can be. Costs are hundredths of a natural logarithm. States come after all that they
 * lead to, and the arcs of a state in the order of their labels.
 */
export interface WordGraph {
  readonly start: number;
  /** Arcs of state s are those from firstArc[s] up to firstArc[s + 1]. */
  readonly firstArc: Int32Array;
  /** What ending in each state costs; NO_END where no sentence ends. */
  readonly ends: Int32Array;
  readonly label: Int32Array;
  readonly target: Int32Array;
  readonly cost: Int32Array;
}

/** In the place of what ending costs, where no sentence ends. */
export const NO_END = -1;
/** A state in a list of states is what ending there costs, then these for each arc, in the order of the labels: label, target, cost. */
export const NUMBERS_AN_ARC = 3;

/** Of many states those that one of them leads to, numbered anew. */
export function graphFrom(states: Lists, first: number): WordGraph {
  const { numbers } = states;
  const renumbered = new Int32Array(states.size);
  const kept: number[] = [];
  let arcs = 0;
  const visit = (state: number): void => {
    const from = states.start(state) + 1;
    const to = states.end(state);
    for (let at = from; at < to; at += NUMBERS_AN_ARC) if (renumbered[numbers[at + 1] ?? 0] === 0) visit(numbers[at + 1] ?? 0);
    arcs += (to - from) / NUMBERS_AN_ARC;
    // Counted from 1 here, so that 0 is what was not yet visited.
    renumbered[state] = kept.push(state);
  };
  visit(first);
  const graph = { start: kept.length - 1, firstArc: new Int32Array(kept.length + 1), ends: new Int32Array(kept.length), label: new Int32Array(arcs), target: new Int32Array(arcs), cost: new Int32Array(arcs) };
  let filled = 0;
  kept.forEach((state, index) => {
    const from = states.start(state);
    const to = states.end(state);
    graph.ends[index] = numbers[from] ?? NO_END;
    for (let at = from + 1; at < to; at += NUMBERS_AN_ARC, filled += 1) {
      graph.label[filled] = numbers[at] ?? 0;
      graph.target[filled] = (renumbered[numbers[at + 1] ?? 0] ?? 0) - 1;
      graph.cost[filled] = numbers[at + 2] ?? 0;
    }
    graph.firstArc[index + 1] = filled;
  });
  return graph;
}
