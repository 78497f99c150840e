import type { Fst } from './fst.ts';

/**
 * Which words can still come from each state before any other word does. Words are renumbered so that for a tree of words each such set is one stretch
 * of numbers; the engine then looks ahead from a phone to the words of its grammar by comparing two numbers (C. Allauzen, M. Riley, J. Schalkwyk,
 * "A Generalized Composition Algorithm for Weighted Finite-State Transducers", Interspeech 2009, section 2.3.3).
 */
export interface LabelReach {
  /** The new number of each old output label. */
  readonly renumbered: ReadonlyMap<number, number>;
  /** Stands for 'may end here'. */
  readonly endLabel: number;
  /** For each state the stretches of new numbers in order: begin, end (not included), begin, end, … */
  readonly stretches: readonly (readonly number[])[];
}

/** Follows OpenFst's order of visiting, so that the numbers come out as its own tools give them. */
export function labelReach(fst: Fst): LabelReach {
  const { graph, labelNodes } = onlyFirstLabels(fst);
  const groups = stronglyConnected(graph);
  const { numbers, stretches } = reachOfGroups(graph, groups, new Set(labelNodes.values()));
  const number = (label: number) => numbers.get(labelNodes.get(label) ?? -1) ?? -1;
  const labels = [...labelNodes.keys()].filter((label) => label !== END);
  return {
    renumbered: new Map(labels.map((label) => [label, number(label)])),
    endLabel: number(END),
    stretches: Array.from({ length: fst.states }, (_, state) => stretches[groups.of[state] ?? 0] ?? []),
  };
}

/** In the place of a label: the end. */
const END = -1;

/** Nodes from 0, and what each leads to; the last node is where visiting begins. */
type Graph = readonly (readonly number[])[];

/** The transducer with every arc that bears a word led to a node of that word, where it stops. */
function onlyFirstLabels(fst: Fst): { graph: Graph; labelNodes: Map<number, number> } {
  const labelNodes = new Map<number, number>();
  const nodeOf = (label: number) => {
    const node = labelNodes.get(label) ?? fst.states + labelNodes.size;
    labelNodes.set(label, node);
    return node;
  };
  const graph: number[][] = [];
  const entered = new Set<number>();
  for (let state = 0; state < fst.states; state += 1) {
    const nexts: number[] = [];
    for (let arc = fst.firstArc[state] ?? 0; arc < (fst.firstArc[state + 1] ?? 0); arc += 1) {
      const label = fst.output[arc] ?? 0;
      nexts.push(label === 0 ? fst.target[arc] ?? 0 : nodeOf(label));
    }
    if (fst.ending[state] !== Infinity) nexts.push(nodeOf(END));
    for (const next of nexts) entered.add(next);
    graph.push(nexts);
  }
  for (let each = 0; each < labelNodes.size; each += 1) graph.push([]);
  graph.push(graph.flatMap((_, node) => (entered.has(node) ? [] : [node])));
  return { graph, labelNodes };
}

/** Groups of nodes that lead to one another, numbered so that none leads to one of a lower number. */
interface Groups { readonly of: Int32Array; readonly count: number }

/** R. Tarjan's algorithm (SIAM Journal on Computing 1, 1972), without recursion. */
function stronglyConnected(graph: Graph): Groups {
  const found = new Int32Array(graph.length).fill(-1);
  const lowest = new Int32Array(graph.length);
  const of = new Int32Array(graph.length).fill(-1);
  const open: number[] = [];
  let count = 0;
  let visited = 0;
  visitAll(graph, {
    enter(node) {
      found[node] = lowest[node] = visited;
      visited += 1;
      open.push(node);
    },
    again(node, next) {
      if (of[next] === -1) lowest[node] = Math.min(lowest[node] ?? 0, found[next] ?? 0);
    },
    leave(node, parent) {
      if (lowest[node] === found[node]) {
        let member: number | undefined;
        do {
          member = open.pop();
          if (member !== undefined) of[member] = count;
        } while (member !== node && member !== undefined);
        count += 1;
      }
      if (parent !== undefined && of[node] === -1) lowest[parent] = Math.min(lowest[parent] ?? 0, lowest[node] ?? 0);
    },
  });
  return { of: of.map((group) => count - 1 - group), count };
}

function reachOfGroups(graph: Graph, { of, count }: Groups, labelNodes: ReadonlySet<number>): { numbers: Map<number, number>; stretches: number[][] } {
  const condensed: number[][] = Array.from({ length: count }, () => []);
  const labelOf = new Map<number, number>();
  graph.forEach((nexts, node) => {
    const group = of[node] ?? 0;
    if (labelNodes.has(node)) labelOf.set(group, node);
    for (const next of nexts) if (of[next] !== group) condensed[group]?.push(of[next] ?? 0);
  });
  const numbers = new Map<number, number>();
  const stretches: number[][] = Array.from({ length: count }, () => []);
  visitAll(condensed, {
    enter(group) {
      const label = labelOf.get(group);
      if (label === undefined) return;
      numbers.set(label, numbers.size + 1);
      stretches[group] = [numbers.size, numbers.size + 1];
    },
    again: () => undefined,
    leave(group) {
      if (!labelOf.has(group)) stretches[group] = joined((condensed[group] ?? []).map((next) => stretches[next] ?? []));
    },
  }, of[graph.length - 1]);
  return { numbers, stretches };
}

/** All numbers of some lists of stretches, as stretches. */
function joined(lists: readonly (readonly number[])[]): number[] {
  const pairs: [number, number][] = [];
  for (const list of new Set(lists)) for (let at = 0; at < list.length; at += 2) pairs.push([list[at] ?? 0, list[at + 1] ?? 0]);
  pairs.sort(([one], [other]) => one - other);
  const result: number[] = [];
  for (const [begin, end] of pairs) {
    const last = result.at(-1);
    if (last !== undefined && begin <= last) result[result.length - 1] = Math.max(last, end);
    else result.push(begin, end);
  }
  return result;
}

interface Visitor {
  enter(node: number): void;
  /** An arc to a node that was entered before. */
  again(node: number, next: number): void;
  leave(node: number, parent: number | undefined): void;
}

/** Visits every node, depth first: from `first` (the last node unless told), then from each that was not reached, in order. */
function visitAll(graph: Graph, visitor: Visitor, first = graph.length - 1): void {
  const entered = new Uint8Array(graph.length);
  const path: number[] = [];
  const taken: number[] = [];
  const enter = (node: number) => {
    entered[node] = 1;
    visitor.enter(node);
    path.push(node);
    taken.push(0);
  };
  for (let root = -1; root < graph.length; root += 1) {
    const begin = root < 0 ? first : root;
    if (entered[begin] === 1) continue;
    enter(begin);
    for (let node = path.at(-1); node !== undefined; node = path.at(-1)) {
      const next = graph[node]?.[taken[taken.length - 1] ?? 0];
      if (next === undefined) {
        path.pop();
        taken.pop();
        visitor.leave(node, path.at(-1));
      } else {
        taken[taken.length - 1] = (taken.at(-1) ?? 0) + 1;
        if (entered[next] === 1) visitor.again(node, next);
        else enter(next);
      }
    }
  }
}
