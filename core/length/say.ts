import { absolute } from './arithmetic.ts';
import { lengthFigure, type LengthFigure } from './figure.ts';
import { nanometres, NANOMETRES_PER_FOOT, type Length } from './length.ts';
import { DIGIT_WORDS, sayNumber, sayOrdinal } from './sayNumber.ts';
import { roundLength } from './round.ts';
import type { Rounding } from './rounding.ts';

export { sayNumber, sayOrdinal } from './sayNumber.ts';

export interface SayLengthOptions {
  /** Whether the unit is said; it is by default. */
  readonly unit?: boolean;
  /** Whole feet first; only when asked for, and only in inches. */
  readonly feet?: boolean;
}

/**
 * 'thirty-one, and five eighths inches, full': for the ear, a comma is a pause, the unit comes once.
 * Read back by readSpokenLength, hyphens and commas dropped.
 */
export function sayLength(length: Length, rounding: Rounding, { unit = true, feet = false }: SayLengthOptions = {}): string {
  const { rounded, lost } = roundLength(length, rounding);
  const size = absolute(rounded);
  const sized = rounding.unit === 'millimetre' ? sayMillimetres(lengthFigure(size, rounding), unit)
    : feet && size >= NANOMETRES_PER_FOOT ? sayFeet(size, rounding)
      : sayInches(lengthFigure(size, rounding), unit);
  return `${rounded < 0 ? 'minus ' : ''}${sized}${lost === 'exact' ? '' : `, ${lost}`}`;
}

function sayInches({ whole, numerator, denominator }: LengthFigure, unit: boolean): string {
  if (numerator === 0) return `${sayNumber(whole)}${unit ? inches(whole) : ''}`;
  const fraction = sayFraction(numerator, denominator);
  if (whole > 0) return `${sayNumber(whole)}, and ${fraction}${unit ? ' inches' : ''}`;
  if (!unit) return fraction;
  return denominator === 2 ? 'half an inch' : `${fraction} of an inch`;
}

function sayFeet(size: Length, rounding: Rounding): string {
  const feet = Math.floor(size / NANOMETRES_PER_FOOT);
  const rest = nanometres(size % NANOMETRES_PER_FOOT);
  const said = `${sayNumber(feet)} ${feet === 1 ? 'foot' : 'feet'}`;
  if (rest === 0) return said;
  const figure = lengthFigure(rest, rounding);
  return `${said}, ${figure.whole === 0 ? 'and ' : ''}${sayInches(figure, true)}`;
}

function sayMillimetres({ whole, decimals = '' }: LengthFigure, unit: boolean): string {
  const point = decimals === '' ? '' : ` point ${sayDigits(decimals)}`;
  const name = whole === 1 && decimals === '' ? ' millimetre' : ' millimetres';
  return `${sayNumber(whole)}${point}${unit ? name : ''}`;
}

/** 'five eighths', 'a half', 'one sixteenth', 'three quarters'. */
function sayFraction(numerator: number, denominator: number): string {
  if (denominator === 2) return 'a half';
  const division = denominator === 4 ? 'quarter' : sayOrdinal(denominator);
  return `${sayNumber(numerator)} ${division}${numerator === 1 ? '' : 's'}`;
}

/**
 * Digit by digit, for when fifteen and fifty will not do: 'three, one, and one, five, over, three, two, inches',
 * 'eight, zero, three, point, five, millimetres'.
 */
export function sayLengthDigits(length: Length, rounding: Rounding): string {
  const { negative, whole, numerator, denominator, decimals, unit, lost } = lengthFigure(length, rounding);
  const fraction = numerator === 0 ? '' : `${sayDigits(numerator, ', ')}, over, ${sayDigits(denominator, ', ')}`;
  const figures = fraction === '' ? sayDigits(whole, ', ') : whole === 0 ? fraction : `${sayDigits(whole, ', ')}, and ${fraction}`;
  const point = decimals === undefined ? '' : `, point, ${sayDigits(decimals, ', ')}`;
  return `${negative ? 'minus, ' : ''}${figures}${point}, ${unit === 'inch' ? 'inches' : 'millimetres'}${lost === 'exact' ? '' : `, ${lost}`}`;
}

function sayDigits(digits: string | number, between = ' '): string {
  return Array.from(String(digits), (digit) => DIGIT_WORDS[Number(digit)] ?? '').join(between);
}

function inches(whole: number): string {
  return whole === 1 ? ' inch' : ' inches';
}
