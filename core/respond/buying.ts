import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { BuyRequest } from '../bench/request.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { GRADE_YIELDS, toBuy, type ToBuy } from '../stock/buying.ts';
import type { Blank, Board } from '../stock/board.ts';
import type { Missing } from '../stock/plan/roomFor.ts';
import { helpOf, yardOrder, type YardOrder } from '../stock/yard.ts';
import { allBlanks, problemOf, sawOf, takenPlan } from './cuttingState.ts';
import { tellAll } from './inTurn.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { newBoard, respondToRack } from './rack.ts';
import { sayBoardFeet, sayThickness } from './sayBoards.ts';
import { tellThickness } from './boardThickness.ts';
import { sayCount, sayCut, sayList, sentence, spoken } from './saying.ts';
import { toSay } from './toSay.ts';

/** What the rack lacks, as the yard sells it, and whether a board there helps. */
export function respondToBuying(bench: Bench, request: BuyRequest): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  switch (request.kind) {
    case 'what to buy': return whatToBuy(bench, request.about);
    case 'board thickness': return tellThickness(state, request.thickness);
    case 'does it help': return doesItHelp(bench, request);
    case 'bought': {
      const { screen } = bench.conversation;
      if (screen.name !== 'buying' || screen.board === undefined) return refuse(`Which board? ${toSay('Ask first whether it helps, by its length and its width.', 'Say its size first: does ninety six by eight help.')}`, { screen: { name: 'buying' } });
      return respondToRack(bench, { kind: 'put board', board: { ...screen.board, number: state.lastBoard + 1 } });
    }
    default: return assertNever(request);
  }
}

export interface Shortage {
  readonly lists: readonly (ToBuy & { readonly order: YardOrder })[];
  /** The blanks that are short, each with what is missing of it. */
  readonly blanks: readonly Blank[];
}

/** What is missing: by the plan that is looked at, else by the one that was taken, else everything there is no board for. */
export function shortageOf({ state, conversation: { offer } }: Bench): Shortage {
  const kept = SHORTAGES.get(state);
  if (kept !== undefined && kept.plan === offer?.plan) return kept.shortage;
  const shortage = reckonShortage(state, offer?.plan?.missing ?? takenPlan(state)?.missing ?? everything(state));
  SHORTAGES.set(state, { plan: offer?.plan, shortage });
  return shortage;
}

/** For as long as the state and the plan stay the same: every length of the yard is planned with. */
const SHORTAGES = new WeakMap<State, { readonly plan: unknown; readonly shortage: Shortage }>();

function reckonShortage(state: State, missing: readonly Missing[]): Shortage {
  const all = allBlanks(state);
  const { grade, yardWidth, centsPerBoardFoot } = state.sawing;
  const blanks = all.flatMap((blank) => {
    const count = missing.reduce((sum, one) => sum + (one.blank === blank.id ? one.count : 0), 0);
    return count === 0 ? [] : [{ ...blank, count }];
  });
  const yard = { width: yardWidth, saw: sawOf(state), grade, centsPerBoardFoot };
  return {
    lists: toBuy(missing, all, grade).map((one) => ({ ...one, order: yardOrder(one, blanks.filter(({ species, thickness }) => species === one.species && thickness === one.thickness), yard) })),
    blanks,
  };
}

/** Before any plan: all that is still to be cut, as if the rack were empty. Boards that are there are told of. */
function everything(state: State): readonly Missing[] {
  return (problemOf(state)?.blanks ?? []).map(({ id, count }) => ({ blank: id, count, why: 'no board left' as const }));
}

function whatToBuy(bench: Bench, about: Extract<BuyRequest, { kind: 'what to buy' }>['about']): Response {
  const { state, conversation: { offer } } = bench;
  const { lists } = shortageOf(bench);
  const planned = offer?.plan ?? takenPlan(state);
  if (lists.length === 0) return tell({ say: 'Nothing is to be bought: the rack gives every part.', screen: { name: 'buying' } });
  if (about === 'cost' && state.sawing.centsPerBoardFoot === 0) return tellWithoutPrice(lists);
  const unplanned = planned === undefined && state.rack.size > 0 ? ' The boards on the rack are not counted yet: plan the cutting first.' : '';
  const spare = sentence(`${sayNumber(lists[0]?.order.sparePercent ?? 0)} percent is spare, because ${state.sawing.grade} need only give ${sayNumber(Math.round(100 * GRADE_YIELDS[state.sawing.grade]))} percent clear`);
  const head = about === 'enough' ? sayNotEnough(state, planned !== undefined) : about === 'cost' ? sayCost(lists) : '';
  return tellAll({ say: head, screen: { name: 'buying' } }, 'kinds of board', lists.map((list) => ({ say: sayOrder(state, list) })), `${spare}${unplanned}`);
}

function sayNotEnough({ rack }: State, isPlanned: boolean): string {
  if (rack.size === 0) return 'No, the rack is empty.';
  return isPlanned ? 'No, not for every part.' : '';
}

function boardFeetOf(lists: Shortage['lists']): number {
  return lists.reduce((sum, { order, boardFeet }) => sum + Math.ceil(order.feet === undefined ? boardFeet : order.boardFeet), 0);
}

function sayCost(lists: Shortage['lists']): string {
  return sentence(`about ${sayNumber(Math.round(lists.reduce((sum, { order }) => sum + order.cents, 0) / 100))} in money, for ${sayNumber(boardFeetOf(lists))} board feet in all`);
}

function tellWithoutPrice(lists: Shortage['lists']): Response {
  return refuse(`${sentence(`${sayNumber(boardFeetOf(lists))} board feet are to be bought, and I do not know their price`)} ${toSay('Tell me what a board foot costs.', 'Say, for one: a board foot costs nine fifty.')}`, { screen: { name: 'buying' } });
}

function sayOrder(state: State, { species, quarter, thickness, longest, widest, boardFeet, order }: Shortage['lists'][number]): string {
  const what = `${sayThickness(state, quarter?.rough ?? thickness)} ${species}`;
  const price = order.cents === 0 ? '' : `, about ${sayNumber(Math.round(order.cents / 100))} in money`;
  const among = `among them boards of at least ${spoken(state, longest)} by ${spoken(state, widest)}`;
  if (order.feet === undefined) return sentence(`${what}: ${sayNumber(Math.ceil(boardFeet))} board feet${price}, ${among}, which is longer than boards are sold as a rule`);
  return sentence(`${what}: ${sayNumber(Math.ceil(order.boardFeet))} board feet, say ${sayCount(order.boards, 'board', 'boards')} of ${sayNumber(order.feet)} feet about ${spoken(state, state.sawing.yardWidth)} wide${price}, ${among}`);
}

function doesItHelp(bench: Bench, asked: Extract<BuyRequest, { kind: 'does it help' }>): Response {
  const { state } = bench;
  const { blanks, lists } = shortageOf(bench);
  const [first] = lists;
  if (first === undefined) return tell({ say: 'No: nothing is missing.', screen: { name: 'buying' } });
  const board = newBoard(state, { kind: 'new board', length: asked.length, width: asked.width, thickness: asked.thickness ?? first.quarter?.rough ?? first.thickness, species: first.species });
  const screen = { name: 'buying', board } as const;
  const help = helpOf(board, blanks, sawOf(state));
  const name = `${spoken(state, board.length)} by ${spoken(state, board.width)}, ${sayThickness(state, board.thickness)}`;
  if (help.parts.length === 0) return tell({ say: sentence(`no: ${name} gives none of the parts that are missing`), screen });
  const gives = sayList(help.parts.map(({ blank, count }) => sayCut(state, blanks.find(({ id }) => id === blank) ?? { id: blank, name: blank }, count)));
  const price = state.sawing.centsPerBoardFoot === 0 ? '' : `, ${sayNumber(Math.round((help.boardFeet * state.sawing.centsPerBoardFoot) / 100))} in money`;
  return tell({ say: sentence(`yes: ${name} gives ${gives}, ${sayNumber(help.usedPercent)} percent of it used, ${sayBoardFeet(help.boardFeet)}${price}. Say bought when you take it`), screen });
}

/** What a board on the rack gives by itself, while there is no plan: of all that is to be cut. */
export function whatBoardGives(state: State, board: Board): Response {
  const blanks = allBlanks(state);
  const { parts, usedPercent } = helpOf(board, blanks, sawOf(state));
  const screen = { name: 'boards', board: board.number } as const;
  const name = `board ${sayNumber(board.number)}`;
  if (parts.length === 0) return tell({ say: sentence(`${name} gives none of the parts of this piece`), screen });
  const gives = sayList(parts.map(({ blank, count }) => sayCut(state, blanks.find(({ id }) => id === blank) ?? { id: blank, name: blank }, count)));
  return tell({ say: sentence(`${name} by itself gives ${gives}, ${sayNumber(usedPercent)} percent of it used. What is best cut from it beside other boards, a plan tells`), screen });
}
