import type { PackingNode } from './node.ts';
import type { Amount } from './relaxation.ts';

const NEARLY_WHOLE = 1e-3;

/**
 * The two classes to decide on: how many bars hold both is a fraction in the relaxed plan. The largest fraction first, for it is
 * most likely right; of equals the pair that fills most of a bar. When all are whole the longest pair of a pattern cut in fractions.
 */
export function branchingPair(node: PackingNode, amounts: readonly Amount[]): [number, number] {
  const classes = node.sizes.length;
  const bars = new Map<number, number>();
  for (const { column, amount } of amounts) {
    for (const pair of pairsOf(column.rows, column.counts, classes)) bars.set(pair, (bars.get(pair) ?? 0) + amount);
  }
  let [best, merit] = [-1, -Infinity];
  for (const [pair, amount] of bars) {
    const fraction = amount - Math.floor(amount + NEARLY_WHOLE);
    if (fraction < NEARLY_WHOLE) continue;
    const length = (node.sizes[Math.floor(pair / classes)] ?? 0) + (node.sizes[pair % classes] ?? 0);
    const worth = fraction + 0.2 * length / node.capacity;
    if (worth > merit) [best, merit] = [pair, worth];
  }
  if (best < 0) best = fallback(amounts, classes);
  return [Math.floor(best / classes), best % classes];
}

function pairsOf(rows: Int32Array, counts: Int32Array, classes: number): number[] {
  const pairs: number[] = [];
  rows.forEach((first, at) => {
    if ((counts[at] ?? 0) >= 2) pairs.push(first * classes + first);
    for (let other = at + 1; other < rows.length; other++) pairs.push(Math.min(first, rows[other] ?? 0) * classes + Math.max(first, rows[other] ?? 0));
  });
  return pairs;
}

function fallback(amounts: readonly Amount[], classes: number): number {
  const broken = amounts.filter(({ amount }) => Math.abs(amount - Math.round(amount)) > NEARLY_WHOLE);
  const [pair] = [...broken, ...amounts].flatMap(({ column }) => pairsOf(column.rows, column.counts, classes)).sort((a, b) => a - b);
  if (pair === undefined) throw new Error('a plan of single pieces is no fraction: there is nothing to branch on');
  return pair;
}
