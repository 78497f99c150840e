import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { nanometres } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { Board } from '../stock/board.ts';
import { areaOf, blanksToCome, freedBlanks, isFinished, isWorthKeeping, kerfOf, type Area, type TakenBoard } from '../stock/cutting.ts';
import type { PlacedBlank } from '../stock/plan/placed.ts';
import { liesIn, overlaps, plateOf } from '../stock/plates.ts';
import { boardFault, pieceOf, widthAt } from '../stock/rack.ts';
import { hidingBlanks, isSound, takenPlan } from './cuttingState.ts';
import { sayCount, sayList, sentence, spoken } from './saying.ts';

export interface Damage {
  readonly entries: readonly Entry[];
  readonly say: string;
}

const NONE: Damage = { entries: [], say: '' };

/**
 * What becomes of a board that is being cut when it turns out different. The cuts that are made stay made: what they have parted stays as it was planned
 * where it is sound; a piece in which a part is lost becomes a board by itself, as long and wide as it is now, and is planned anew.
 */
export function afterDamage(state: State, now: Board): Damage {
  const plan = takenPlan(state);
  const board = plan?.boards.find((one) => one.board === now.number);
  if (plan === undefined || board === undefined || board.made === 0) return NONE;
  const hiding = hidingBlanks(state);
  const lost = blanksToCome(board).filter((blank) => !isSound(now, blank, hiding));
  if (lost.length === 0) return NONE;
  const given = piecesWith(lost, board);
  const pieces = given.flatMap((plate) => boardsFrom(now, plate, board, lost)).map((piece, index) => ({ ...piece, number: state.lastBoard + 1 + index }));
  const near = endingAt(now, given, board);
  const kept = withoutPieces({ ...board, stood: near, placed: board.placed.filter((blank) => !lost.includes(blank)) }, given);
  return {
    entries: [
      { kind: 'plan taken', plan: { ...plan, boards: plan.boards.map((one) => (one.board === now.number ? kept : one)) } },
      ...(near === now ? [] : [{ kind: 'board put', board: near } as const]), ...pieces.map((piece): Entry => ({ kind: 'board put', board: piece })),
      ...(isFinished(kept) ? [{ kind: 'board gone', board: now.number } as const] : []),
    ],
    say: sayDamage(state, board, kept, pieces),
  };
}

function sayDamage(state: State, board: TakenBoard, kept: TakenBoard, pieces: readonly Board[]): string {
  const said = sentence(`${sayCount(board.placed.length - kept.placed.length, 'part', 'parts')} of it must come from elsewhere`);
  const told = pieces.map(({ number, length, width, farWidth }) => `board ${sayNumber(number)}, ${spoken(state, length)} by ${spoken(state, nanometres(Math.min(width, farWidth)))}`);
  if (told.length === 0) return said;
  return `${said} ${sentence(`${told.length === 1 ? 'a piece of it is a board by itself now: ' : 'pieces of it are boards by themselves now: '}${sayList(told)}; mark ${told.length === 1 ? 'it' : 'them'}`)}`;
}

/** The pieces, as the saw has parted them, that lost parts lie in. */
function piecesWith(lost: readonly PlacedBlank[], board: TakenBoard): readonly Area[] {
  const pieces = lost.flatMap((blank) => plateOf(board, areaOf(blank)) ?? []);
  return pieces.filter((piece, at) => pieces.findIndex((one) => liesIn(one, piece)) === at);
}

/** A piece that is worth it, as a board: as far as the board reaches, which may be shorter than it was planned. */
function boardsFrom(now: Board, plate: Area, board: TakenBoard, lost: readonly PlacedBlank[]): readonly Board[] {
  const piece = { ...plate, to: Math.min(plate.to, now.length) };
  if (piece.from >= piece.to || Math.min(widthAt(now, piece.from), widthAt(now, piece.to)) <= piece.fromEdge) return [];
  const whole = pieceOf(now, 0, { from: nanometres(piece.from), to: nanometres(piece.to), fromEdge: nanometres(piece.fromEdge), toEdge: nanometres(piece.toEdge) });
  const gives = board.placed.some((blank) => !lost.includes(blank) && liesIn(areaOf(blank), plate));
  return boardFault(whole) === undefined && (gives || isWorthKeeping(now, piece)) ? [whole] : [];
}

/** Where all beyond the saw is given away, the board ends before it. */
function endingAt(now: Board, given: readonly Area[], { stood, kerf }: TakenBoard): Board {
  const end = given.find(({ from, to, fromEdge }) => from > kerf && from < now.length && to === stood.length && fromEdge === 0);
  if (end === undefined || end.toEdge < Math.max(stood.width, stood.farWidth)) return now;
  const length = nanometres(end.from - kerf);
  const defects = now.defects.filter(({ from }) => from < length).map((defect) => (defect.to > length ? { ...defect, to: length } : defect));
  return { ...now, length, farWidth: nanometres(widthAt(now, length)), defects };
}

/** What is still to be cut of the board; the cuts that are made stay, for the order goes by them. */
function withoutPieces({ rest, ...board }: TakenBoard, given: readonly Area[]): TakenBoard {
  const free = new Set(freedBlanks(board));
  const placed = board.placed.filter((blank) => free.has(blank) || !given.some((plate) => liesIn(areaOf(blank), plate)));
  const cuts = board.cuts.filter((cut, index) => index < board.made || !given.some((plate) => overlaps(kerfOf(cut, board.kerf), plate)));
  const gone = rest === undefined || given.some((plate) => plate.from < rest.to && rest.from < plate.to && plate.fromEdge === 0);
  return { ...board, placed, cuts, ...(gone ? {} : { rest }) };
}
