import { boardFeet, wholeFeet } from '../wood/lumber/measure.ts';
import { NANOMETRES_PER_FOOT, nanometres, type Length } from '../length/length.ts';
import type { Blank, Board, SawSettings } from './board.ts';
import { GRADE_YIELDS, type Grade, type ToBuy } from './buying.ts';
import { planStock } from './plan/planStock.ts';

/** Standard lengths of hardwood: whole feet from 4 to 16 (grading rules as published by the hardwood associations). */
const STANDARD_FEET = { least: 4, most: 16 } as const;

export interface YardOrder {
  /** The standard length of which the least is to be bought; undefined when none holds the longest part and two trims. */
  readonly feet: number | undefined;
  /** As many of that length and the usual width as a plan of clear boards takes, and no less than the grade's yield asks for. */
  readonly boards: number;
  /** By the trade's rounding, each of them. */
  readonly boardFeetEach: number;
  readonly boardFeet: number;
  /** What is bought over the parts themselves, in hundredths of them, for what the grade need not yield clear. */
  readonly sparePercent: number;
  readonly cents: number;
}

export interface Yard {
  readonly width: Length;
  readonly saw: SawSettings;
  readonly grade: Grade;
  readonly centsPerBoardFoot: number;
}

/** What a shortage comes to in boards as the yard has them: every standard length is tried, and the one that comes to the fewest board feet taken. */
export function yardOrder(list: ToBuy, wanted: readonly Blank[], yard: Yard): YardOrder {
  const least = Math.max(STANDARD_FEET.least, Math.ceil((list.longest + 2 * yard.saw.endTrim) / NANOMETRES_PER_FOOT));
  const tried = Array.from({ length: Math.max(0, STANDARD_FEET.most - least + 1) }, (_, index) => inLengths(list, wanted, yard, least + index));
  const best = tried.reduce<ReturnType<typeof inLengths> | undefined>((one, other) => (one === undefined || other.boards * other.each < one.boards * one.each ? other : one), undefined);
  const feet = best?.boards === 0 ? undefined : best?.feet;
  const bought = feet === undefined || best === undefined ? Math.ceil(list.boardFeet) : best.boards * best.each;
  return {
    feet, boards: best?.boards ?? 0, boardFeetEach: best?.each ?? 0, boardFeet: bought,
    sparePercent: Math.round(100 * (1 / GRADE_YIELDS[yard.grade] - 1)), cents: Math.round(bought * yard.centsPerBoardFoot),
  };
}

/** No boards where those of the usual width are too narrow for a part. */
function inLengths({ quarter, thickness, species, widest, boardFeet: yielded }: ToBuy, wanted: readonly Blank[], { width: usual, saw }: Yard, feet: number): { readonly feet: number; readonly boards: number; readonly each: number } {
  const width = widest > usual ? widest : usual;
  const size = { length: nanometres(feet * NANOMETRES_PER_FOOT), width, thickness: quarter?.rough ?? thickness };
  const each = boardFeet(size);
  const most = wanted.reduce((sum, { count }) => sum + count, 0);
  const boards = Array.from({ length: Math.min(MOST_TRIED, most) }, (_, index): Board => ({ ...size, number: index + 1, species, farWidth: width, sapwood: nanometres(0), defects: [] }));
  const plan = planStock({ boards, blanks: wanted, saw, objectives: ['fewest boards'] }, () => false, () => undefined);
  return { feet, each, boards: each === 0 ? 0 : Math.max(plan.used, Math.ceil(yielded / each)) };
}

/** More boards of one thickness nobody buys for one piece at once. */
const MOST_TRIED = 60;

export interface Help {
  readonly parts: readonly { readonly blank: string; readonly count: number }[];
  /** How much of its face goes into parts, in hundredths. */
  readonly usedPercent: number;
  readonly boardFeet: number;
}

/** What one board would give of what is still wanted: a plan for it alone, at once. */
export function helpOf(board: Board, wanted: readonly Blank[], saw: SawSettings): Help {
  const plan = planStock({ boards: [board], blanks: wanted, saw, objectives: ['fewest boards'] }, () => false, () => undefined);
  const placed = plan.boards.flatMap((one) => one.placed);
  const parts = wanted.map(({ id }) => ({ blank: id, count: placed.filter(({ blank }) => blank === id).length })).filter(({ count }) => count > 0);
  const area = placed.reduce((sum, { length, width }) => sum + (length / 1e6) * (width / 1e6), 0);
  const face = (board.length / 1e6) * ((board.width + board.farWidth) / 2e6);
  return { parts, usedPercent: Math.round((100 * area) / face), boardFeet: wholeFeet(board.length) === 0 ? 0 : boardFeet(board) };
}
