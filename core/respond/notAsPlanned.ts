import type { Response } from '../bench/reply.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { TakenBoard } from '../stock/cutting.ts';
import { changedBoards } from './cuttingState.ts';
import { refuse } from './plain.ts';

/** Why a board is not to be cut as it was planned; undefined when it may be. */
export function notAsPlanned(state: State, { board }: TakenBoard): Response | undefined {
  return changedBoards(state).includes(board) ? refuse(`Board ${sayNumber(board)} is not as it was planned. Have me plan the cutting first.`, { screen: { name: 'cutting', board } }) : undefined;
}
