import type { Column } from './coverProgramme.ts';
import { withoutPatterns, type PackingNode } from './node.ts';
import { roundedPlan } from './rounding.ts';
import { relax, type Amount } from './relaxation.ts';

const NEARLY_WHOLE = 1e-3;
/** Fractions from here up are taken as whole in one go. */
const NEARLY_CERTAIN = 0.85;

export interface Dive {
  readonly bars: number[][];
  /** False when it ended because it was told to stop. */
  readonly finished: boolean;
}

/**
 * Down one way without return: the surest patterns of the relaxed plan are cut, the rest is relaxed anew, until nothing is left or the
 * target is out of reach. `choice` picks the pattern to go by where none is sure, so that another dive takes another way.
 */
export function dive(from: PackingNode, start: readonly Amount[], target: number, choice: (depth: number) => number, goOn: () => boolean): Dive | undefined {
  const bars: number[][] = [];
  let [node, amounts] = [from, start];
  for (let depth = 0; ; depth++) {
    const plan = [...bars, ...roundedPlan(node, amounts)];
    if (plan.length <= target) return { bars: plan, finished: true };
    const step = withoutPatterns(node, surest(node, amounts, choice(depth)));
    if (step.bars.length === 0) return undefined;
    bars.push(...step.bars);
    const relaxed = relax(step.node, { target: target - bars.length, known: 0 }, goOn);
    if (!relaxed.settled) return { bars: plan, finished: false };
    if (bars.length + relaxed.bound > target) return undefined;
    [node, amounts] = [{ ...step.node, pool: relaxed.pool }, relaxed.amounts];
  }
}

/** Whole bars and near certain ones; when there are none, the one of the greatest fraction, or a later one by choice. */
function surest(node: PackingNode, amounts: readonly Amount[], choice: number): Map<Column, number> {
  const left = Int32Array.from(node.copies);
  const chosen = new Map<Column, number>();
  const add = (column: Column, times: number): void => {
    for (let time = 0; time < times; time++) {
      if (!column.rows.every((row, at) => (left[row] ?? 0) >= (column.counts[at] ?? 0))) return;
      column.rows.forEach((row, at) => { left[row] = (left[row] ?? 0) - (column.counts[at] ?? 0); });
      chosen.set(column, (chosen.get(column) ?? 0) + 1);
    }
  };
  const byFraction = amounts.map(({ column, amount }) => ({ column, whole: Math.floor(amount + NEARLY_WHOLE), fraction: amount - Math.floor(amount + NEARLY_WHOLE) }))
    .sort((a, b) => b.fraction - a.fraction);
  for (const { column, whole } of byFraction) add(column, whole);
  const uncertain = byFraction.filter(({ fraction }) => fraction > NEARLY_WHOLE && fraction < NEARLY_CERTAIN);
  for (const { column, fraction } of byFraction) if (fraction >= NEARLY_CERTAIN) add(column, 1);
  const next = uncertain[Math.min(choice, uncertain.length - 1)];
  if (next !== undefined && (chosen.size === 0 || choice > 0)) add(next.column, 1);
  return chosen;
}
