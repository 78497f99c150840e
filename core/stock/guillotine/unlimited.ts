import { lastPointUpTo, usefulDistances, type Layout, type PlateProblem } from './plate.ts';

/** The greatest value of every rectangle whose sides are useful distances, any number of every piece. */
export interface ValueTable {
  readonly problem: PlateProblem;
  readonly lengths: Int32Array;
  readonly widths: Int32Array;
  readonly lastLength: Int32Array;
  readonly lastWidth: Int32Array;
  /** By place in `lengths`, then in `widths`. */
  readonly values: Float64Array;
}

/** Exact dynamic programme over useful distances (Gilmore and Gomory 1966, Beasley 1985). */
export function valueTable(problem: PlateProblem): ValueTable {
  const most = ({ most: limit = Infinity }: PlateProblem['pieces'][number], room: number, size: number): number => Math.min(limit, Math.floor(room / size));
  const lengths = usefulDistances(problem.length, problem.pieces.map((piece) => ({ size: piece.length, most: most(piece, problem.length, piece.length) })));
  const widths = usefulDistances(problem.width, problem.pieces.map((piece) => ({ size: piece.width, most: most(piece, problem.width, piece.width) })));
  const table: ValueTable = {
    problem, lengths, widths, lastLength: lastPointUpTo(problem.length, lengths), lastWidth: lastPointUpTo(problem.width, widths),
    values: new Float64Array(lengths.length * widths.length),
  };
  placeSingles(table);
  for (let i = 1; i < lengths.length; i++) for (let j = 1; j < widths.length; j++) cutInTwo(table, i, j);
  return table;
}

/** By lengths of a rectangle, not places; 0 where no piece fits. */
export function valueOf(table: ValueTable, length: number, width: number): number {
  return table.values[(table.lastLength[length] ?? 0) * table.widths.length + (table.lastWidth[width] ?? 0)] ?? 0;
}

function placeSingles({ problem, lengths, widths, values }: ValueTable): void {
  for (const piece of problem.pieces) {
    if (piece.most === 0) continue;
    for (let i = 0; i < lengths.length; i++) {
      if ((lengths[i] ?? 0) < piece.length) continue;
      for (let j = 0; j < widths.length; j++) {
        const at = i * widths.length + j;
        if ((widths[j] ?? 0) >= piece.width && piece.value > (values[at] ?? 0)) values[at] = piece.value;
      }
    }
  }
}

function cutInTwo({ lengths, widths, lastLength, lastWidth, values }: ValueTable, i: number, j: number): void {
  const columns = widths.length;
  const [length, width] = [lengths[i] ?? 0, widths[j] ?? 0];
  let best = values[i * columns + j] ?? 0;
  for (let at = 1; 2 * (lengths[at] ?? Infinity) <= length; at++) {
    best = Math.max(best, (values[at * columns + j] ?? 0) + (values[(lastLength[length - (lengths[at] ?? 0)] ?? 0) * columns + j] ?? 0));
  }
  for (let at = 1; 2 * (widths[at] ?? Infinity) <= width; at++) {
    best = Math.max(best, (values[i * columns + at] ?? 0) + (values[i * columns + (lastWidth[width - (widths[at] ?? 0)] ?? 0)] ?? 0));
  }
  values[i * columns + j] = best;
}

/** How the table's value of a rectangle is cut: what is beyond the last useful distance is cut away first. */
export function layoutOf(table: ValueTable, length: number, width: number): Layout {
  const useful = [table.lengths[table.lastLength[length] ?? 0] ?? 0, table.widths[table.lastWidth[width] ?? 0] ?? 0] as const;
  if (valueOf(table, length, width) === 0) return { kind: 'waste' };
  const inner = usefulLayout(table, ...useful);
  const trimmed: Layout = useful[1] < width ? { kind: 'cut', across: 'width', at: useful[1], first: inner, second: { kind: 'waste' } } : inner;
  return useful[0] < length ? { kind: 'cut', across: 'length', at: useful[0], first: trimmed, second: { kind: 'waste' } } : trimmed;
}

function usefulLayout(table: ValueTable, length: number, width: number): Layout {
  const value = valueOf(table, length, width);
  const piece = table.problem.pieces.findIndex((one) => one.most !== 0 && one.value === value && one.length <= length && one.width <= width);
  if (piece >= 0) return { kind: 'piece', piece };
  const acrossLength = table.lengths.find((at) => at > 0 && 2 * at <= length && valueOf(table, at, width) + valueOf(table, length - at, width) === value);
  if (acrossLength !== undefined) return { kind: 'cut', across: 'length', at: acrossLength, first: layoutOf(table, acrossLength, width), second: layoutOf(table, length - acrossLength, width) };
  const acrossWidth = table.widths.find((at) => at > 0 && 2 * at <= width && valueOf(table, length, at) + valueOf(table, length, width - at) === value);
  if (acrossWidth !== undefined) return { kind: 'cut', across: 'width', at: acrossWidth, first: layoutOf(table, length, acrossWidth), second: layoutOf(table, length, width - acrossWidth) };
  throw new Error('the table of values holds a value that no cut makes');
}

/** How often each piece occurs. */
export function countsOf(layout: Layout, pieces: number): Int32Array {
  const counts = new Int32Array(pieces);
  const open: Layout[] = [layout];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (next.kind === 'piece') counts[next.piece] = (counts[next.piece] ?? 0) + 1;
    if (next.kind === 'cut') open.push(next.first, next.second);
  }
  return counts;
}
