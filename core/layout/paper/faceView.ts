import type { Face } from '../../faces/face.ts';
import type { Mark } from '../../joint/marks.ts';
import { add, subtract } from '../../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../../length/length.ts';

/** One face of a part seen square on, its length from left to right, with all that is marked on it. */
export interface FaceView {
  /** 'face B, towards the long rail'; of no copy in particular 'face towards the long rail', 'outside face' */
  readonly name: string;
  /** The letter that the maker gave it, once it is known which way the copy stands. */
  readonly face?: Face;
  readonly along: Length;
  readonly across: Length;
  /** What its left end and its upper edge are, and its lower one where that is known. */
  readonly leftIs: string;
  readonly topIs: string;
  readonly bottomIs?: string;
  /** The part's reference face itself: it bears the face mark. */
  readonly isReference?: true;
  /** The edge that distances across the face are from, where the gauge's stock runs. */
  readonly gaugeFrom: 'top' | 'bottom';
  /** Whose drawing it is besides, or that it is mirrored for some. */
  readonly note?: string;
  readonly lines: readonly ViewLine[];
  /** What is cut away, hatched: from the left, and from the top. */
  readonly waste: readonly Waste[];
  /** Depths, which no line on this face shows. */
  readonly depths: readonly Mark[];
  /** Where a slot runs out of the part: there its hatching has no closing line. */
  readonly open?: 'left' | 'right';
}

export interface Waste { readonly from: Length; readonly to: Length; readonly top: Length; readonly bottom: Length }

/** A line across the face stands `at` a distance from the left; one along it, from the top. `from` and `to` are its ends, in the other direction. */
export interface ViewLine {
  readonly mark: Mark;
  readonly lies: 'across' | 'along';
  readonly at: Length;
  readonly from: Length;
  readonly to: Length;
}

/** A part as it is laid out, with what is still left on its ends. */
export interface PartSize {
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
  readonly horn: Length;
  readonly lowerHorn: Length;
}

/** From one rough end to the other. */
export function wholeLength({ length, horn, lowerHorn }: PartSize): Length {
  return add(length, horn, lowerHorn);
}

/** Where marks from an end lie along the part, from its left rough end: from the finished ends, or from both of them. */
export function placesAlong({ at, from }: Mark, size: PartSize): readonly Length[] {
  const [start, end] = [size.horn, add(size.horn, size.length)];
  if (from.say === 'the rough top end') return [at];
  if (from.say === 'the rough lower end') return [subtract(wholeLength(size), at)];
  if (from.say === 'each end') return [add(start, at), subtract(end, at)];
  return [/bottom/.test(from.say) ? subtract(end, at) : add(start, at)];
}

/** The lines of a mark from an end: right across the face. */
export function acrossLines(mark: Mark, across: Length, size: PartSize): readonly ViewLine[] {
  return placesAlong(mark, size).map((at) => ({ mark, lies: 'across', at, from: ZERO_LENGTH, to: across }));
}

/** Marks that belong together, as one mortise or one tenon: of one joint, and of twins of one of them. */
export function together(marks: readonly Mark[]): readonly (readonly Mark[])[] {
  const key = ({ joint, which }: Mark): string => `${joint ?? ''}/${which ?? ''}`;
  return [...new Set(marks.map(key))].map((of) => marks.filter((mark) => key(mark) === of));
}

/** The least and the most of some places. */
export function spanOf(places: readonly Length[]): readonly [Length, Length] | undefined {
  return places.length === 0 ? undefined : [nanometres(Math.min(...places)), nanometres(Math.max(...places))];
}

export function isDepth({ tool }: Mark): boolean {
  return tool === 'depth flag';
}
