import { divideHalfAway, fractionOf } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import { sideOfSquare } from './root.ts';

/** So many pieces of one kind that each may be off by the tolerance, either way and independently of each other. */
export interface Share {
  readonly tolerance: Length;
  readonly pieces: number;
  /** What an error in one of them does to the size: numerator / denominator of it; the sign makes no difference. */
  readonly factor: { readonly numerator: number; readonly denominator: number };
}

export interface Stack {
  /** All off the same way at once: the sum of |factor| · tolerance over all pieces. */
  readonly worst: Length;
  /** Each off its own way: the root of the sum of (factor · tolerance)² over all pieces. */
  readonly rootSumSquare: Length;
  /** For each share, how much of the square of `rootSumSquare` it makes: from 0 to 1, together 1, or all 0 where nothing is open. */
  readonly parts: readonly number[];
}

/** Both to the nearest nanometre; the root is never over the worst. */
export function stackOf(shares: readonly Share[]): Stack {
  const divisor = shares.reduce((common, { factor }) => leastCommonMultiple(common, BigInt(factor.denominator)), 1n);
  const terms = shares.map(({ tolerance, pieces, factor }) => {
    const each = magnitude(BigInt(tolerance) * BigInt(factor.numerator) * (divisor / BigInt(factor.denominator)));
    return { sum: each * BigInt(pieces), squares: each * each * BigInt(pieces) };
  });
  const total = terms.reduce((sum, { squares }) => sum + squares, 0n);
  return {
    worst: nanometres(Number(divideHalfAway(terms.reduce((sum, one) => sum + one.sum, 0n), divisor))),
    rootSumSquare: nanometres(Number(divideHalfAway(BigInt(sideOfSquare(total)), divisor))),
    parts: terms.map(({ squares }) => (total === 0n ? 0 : Number(squares) / Number(total))),
  };
}

/** How true each must be that all together hold the target: its tolerance in proportion. Undefined where nothing adds up to anything. */
export function tightened(tolerance: Length, together: Length, target: Length): Length | undefined {
  return together === 0 ? undefined : fractionOf(tolerance, target, together);
}

function magnitude(value: bigint): bigint {
  return value < 0n ? -value : value;
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small !== 0n) [large, small] = [small, large % small];
  return (a / large) * b;
}
