import type { ValueTable } from './unlimited.ts';

/**
 * What the rest of the plate can be worth at most, when a rectangle of useful sides lies in its corner: it grows to the plate step by step,
 * by a strip beside it or above it, and each strip is worth no more than without limits (Viswanathan and Bagchi 1993).
 * By place in the table's lengths, then widths.
 */
export function restTable(table: ValueTable): Float64Array {
  const { lengths, widths } = table;
  const rest = new Float64Array(lengths.length * widths.length);
  for (let i = lengths.length - 1; i >= 0; i--) {
    for (let j = widths.length - 1; j >= 0; j--) rest[i * widths.length + j] = grown(table, rest, i, j);
  }
  return rest;
}

function grown({ lengths, widths, lastLength, lastWidth, values }: ValueTable, rest: Float64Array, i: number, j: number): number {
  const columns = widths.length;
  const [length, width] = [lengths[i] ?? 0, widths[j] ?? 0];
  const value = (a: number, b: number): number => values[(lastLength[a] ?? 0) * columns + (lastWidth[b] ?? 0)] ?? 0;
  let best = 0;
  for (let to = i + 1; to < lengths.length; to++) best = Math.max(best, (rest[to * columns + j] ?? 0) + value((lengths[to] ?? 0) - length, width));
  for (let to = j + 1; to < columns; to++) best = Math.max(best, (rest[i * columns + to] ?? 0) + value(length, (widths[to] ?? 0) - width));
  return best;
}
