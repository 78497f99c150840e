import type { Response } from '../bench/reply.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { nanometres } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Board } from '../stock/board.ts';
import { freedBlanks, newOffcuts, type TakenBoard } from '../stock/cutting.ts';
import { markOf } from '../stock/inOrder.ts';
import { pieceOf } from '../stock/rack.ts';
import { tellHidden } from '../stock/telling.ts';
import { boardAtSaw, takenPlan } from './cuttingState.ts';
import { sayNextCut } from './nextCut.ts';
import { notAsPlanned } from './notAsPlanned.ts';
import { tell, write } from './plain.ts';
import { roughStepsDone } from './roughDone.ts';
import { sayHeart } from './sayBoards.ts';
import { sayContents } from './sayPlan.ts';
import { sayCount, sayList, sentence, spoken } from './saying.ts';

/** The next cut of a board is made: what it frees is told, off-cuts go back to the rack by themselves, and the next cut follows. */
export function cutMade(state: State, board: TakenBoard): Response {
  const changed = notAsPlanned(state, board);
  if (changed) return changed;
  if (board.cuts[board.made] === undefined) return tell({ say: `Board ${sayNumber(board.board)} is all cut.`, screen: { name: 'cutting', board: board.board } });
  const after: TakenBoard = { ...board, made: board.made + 1 };
  const over = after.made >= after.cuts.length;
  const offcuts = offcutsFreed(state, board);
  const rough = roughStepsDone(state, after);
  const entries: readonly Entry[] = [{ kind: 'cut made', board: board.board }, ...rough.entries, ...offcuts.map((offcut): Entry => ({ kind: 'board put', board: offcut })), ...(over ? [{ kind: 'board gone', board: board.board } as const] : [])];
  const next = over ? followingBoard(state, board.board) : after;
  const say = [
    sentence(`cut ${sayNumber(after.made)} made`), sayFreed(state, board, after, state.rack.get(board.board) ?? board.stood), rough.say, ...offcuts.map((offcut) => sayOffcut(state, offcut)),
    over ? `Board ${sayNumber(board.board)} is all cut.` : '', sayNext(state, next, over),
  ].filter(Boolean).join(' ');
  // An off-cut may save a board: what is not begun is looked over again.
  const again = offcuts.length > 0 && (takenPlan(state)?.boards ?? []).some(({ board: number, made }) => made === 0 && number !== board.board);
  return write(entries, { say, signal: 'done', screen: { name: 'cutting', ...(next === undefined ? {} : { board: next.board }) }, ...(again ? { planning: 'begin' as const } : {}) });
}

function offcutsFreed(state: State, board: TakenBoard): readonly Board[] {
  const now = state.rack.get(board.board) ?? board.stood;
  return newOffcuts(board).map((area, index) => pieceOf(now, state.lastBoard + 1 + index, { from: nanometres(area.from), to: nanometres(area.to), fromEdge: nanometres(area.fromEdge), toEdge: nanometres(area.toEdge) }));
}

/** What came free, what to write on it, and which face of it is which. */
function sayFreed(state: State, before: TakenBoard, after: TakenBoard, now: Board): string {
  const had = new Set(freedBlanks(before));
  const fresh = freedBlanks(after).filter((blank) => !had.has(blank));
  if (fresh.length === 0) return '';
  const hidden = [...new Set(fresh.flatMap((blank) => tellHidden(now, blank).map((told) => `${markOf(blank)}: ${told}`)))];
  return [sentence(`${sayContents(state, { placed: fresh })} cut: write ${sayList([...new Set(fresh.map(markOf))])} on ${fresh.length === 1 ? 'it' : 'them'}`), ...hidden.map(sentence), sayHeart(now)].filter(Boolean).join(' ');
}

function sayOffcut(state: State, { number, length, width, farWidth }: Board): string {
  return sentence(`the off-cut, ${spoken(state, length)} by ${spoken(state, nanometres(Math.min(width, farWidth)))}, is board ${sayNumber(number)}: mark it`);
}

function followingBoard(state: State, finished: number): TakenBoard | undefined {
  const next = boardAtSaw(state, undefined, undefined);
  return next?.board === finished ? takenPlan(state)?.boards.find(({ board, made, cuts }) => board !== finished && made < cuts.length) : next;
}

function sayNext(state: State, board: TakenBoard | undefined, another: boolean): string {
  if (board === undefined) return 'That was the last cut of the plan.';
  const where = another ? `then board ${sayNumber(board.board)}, ${sayCount(board.cuts.length - board.made, 'cut', 'cuts')}: ` : 'then ';
  return sayNextCut(state, board, where);
}
