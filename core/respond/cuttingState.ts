import type { State } from '../journal/state.ts';
import type { Length } from '../length/length.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { TakenPlan } from '../journal/cutting.ts';
import { blanksOf } from '../stock/blanks.ts';
import type { Blank, Board, SawSettings } from '../stock/board.ts';
import { areaOf, blanksToCome, freedBlanks, isFinished, type TakenBoard } from '../stock/cutting.ts';
import type { PlacedBlank } from '../stock/plan/placed.ts';
import type { StockProblem } from '../stock/plan/planStock.ts';
import { defectsIn, widthAt } from '../stock/rack.ts';
import type { PartRough, RoughExtras } from '../stock/rough.ts';
import { sizesOf } from './views.ts';

/** The plan that the maker goes by, for the piece on the bench. */
export function takenPlan(state: State): TakenPlan | undefined {
  return state.plans.get(state.pieceName ?? '');
}

export function sawOf({ sawing: { kerf, endTrim, cutAgain, resaw } }: State): SawSettings {
  return { kerf, endTrim, cutAgain, resaw };
}

/** Everything that the piece is cut from, with the allowances. */
export function allBlanks(state: State): readonly Blank[] {
  const sizes = sizesOf(state);
  return state.piece && sizes ? blanksOf(state.piece.file, sizes, extrasOf(state), partsRough(state)) : [];
}

export function extrasOf({ sawing }: State): RoughExtras {
  return {
    layer: { length: sawing.layerExtra, width: sawing.layerWider, thickness: sawing.layerThicker },
    panel: { length: sawing.panelExtra, width: sawing.panelWider, thickness: sawing.panelThicker },
  };
}

/** What is wanted of single parts of the piece on the bench. */
export function partsRough(state: State): ReadonlyMap<string, PartRough> {
  return state.rough.get(state.pieceName ?? '') ?? new Map<string, PartRough>();
}

export interface Allowance {
  readonly size: 'allowance.roughLength' | 'allowance.roughWidth' | 'allowance.roughThickness' | 'allowance.afterRest';
  readonly say: string;
  readonly length: Length;
}

/** What rough sizes have over the finished ones, by the piece's file or as told since. */
export function allowancesOf(state: State): readonly Allowance[] {
  const sizes = sizesOf(state);
  const kinds = [['allowance.roughLength', 'length'], ['allowance.roughWidth', 'width'], ['allowance.roughThickness', 'thickness'], ['allowance.afterRest', 'width when first ripped']] as const;
  return kinds.flatMap(([size, say]): Allowance[] => {
    const length = sizes === null ? undefined : sizeOf(sizes, size)?.length;
    return length === undefined ? [] : [{ size, say, length }];
  });
}

/** Boards of the plan that the saw has been in. */
export function begunBoards(state: State): readonly TakenBoard[] {
  return (takenPlan(state)?.boards ?? []).filter(({ made }) => made > 0);
}

/** What is cut already, and what is still to come from a board that is begun and as good as it was planned. */
export function keptOf(state: State, board: TakenBoard): readonly PlacedBlank[] {
  const now = state.rack.get(board.board);
  const hiding = hidingBlanks(state);
  return [...freedBlanks(board), ...(now === undefined ? [] : blanksToCome(board).filter((blank) => isSound(now, blank, hiding)))];
}

/** Blanks that may hold what shows on one face of the board. */
export function hidingBlanks(state: State): ReadonlySet<string> {
  return new Set(allBlanks(state).filter(({ mayHideDefect }) => mayHideDefect).map(({ id }) => id));
}

/** Whether a blank can still be had where it lies: the board is as large, and what was told of since lies elsewhere or on the one face that it hides. */
export function isSound(board: Board, blank: PlacedBlank, hiding: ReadonlySet<string>): boolean {
  const area = areaOf(blank);
  const inside = area.to <= board.length && area.toEdge <= Math.min(widthAt(board, area.from), widthAt(board, area.to)) - board.sapwood;
  const [first, ...more] = defectsIn(board, area);
  if (!inside || first === undefined) return inside;
  return hiding.has(blank.blank) && first.face !== 'through' && more.every(({ face }) => face === first.face);
}

/** What is still to be planned, and from which boards: what is cut, and what comes from boards that are begun, stays as it is. */
export function problemOf(state: State): StockProblem | undefined {
  if (!state.piece) return undefined;
  const begun = begunBoards(state);
  const had = new Map<string, number>();
  for (const { blank } of begun.flatMap((board) => keptOf(state, board))) had.set(blank, (had.get(blank) ?? 0) + 1);
  const blanks = allBlanks(state).map((blank) => ({ ...blank, count: Math.max(0, blank.count - (had.get(blank.id) ?? 0)) })).filter(({ count }) => count > 0);
  const boards = [...state.rack.values()].filter(({ number }) => !begun.some(({ board }) => board === number)).sort((a, b) => a.number - b.number);
  const { first } = state.sawing;
  return { boards, blanks, saw: sawOf(state), objectives: first === 'least sawing' ? ['least sawing'] : [first, 'least sawing'] };
}

/** Boards of the plan that are not what they were when it was taken: it does not hold for them. */
export function changedBoards(state: State): readonly number[] {
  return (takenPlan(state)?.boards ?? []).filter((board) => !isFinished(board) && !holds(state, board)).map(({ board }) => board);
}

function holds(state: State, board: TakenBoard): boolean {
  const now = state.rack.get(board.board);
  const hiding = hidingBlanks(state);
  return now !== undefined && blanksToCome(board).every((blank) => isSound(now, blank, hiding));
}

/** The board that is being cut: the one asked for, else the one on the screen, else the first that is begun, else the first. */
export function boardAtSaw(state: State, asked: number | undefined, shown: number | undefined): TakenBoard | undefined {
  const boards = takenPlan(state)?.boards ?? [];
  if (asked !== undefined) return boards.find(({ board }) => board === asked);
  const open = boards.filter((board) => !isFinished(board));
  return open.find(({ board }) => board === shown) ?? open.find(({ made }) => made > 0) ?? open[0];
}
