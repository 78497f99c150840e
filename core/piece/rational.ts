/** Exact fractions: every expression is worked out in these and rounded once, at its end. */
export interface Rational {
  readonly numerator: bigint;
  /** Always above zero; the fraction is in lowest terms. */
  readonly denominator: bigint;
}

/** A fraction in lowest terms. Throws on a denominator of zero: divide only after looking. */
export function rational(numerator: bigint, denominator: bigint = 1n): Rational {
  if (denominator === 0n) throw new RangeError('a fraction over zero');
  const common = greatestCommonDivisor(numerator, denominator);
  const sign = denominator < 0n ? -1n : 1n;
  return { numerator: (sign * numerator) / common, denominator: (sign * denominator) / common };
}

export const ZERO = rational(0n);

export function sum(a: Rational, b: Rational): Rational {
  return rational(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

export function negative(a: Rational): Rational {
  return { numerator: -a.numerator, denominator: a.denominator };
}

export function product(a: Rational, b: Rational): Rational {
  return rational(a.numerator * b.numerator, a.denominator * b.denominator);
}

/** `undefined` when b is zero. */
export function quotient(a: Rational, b: Rational): Rational | undefined {
  if (b.numerator === 0n) return undefined;
  return rational(a.numerator * b.denominator, a.denominator * b.numerator);
}

/** To the nearest whole number, half away from zero. */
export function roundHalfAway(a: Rational): bigint {
  const size = a.numerator < 0n ? -a.numerator : a.numerator;
  const rounded = (2n * size + a.denominator) / (2n * a.denominator);
  return a.numerator < 0n ? -rounded : rounded;
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [large, small] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (small !== 0n) [large, small] = [small, large % small];
  return large;
}
