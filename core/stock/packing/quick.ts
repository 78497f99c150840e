import type { GroupedProblem } from './problem.ts';
import type { PackingNode } from './node.ts';

/** Each piece into the fullest bar that it still fits, largest first; a first plan at once. Bars of piece indices. */
export function bestFitDecreasing(problem: GroupedProblem): number[][] {
  const pieces = problem.classes.flatMap(({ size, copies }) => copies.map((index) => ({ size, index })));
  const bars: { room: number; pieces: number[] }[] = [];
  for (const { size, index } of pieces) {
    let best: (typeof bars)[number] | undefined;
    for (const bar of bars) if (bar.room >= size && (best === undefined || bar.room < best.room)) best = bar;
    if (best === undefined) bars.push(best = { room: problem.capacity, pieces: [] });
    best.room -= size;
    best.pieces.push(index);
  }
  return bars.map((bar) => bar.pieces);
}

/** As above for a node of the search: pieces kept apart stay apart, joined ones together. */
export function bestFitOfNode(node: PackingNode): number[][] {
  const bars: { room: number; pieces: number[]; classes: Set<number> }[] = [];
  node.members.forEach((copies, index) => {
    const size = node.sizes[index] ?? 0;
    for (const copy of copies) {
      let best: (typeof bars)[number] | undefined;
      for (const bar of bars) {
        if (bar.room < size || (best !== undefined && bar.room >= best.room)) continue;
        if (!(node.apart[index] ?? []).some((other) => bar.classes.has(other))) best = bar;
      }
      if (best === undefined) bars.push(best = { room: node.capacity, pieces: [], classes: new Set() });
      best.room -= size;
      best.classes.add(index);
      best.pieces.push(...copy);
    }
  });
  return bars.map(({ pieces }) => pieces);
}

/**
 * Bar by bar, each filled as full as the pieces left allow, the largest left always in it (Gupta and Ho 1999, with the largest piece fixed
 * as in Fleszar and Hindi 2002). `effort` limits the search for each bar.
 */
export function fullestBars(problem: GroupedProblem, effort: number): number[][] {
  const left = problem.classes.map(({ copies }) => [...copies]);
  const bars: number[][] = [];
  for (let first = 0; first < left.length;) {
    if (left[first]?.length === 0) { first++; continue; }
    const counts = fullest(problem, left.map(({ length }) => length), first, effort);
    bars.push(counts.flatMap((count, index) => left[index]?.splice(0, count) ?? []));
  }
  return bars;
}

function fullest(problem: GroupedProblem, left: number[], first: number, effort: number): number[] {
  const counts = left.map(() => 0);
  let [best, leastRoom, steps] = [counts, Infinity, effort];
  const put = (index: number, step: 1 | -1): void => {
    counts[index] = (counts[index] ?? 0) + step;
    left[index] = (left[index] ?? 0) - step;
  };
  const fill = (from: number, room: number): void => {
    if (room < leastRoom) [best, leastRoom] = [[...counts], room];
    for (let index = from; index < left.length && leastRoom > 0 && steps > 0; index++) {
      const size = problem.classes[index]?.size ?? 0;
      if (left[index] === 0 || size > room) continue;
      steps--;
      put(index, 1);
      fill(index, room - size);
      put(index, -1);
    }
  };
  put(first, 1);
  fill(first, problem.capacity - (problem.classes[first]?.size ?? 0));
  return best;
}
