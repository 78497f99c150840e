import type { GroupedProblem } from './problem.ts';

/**
 * Bars that some best plan is sure to have (Martello and Toth 1990, their reduction for one and two pieces): a long piece that
 * can share its bar with one other at most takes the longest that fits; two that fill a bar to the last belong together.
 */
export function reduced(problem: GroupedProblem): { fixed: number[][]; left: GroupedProblem } {
  const { capacity } = problem;
  const left = problem.classes.map(({ size, copies }) => ({ size, copies: [...copies] }));
  const fixed: number[][] = [];
  for (let first = 0; first < left.length; first++) {
    const long = left[first];
    while (long !== undefined && long.copies.length > 0) {
      const bar = sureBar(left, first, capacity);
      if (bar === undefined) break;
      fixed.push(bar);
    }
  }
  return { fixed, left: { capacity, classes: left.filter(({ copies }) => copies.length > 0) } };
}

type Left = readonly { readonly size: number; readonly copies: number[] }[];

function sureBar(left: Left, first: number, capacity: number): number[] | undefined {
  const long = left[first];
  if (long === undefined) return undefined;
  const room = capacity - long.size;
  const [smallest, next] = smallestTwo(left, first);
  const partner = left.findIndex(({ size, copies }, index) => size <= room && copies.length > (index === first ? 1 : 0));
  if (partner < 0) return long.copies.splice(0, 1);
  const fills = left[partner]?.size === room;
  if (!fills && smallest + next <= room) return undefined;
  return [...long.copies.splice(0, 1), ...left[partner]?.copies.splice(0, 1) ?? []];
}

/** The two smallest pieces left beside one of the given class. */
function smallestTwo(left: Left, besides: number): [number, number] {
  const found: number[] = [];
  for (let index = left.length - 1; index >= 0 && found.length < 2; index--) {
    const count = (left[index]?.copies.length ?? 0) - (index === besides ? 1 : 0);
    for (let copy = 0; copy < count && found.length < 2; copy++) found.push(left[index]?.size ?? 0);
  }
  return [found[0] ?? Infinity, found[1] ?? Infinity];
}
