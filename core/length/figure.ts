import { absolute, greatestCommonDivisor } from './arithmetic.ts';
import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from './length.ts';
import { roundLength, type Lost } from './round.ts';
import type { Rounding } from './rounding.ts';

/** A rounded size taken apart for drawing: whole inches and a stacked fraction, or millimetres and decimals. */
export interface LengthFigure {
  /** False for zero, also when a negative size was rounded to it. */
  readonly negative: boolean;
  readonly whole: number;
  /** In lowest terms; 0 over 1 when there is no fraction, and always in millimetres. */
  readonly numerator: number;
  readonly denominator: number;
  /** Digits after the point, without trailing zeros; absent in inches and when there are none. */
  readonly decimals?: string;
  readonly unit: Rounding['unit'];
  readonly lost: Lost;
}

export function lengthFigure(length: Length, rounding: Rounding): LengthFigure {
  const { rounded, lost } = roundLength(length, rounding);
  const size = absolute(rounded);
  const shared = { negative: rounded < 0, unit: rounding.unit, lost };
  return rounding.unit === 'inch' ? { ...shared, ...inchFigure(size, rounding.denominator) } : { ...shared, ...millimetreFigure(size) };
}

function inchFigure(size: Length, division: number): Pick<LengthFigure, 'whole' | 'numerator' | 'denominator'> {
  const whole = Math.floor(size / NANOMETRES_PER_INCH);
  const divisions = (size % NANOMETRES_PER_INCH) / (NANOMETRES_PER_INCH / division);
  const shared = greatestCommonDivisor(divisions, division);
  return { whole, numerator: divisions / shared, denominator: division / shared };
}

function millimetreFigure(size: Length): Pick<LengthFigure, 'whole' | 'numerator' | 'denominator' | 'decimals'> {
  const decimals = String(size % NANOMETRES_PER_MILLIMETRE).padStart(6, '0').replace(/0+$/, '');
  const whole = Math.floor(size / NANOMETRES_PER_MILLIMETRE);
  return { whole, numerator: 0, denominator: 1, ...(decimals === '' ? {} : { decimals }) };
}
