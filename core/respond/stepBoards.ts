import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { blanksToCome } from '../stock/cutting.ts';
import type { Step } from '../work/step.ts';
import { takenPlan } from './cuttingState.ts';
import { sayOutOfDate } from './outOfDate.ts';
import { sayList, sentence } from './saying.ts';

/** At a step that cuts blanks from boards: which boards they come from by the plan that was taken. Empty at any other step, and where nobody told of boards. */
export function boardsAtStep(state: State, { operation, part }: Step): string {
  if ((operation !== 'rough crosscut' && operation !== 'rip') || part === undefined || state.rack.size === 0) return '';
  const plan = takenPlan(state);
  if (plan === undefined) return operation === 'rip' ? '' : 'There is no cutting plan yet: have me plan the cutting.';
  const from = plan.boards.flatMap((board) => {
    const count = blanksToCome(board).filter(({ blank }) => blank === part).length;
    return count === 0 ? [] : [`${sayNumber(count)} from board ${sayNumber(board.board)}`];
  });
  return from.length === 0 ? '' : [sentence(`by the plan, ${sayList(from)}`), sayOutOfDate(state)].filter(Boolean).join(' ');
}
