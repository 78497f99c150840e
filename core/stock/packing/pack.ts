import { bestFitDecreasing, fullestBars } from './quick.ts';
import { keptApart, together, type PackingNode } from './node.ts';
import { grouped, type GroupedProblem, type Packing, type PackingProblem, type Patience } from './problem.ts';
import { reduced } from './reduce.ts';
import { relax } from './relaxation.ts';
import { roundedPlan } from './rounding.ts';
import { branchingPair } from './branching.ts';
import { dive } from './dive.ts';

/** Steps that the quick fill may take for one bar. */
const QUICK_EFFORT = 3000;

interface Search {
  readonly patience: Patience;
  /** Bars of the best plan so far. */
  best: number[][];
  bound: number;
}

/**
 * The fewest bars for pieces of given lengths, with proof: quick plans first, then column generation for the bound, then a search that
 * branches on whether two sizes share a bar (Ryan and Foster 1981, for classes of equal pieces as in da Silva and Schouery 2023).
 * When `patience` ends, the best plan so far and what is proven of it.
 */
export function pack(problem: PackingProblem, patience: Patience): Packing {
  const whole = grouped(problem);
  const { fixed, left } = reduced(whole);
  const search: Search = { patience, best: quickPlan(left), bound: volumeBound(left) };
  if (left.classes.length > 0 && search.best.length > search.bound) solve(left, search);
  const bars = [...fixed, ...search.best];
  const bound = fixed.length + search.bound;
  return { bars, bound, proven: bars.length === bound };
}

function quickPlan(problem: GroupedProblem): number[][] {
  const plans = [bestFitDecreasing(problem), fullestBars(problem, QUICK_EFFORT)];
  return plans.reduce((best, plan) => (plan.length < best.length ? plan : best));
}

/** All the length there is, over the length of a bar; and pieces longer than half a bar never share one. */
function volumeBound({ capacity, classes }: GroupedProblem): number {
  const total = classes.reduce((sum, { size, copies }) => sum + size * copies.length, 0);
  const long = classes.reduce((sum, { size, copies }) => sum + (2 * size > capacity ? copies.length : 0), 0);
  return Math.max(Math.ceil(total / capacity), long);
}

function solve(problem: GroupedProblem, search: Search): void {
  const root = rootOf(problem, []);
  const relaxed = relax(root, { known: search.bound }, search.patience.goOn);
  search.bound = Math.max(search.bound, relaxed.bound);
  if (!relaxed.settled) return;
  offer(search, roundedPlan(root, relaxed.amounts));
  let pool = relaxed.pool;
  while (search.best.length > search.bound) {
    const found = reach(problem, search, pool);
    if (found === 'stopped') return;
    if (found === 'impossible') search.bound++;
    pool = relaxed.pool;
  }
}

function rootOf({ capacity, classes }: GroupedProblem, pool: PackingNode['pool']): PackingNode {
  return {
    capacity, leastFill: 0, pool,
    sizes: Float64Array.from(classes, ({ size }) => size),
    copies: Int32Array.from(classes, ({ copies }) => copies.length),
    members: classes.map(({ copies }) => copies.map((index) => [index])),
    apart: classes.map(() => []),
  };
}

function offer(search: Search, bars: number[][]): void {
  if (bars.length < search.best.length) search.best = bars;
}

/** Looks for a plan of `search.bound` bars, in depth, those nodes first that bring pieces together. */
function reach(problem: GroupedProblem, search: Search, pool: PackingNode['pool']): 'found' | 'impossible' | 'stopped' {
  const target = search.bound;
  const total = problem.classes.reduce((sum, { size, copies }) => sum + size * copies.length, 0);
  const leastFill = Math.max(0, problem.capacity - (target * problem.capacity - total));
  const root = { ...rootOf(problem, pool), leastFill };
  const dived = dives(root, search);
  if (dived !== undefined) return dived;
  const open: PackingNode[] = [root];
  for (;;) {
    const node = open.pop();
    if (node === undefined) return 'impossible';
    const relaxed = relax(node, { target, known: 0 }, search.patience.goOn);
    if (!relaxed.settled) return 'stopped';
    if (relaxed.bound > target) continue;
    offer(search, roundedPlan(node, relaxed.amounts));
    if (search.best.length <= target) return 'found';
    const pair = branchingPair(node, relaxed.amounts);
    const below = { ...node, pool: relaxed.pool };
    open.push(keptApart(below, ...pair), together(below, ...pair));
  }
}

const DIVES = 6;

/** A few ways down before the search proper: the first by the surest patterns, the others turning off once, early or late. */
function dives(root: PackingNode, search: Search): 'found' | 'stopped' | undefined {
  const target = search.bound;
  const relaxed = relax(root, { target, known: 0 }, search.patience.goOn);
  if (!relaxed.settled) return 'stopped';
  if (relaxed.bound > target) return undefined;
  for (let turn = 0; turn < DIVES; turn++) {
    const found = dive({ ...root, pool: relaxed.pool }, relaxed.amounts, target, (depth) => (depth === turn - 1 ? 1 : 0), search.patience.goOn);
    if (found !== undefined) offer(search, found.bars);
    if (found?.finished === false) return 'stopped';
    if (search.best.length <= target) return 'found';
  }
  return undefined;
}
