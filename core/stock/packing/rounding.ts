import type { Column } from './coverProgramme.ts';
import type { PackingNode } from './node.ts';
import { bestFitOfNode } from './quick.ts';
import type { Amount } from './relaxation.ts';

const NEARLY_WHOLE = 1e-3;

/**
 * A whole plan from a relaxed one: whole bars as they are, then the largest fractions as far as their pieces are still there,
 * then the rest by best fit. Bars of piece indices.
 */
export function roundedPlan(node: PackingNode, amounts: readonly Amount[]): number[][] {
  const members = node.members.map((copies) => [...copies]);
  const bars: number[][] = [];
  for (const { column, amount } of amounts) {
    for (let times = Math.floor(amount + NEARLY_WHOLE); times > 0 && stillThere(members, column); times--) bars.push(cut(members, column));
  }
  const fractions = amounts.map(({ column, amount }) => ({ column, rest: amount - Math.floor(amount + NEARLY_WHOLE) })).filter(({ rest }) => rest > NEARLY_WHOLE);
  for (const { column } of fractions.sort((a, b) => b.rest - a.rest)) if (stillThere(members, column)) bars.push(cut(members, column));
  return [...bars, ...bestFitOfNode({ ...node, members })];
}

function stillThere(members: readonly (readonly unknown[])[], column: Column): boolean {
  return column.rows.every((row, at) => (members[row]?.length ?? 0) >= (column.counts[at] ?? 0));
}

function cut(members: readonly (readonly number[])[][], column: Column): number[] {
  const bar: number[] = [];
  column.rows.forEach((row, at) => bar.push(...members[row]?.splice(0, column.counts[at]).flat() ?? []));
  return bar;
}
