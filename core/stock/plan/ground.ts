import { subtract } from '../../length/arithmetic.ts';
import { trimsOf, type Board, type SawSettings } from '../board.ts';
import { kindFor, type SectionKinds } from './sectionKinds.ts';

/** A board as the planner sees it. Places run from its wider end: `turned` when that is the end without the mark. */
export interface Ground {
  readonly board: Board;
  readonly turned: boolean;
  readonly kinds: SectionKinds;
  /** Every plan that can be cut is among these places and widths: a bound over them holds. */
  readonly exact: boolean;
  readonly places: Float64Array;
  /** By place and length of section: the kind of that section, -1 where none fits. */
  readonly kindAt: Int32Array;
  /** By place and length of section: where the next may start; as many as there are places at the end. */
  readonly nextAt: Int32Array;
}

/** Places are exact up to this many; beyond, an eighth of an inch apart besides those that come first. */
const MOST_PLACES = 500;
const GRAIN_NM = 6_350_000;

/**
 * Everything about a board that does not depend on what the parts are worth. Sections start where others stop, at an end or after a defect.
 * `relaxed`: places a quarter inch apart that stand for all up to the next one, with what is clear for any of them: no plan to cut by, but
 * whatever can be cut is there at least as good, so that a bound over it holds for every plan.
 */
export function groundOf(board: Board, kinds: SectionKinds, saw: SawSettings, relaxed: boolean): Ground {
  const turned = board.farWidth > board.width;
  const defects = turned ? board.defects.map((defect) => ({ ...defect, from: subtract(board.length, defect.to), to: subtract(board.length, defect.from) })) : board.defects;
  const { first, last } = trimsAlong(board, saw, turned);
  const end = board.length - last;
  const places = Float64Array.from(relaxed ? evenly(first, end) : placesOf([first, ...defects.map(({ to }) => to as number)].filter((at) => at >= first && at < end), end, kinds.singles, saw.kerf));
  const columns = kinds.lengths.length;
  const exact = relaxed || (places.length <= MOST_PLACES && board.width === board.farWidth);
  const ground: Ground = { board, turned, kinds, exact, places, kindAt: new Int32Array(places.length * columns).fill(-1), nextAt: new Int32Array(places.length * columns) };
  const known = new Map<string, number>();
  places.forEach((place, at) => {
    let next = at;
    kinds.lengths.forEach((length, column) => {
      if (place + length > end) return;
      const beyond = place + length + saw.kerf;
      next = firstFrom(places, next, relaxed ? beyond - GRAIN_NM + 1 : beyond);
      const [from, to] = relaxed ? [place + GRAIN_NM, place + length] : [place, place + length];
      const width = sixteenths(widthAt(board, turned, relaxed ? place : to), relaxed) - board.sapwood;
      const inside = defects.filter((defect) => defect.from < to && defect.to > from);
      const key = `${column} ${width} ${inside.map((defect) => defects.indexOf(defect)).join(' ')}`;
      const kind = known.get(key) ?? kindFor(kinds, length, width, inside);
      known.set(key, kind);
      ground.kindAt[at * columns + column] = kind;
      ground.nextAt[at * columns + column] = next;
    });
  });
  return ground;
}

/**
 * Whether wood enough is left beyond a strip, within its section, for a rip: what is no wider than the kerf would all be dust. It is planed off when the
 * edge is trued, and no saw follows such a line (common practice, no source).
 */
export function isRipped({ board, turned }: Pick<Ground, 'board' | 'turned'>, saw: SawSettings, section: { readonly from: number }, strip: { readonly across: number; readonly width: number }): boolean {
  return widthAt(board, turned, section.from) - (strip.across + strip.width) > saw.kerf;
}

/** What is taken off at the start of the planning places and at their end. */
export function trimsAlong(board: Board, saw: SawSettings, turned: boolean): { readonly first: number; readonly last: number } {
  const { marked, far } = trimsOf(board, saw);
  return turned ? { first: far, last: marked } : { first: marked, last: far };
}

function evenly(first: number, end: number): number[] {
  return Array.from({ length: Math.max(0, Math.ceil((end - first) / GRAIN_NM)) }, (_, at) => first + at * GRAIN_NM);
}

/** All places where a section can start when those before it lie close, those after few sections first. */
function placesOf(starts: readonly number[], end: number, lengths: readonly number[], kerf: number): number[] {
  const reached = new Set(starts);
  for (const place of reached) {
    if (reached.size > MOST_PLACES) break;
    for (const length of lengths) if (place + length + kerf < end) reached.add(place + length + kerf);
  }
  if (reached.size > MOST_PLACES) for (const place of evenly(Math.min(...starts), end)) reached.add(place);
  return [...reached].sort((a, b) => a - b);
}

/** Index of the first place no nearer than `from`, looking from index `at` on. */
function firstFrom(places: Float64Array, at: number, from: number): number {
  let next = at;
  while (next < places.length && (places[next] ?? 0) < from) next++;
  return next;
}

/** Tapered boards narrow evenly from end to end. */
function widthAt(board: Board, turned: boolean, place: number): number {
  const [wide, narrow] = turned ? [board.farWidth, board.width] : [board.width, board.farWidth];
  return wide - ((wide - narrow) * place) / board.length;
}

const SIXTEENTH_NM = 1_587_500;

/** Widths as they are where they are whole sixteenths; else to the sixteenth below, for a bound to the one above. */
function sixteenths(width: number, up: boolean): number {
  const exact = width % 1 === 0 ? width : undefined;
  return exact ?? (up ? Math.ceil(width / SIXTEENTH_NM) : Math.floor(width / SIXTEENTH_NM)) * SIXTEENTH_NM;
}
