import type { Column } from './coverProgramme.ts';
import type { PatternSpace } from './patterns.ts';

/**
 * A packing problem somewhere down the search: some pieces are joined for good, some may not share a bar.
 * `members` names, for every copy of a class, the pieces of the problem that it is made of.
 */
export interface PackingNode extends PatternSpace {
  readonly sizes: Float64Array;
  readonly members: readonly (readonly (readonly number[])[])[];
  /** Patterns known for these classes. */
  readonly pool: readonly Column[];
}

interface Draft {
  readonly size: number;
  readonly copies: (readonly number[])[];
  /** Classes by their place in the parent. */
  readonly parents: number[];
  readonly apart: Set<number>;
}

/** The two of one pair are in one bar at least once: a copy of each becomes one piece. `first` may be `second`. */
export function together(node: PackingNode, first: number, second: number): PackingNode {
  const drafts = draftsOf(node);
  const one = drafts[first]?.copies.pop() ?? [];
  const other = drafts[second]?.copies.pop() ?? [];
  const apart = new Set([...node.apart[first] ?? [], ...node.apart[second] ?? []]);
  const size = (node.sizes[first] ?? 0) + (node.sizes[second] ?? 0);
  const alike = drafts.findIndex((draft) => draft.size === size && sameSet(draft.apart, apart));
  const joined = drafts[alike] ?? { size, copies: [], parents: [], apart };
  joined.copies.push([...one, ...other]);
  // Another of the same make, and its parts may not meet: then two of these may not either.
  const [itself] = joined.parents;
  if (itself !== undefined && (apart.has(first) || apart.has(second))) joined.apart.add(itself);
  const all = drafts[alike] === undefined ? [...drafts, joined] : drafts;
  return rebuilt(node, all, (counts, place) => {
    const [a, b] = [counts[first] ?? 0, counts[second] ?? 0];
    const both = first === second ? a >= 2 : a >= 1 && b >= 1;
    const at = place.get(joined);
    return both && at !== undefined ? { at, less: [first, second] } : undefined;
  });
}

/** No bar holds both. */
export function keptApart(node: PackingNode, first: number, second: number): PackingNode {
  const apart = node.apart.map((list, index) => (index === first && !list.includes(second) ? [...list, second] : index === second && !list.includes(first) ? [...list, first] : list));
  const pool = node.pool.filter((column) => {
    const at = column.rows.indexOf(first);
    return first === second ? at < 0 || (column.counts[at] ?? 0) < 2 : at < 0 || !column.rows.includes(second);
  });
  return { ...node, apart, pool };
}

/** What is left when bars are cut by these patterns, and the pieces of each bar. */
export function withoutPatterns(node: PackingNode, chosen: ReadonlyMap<Column, number>): { node: PackingNode; bars: number[][] } {
  const drafts = draftsOf(node);
  const bars: number[][] = [];
  for (const [column, times] of chosen) {
    for (let time = 0; time < times; time++) {
      bars.push(Array.from(column.rows, (row, at) => drafts[row]?.copies.splice(0, column.counts[at]).flat() ?? []).flat());
    }
  }
  return { node: rebuilt(node, drafts, () => undefined), bars };
}

function draftsOf(node: PackingNode): Draft[] {
  return Array.from(node.sizes, (size, index) => ({ size, copies: [...node.members[index] ?? []], parents: [index], apart: new Set(node.apart[index] ?? []) }));
}

type Joining = (counts: Int32Array, place: ReadonlyMap<Draft, number>) => { at: number; less: readonly number[] } | undefined;

/** Sorted again, empty classes dropped, what is apart and what is in the pool said in the new places. */
function rebuilt(node: PackingNode, drafts: readonly Draft[], joining: Joining): PackingNode {
  const kept = drafts.filter(({ copies }) => copies.length > 0).sort((a, b) => b.size - a.size);
  const place = new Map(kept.map((draft, index) => [draft, index] as const));
  const newPlace = new Int32Array(node.sizes.length).fill(-1);
  for (const [draft, index] of place) for (const parent of draft.parents) newPlace[parent] = index;
  const apart = kept.map(() => new Set<number>());
  kept.forEach((draft, index) => {
    for (const other of draft.apart) {
      const at = newPlace[other] ?? -1;
      if (at < 0) continue;
      apart[index]?.add(at);
      apart[at]?.add(index);
    }
  });
  const copies = Int32Array.from(kept, (draft) => draft.copies.length);
  return {
    capacity: node.capacity, leastFill: node.leastFill, copies,
    sizes: Float64Array.from(kept, ({ size }) => size),
    members: kept.map((draft) => draft.copies),
    apart: apart.map((set) => [...set]),
    pool: node.pool.flatMap((column) => translated(column, node, newPlace, copies, place, joining)),
  };
}

/** A column for the new classes; none when it holds what is no longer there. */
function translated(column: Column, node: PackingNode, newPlace: Int32Array, copies: Int32Array, place: ReadonlyMap<Draft, number>, joining: Joining): Column[] {
  const counts = new Int32Array(node.sizes.length);
  column.rows.forEach((row, at) => { counts[row] = column.counts[at] ?? 0; });
  const joined = joining(counts, place);
  for (const row of joined?.less ?? []) counts[row] = (counts[row] ?? 0) - 1;
  const fresh = new Map<number, number>(joined === undefined ? [] : [[joined.at, 1]]);
  for (const row of column.rows) {
    const count = counts[row] ?? 0;
    const at = newPlace[row] ?? -1;
    if (count === 0) continue;
    if (at < 0) return [];
    fresh.set(at, (fresh.get(at) ?? 0) + count);
  }
  const rows = [...fresh.keys()];
  if (rows.length === 0 || rows.some((row) => (fresh.get(row) ?? 0) > (copies[row] ?? 0))) return [];
  return [{ rows: Int32Array.from(rows), counts: Int32Array.from(rows, (row) => fresh.get(row) ?? 0), cost: column.cost }];
}

function sameSet(a: ReadonlySet<number>, b: ReadonlySet<number>): boolean {
  return a.size === b.size && [...a].every((item) => b.has(item));
}
