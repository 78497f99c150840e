import { absolute, subtract } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import type { FaceReading, ReadingKind, TruedFace } from './readings.ts';

/** The next thing to hold against the board, and where. */
export interface WantedReading {
  readonly what: ReadingKind;
  readonly fromEnd: Length;
}

/** A place along the board as it is said. */
export type Spot = Length | 'marked end' | 'middle' | 'far end';

/** Where that is: the guide's own first, middle or last place, or the length from the marked end. */
export function placeAt(spot: Spot, stations: readonly Length[]): Length {
  switch (spot) {
    case 'marked end': return stations[0] ?? ZERO_LENGTH;
    case 'middle': return stations[(stations.length - 1) / 2] ?? ZERO_LENGTH;
    case 'far end': return stations.at(-1) ?? ZERO_LENGTH;
    default: return spot;
  }
}

/** Up to this length three places tell enough, then five, then seven: a straightedge's length apart at most. Common practice, no source. */
const FEW_UP_TO = nanometres(24 * NANOMETRES_PER_INCH);
const MORE_UP_TO = nanometres(48 * NANOMETRES_PER_INCH);
/** So far in from the ends, where an end is not splintered; of a short board an eighth of it. */
const INSET = NANOMETRES_PER_INCH;

/**
 * The places at which a board of that length is read, from the marked end on: near each end, in the middle, and between; an odd number, so that the middle is one of
 * them. Those between lie on whole half inches, or centimetres.
 */
export function stationsFor(length: Length, unit: Rounding['unit']): readonly Length[] {
  const inset = Math.min(INSET, Math.round(length / 8));
  const count = length <= FEW_UP_TO ? 3 : length <= MORE_UP_TO ? 5 : 7;
  const step = length <= FEW_UP_TO / 3 ? 1 : unit === 'inch' ? NANOMETRES_PER_INCH / 2 : 10 * NANOMETRES_PER_MILLIMETRE;
  return Array.from({ length: count }, (_, index) => {
    const at = inset + ((length - 2 * inset) * index) / (count - 1);
    return nanometres(index === 0 || index === count - 1 ? Math.round(at) : Math.round(at / step) * step);
  });
}

/** What the guide can be after: one side of a board, or the board as a whole. */
export type Asked = TruedFace | 'thickness' | 'diagonals';

/**
 * All that the guide asks for on one side, in its order. Of a face: sticks at the middle and the far end (the near one stays at the first place), the straightedge along
 * the middle at every place, and across at both ends and the middle. Of an edge: the square, then the straightedge. Of the thickness: calipers at every place. Of the diagonals: both.
 */
export function wantedOn(face: Asked, stations: readonly Length[]): readonly WantedReading[] {
  const at = (what: ReadingKind, places: readonly Length[]): readonly WantedReading[] => places.map((fromEnd) => ({ what, fromEnd }));
  const [first, middle, last] = [stations.slice(0, 1), stations.slice((stations.length - 1) / 2, (stations.length + 1) / 2), stations.slice(-1)];
  switch (face) {
    case 'face': case 'other face':
      return [...at('sticks', [...last, ...middle]), ...at('along', stations), ...at('across', [...first, ...middle, ...last])];
    case 'edge': case 'other edge':
      return [...at('square', stations), ...at('along', stations)];
    case 'thickness':
      return at('thickness', stations);
    case 'diagonals':
      return [...at('first diagonal', [ZERO_LENGTH]), ...at('second diagonal', [ZERO_LENGTH])];
  }
}

/** Two places that count as one: within a quarter of the way to the next. */
export function isNear(one: Length, other: Length, stations: readonly Length[]): boolean {
  return absolute(subtract(one, other)) * 4 <= subtract(stations[1] ?? ZERO_LENGTH, stations[0] ?? ZERO_LENGTH);
}

/** What is still to be read. A reading of the same kind within a quarter of the way to the next place counts for a place. */
export function stillWanted(wanted: readonly WantedReading[], stations: readonly Length[], taken: readonly FaceReading[]): readonly WantedReading[] {
  return wanted.filter((one) => !taken.some(({ what, fromEnd }) => what === one.what && isNear(fromEnd, one.fromEnd, stations)));
}
