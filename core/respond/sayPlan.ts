import type { PlanOffer } from '../bench/bench.ts';
import type { TakenPlan } from '../journal/cutting.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { cutNoun } from '../stock/blanks.ts';
import type { PlannedBoard } from '../stock/plan/placed.ts';
import type { StockPlan } from '../stock/plan/planStock.ts';
import type { Missing } from '../stock/plan/roomFor.ts';
import { isFinished, type TakenBoard } from '../stock/cutting.ts';
import { allBlanks, changedBoards, takenPlan } from './cuttingState.ts';
import { outOfDate } from './outOfDate.ts';
import { sayCount, sayCut, sayList, sentence } from './saying.ts';
import { planFrom } from './takePlan.ts';

type Standing = Pick<StockPlan, 'missing' | 'bound' | 'boundIn' | 'proven' | 'cents'> & { readonly boards: readonly unknown[]; readonly begun?: number };

/** How a plan stands against the best there can be. Boards that were begun before it count on both sides, and it is said that they stay as they are: with them taken apart anew there might be better. */
export function sayStanding(plan: Standing): string {
  if (plan.missing.length > 0) return '';
  const counts = plan.boundIn === 'boards';
  const [best, found] = counts ? [sayCount(plan.bound, 'board', 'boards'), sayNumber(plan.boards.length)] : [sayMoney(plan.bound), sayMoney(plan.cents)];
  const begun = plan.begun ?? 0;
  const given = begun === 0 ? '' : counts ? `With ${sayCount(begun, 'board', 'boards')} begun and kept as ${begun === 1 ? 'it is' : 'they are'}: ` : `For what does not come from the ${sayCount(begun, 'board', 'boards')} begun: `;
  return plan.proven ? `${given}${given === '' ? 'B' : 'b'}est possible is ${best}; this plan uses ${found}.`
    : `${given}${given === '' ? 'T' : 't'}his plan uses ${counts ? sayCount(plan.boards.length, 'board', 'boards') : found}; no plan can do with less than ${best}.`;
}

/** The same in figures, for the eye. */
export function writeStanding(plan: Standing): string {
  if (plan.missing.length > 0) return '';
  const boards = (count: number): string => (count === 1 ? '1 board' : `${count} boards`);
  const counts = plan.boundIn === 'boards';
  const [best, found] = counts ? [boards(plan.bound), boards(plan.boards.length)] : [(plan.bound / 100).toFixed(2), (plan.cents / 100).toFixed(2)];
  const begun = plan.begun ?? 0;
  const given = begun === 0 ? '' : counts ? ` (${begun} begun, kept as ${begun === 1 ? 'it is' : 'they are'})` : ` (beside the ${begun} begun)`;
  return plan.proven ? `Best possible is ${best}${given}; this plan uses ${counts ? plan.boards.length : found}.` : `This plan uses ${found}${given}; no plan can do with less than ${best}.`;
}

function sayMoney(cents: number): string {
  return `${sayNumber(Math.round(cents / 100))} in money`;
}

/** What finds no board, by name, and why. */
function sayMissing(state: State, missing: readonly Missing[]): string {
  if (missing.length === 0) return '';
  const blanks = allBlanks(state);
  const told = missing.map(({ blank, count, why }) => `${sayCut(state, blanks.find(({ id }) => id === blank) ?? { id: blank, name: blank }, count)}, ${why}`);
  return sentence(`the rack is not enough: ${sayList(told)}`);
}

/** The same in figures, for the eye. */
export function writeMissing(state: State, missing: readonly Missing[]): string {
  const blanks = allBlanks(state);
  const total = missing.reduce((sum, { count }) => sum + count, 0);
  return total === 0 ? '' : `The rack is not enough for ${total} parts: ${missing.map(({ blank, count, why }) => `${count} ${cutNoun(state.piece?.file.parts ?? [], blanks.find(({ id }) => id === blank) ?? { id: blank, name: blank }, count)} (${why})`).join(', ')}.`;
}

/** What was found, for the ear: where it stands, what is missing, how much sawing it is, and what it changes. */
export function sayOffer(state: State, { plan }: PlanOffer): string {
  if (plan === null) return 'No plan is found yet.';
  const metres = sentence(`${sayTenths(plan.crosscutMetres)} meters to crosscut and ${sayTenths(plan.ripMetres)} to rip`);
  const apart = plan.separated.length === 0 ? '' : sentence(`these do not all come from one stretch of a board: ${sayList(plan.separated.map((id) => allBlanks(state).find((blank) => blank.id === id)?.name ?? id))}`);
  return [sayStanding(planFrom(state, plan)), sayMissing(state, plan.missing), metres, apart, sayChanges(state, plan)].filter(Boolean).join(' ');
}

function sayTenths(metres: number): string {
  const tenths = Math.round(metres * 10);
  return tenths % 10 === 0 ? sayNumber(tenths / 10) : `${sayNumber(Math.floor(tenths / 10))} point ${sayNumber(tenths % 10)}`;
}

/** What a new plan does otherwise than the one that was taken, of what is not cut yet. */
export function sayChanges(state: State, plan: StockPlan): string {
  const taken = takenPlan(state);
  if (taken === undefined) return '';
  const changes = changesBetween(state, taken, plan);
  return changes.length === 0 ? 'Nothing else changes.' : sentence(`What changes: ${changes.join('; ')}`);
}

type Contents = Pick<PlannedBoard, 'board' | 'placed'>;

/** More than these the ear would lose. */
const MOST_TOLD = 4;

function changesBetween(state: State, taken: TakenPlan, plan: StockPlan): readonly string[] {
  const before = taken.boards.filter(({ made }) => made === 0);
  const numbers = [...new Set([...before, ...plan.boards].map(({ board }) => board))].sort((a, b) => a - b);
  const told = numbers.flatMap((number): string[] => {
    const [was, is] = [contents(state, before, number), contents(state, plan.boards, number)];
    if (was === is) return [];
    const name = `board ${sayNumber(number)}`;
    if (is === '') return [`${name} is not needed`];
    return [was === '' ? `${name} comes in, with ${is}` : `${name} gives ${is}`];
  });
  return told.length > MOST_TOLD ? [...told.slice(0, MOST_TOLD), `and ${sayNumber(told.length - MOST_TOLD)} more boards`] : told;
}

function contents(state: State, boards: readonly Contents[], number: number): string {
  const board = boards.find((one) => one.board === number);
  return board === undefined ? '' : sayContents(state, board);
}

/** 'two long rails and three leg layers' */
export function sayContents(state: State, { placed }: Pick<Contents, 'placed'>): string {
  const counts = new Map<string, { readonly id: string; readonly name: string; readonly count: number }>();
  for (const { blank: id, name } of placed) counts.set(id, { id, name, count: (counts.get(id)?.count ?? 0) + 1 });
  return sayList([...counts.values()].map((cut) => sayCut(state, cut, cut.count)));
}

/** What was found while a plan was taken already: worth telling only when it is needed or better. Undefined when it is neither. */
export function newsOf(state: State, offer: PlanOffer): string | undefined {
  const taken = takenPlan(state);
  if (offer.plan === null) return undefined;
  if (taken === undefined) return sayOffer(state, offer);
  const open = taken.boards.filter((board) => !isFinished(board) && board.made === 0);
  const stands = outOfDate(state).length === 0 && changedBoards(state).length === 0 && open.every((board) => state.rack.has(board.board)) && sameBlanks(open, offer);
  if (stands && offer.plan.boards.length >= open.length && offer.plan.missing.length >= taken.missing.length) return undefined;
  return sayOffer(state, offer);
}

/** Whether what is planned and not begun is still just what is wanted, in number and size. */
function sameBlanks(open: readonly TakenBoard[], { problem }: PlanOffer): boolean {
  return problem.blanks.every(({ id, count, length, width }) => {
    const planned = open.flatMap(({ placed }) => placed.filter(({ blank }) => blank === id));
    return planned.length === count && planned.every((one) => one.length === length && one.width === width);
  });
}
