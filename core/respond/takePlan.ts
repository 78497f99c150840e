import type { TakenPlan } from '../journal/cutting.ts';
import type { State } from '../journal/state.ts';
import { isFinished, takenBoard, type TakenBoard } from '../stock/cutting.ts';
import { inOrder } from '../stock/inOrder.ts';
import type { StockPlan } from '../stock/plan/planStock.ts';
import { allBlanks, begunBoards, keptOf } from './cuttingState.ts';
import { plannedWith } from './outOfDate.ts';

/** The plan to go by from now on: what is cut or begun as it is, and behind it what was planned anew. */
export function planFrom(state: State, plan: StockPlan): TakenPlan {
  const begun = begunBoards(state).map((board): TakenBoard => ({ ...board, placed: keptOf(state, board) }));
  const added = plan.boundIn === 'boards' ? begun.length : 0;
  const fresh = plan.boards.flatMap((board): TakenBoard[] => {
    const stood = state.rack.get(board.board);
    return stood === undefined ? [] : [takenBoard(board, stood, state.sawing.kerf)];
  });
  const boards = inOrder([...begun.filter((board) => !isFinished(board)), ...fresh, ...begun.filter(isFinished)], panelBoards(state));
  const { missing, boundIn, proven, cents, crosscutMetres, ripMetres } = plan;
  return { boards, begun: begun.length, missing, bound: plan.bound + added, boundIn, proven, cents, crosscutMetres, ripMetres, with: plannedWith(state) };
}

function panelBoards(state: State): ReadonlyMap<string, number> {
  const panels = new Set(state.piece?.file.parts.filter(({ made }) => made.kind === 'panel').map(({ id }) => id));
  return new Map(allBlanks(state).filter(({ id }) => panels.has(id)).map(({ id, count }) => [id, count]));
}
