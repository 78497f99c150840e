import { coverProgramme, improve, start, reducedCost, type Column, type CoverProgramme } from './coverProgramme.ts';
import type { PackingNode } from './node.ts';
import { bestPatterns } from './patterns.ts';

/** A pattern and how many bars, in fractions, the relaxed plan cuts by it. */
export interface Amount {
  readonly column: Column;
  readonly amount: number;
}

export interface Relaxation {
  /** Bars that any plan needs, from exact whole-number arithmetic. */
  readonly bound: number;
  readonly amounts: readonly Amount[];
  /** Patterns worth handing on to the nodes below. */
  readonly pool: readonly Column[];
  /** False when it was told to stop before the bound was settled. */
  readonly settled: boolean;
}

/** Duals are taken to whole multiples of 1/UNIT, so that the best pattern and the bound are exact. */
const UNIT = 2 ** 30;
const CLOSE_ENOUGH = UNIT + 16;
/** Worth of an uncovered piece, in bars: more than any pattern earns. */
const STOPGAP = 4;
const HANDED_ON_UNDER = 0.15;

/**
 * Column generation. The bound is Farley's: with values u, a best pattern of worth M and copies d, no plan uses fewer than u·d / M bars.
 * With a `target` it stops as soon as the target is out of reach, or the relaxed plan reaches it and nothing more can be proven.
 */
export function relax(node: PackingNode, target: number | undefined, goOn: () => boolean): Relaxation {
  const programme = coverProgramme(node.copies, STOPGAP);
  programme.columns.push(...node.pool, ...singles(node));
  start(programme, 0, Math.min(node.pool.length, 2 * node.sizes.length));
  let bound = 0;
  for (;;) {
    if (!improve(programme, goOn)) return report(programme, bound, false);
    const values = Float64Array.from(programme.duals, (dual) => Math.max(0, Math.floor(dual * UNIT)));
    if (target !== undefined && cost(programme) <= target) return report(programme, bound, true);
    const priced = bestPatterns(node, values, CLOSE_ENOUGH, goOn);
    if (!priced.complete) return report(programme, bound, false);
    const worth = values.reduce((sum, value, index) => sum + value * (node.copies[index] ?? 0), 0);
    bound = Math.max(bound, ceilingOf(worth, priced.best));
    if (priced.columns.length === 0 || (target !== undefined && bound > target)) return report(programme, bound, true);
    programme.columns.push(...priced.columns);
  }
}

/** Whole numbers below 2^53: exact. */
function ceilingOf(worth: number, best: number): number {
  const whole = Math.floor(worth / best);
  return whole * best >= worth ? whole : whole + 1;
}

function singles(node: PackingNode): Column[] {
  return Array.from(node.sizes, (size, row) => ({ row, size }))
    .filter(({ size }) => size >= node.leastFill)
    .map(({ row }) => ({ rows: Int32Array.of(row), counts: Int32Array.of(1), cost: 1 }));
}

function cost({ basis, amounts, columns, rows, stopgapCost }: CoverProgramme): number {
  let sum = 0;
  for (let at = 0; at < rows; at++) {
    const basic = basis[at] ?? 0;
    sum += (amounts[at] ?? 0) * (columns[basic]?.cost ?? (basic < -rows ? stopgapCost : 0));
  }
  // The right sides were shifted up by less than two millionths each.
  return sum - rows * 2e-6;
}

function report(programme: CoverProgramme, bound: number, settled: boolean): Relaxation {
  const amounts: Amount[] = [];
  for (let at = 0; at < programme.rows; at++) {
    const column = programme.columns[programme.basis[at] ?? 0];
    const amount = programme.amounts[at] ?? 0;
    if (column !== undefined && amount > 1e-5) amounts.push({ column, amount });
  }
  amounts.sort((a, b) => b.amount - a.amount);
  const used = amounts.map(({ column }) => column);
  const first = new Set(used);
  const others = programme.columns.filter((column) => !first.has(column) && reducedCost(programme, column) < HANDED_ON_UNDER);
  return { bound, amounts, pool: [...used, ...others], settled };
}
