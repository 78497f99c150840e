import { add, subtract } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';
import { sideOfSquare } from './root.ts';

/** A frame with four sides of any length; corners A, B, C, D going round. */
export interface FourSided {
  readonly ab: Length;
  readonly bc: Length;
  readonly cd: Length;
  readonly da: Length;
  /** The diagonal that is measured. */
  readonly ac: Length;
  /** The other one, which four sides and a diagonal already fix, as long as the frame lies flat. */
  readonly bd?: Length;
}

export const CORNERS = ['a', 'b', 'c', 'd'] as const;
export type Corner = (typeof CORNERS)[number];

export interface FourSidedCheck {
  readonly corners: readonly {
    readonly corner: Corner;
    readonly degrees: number;
    readonly shorterSide: Length;
    /** How far the shorter side leans out at its end, over square: positive where the corner is wider than 90 degrees. */
    readonly leans: Length;
  }[];
  /** What the other diagonal is, if the frame lies flat. */
  readonly otherDiagonal: Length;
  /** The measured one less that: short of it is wind, over it is a mismeasure. */
  readonly otherDiagonalOff?: Length;
  /**
   * What both diagonals are in the symmetrical frame with these sides: √(ab·cd + bc·da) (Ptolemy). Only where opposite sides are equal, in one pair at
   * least: a rectangle, or a frame that tapers alike on both sides.
   */
  readonly whenSymmetrical?: Length;
}

/**
 * Four sides and a diagonal fix a flat frame: each of the two triangles by the law of cosines. Angles in degrees; lengths to the nearest nanometre, by
 * plain floating point, good to a few nanometres. Faults: sides that do not close; a corner that points inwards.
 */
export function checkFourSided(given: FourSided): Result<FourSidedCheck, InputFault> {
  const { ab, bc, cd, da, ac, bd } = given;
  const fault = sideFault(given) ?? closingFault('ab and bc', ab, bc, ac) ?? closingFault('cd and da', cd, da, ac);
  if (fault) return failure(fault);
  const atA = angle(ab, ac, bc) + angle(da, ac, cd);
  const atC = angle(bc, ac, ab) + angle(cd, ac, da);
  const angles: Readonly<Record<Corner, number>> = { a: atA, b: angle(ab, bc, ac), c: atC, d: angle(cd, da, ac) };
  const inward = CORNERS.find((corner) => angles[corner] >= Math.PI);
  if (inward !== undefined) return failure({ key: 'ac', message: `With this diagonal the corner ${inward.toUpperCase()} points inwards. Measure it again, corner to corner.` });
  const otherDiagonal = nanometres(Math.round(Math.sqrt(ab ** 2 + da ** 2 - 2 * ab * da * Math.cos(atA))));
  const meeting: Readonly<Record<Corner, readonly [Length, Length]>> = { a: [da, ab], b: [ab, bc], c: [bc, cd], d: [cd, da] };
  return success({
    corners: CORNERS.map((corner) => {
      const shorterSide = nanometres(Math.min(...meeting[corner]));
      return { corner, degrees: (angles[corner] * 180) / Math.PI, shorterSide, leans: nanometres(-Math.round(shorterSide * Math.cos(angles[corner]))) };
    }),
    otherDiagonal,
    ...(bd === undefined ? {} : { otherDiagonalOff: subtract(bd, otherDiagonal) }),
    ...(ab === cd || bc === da ? { whenSymmetrical: sideOfSquare(BigInt(ab) * BigInt(cd) + BigInt(bc) * BigInt(da)) } : {}),
  });
}

/** Between two sides of a triangle, in radians, opposite the third. */
function angle(one: Length, other: Length, opposite: Length): number {
  return Math.acos((one ** 2 + other ** 2 - opposite ** 2) / (2 * one * other));
}

function sideFault({ ab, bc, cd, da, ac, bd = ac }: FourSided): InputFault | undefined {
  const wrong = Object.entries({ ab, bc, cd, da, ac, bd }).find(([, length]) => length <= 0);
  return wrong && { key: wrong[0], message: 'It must be more than nothing: measure it again.' };
}

function closingFault(named: string, one: Length, other: Length, diagonal: Length): InputFault | undefined {
  const [least, most] = [nanometres(Math.abs(one - other)), add(one, other)];
  if (diagonal > least && diagonal < most) return undefined;
  return { key: 'ac', message: telling`Sides ${named}, ${one} and ${other}, do not close on a diagonal of ${diagonal}: it lies between ${least} and ${most}. Measure again.` };
}
