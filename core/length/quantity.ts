import { success, type Result } from '../result.ts';
import { divideHalfAway } from './arithmetic.ts';
import { lengthFault, type LengthFault } from './fault.ts';
import { nanometres, NANOMETRES_PER_FOOT, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from './length.ts';

/** A plain number, exact, as it was written or said, before its unit is put to it. */
export interface Quantity {
  readonly numerator: bigint;
  readonly denominator: bigint;
  /** The denominator of the fraction as given; absent for whole numbers and decimals. */
  readonly division?: number;
}

export type WrittenUnit = 'inch' | 'foot' | 'millimetre' | 'centimetre' | 'metre';

/** Exact by definition: international inch and foot of 1959; metric prefixes (NIST SP 811, table 5 and B.6). */
const NANOMETRES_PER: Readonly<Record<WrittenUnit, number>> = {
  inch: NANOMETRES_PER_INCH,
  foot: NANOMETRES_PER_FOOT,
  millimetre: NANOMETRES_PER_MILLIMETRE,
  centimetre: 10 * NANOMETRES_PER_MILLIMETRE,
  metre: 1000 * NANOMETRES_PER_MILLIMETRE,
};

/** Divisions of an inch rule, and the decimal ones of gauges and calipers. */
const INCH_DIVISIONS: ReadonlySet<number> = new Set([2, 4, 8, 16, 32, 64, 10, 100, 1000]);
const METRIC_DIVISIONS: ReadonlySet<number> = new Set([2, 10, 100, 1000]);

/** Longer than any board: a slip of the finger or the tongue. */
const LONGEST = 100_000 * NANOMETRES_PER_MILLIMETRE;

export function isOnTheRule(division: number, unit: WrittenUnit): boolean {
  return (unit === 'inch' || unit === 'foot' ? INCH_DIVISIONS : METRIC_DIVISIONS).has(division);
}

/** To the nearest nanometre, half away from zero: only decimals finer than any gauge reads are touched by it. */
export function toLength(quantity: Quantity, unit: WrittenUnit, found: string): Result<Length, LengthFault> {
  const { numerator, denominator, division } = quantity;
  if (denominator === 0n) return lengthFault(found, 'nothing can be divided by zero', 'a denominator such as 2, 4, 8, 16, 32 or 64');
  if (division !== undefined && !isOnTheRule(division, unit)) {
    return unit === 'inch' || unit === 'foot'
      ? lengthFault(found, `no rule is divided in parts of 1/${division}`, 'halves, quarters, eighths, sixteenths, thirty-seconds or sixty-fourths, or decimals')
      : lengthFault(found, `a metric rule has no parts of 1/${division}`, 'decimals or halves in millimetres; or inches, said with their unit');
  }
  const count = divideHalfAway(numerator * BigInt(NANOMETRES_PER[unit]), denominator);
  if (count > BigInt(LONGEST)) return lengthFault(found, 'that is longer than any board', 'a length up to 100 metres (328 feet)');
  return success(nanometres(Number(count)));
}
