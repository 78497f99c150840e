import type { CuttingEntry } from '../journal/cutting.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { assertNever } from '../result.ts';
import { spoken } from './saying.ts';

/** What was told of boards, planned and cut, in words. */
export function describeCutting(state: State, entry: CuttingEntry): string {
  switch (entry.kind) {
    case 'board put': return `board ${sayNumber(entry.board.number)}, ${spoken(state, entry.board.length)} by ${spoken(state, entry.board.width)}`;
    case 'board gone': return `board ${sayNumber(entry.board)}, off the rack`;
    case 'plan taken': return 'a cutting plan';
    case 'cut made': return `a cut of board ${sayNumber(entry.board)}`;
    case 'sawing set': return 'how you saw';
    case 'part rough': return `${state.piece?.file.parts.find(({ id }) => id === entry.part)?.name ?? entry.part}, in the rough`;
    default: return assertNever(entry);
  }
}
