import { restTable } from './rest.ts';
import type { Layout, PlatePlan } from './plate.ts';
import type { ValueTable } from './unlimited.ts';

/** A rectangle put together from pieces, as small as it can be around them. */
interface Build {
  readonly length: number;
  readonly width: number;
  readonly value: number;
  readonly counts: Uint16Array;
  readonly layout: Layout;
  /** What a plate with this in it can be worth at most. */
  readonly bound: number;
}

interface Search {
  readonly table: ValueTable;
  readonly rest: Float64Array;
  readonly open: Build[];
  readonly closed: Build[];
  /** Best value of each outline and content met so far. */
  readonly met: Map<string, number>;
  best: Build | undefined;
}

/**
 * Best-first building of rectangles (Viswanathan and Bagchi 1993, Hifi 1997): the most promising build is joined with all builds
 * before it, side by side and one above the other, as far as the numbers of pieces allow.
 */
export function builds(table: ValueTable, goOn: () => boolean): PlatePlan {
  const search: Search = { table, rest: restTable(table), open: [], closed: [], met: new Map(), best: undefined };
  table.problem.pieces.forEach((piece, index) => {
    if (piece.most === 0 || piece.length > table.problem.length || piece.width > table.problem.width) return;
    const counts = new Uint16Array(table.problem.pieces.length);
    counts[index] = 1;
    consider(search, piece.length, piece.width, piece.value, counts, () => ({ kind: 'piece', piece: index }));
  });
  for (let build = popMost(search.open); build !== undefined; build = popMost(search.open)) {
    if (build.bound <= (search.best?.value ?? 0)) break;
    if (!goOn()) return planOf(search, build.bound);
    search.closed.push(build);
    for (const other of search.closed) join(search, build, other);
  }
  return planOf(search, search.best?.value ?? 0);
}

function planOf({ best, table }: Search, bound: number): PlatePlan {
  const value = best?.value ?? 0;
  if (best === undefined) return { value, layout: { kind: 'waste' }, bound, proven: value === bound };
  const { length, width } = table.problem;
  const above: Layout = best.width < width ? { kind: 'cut', across: 'width', at: best.width, first: best.layout, second: { kind: 'waste' } } : best.layout;
  const layout: Layout = best.length < length ? { kind: 'cut', across: 'length', at: best.length, first: above, second: { kind: 'waste' } } : above;
  return { value, layout, bound, proven: value >= bound };
}

function join(search: Search, a: Build, b: Build): void {
  const { problem } = search.table;
  const beside = a.length + b.length <= problem.length;
  const above = a.width + b.width <= problem.width;
  if (!beside && !above) return;
  const counts = a.counts.map((count, piece) => count + (b.counts[piece] ?? 0));
  if (!problem.pieces.every(({ most = Infinity }, piece) => (counts[piece] ?? 0) <= most)) return;
  const value = a.value + b.value;
  if (beside) consider(search, a.length + b.length, Math.max(a.width, b.width), value, counts, () => joined('length', a, b));
  if (above) consider(search, Math.max(a.length, b.length), a.width + b.width, value, counts, () => joined('width', a, b));
}

/** The narrower of two is trimmed to its own width by a further cut. */
function joined(across: 'length' | 'width', a: Build, b: Build): Layout {
  const trimmed = (one: Build, other: Build): Layout => {
    const [own, most] = across === 'length' ? [one.width, other.width] : [one.length, other.length];
    return own < most ? { kind: 'cut', across: across === 'length' ? 'width' : 'length', at: own, first: one.layout, second: { kind: 'waste' } } : one.layout;
  };
  return { kind: 'cut', across, at: across === 'length' ? a.length : a.width, first: trimmed(a, b), second: trimmed(b, a) };
}

function consider(search: Search, length: number, width: number, value: number, counts: Uint16Array, layout: () => Layout): void {
  const { table, rest, met } = search;
  const bound = value + (rest[(table.lastLength[length] ?? 0) * table.widths.length + (table.lastWidth[width] ?? 0)] ?? 0);
  if (bound <= (search.best?.value ?? 0)) return;
  const key = `${length},${width},${counts.join(',')}`;
  if ((met.get(key) ?? -1) >= value) return;
  met.set(key, value);
  const build: Build = { length, width, value, counts, layout: layout(), bound };
  if (value > (search.best?.value ?? 0)) search.best = build;
  push(search.open, build);
}

/** A heap with the greatest bound on top; of equals the more valuable. */
function push(heap: Build[], build: Build): void {
  let at = heap.push(build) - 1;
  while (at > 0) {
    const parent = (at - 1) >> 1;
    const above = heap[parent];
    if (above === undefined || !before(build, above)) break;
    heap[at] = above;
    at = parent;
  }
  heap[at] = build;
}

function popMost(heap: Build[]): Build | undefined {
  const [top] = heap;
  const last = heap.pop();
  if (top === undefined || last === undefined || heap.length === 0) return top;
  let at = 0;
  for (;;) {
    const [left, right] = [heap[2 * at + 1], heap[2 * at + 2]];
    const down = left !== undefined && right !== undefined && before(right, left) ? right : left;
    if (down === undefined || !before(down, last)) break;
    heap[at] = down;
    at = down === left ? 2 * at + 1 : 2 * at + 2;
  }
  heap[at] = last;
  return top;
}

function before(a: Build, b: Build): boolean {
  return a.bound > b.bound || (a.bound === b.bound && a.value > b.value);
}
