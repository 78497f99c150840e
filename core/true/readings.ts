import type { Length } from '../length/length.ts';

/** Which side of a board is trued: the reference pair has the marks. */
export const TRUED_FACES = ['face', 'other face', 'edge', 'other edge'] as const;
export type TruedFace = (typeof TRUED_FACES)[number];

/** One side of one board: of a part, of one of its copies, of one layer or board of what is glued up. */
export interface BoardFace {
  readonly part: string;
  readonly copy?: number;
  /** Layer of a lamination or board of a panel, from 1; absent for a part that is one piece of wood, or has become one. */
  readonly board?: number;
  readonly face: TruedFace;
}

/**
 * What was held against the board: winding sticks (the left end of the far one higher: more than nothing), a straightedge along the middle (never less than nothing), a
 * straightedge across (hollow: more than nothing, crowned: less), a try square (light at the far side: more than nothing), calipers, or a tape
 * from corner to corner (the first diagonal from the near left to the far right).
 */
export const READING_KINDS = ['sticks', 'along', 'across', 'square', 'thickness', 'first diagonal', 'second diagonal'] as const;
export type ReadingKind = (typeof READING_KINDS)[number];

export interface FaceReading {
  readonly what: ReadingKind;
  /** From the marked end. */
  readonly fromEnd: Length;
  readonly gap: Length;
}

export function isEdge(face: TruedFace): boolean {
  return face === 'edge' || face === 'other edge';
}

/** 'leg/2/1/other face': the key that readings of one side are kept under. */
export function faceKey({ part, copy, board, face }: BoardFace): string {
  return [part, copy ?? '', board ?? '', face].join('/');
}

/** The readings with one more; a later one of the same kind and place takes the earlier one's. */
export function withReading(readings: readonly FaceReading[], added: FaceReading): readonly FaceReading[] {
  return [...readings.filter(({ what, fromEnd }) => what !== added.what || fromEnd !== added.fromEnd), added];
}

/** Only what belongs to a side, without the rest of a request that brings it. */
export function sideOf({ part, copy, board, face }: BoardFace): BoardFace {
  return { part, ...(copy === undefined ? {} : { copy }), ...(board === undefined ? {} : { board }), face };
}

/** The other side of the same board; calipers read both at once, so what they read is kept with the face. */
export function turnedTo(of: BoardFace, face: TruedFace): BoardFace {
  return { ...sideOf(of), face };
}

const NEXT_SIDE: Readonly<Record<TruedFace, TruedFace>> = { 'face': 'other face', 'other face': 'edge', 'edge': 'other edge', 'other edge': 'face' };

/** The board turned to its next side, round and round. */
export function nextSide(of: BoardFace): BoardFace {
  return turnedTo(of, NEXT_SIDE[of.face]);
}

/** What is measured of the board as a whole, not of one of its sides. */
export function isOfBoard(what: ReadingKind): boolean {
  return what === 'thickness' || what === 'first diagonal' || what === 'second diagonal';
}

/** Where a reading is kept: thickness and diagonals belong to the board, whichever face is up. */
export function keptWith(of: BoardFace, what: ReadingKind): BoardFace {
  return isOfBoard(what) ? turnedTo(of, 'face') : sideOf(of);
}
