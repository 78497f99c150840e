import { boardFeet, wholeFeet } from '../wood/lumber/measure.ts';
import { NANOMETRES_PER_FOOT, nanometres, type Length } from '../length/length.ts';
import type { Blank, Board, SawSettings } from './board.ts';
import { GRADE_YIELDS, type Grade, type ToBuy } from './buying.ts';
import { planStock } from './plan/planStock.ts';

/** Standard lengths of hardwood: whole feet from 4 to 16 (grading rules as published by the hardwood associations). */
const STANDARD_FEET = { least: 4, most: 16 } as const;

export interface YardOrder {
  /** The shortest standard length that holds the longest part and two trims; undefined when none does. */
  readonly feet: number | undefined;
  /** Boards of that length and the usual width that come to the board feet wanted. */
  readonly boards: number;
  /** By the trade's rounding, each of them. */
  readonly boardFeetEach: number;
  readonly boardFeet: number;
  /** What is bought over the parts themselves, in hundredths of them: what the grade need not yield clear. */
  readonly sparePercent: number;
  readonly cents: number;
}

/** What a shortage comes to in boards as the yard has them. */
export function yardOrder({ longest, quarter, thickness, boardFeet: wanted }: ToBuy, yardWidth: Length, { endTrim }: SawSettings, grade: Grade, centsPerBoardFoot: number): YardOrder {
  const feet = Math.max(STANDARD_FEET.least, Math.ceil((longest + 2 * endTrim) / NANOMETRES_PER_FOOT));
  const each = boardFeet({ length: nanometres(feet * NANOMETRES_PER_FOOT), width: yardWidth, thickness: quarter?.rough ?? thickness });
  const boards = each === 0 ? 0 : Math.ceil(wanted / each);
  return {
    feet: feet > STANDARD_FEET.most ? undefined : feet, boards, boardFeetEach: each, boardFeet: boards * each,
    sparePercent: Math.round(100 * (1 / GRADE_YIELDS[grade] - 1)), cents: Math.round(boards * each * centsPerBoardFoot),
  };
}

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
