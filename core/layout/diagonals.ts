import { absolute, divideHalfAway, subtract } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';
import { sideOfSquare, squared } from './root.ts';

/** A frame that should be a rectangle, seen so that one side is near: `along` is that side and the far one, `across` the other two. */
export interface Rectangle {
  readonly along: Length;
  readonly across: Length;
}

/** What the two diagonals of a frame say. The first runs from the near left corner to the far right one. */
export interface DiagonalCheck {
  readonly longer: 'first' | 'second' | 'neither';
  readonly difference: Length;
  /** What both read once the frame is square, with its sides as they are: √((first² + second²) / 2). */
  readonly whenSquare: Length;
  /** How far the clamp along the longer diagonal has to close. */
  readonly clampCloses: Length;
  /** Only where the sides are known. */
  readonly sides?: {
    /** How far the far side stands to the right of the near one; to the left when negative. */
    readonly farSideRight: Length;
    /** The corners on the longer diagonal are that much under 90 degrees, the others that much over. */
    readonly offDegrees: number;
    /** What the sides alone make of the diagonal: √(along² + across²). */
    readonly diagonal: Length;
  };
}

/**
 * Opposite sides are taken as equal, so that the frame is a parallelogram. Then first² + second² = 2 (along² + across²) (the parallelogram law), and the
 * far side stands (first² − second²) / (4 · along) to the right. Lengths to the nearest nanometre. Faults: sizes of nothing; diagonals that no frame
 * with these sides has.
 */
export function checkDiagonals(first: Length, second: Length, rectangle?: Rectangle): Result<DiagonalCheck, InputFault> {
  const fault = faultOf(first, second, rectangle);
  if (fault) return failure(fault);
  const whenSquare = sideOfSquare(divideHalfAway(squared(first) + squared(second), 2n));
  return success({
    longer: first > second ? 'first' : second > first ? 'second' : 'neither',
    difference: absolute(subtract(first, second)),
    whenSquare,
    clampCloses: subtract(nanometres(Math.max(first, second)), whenSquare),
    ...(rectangle ? { sides: shear(first, second, rectangle) } : {}),
  });
}

function shear(first: Length, second: Length, { along, across }: Rectangle): NonNullable<DiagonalCheck['sides']> {
  const squares = squared(first) - squared(second);
  const cosine = Number(squares) / (4 * along * across);
  return {
    farSideRight: nanometres(Number(divideHalfAway(squares, 4n * BigInt(along)))),
    offDegrees: (Math.asin(Math.abs(cosine)) * 180) / Math.PI,
    diagonal: diagonalOf({ along, across }),
  };
}

/** The diagonal of the true rectangle: √(along² + across²), to the nearest nanometre. */
export function diagonalOf({ along, across }: Rectangle): Length {
  return sideOfSquare(squared(along) + squared(across));
}

function faultOf(first: Length, second: Length, rectangle: Rectangle | undefined): InputFault | undefined {
  if (first <= 0) return { key: 'first', message: 'A diagonal is more than nothing: measure it again.' };
  if (second <= 0) return { key: 'second', message: 'A diagonal is more than nothing: measure it again.' };
  if (!rectangle) return undefined;
  const { along, across } = rectangle;
  if (along <= 0) return { key: 'along', message: 'A side is more than nothing.' };
  if (across <= 0) return { key: 'across', message: 'A side is more than nothing.' };
  const [least, most] = [nanometres(Math.abs(along - across)), nanometres(along + across)];
  const wrong = [first, second].findIndex((diagonal) => diagonal <= least || diagonal >= most);
  if (wrong < 0) return undefined;
  return { key: wrong === 0 ? 'first' : 'second', message: telling`With sides of ${along} and ${across} a diagonal lies between ${least} and ${most}, not at ${wrong === 0 ? first : second}. Measure again, corner to corner.` };
}
