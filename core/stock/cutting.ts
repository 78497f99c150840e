import { NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import type { Board } from './board.ts';
import { widthAt } from './rack.ts';
import type { Cut, PlacedBlank, PlannedBoard } from './plan/placed.ts';

/** A board of a plan that was taken, as it stood then, and how many of its cuts were made, in their order. */
export interface TakenBoard extends Pick<PlannedBoard, 'board' | 'placed' | 'cuts'> {
  readonly rest?: NonNullable<PlannedBoard['rest']>;
  readonly stood: Board;
  readonly made: number;
  /** What the saw was reckoned to take. */
  readonly kerf: Length;
}

/** A planned board as it is taken: nothing cut yet. */
export function takenBoard({ board, placed, cuts, rest }: PlannedBoard, stood: Board, kerf: Length): TakenBoard {
  return { board, placed, cuts, stood, kerf, made: 0, ...(rest === undefined ? {} : { rest }) };
}

/** A rectangle on a board: along from the marked end, across from the reference edge, in nanometres. */
export interface Area {
  readonly from: number;
  readonly to: number;
  readonly fromEdge: number;
  readonly toEdge: number;
}

/** Shorter or narrower is kindling: 12 in by 2 in (common practice, no source). */
const WORTH_KEEPING = { length: 12 * NANOMETRES_PER_INCH, width: 2 * NANOMETRES_PER_INCH } as const;

/** Blanks that the saw has freed: every cut along their edges is made. */
export function freedBlanks(board: TakenBoard): readonly PlacedBlank[] {
  if (board.made === 0) return [];
  return board.placed.filter((blank) => isFree(board, areaOf(blank)));
}

/** Blanks that are still to be had from the board. */
export function blanksToCome(board: TakenBoard): readonly PlacedBlank[] {
  const free = new Set(freedBlanks(board));
  return board.placed.filter((blank) => !free.has(blank));
}

/** With which of a board's cuts, counted from 1, a blank comes free: the last that touches it; 0 when none does. */
export function freedWith({ cuts, kerf }: Pick<TakenBoard, 'cuts' | 'kerf'>, blank: PlacedBlank): number {
  return 1 + cuts.findLastIndex((cut) => touches(kerfOf(cut, kerf), areaOf(blank)));
}

export function isFinished({ cuts, made }: TakenBoard): boolean {
  return made >= cuts.length;
}

export function areaOf({ from, fromEdge, length, width }: PlacedBlank): Area {
  return { from, to: from + length, fromEdge, toEdge: fromEdge + width };
}

function isFree({ cuts, made, kerf }: TakenBoard, area: Area): boolean {
  return cuts.every((cut, index) => index < made || !touches(kerfOf(cut, kerf), area));
}

/** What the saw takes away, seen from the marked face: a resaw goes through the whole piece. */
export function kerfOf({ kind, at, from, to, waste, ...across }: Cut, kerf: number): Area {
  if (kind === 'resaw') return { from, to, fromEdge: across.fromEdge ?? 0, toEdge: across.toEdge ?? 0 };
  const [low, high] = waste === 'beyond' ? [at, at + kerf] : [at - kerf, at];
  return kind === 'rip' ? { from, to, fromEdge: low, toEdge: high } : { from: low, to: high, fromEdge: from, toEdge: to };
}

function touches(one: Area, other: Area): boolean {
  return one.from <= other.to && other.from <= one.to && one.fromEdge <= other.toEdge && other.fromEdge <= one.toEdge;
}

/** What is left of a board when all is cut, and worth keeping: the whole-width rest, and beside each section what lies beyond its last rip. */
export function offcutsOf(board: TakenBoard): readonly Area[] {
  const { rest, stood } = board;
  const ends: Area[] = rest === undefined ? [] : [{ from: rest.from, to: rest.to, fromEdge: 0, toEdge: Math.max(stood.width, stood.farWidth) }];
  return [...ends, ...besideSections(board)].filter((area) => isWorthKeeping(stood, area));
}

/** Whether a piece of a board goes back to the rack, by its length and its narrowest width. */
export function isWorthKeeping(board: Board, area: Area): boolean {
  const narrow = Math.min(area.toEdge, widthAt(board, area.from), widthAt(board, area.to)) - area.fromEdge;
  return area.to - area.from >= WORTH_KEEPING.length && narrow >= WORTH_KEEPING.width;
}

function besideSections({ cuts, stood, kerf, placed }: TakenBoard): Area[] {
  const sections = [...new Set(cuts.map(({ section }) => section))].filter((section) => section > 0);
  return sections.flatMap((section): Area[] => {
    const rips = cuts.filter((cut) => cut.kind === 'rip' && cut.section === section);
    const last = rips.reduce<Cut | undefined>((most, cut) => (most === undefined || cut.at > most.at ? cut : most), undefined);
    if (last === undefined) return [];
    const [from, to] = [Math.min(...rips.map((cut) => cut.from)), Math.max(...rips.map((cut) => cut.to))];
    const beside: Area = { from, to, fromEdge: last.at + kerf, toEdge: Math.max(stood.width, stood.farWidth) };
    // A strip that is as wide as what was left of its board has no rip beyond it.
    return placed.some((blank) => isIn(areaOf(blank), beside)) ? [] : [beside];
  });
}

function isIn(inner: Area, outer: Area): boolean {
  return inner.from >= outer.from && inner.to <= outer.to && inner.fromEdge >= outer.fromEdge && inner.toEdge <= outer.toEdge;
}

/** Off-cuts that the last cut made has freed. */
export function newOffcuts(before: TakenBoard): readonly Area[] {
  const after = { ...before, made: before.made + 1 };
  return offcutsOf(before).filter((area) => isFree(after, area) && (before.made === 0 || !isFree(before, area)));
}
