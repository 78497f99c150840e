import { improveBound, offerPattern, openBound, relaxedPlan, type BoundSearch } from './bound.ts';
import { bestFilling, worthOf } from './fill.ts';
import { cutBoard, yieldOf, type CutBoard, type Lot } from './lot.ts';
import { compare, measure, priceOf, type Measures } from './measure.ts';
import { type Objective } from '../objectives.ts';

/** What the search works towards, and how long. */
export interface Effort {
  readonly objectives: readonly Objective[];
  readonly goOn: () => boolean;
  /** Rounds of trying other values after the bound is known; fewer when the plan is as good as the bound, for the lesser objectives only. */
  readonly rounds: number;
  readonly roundsOnceProven: number;
}

export interface LotPlan {
  readonly cut: readonly CutBoard[];
  readonly measures: Measures;
  /** Boards, or cents where cheapest comes first, that any plan cut this way needs. */
  readonly bound: number;
  readonly proven: boolean;
}

/** The search for one lot, open between its steps. */
export interface LotSearch {
  readonly lot: Lot;
  readonly effort: Effort;
  readonly bound: BoundSearch;
  best: { cut: readonly CutBoard[]; measures: Measures };
  /** Told of every better plan. */
  report: (plan: LotPlan) => void;
}

/** A first plan, by area, which is there at once, and a bound by area. */
export function openLot(lot: Lot, effort: Effort): LotSearch {
  const costs = lot.grounds.map(({ board }) => (countsCents(effort) ? priceOf(board) : 1));
  const cut = planBy(lot, areasOf(lot), byArea(lot));
  const bound = openBound(lot, costs);
  bound.bound = areaBound(lot, costs);
  cut.forEach((one) => offerPattern(bound, lot.grounds.indexOf(one.ground), one.sections));
  return { lot, effort, bound, best: { cut, measures: measure(lot, cut) }, report: () => undefined };
}

/**
 * The bound by column generation, every round followed by a plan by its values; then plans near the relaxed one, and by values shaken a little.
 * Deterministic: the same lot, the same plans.
 */
export function improveLot(search: LotSearch): void {
  const { lot, effort } = search;
  const areas = areasOf(lot);
  while (!search.bound.finished && !settled(search) && effort.goOn()) {
    improveBound(search.bound, effort.goOn);
    tryValues(search, dualsOf(search.bound, areas));
  }
  for (let round = 0; round < effort.rounds && effort.goOn(); round++) {
    if (settled(search) && round >= effort.roundsOnceProven) break;
    if (round % 2 === 0) tryAround(search, round / 2, areas);
    else tryValues(search, areas.map((area, blank) => area * (1 + 0.5 * shake(round, blank))), round % 4 === 1 ? byArea(lot) : undefined);
  }
}

function areasOf(lot: Lot): number[] {
  return lot.blanks.map(({ length, width, together, deep = 1 }) => (length / 1e7) * (width / 1e7) * (together / deep));
}

function countsCents({ objectives }: Effort): boolean {
  return objectives[0] === 'cheapest';
}

function valueOf({ effort, best }: LotSearch): number {
  return countsCents(effort) ? best.measures.cents : best.measures.boards;
}

function settled(search: LotSearch): boolean {
  return search.best.measures.missing === 0 && valueOf(search) <= search.bound.bound;
}

/** How things stand. */
export function planOf(search: LotSearch): LotPlan {
  return { ...search.best, bound: search.bound.bound, proven: settled(search) };
}

function offer(search: LotSearch, cut: readonly CutBoard[]): void {
  const measures = measure(search.lot, cut);
  if (compare(measures, search.best.measures, search.effort.objectives) >= 0) return;
  search.best = { cut, measures };
  search.report(planOf(search));
}

function byArea(lot: Lot): number[] {
  const area = (index: number): number => (lot.grounds[index]?.board.length ?? 0) * (lot.grounds[index]?.board.width ?? 0);
  return [...lot.grounds.keys()].sort((a, b) => area(b) - area(a) || (lot.grounds[a]?.board.number ?? 0) - (lot.grounds[b]?.board.number ?? 0));
}

/** Board after board until nothing is needed; the last one is then changed for the smallest that does. */
function planBy(lot: Lot, values: ArrayLike<number>, order: readonly number[], settledBefore: readonly CutBoard[] = []): CutBoard[] {
  const cut = [...settledBefore];
  const left = Int32Array.from(lot.needs);
  for (const { sections } of cut) yieldOf(lot, sections).forEach((count, blank) => { left[blank] = (left[blank] ?? 0) - count; });
  let before = Int32Array.from(left);
  for (const index of order) {
    const ground = lot.grounds[index];
    if (left.every((count) => count <= 0)) break;
    if (ground === undefined || cut.some((one) => one.ground === ground)) continue;
    const start = Int32Array.from(left);
    const one = cutBoard(lot, ground, values, left);
    if (one.sections.length === 0) continue;
    before = start;
    cut.push(one);
  }
  return left.every((count) => count <= 0) ? withSmallerLast(lot, values, cut, before, order) : cut;
}

function withSmallerLast(lot: Lot, values: ArrayLike<number>, cut: CutBoard[], needed: Int32Array, order: readonly number[]): CutBoard[] {
  const others = [...order].reverse().flatMap((index) => {
    const ground = lot.grounds[index];
    return ground === undefined || cut.some((one) => one.ground === ground) ? [] : [ground];
  });
  for (const ground of others.slice(0, 8)) {
    const left = Int32Array.from(needed);
    const one = cutBoard(lot, ground, values, left);
    if (left.every((count) => count <= 0)) return [...cut.slice(0, -1), one];
  }
  return cut;
}

function dualsOf({ programme }: BoundSearch, areas: readonly number[]): number[] {
  const worth = areas.reduce((sum, area, blank) => sum + area * (programme.needs[blank] ?? 0), 0);
  // A little of the area, so that pieces the programme has for nothing are still cut where there is room.
  return areas.map((area, blank) => Math.max(0, programme.duals[blank] ?? 0) + (0.05 * area) / worth);
}

function tryValues(search: LotSearch, values: readonly number[], order = byWorth(search.lot, values)): void {
  offer(search, planBy(search.lot, values, order));
}

/** Boards that could hold most value first. */
function byWorth(lot: Lot, values: ArrayLike<number>): number[] {
  const worth = worthOf(lot.shapes, values, lot.needs, lot.saw, lot.longest, lot.widest, lot.grounds[0]?.kinds.all.length ?? 0);
  const filled = lot.grounds.map((ground) => bestFilling(ground, worth).value);
  return [...lot.grounds.keys()].sort((a, b) => (filled[b] ?? 0) - (filled[a] ?? 0) || a - b);
}

/** The surest boards of the relaxed plan, each cut as near to its pattern as it can be; the rest by value. */
function tryAround(search: LotSearch, skip: number, areas: readonly number[]): void {
  const { lot } = search;
  const values = dualsOf(search.bound, areas);
  const left = Int32Array.from(lot.needs);
  const kept: CutBoard[] = [];
  for (const [at, { counts, board, amount }] of relaxedPlan(search.bound).entries()) {
    const ground = lot.grounds[board];
    if (ground === undefined || amount < 0.3 || at === skip - 1 || kept.some((one) => one.ground === ground)) continue;
    const wanted = counts.map((count, blank) => Math.min(count, left[blank] ?? 0));
    const cut = cutBoard(lot, ground, values, wanted);
    yieldOf(lot, cut.sections).forEach((count, blank) => { left[blank] = (left[blank] ?? 0) - count; });
    kept.push(cut);
  }
  const order = byArea(lot);
  offer(search, planBy(lot, skip % 2 === 0 ? values : areas, skip % 3 === 2 ? order.reverse() : order, kept.slice(0, Math.max(0, kept.length - (skip % 4)))));
}

/** Between -1 and 1, the same for the same numbers: core knows no chance. */
function shake(round: number, blank: number): number {
  const wave = Math.sin((round + 1) * 12.9898 + (blank + 1) * 78.233) * 43_758.5453;
  return 2 * (wave - Math.floor(wave)) - 1;
}

/** The largest or cheapest boards that hold all the area needed. */
function areaBound(lot: Lot, costs: readonly number[]): number {
  const needed = lot.blanks.reduce((sum, { length, width, together, deep = 1 }, blank) => sum + (length / 1e6) * (width / 1e6) * (together / deep) * (lot.needs[blank] ?? 0), 0);
  const rates = lot.grounds.map(({ board }, index) => ({ cost: costs[index] ?? 1, area: (board.length / 1e6) * (Math.max(board.width, board.farWidth) / 1e6) })).sort((a, b) => a.cost / a.area - b.cost / b.area);
  let [left, cost] = [needed, 0];
  for (const rate of rates) {
    if (left <= 0) break;
    cost += rate.cost * Math.min(1, left / rate.area);
    left -= rate.area;
  }
  return Math.ceil(cost - 1e-6);
}
