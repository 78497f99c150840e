import { resawnFrom, trimsOf, type Blank, type Board, type SawSettings } from '../board.ts';
import { shapesOf } from './shapes.ts';

export interface Missing {
  readonly blank: string;
  readonly count: number;
  /** No board of the rack would hold it even if it were empty, and why. */
  readonly why: 'no board left' | 'no board of the species' | 'no board thick enough' | 'no board long or wide enough';
}

/** Whether some board is large enough for the whole set. */
export function keptTogether(blank: Blank, boards: readonly Board[], saw: SawSettings): boolean {
  return boards.some((board) => board.species === blank.species && board.thickness >= blank.thickness && shapesOf([resawnFrom(blank, board.thickness, saw)], saw)
    .some((shape) => clearLength(board, saw) >= shape.length && Math.max(board.width, board.farWidth) >= shape.width));
}

/** Why a blank can come from no board, were it empty; undefined when it can. */
export function whyNone(blank: Blank, boards: readonly Board[], saw: SawSettings): Missing['why'] | undefined {
  const species = boards.filter((board) => board.species === blank.species);
  if (species.length === 0) return 'no board of the species';
  const thick = species.filter(({ thickness }) => thickness >= blank.thickness);
  if (thick.length === 0) return 'no board thick enough';
  return thick.some((board) => holds(board, blank, saw)) ? undefined : 'no board long or wide enough';
}

/** The thickness of the thinnest boards that it can come from. */
export function thinnestFor(blank: Blank, boards: readonly Board[], saw: SawSettings): number {
  return Math.min(...boards.filter((board) => board.species === blank.species && board.thickness >= blank.thickness && holds(board, blank, saw)).map(({ thickness }) => thickness));
}

function holds(board: Board, blank: Blank, saw: SawSettings): boolean {
  return clearLength(board, saw) >= blank.length && Math.max(board.width, board.farWidth) >= blank.width;
}

function clearLength(board: Board, saw: SawSettings): number {
  const { marked, far } = trimsOf(board, saw);
  return board.length - marked - far;
}
