import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { TakenBoard } from '../stock/cutting.ts';
import { tellCut } from '../stock/telling.ts';
import { CAUTIONS } from '../work/cautions.ts';
import { sentence, spoken } from './saying.ts';

/** The next cut of a board, after some words, with its caution where the first of its resaws is at hand; nothing when all is cut. */
export function sayNextCut(state: State, board: TakenBoard, before: string): string {
  const cut = board.cuts[board.made];
  if (cut === undefined) return '';
  const told = sentence(`${before}${tellCut(cut, (length) => spoken(state, length))}`);
  const first = cut.kind === 'resaw' && !board.cuts.slice(0, board.made).some(({ kind }) => kind === 'resaw');
  return first ? `${told} ${CAUTIONS.resaw.say}` : told;
}

/** 'Board two, cut three of seven: ' */
export function cutOf({ board, made, cuts }: TakenBoard): string {
  return `board ${sayNumber(board)}, cut ${sayNumber(made + 1)} of ${sayNumber(cuts.length)}: `;
}
