import { absolute, divideHalfAway } from './arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from './length.ts';
import type { Rounding } from './rounding.ts';

/** What rounding hid: the true size is a little more (full) or a little less (scant) than the one said. Trade words. */
export type Lost = 'exact' | 'full' | 'scant';

export interface RoundedLength {
  readonly rounded: Length;
  readonly lost: Lost;
}

/**
 * Below a micrometre nothing is called full or scant: that is the leftover of sharing a length in thirds,
 * not wood. A thousandth of an inch is 25 times as much.
 */
const UNNOTICEABLE = 1_000;

/** The smallest division that a rounding keeps: 1/32 in, 0.5 mm. */
export function divisionOf(rounding: Rounding): Length {
  return rounding.unit === 'inch' ? nanometres(NANOMETRES_PER_INCH / rounding.denominator) : rounding.step;
}

/**
 * To the nearest division, half away from zero. (NIST SP 811 B.7.1 makes an exact half even instead; half away
 * is what a person does with a rule, and it never rounds a size to less than it is.) Full and scant are told of
 * the size without its sign.
 */
export function roundLength(length: Length, rounding: Rounding): RoundedLength {
  const division = divisionOf(rounding);
  const steps = divideHalfAway(BigInt(length), BigInt(division));
  const rounded = nanometres(Number(steps) * division);
  const over = absolute(length) - absolute(rounded);
  return { rounded, lost: Math.abs(over) < UNNOTICEABLE ? 'exact' : over > 0 ? 'full' : 'scant' };
}
