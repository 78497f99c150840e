import type { Column } from './coverProgramme.ts';

/** What may go into one bar: sizes with how many copies there are, and which classes may not share a bar. Largest first. */
export interface PatternSpace {
  readonly capacity: number;
  readonly sizes: Int32Array | Float64Array;
  readonly copies: Int32Array;
  /** For each class, those that may not be with it; itself when a bar may hold one copy only. */
  readonly apart: readonly (readonly number[])[];
  /** A bar left emptier than this is of no use to a plan that reaches its target. */
  readonly leastFill: number;
}

export interface Priced {
  readonly columns: Column[];
  /** No pattern is worth more than this, in the unit of the values: exact, for the values are whole numbers. */
  readonly best: number;
  /** False when it was told to stop, and `best` proves nothing. */
  readonly complete: boolean;
}

/** Above this many cells the table of what fits is kept coarser than the lengths, with pieces rounded down: its figures stay bounds. */
const MOST_CELLS = 6_000_000;

interface Pricing {
  readonly space: PatternSpace;
  readonly values: Float64Array;
  readonly table: Float64Array;
  readonly width: number;
  readonly grain: number;
  readonly blocked: Int32Array;
  readonly taken: Int32Array;
  readonly kept: Int32Array;
  best: number;
  left: number;
  readonly goOn: () => boolean;
  stopped: boolean;
}

let shared = new Float64Array(0);

/**
 * The patterns of most value, at most one for every class as its largest piece, of those worth more than `threshold`.
 * `values` are whole numbers from 0. The table holds, for every class and length left, the most that this and smaller classes could add;
 * the search through the classes is pruned by it, so that classes kept apart cost a little search and no exactness.
 */
export function bestPatterns(space: PatternSpace, values: Float64Array, threshold: number, goOn: () => boolean): Priced {
  const pricing = openPricing(space, values, threshold, goOn);
  const found: { column: Column; value: number }[] = [];
  let best = threshold;
  for (let first = 0; first < values.length && !pricing.stopped; first++) {
    if (cell(pricing, first, space.capacity) <= threshold) break;
    const size = space.sizes[first] ?? 0;
    if ((space.copies[first] ?? 0) === 0 || size > space.capacity) continue;
    pricing.best = threshold;
    take(pricing, first, 1);
    explore(pricing, first, space.capacity - size, values[first] ?? 0);
    take(pricing, first, -1);
    if (pricing.best > threshold) found.push({ column: keptColumn(pricing), value: pricing.best });
    best = Math.max(best, pricing.best);
  }
  found.sort((a, b) => b.value - a.value);
  return { columns: found.slice(0, Math.max(12, values.length >> 1)).map(({ column }) => column), best, complete: !pricing.stopped };
}

function openPricing(space: PatternSpace, values: Float64Array, threshold: number, goOn: () => boolean): Pricing {
  const classes = values.length;
  const grain = Math.max(1, Math.ceil(((space.capacity + 1) * (classes + 1)) / MOST_CELLS));
  const width = Math.floor(space.capacity / grain) + 1;
  if (shared.length < width * (classes + 1)) shared = new Float64Array(width * (classes + 1));
  fillTable(shared, space, values, width, grain);
  const counts = (): Int32Array => new Int32Array(classes);
  return { space, values, table: shared, width, grain, blocked: counts(), taken: counts(), kept: counts(), best: threshold, left: 20_000, goOn, stopped: false };
}

function fillTable(table: Float64Array, { sizes, copies, capacity }: PatternSpace, values: Float64Array, width: number, grain: number): void {
  const classes = values.length;
  table.fill(0, classes * width, (classes + 1) * width);
  for (let index = classes - 1; index >= 0; index--) {
    const [base, below] = [index * width, (index + 1) * width];
    table.copyWithin(base, below, below + width);
    const value = values[index] ?? 0;
    if (value === 0) continue;
    const cells = Math.floor((sizes[index] ?? 0) / grain);
    const most = Math.min(copies[index] ?? 0, Math.floor(capacity / (sizes[index] ?? 1)));
    for (let count = 1; count <= most; count++) {
      const [shift, added] = [count * cells, count * value];
      for (let at = shift; at < width; at++) {
        const worth = (table[below + at - shift] ?? 0) + added;
        if (worth > (table[base + at] ?? 0)) table[base + at] = worth;
      }
    }
  }
}

function cell({ table, width, grain }: Pricing, index: number, room: number): number {
  return table[index * width + Math.floor(room / grain)] ?? 0;
}

function take(pricing: Pricing, index: number, step: 1 | -1): void {
  pricing.taken[index] = (pricing.taken[index] ?? 0) + step;
  for (const other of pricing.space.apart[index] ?? []) pricing.blocked[other] = (pricing.blocked[other] ?? 0) + step;
}

function explore(pricing: Pricing, from: number, room: number, value: number): void {
  const { space, values, taken, blocked } = pricing;
  if (value > pricing.best && space.capacity - room >= space.leastFill) keep(pricing, value);
  if (--pricing.left <= 0) {
    pricing.left = 20_000;
    pricing.stopped = !pricing.goOn();
  }
  for (let next = from; next < values.length && !pricing.stopped; next++) {
    if (value + cell(pricing, next, room) <= pricing.best) return;
    const size = space.sizes[next] ?? 0;
    if (size > room || blocked[next] !== 0 || taken[next] === space.copies[next]) continue;
    if (values[next] === 0 && space.leastFill === 0) continue;
    take(pricing, next, 1);
    explore(pricing, next, room - size, value + (values[next] ?? 0));
    take(pricing, next, -1);
  }
}

function keep(pricing: Pricing, value: number): void {
  pricing.best = value;
  pricing.kept.set(pricing.taken);
}

function keptColumn({ kept }: Pricing): Column {
  const rows = [...kept.keys()].filter((row) => (kept[row] ?? 0) > 0);
  return { rows: Int32Array.from(rows), counts: Int32Array.from(rows, (row) => kept[row] ?? 0), cost: 1 };
}
