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
/** How far the values are drawn towards the best so far. */
const PULL = 0.6;
/** Worth of an uncovered piece, in bars: more than any pattern earns. */
const STOPGAP = 4;
const HANDED_ON_UNDER = 0.15;

/** What a relaxation is for: to reach a target or to rule it out; or, without one, to know the bound. `known` is a bound that is sure already. */
export interface Aim {
  readonly target?: number;
  readonly known: number;
}

/**
 * Column generation. The bound is Farley's: with values u, a best pattern of worth M and copies d, no plan uses fewer than u·d / M bars.
 * It stops as soon as the target is out of reach, or the relaxed plan reaches it (or what is known) and nothing more can be proven.
 * Pieces are valued between the programme's duals and the best values so far, at first their lengths (Wentges 1997): fewer rounds.
 */
export function relax(node: PackingNode, aim: Aim, goOn: () => boolean): Relaxation {
  const programme = coverProgramme(node.copies, STOPGAP);
  programme.columns.push(...node.pool, ...singles(node));
  start(programme, 0, Math.min(node.pool.length, 2 * node.sizes.length));
  let bound = aim.known;
  const centre = node.sizes.map((size) => size / node.capacity);
  let pull = PULL;
  for (;;) {
    if (!improve(programme, goOn)) return report(programme, bound, false);
    if (cost(programme) <= Math.max(aim.target ?? 0, bound)) return report(programme, bound, true);
    const values = programme.duals.map((dual, row) => Math.max(0, Math.floor((pull * (centre[row] ?? 0) + (1 - pull) * dual) * UNIT)));
    const priced = bestPatterns(node, values, CLOSE_ENOUGH, goOn);
    if (!priced.complete) return report(programme, bound, false);
    const better = ceilingOf(values.reduce((sum, value, row) => sum + value * (node.copies[row] ?? 0), 0), priced.best);
    bound = Math.max(bound, better);
    if (aim.target !== undefined && bound > aim.target) return report(programme, bound, true);
    const useful = priced.columns.filter((column) => reducedCost(programme, column) < -1e-9);
    if (useful.length === 0 && pull === 0) return report(programme, bound, true);
    if (priced.columns.length === 0) values.forEach((value, row) => { centre[row] = value / UNIT; });
    pull = useful.length === 0 ? 0 : PULL;
    programme.columns.push(...useful);
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
