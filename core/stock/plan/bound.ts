import { coverProgramme, improve, type Column, type CoverProgramme } from '../packing/coverProgramme.ts';
import { groundOf, type Ground } from './ground.ts';
import { bestFilling, worthOf, type CutSection } from './fill.ts';
import { yieldOf, type Lot } from './lot.ts';

/** Duals are taken to whole multiples of 1/UNIT, and costs are whole: the bound is exact. */
const UNIT = 2 ** 20;

export interface BoundSearch {
  readonly lot: Lot;
  /** Whole numbers, by board. */
  readonly costs: readonly number[];
  /** The boards as they are priced: where plans can be cut and where they nearly can. */
  readonly priced: readonly Ground[];
  readonly programme: CoverProgramme;
  readonly patterns: { readonly board: number; readonly sections: readonly CutSection[] }[];
  /** No plan costs less. */
  bound: number;
  finished: boolean;
}

/** Opens the linear programme over boards and ways to cut them: each blank as often as needed, each board once. */
export function openBound(lot: Lot, costs: readonly number[]): BoundSearch {
  const stopgap = 4 * Math.max(1, ...costs);
  const programme = coverProgramme([...lot.needs, ...lot.grounds.map(() => -1)], stopgap);
  return { lot, costs, programme, patterns: [], bound: 0, finished: lot.grounds.length === 0, priced: lot.grounds.map((ground) => (ground.exact ? ground : groundOf(ground.board, ground.kinds, lot.saw, true))) };
}

/** Adds a way to cut a board, so that the programme starts from a good plan. */
export function offerPattern(search: BoundSearch, board: number, sections: readonly CutSection[]): void {
  const counts = yieldOf(search.lot, sections);
  const rows = [...counts.keys()].filter((blank) => (counts[blank] ?? 0) > 0);
  if (rows.length === 0) return;
  search.patterns.push({ board, sections });
  search.programme.columns.push({
    cost: search.costs[board] ?? 1,
    rows: Int32Array.from([...rows, search.lot.needs.length + board]),
    counts: Int32Array.from([...rows.map((blank) => counts[blank] ?? 0), -1]),
  } satisfies Column);
}

/**
 * One round: settles the programme, prices every board exactly, adds what pays. With values u of the blanks, d needed, and V the most that a
 * board of cost c can be worth, every plan costs at least u·d − Σ max(0, V − c) (Lagrange; each board is there once).
 */
export function improveBound(search: BoundSearch, goOn: () => boolean): void {
  const { lot, programme, costs } = search;
  if (!improve(programme, goOn)) return;
  const values = Float64Array.from(lot.needs, (_, blank) => Math.max(0, Math.floor((programme.duals[blank] ?? 0) * UNIT)));
  const worth = worthOf(lot.shapes, values, lot.needs, lot.saw, lot.longest, lot.widest, search.priced[0]?.kinds.all.length ?? 0);
  let sum = values.reduce((total, value, blank) => total + value * (lot.needs[blank] ?? 0), 0);
  let added = false;
  for (const [board, ground] of search.priced.entries()) {
    if (!goOn()) return;
    const filled = bestFilling(ground, worth);
    const cost = (costs[board] ?? 1) * UNIT;
    sum -= Math.max(0, filled.value - cost);
    const rent = (programme.duals[lot.needs.length + board] ?? 0) * UNIT;
    if (filled.value - cost > rent + UNIT * 1e-5) {
      offerPattern(search, board, filled.sections);
      added = true;
    }
  }
  search.bound = Math.max(search.bound, Math.ceil(sum / UNIT));
  if (!added) search.finished = true;
}

/** The patterns of the relaxed plan, what each gives of every blank and how much of it is cut, most first. Not all can be cut as they stand. */
export function relaxedPlan({ programme, patterns, lot }: BoundSearch): { counts: Int32Array; board: number; amount: number }[] {
  return [...programme.basis].flatMap((basic, row) => {
    const pattern = patterns[basic];
    return pattern === undefined ? [] : [{ counts: yieldOf(lot, pattern.sections), board: pattern.board, amount: programme.amounts[row] ?? 0 }];
  }).sort((a, b) => b.amount - a.amount);
}
