import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import { QUARTERS } from '../wood/lumber/quarters.ts';
import type { Board, Defect } from './board.ts';

/** What may be wrong with a board on its face: words of the trade, as they are told and shown. */
export const DEFECT_KINDS = ['knot', 'check', 'split', 'wane', 'bark', 'stain', 'worm holes', 'twist'] as const;
export type DefectKind = (typeof DEFECT_KINDS)[number];
export const GRAINS = ['flat', 'rift', 'quarter'] as const;

/** Longer, wider or thicker than this is a slip of the finger: 40 ft, 6 ft and 12 in (common practice, no source). */
const MOST: Readonly<Record<'length' | 'width' | 'thickness', Length>> = { length: nanometres(480 * NANOMETRES_PER_INCH), width: nanometres(72 * NANOMETRES_PER_INCH), thickness: nanometres(12 * NANOMETRES_PER_INCH) };

/** Why a board cannot go on the rack, as half a sentence; undefined when it can. */
export function boardFault(board: Board): string | undefined {
  if (board.length <= 0 || board.length > MOST.length) return 'its length must be more than nothing and at most forty feet';
  if (board.width <= 0 || board.width > MOST.width) return 'its width must be more than nothing and at most six feet';
  if (board.farWidth <= 0 || board.farWidth > MOST.width) return 'its width at the far end must be more than nothing and at most six feet';
  if (board.thickness <= 0 || board.thickness > MOST.thickness) return 'its thickness must be more than nothing and at most twelve inches';
  if (board.sapwood < 0 || board.sapwood >= Math.min(board.width, board.farWidth)) return 'its sapwood must be narrower than the board';
  if (board.species.trim() === '') return 'its wood is not known';
  return board.defects.map((defect) => defectFault(board, defect)).find((fault) => fault !== undefined);
}

/** Why something cannot be where it is told to be on a board. */
function defectFault(board: Board, { what, from, to, fromEdge, toEdge }: Defect): string | undefined {
  if (from < 0 || from >= to) return `the ${what} ends before it begins`;
  if (from >= board.length) return `the ${what} begins beyond the end of the board`;
  if (fromEdge < 0 || fromEdge >= toEdge) return `the ${what} ends before it begins, across the board`;
  return fromEdge >= Math.max(board.width, board.farWidth) ? `the ${what} begins beyond the edge of the board` : undefined;
}

/** How wide a board is at a place along it. */
export function widthAt({ length, width, farWidth }: Pick<Board, 'length' | 'width' | 'farWidth'>, place: number): number {
  return width - Math.floor(((width - farWidth) * place) / length);
}

/** What is wrong with a board in a part of it. */
export function defectsIn({ defects }: Pick<Board, 'defects'>, { from, to, fromEdge, toEdge }: { readonly from: number; readonly to: number; readonly fromEdge: number; readonly toEdge: number }): readonly Defect[] {
  return defects.filter((defect) => defect.from < to && from < defect.to && defect.fromEdge < toEdge && fromEdge < defect.toEdge);
}

/** '8/4', or undefined for a thickness that is not sold in quarters. */
export function quarterName(thickness: Length): string | undefined {
  return QUARTERS.find(({ rough }) => rough === thickness)?.name;
}

/** What a piece of a board has in common with it; its price it has not. */
function marksOf({ grain, pithSide, colour }: Board): Partial<Pick<Board, 'grain' | 'pithSide' | 'colour'>> {
  return { ...(grain === undefined ? {} : { grain }), ...(pithSide === undefined ? {} : { pithSide }), ...(colour === undefined ? {} : { colour }) };
}

/** Where it was cut from the board it was sawn; at the board's own ends it is as that was. */
function sawnEnds({ length, sawn }: Board, from: number, to: number): Pick<Board, 'sawn'> {
  const marked = from > 0 || sawn === 'both ends' || sawn === 'marked end';
  const far = to < length || sawn === 'both ends' || sawn === 'far end';
  return marked && far ? { sawn: 'both ends' } : marked ? { sawn: 'marked end' } : far ? { sawn: 'far end' } : {};
}

/** A piece of a board, as a board by itself: its marked end is the one that was nearer the mark. */
export function pieceOf(board: Board, number: number, { from, to, fromEdge, toEdge }: Pick<Defect, 'from' | 'to' | 'fromEdge' | 'toEdge'>): Board {
  const wide = (place: number): Length => nanometres(Math.min(toEdge, widthAt(board, place)) - fromEdge);
  const keepsEdge = toEdge >= Math.min(widthAt(board, from), widthAt(board, to));
  return {
    number, cutFrom: board.number, ...sawnEnds(board, from, to), species: board.species, thickness: board.thickness, ...marksOf(board), length: nanometres(to - from), width: wide(from), farWidth: wide(to), sapwood: keepsEdge ? board.sapwood : nanometres(0),
    defects: board.defects.flatMap((defect): Defect[] => {
      const [start, end] = [Math.max(defect.from, from), Math.min(defect.to, to)];
      const [low, high] = [Math.max(defect.fromEdge, fromEdge), Math.min(defect.toEdge, toEdge)];
      return start >= end || low >= high ? [] : [{ ...defect, from: nanometres(start - from), to: nanometres(end - from), fromEdge: nanometres(low - fromEdge), toEdge: nanometres(high - fromEdge) }];
    }),
  };
}
