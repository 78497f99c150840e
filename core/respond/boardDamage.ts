import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { nanometres } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Board } from '../stock/board.ts';
import { areaOf, blanksToCome, freedBlanks, untouchedFrom, type TakenBoard } from '../stock/cutting.ts';
import type { Cut } from '../stock/plan/placed.ts';
import { pieceOf, widthAt } from '../stock/rack.ts';
import { hidingBlanks, isSound, takenPlan } from './cuttingState.ts';
import { sayCount, sentence } from './saying.ts';

export interface Damage {
  readonly entries: readonly Entry[];
  readonly say: string;
}

const NONE: Damage = { entries: [], say: '' };

/**
 * What becomes of a board that is being cut when it turns out different: what lies sound in what the saw has parted stays, what is untouched
 * beyond the saw becomes a board by itself, and the parts that are lost are planned anew.
 */
export function afterDamage(state: State, now: Board): Damage {
  const plan = takenPlan(state);
  const board = plan?.boards.find((one) => one.board === now.number);
  if (plan === undefined || board === undefined || board.made === 0) return NONE;
  const reach = untouchedFrom(board);
  const free = freedBlanks(board);
  const hiding = hidingBlanks(state);
  const stays = blanksToCome(board).filter((blank) => isSound(now, blank, hiding) && (reach === undefined || reach >= now.length || areaOf(blank).to <= reach));
  const lost = board.placed.length - free.length - stays.length;
  if (lost === 0) return NONE;
  const parted = reach !== undefined && reach < now.length;
  const beyond = !parted ? undefined : pieceOf(now, state.lastBoard + 1, { from: nanometres(reach), to: now.length, fromEdge: nanometres(0), toEdge: nanometres(Math.max(now.width, now.farWidth)) });
  const near = parted ? shortened(now, reach - board.kerf) : now;
  const trimmed = trim({ ...board, stood: near, placed: [...free, ...stays] }, parted);
  const over = trimmed.made >= trimmed.cuts.length;
  return {
    entries: [
      { kind: 'plan taken', plan: { ...plan, boards: plan.boards.map((one) => (one.board === now.number ? trimmed : one)) } },
      ...(beyond === undefined ? [] : [{ kind: 'board put', board: near } as const, { kind: 'board put', board: beyond } as const]), ...(over ? [{ kind: 'board gone', board: now.number } as const] : []),
    ],
    say: [sentence(`${sayCount(lost, 'part', 'parts')} of it must come from elsewhere`), beyond === undefined ? '' : sentence(`the rest beyond the saw is board ${sayNumber(beyond.number)} now; mark it`)].filter(Boolean).join(' '),
  };
}

/** What is left of a board on the side of its mark. */
function shortened(board: Board, reach: number): Board {
  const defects = board.defects.filter(({ from }) => from < reach).map((defect) => (defect.to > reach ? { ...defect, to: nanometres(reach) } : defect));
  return { ...board, length: nanometres(reach), farWidth: nanometres(widthAt(board, reach)), defects };
}

/** Cuts that free nothing any more are left out; those made stay, for the order goes by them. */
function trim(board: TakenBoard, beyond: boolean): TakenBoard {
  const { kerf } = board;
  const wanted = blanksToCome(board).map(areaOf);
  const serves = (cut: Cut): boolean => wanted.some((area) => {
    const [start, end] = cut.kind === 'rip' ? [cut.from, cut.to] : [cut.at - kerf, cut.at + kerf];
    return start <= area.to && area.from <= end;
  });
  const cuts = board.cuts.filter((cut, index) => index < board.made || serves(cut));
  return beyond ? { board: board.board, stood: board.stood, kerf, placed: board.placed, made: board.made, cuts } : { ...board, cuts };
}
