import { NANOMETRES_PER_FOOT, NANOMETRES_PER_INCH, type Length } from '../../length/length.ts';

/** A board as it is bought: rough thickness, full width, length. */
export interface BoughtBoard {
  readonly thickness: Length;
  readonly width: Length;
  readonly length: Length;
}

export const LUMBER_SOURCE = 'hardwood export council and grading-rule pages: surface measure = width (in) × whole feet / 12, to the nearest whole number; board feet = surface measure × thickness (in)';

/** Whole feet: lengths always drop. */
export function wholeFeet(length: Length): number {
  return Math.floor(length / NANOMETRES_PER_FOOT);
}

/** Which way an exact half goes: by turns up and down in one tally. */
export type HalfGoes = 'up' | 'down';

/**
 * Surface measure in square feet: full width, fractions and all, by whole feet of length, over 12, to the nearest whole number. An exact half goes as told;
 * a tally turns it about (from memory of the rules' wording).
 */
export function surfaceMeasure({ width, length }: Pick<BoughtBoard, 'width' | 'length'>, half: HalfGoes = 'up'): number {
  return nearest(width * wholeFeet(length), 12 * NANOMETRES_PER_INCH, half);
}

/** Whether the surface measure falls on an exact half. */
export function isOnTheHalf({ width, length }: Pick<BoughtBoard, 'width' | 'length'>): boolean {
  return isHalf(width * wholeFeet(length), 12 * NANOMETRES_PER_INCH);
}

/** Width to the nearest whole inch, an exact half as told: how a tally is written down where fractions are not. */
export function tallyWidth(width: Length, half: HalfGoes = 'up'): number {
  return nearest(width, NANOMETRES_PER_INCH, half);
}

/** Board feet by the trade's rounding: surface measure × thickness in inches, less than an inch counted as one. */
export function boardFeet(board: BoughtBoard, half: HalfGoes = 'up'): number {
  return (surfaceMeasure(board, half) * countedThickness(board.thickness)) / NANOMETRES_PER_INCH;
}

/** Thickness × width × length / 144 in³, nothing rounded; less than an inch of thickness counted as one. */
export function boardFeetUnrounded({ thickness, width, length }: BoughtBoard): number {
  return (countedThickness(thickness) / NANOMETRES_PER_INCH) * (width / NANOMETRES_PER_INCH) * (length / NANOMETRES_PER_FOOT) / 12;
}

function countedThickness(thickness: Length): number {
  return Math.max(thickness, NANOMETRES_PER_INCH);
}

function isHalf(dividend: number, divisor: number): boolean {
  return (2 * (dividend % divisor)) === divisor;
}

function nearest(dividend: number, divisor: number, half: HalfGoes): number {
  return isHalf(dividend, divisor) ? Math.floor(dividend / divisor) + (half === 'up' ? 1 : 0) : Math.round(dividend / divisor);
}

/** What a lot of boards comes to. */
export interface Tally {
  readonly boards: readonly { readonly surfaceMeasure: number; readonly boardFeet: number }[];
  readonly boardFeet: number;
  readonly unroundedBoardFeet: number;
}

/** Board by board, exact halves by turns up and down. */
export function tally(boards: readonly BoughtBoard[]): Tally {
  let half: HalfGoes = 'up';
  const measured = boards.map((board) => {
    const one = { surfaceMeasure: surfaceMeasure(board, half), boardFeet: boardFeet(board, half) };
    if (isOnTheHalf(board)) half = half === 'up' ? 'down' : 'up';
    return one;
  });
  return {
    boards: measured,
    boardFeet: measured.reduce((sum, one) => sum + one.boardFeet, 0),
    unroundedBoardFeet: boards.reduce((sum, board) => sum + boardFeetUnrounded(board), 0),
  };
}

/** In whatever money the price is in, to its hundredth. */
export function costOf(feet: number, pricePerBoardFoot: number): number {
  return Math.round(feet * pricePerBoardFoot * 100) / 100;
}
