import { nanometres, ZERO_LENGTH, type Length } from './length.ts';

/** A plain number as a fraction in lowest terms, denominator positive: the quotient of two lengths is one of these. */
export interface Ratio {
  readonly numerator: number;
  readonly denominator: number;
}

export function add(...lengths: readonly Length[]): Length {
  return nanometres(lengths.reduce((sum, length) => sum + length, 0));
}

export function subtract(from: Length, taken: Length): Length {
  return nanometres(from - taken);
}

export function negate(length: Length): Length {
  return subtract(ZERO_LENGTH, length);
}

export function absolute(length: Length): Length {
  return nanometres(Math.abs(length));
}

/** Exact. `count` is a whole number; anything else is a bug and throws. */
export function timesWhole(length: Length, count: number): Length {
  return fractionOf(length, count, 1);
}

/** `numerator`/`denominator` of a length, to the nearest nanometre, half away from zero. Throws on a denominator of 0. */
export function fractionOf(length: Length, numerator: number, denominator: number): Length {
  return nanometres(Number(divideHalfAway(BigInt(length) * BigInt(numerator), BigInt(denominator))));
}

/** A length times a plain ratio, to the nearest nanometre, half away from zero. */
export function scale(length: Length, by: Ratio): Length {
  return fractionOf(length, by.numerator, by.denominator);
}

/**
 * Equal parts that add up to the whole again: they differ by at most one nanometre, and the odd nanometres
 * are spread along the row, so that no mark is ever more than one nanometre from its true place.
 * `count` is a whole number from 1; anything else is a bug and throws.
 */
export function shareOut(whole: Length, count: number): Length[] {
  if (!Number.isSafeInteger(count) || count < 1) throw new RangeError(`a length is shared into one part or more, not ${count}`);
  const base = Math.trunc(whole / count);
  const odd = Math.abs(whole % count);
  const given = (parts: number): number => Number((BigInt(parts) * BigInt(odd)) / BigInt(count));
  return Array.from({ length: count }, (_, index) =>
    nanometres(base + Math.sign(whole) * (given(index + 1) - given(index))));
}

/** How many times `by` goes into `length`, exactly. Throws when `by` is zero. */
export function ratio(length: Length, by: Length): Ratio {
  if (by === 0) throw new RangeError('nothing can be measured in lengths of zero');
  const shared = greatestCommonDivisor(Math.abs(length), Math.abs(by)) * Math.sign(by);
  return { numerator: length / shared || 0, denominator: by / shared };
}

/** Of two whole numbers from 0 up; 0 only for 0 and 0. */
export function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** Whole quotient, half away from zero. Throws on a divisor of 0. */
export function divideHalfAway(dividend: bigint, divisor: bigint): bigint {
  const negative = dividend < 0n !== divisor < 0n;
  const [n, d] = [dividend < 0n ? -dividend : dividend, divisor < 0n ? -divisor : divisor];
  const quotient = (2n * n + d) / (2n * d);
  return negative ? -quotient : quotient;
}
