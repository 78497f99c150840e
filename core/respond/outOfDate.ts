import type { PlannedWith, TakenPlan } from '../journal/cutting.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Blank } from '../stock/board.ts';
import { isFinished } from '../stock/cutting.ts';
import { allBlanks, sawOf, takenPlan } from './cuttingState.ts';
import { sayList, sentence } from './saying.ts';

/** More rough sizes than these the ear would lose. */
const MOST_NAMED = 3;

/** How everything stands that a plan is reckoned from besides the boards, to be kept with it. */
export function plannedWith(state: State): PlannedWith {
  return { saw: sawOf(state), first: state.sawing.first, blanks: allBlanks(state) };
}

/**
 * Why the plan that was taken is not what would be planned now: the saw, the trims, the rough sizes were told otherwise since. Empty where it still is, and
 * where all that it differs in is cut, or comes from boards that are begun. (Boards that changed are another matter: `changedBoards`.)
 */
export function outOfDate(state: State): readonly string[] {
  const plan = takenPlan(state);
  if (plan?.with === undefined || state.piece === null) return [];
  const sawn = plan.boards.some(({ made, cuts }) => made === 0 && cuts.length > 0) ? sawingChanges(plan.with, state) : [];
  return [...sawn, ...blankChanges(plan, plan.with.blanks, allBlanks(state))];
}

function sawingChanges({ saw, first }: PlannedWith, state: State): readonly string[] {
  const now = sawOf(state);
  return [
    ...(now.kerf === saw.kerf ? [] : ['the saw takes something else']),
    ...(now.endTrim === saw.endTrim ? [] : ['something else is trimmed off the ends']),
    ...(now.cutAgain === saw.cutAgain ? [] : ['strips are crosscut otherwise']),
    ...(now.resaw === saw.resaw ? [] : ['boards are resawn otherwise']),
    ...(state.sawing.first === first ? [] : ['something else counts first']),
  ];
}

/** What is wanted in another size, number or wood than it was planned, and what must be clear now or need not be: as far as it can still be had otherwise. */
function blankChanges(plan: TakenPlan, before: readonly Blank[], now: readonly Blank[]): readonly string[] {
  const open = new Set([...plan.boards.filter(({ made }) => made === 0).flatMap(({ placed }) => placed.map(({ blank }) => blank)), ...plan.missing.map(({ blank }) => blank)]);
  const was = new Map(before.map((blank) => [blank.id, blank]));
  const gone = before.filter(({ id }) => open.has(id) && !now.some((one) => one.id === id));
  const fresh = now.filter(({ id, count }) => count > (was.get(id)?.count ?? 0));
  const kept = now.filter((blank) => open.has(blank.id) && !fresh.includes(blank));
  const other = kept.filter((blank) => !isAsWanted(was.get(blank.id), blank));
  const hiding = kept.filter(({ id, mayHideDefect }) => was.get(id)?.mayHideDefect !== mayHideDefect);
  return [
    ...named([...fresh, ...gone, ...other], 'other rough sizes: '),
    ...named(hiding.filter(({ mayHideDefect }) => !mayHideDefect), 'to be clear now: '), ...named(hiding.filter(({ mayHideDefect }) => mayHideDefect), 'may hide a knot now: '),
  ];
}

function named(blanks: readonly Blank[], before: string): readonly string[] {
  if (blanks.length === 0) return [];
  const names = blanks.map(({ name }) => name);
  return [`${before}${names.length > MOST_NAMED ? `${names.slice(0, MOST_NAMED).join(', ')} and more` : sayList(names)}`];
}

function isAsWanted(was: Blank | undefined, now: Blank): boolean {
  return was !== undefined && was.length === now.length && was.width === now.width && was.thickness === now.thickness && was.species === now.species && was.count === now.count;
}

/** 'The cutting plan is out of date: the saw takes something else.' Empty while it holds. */
export function sayOutOfDate(state: State): string {
  const why = outOfDate(state);
  return why.length === 0 ? '' : sentence(`the cutting plan is out of date: ${why.join('; ')}`);
}

/** 'Board two is begun and stays as it is.' Empty where no board is begun, or all that are begun are cut. */
export function sayBegunStays(state: State): string {
  const numbers = (takenPlan(state)?.boards ?? []).filter((board) => board.made > 0 && !isFinished(board)).map(({ board }) => sayNumber(board));
  if (numbers.length === 0) return '';
  return sentence(numbers.length === 1 ? `board ${sayList(numbers)} is begun and stays as it is` : `boards ${sayList(numbers)} are begun and stay as they are`);
}
