import { success, type Result } from '../result.ts';
import { lengthFault, type LengthFault } from './fault.ts';
import { sayNumber } from './sayNumber.ts';
import type { Quantity } from './quantity.ts';
import { DECIMAL_POINT, digitByDigit, wholeNumber } from './spokenNumber.ts';
import { DIVISION_WORDS } from './spokenWords.ts';

const EXPECTED = 'a number such as “three”, “three and seven sixteenths” or “three point four”';

/** One way to understand the words. A plain reading is how the trade says it; a bold one leaves an 'and' out. */
interface QuantityReading {
  readonly quantity: Quantity;
  readonly plain: boolean;
}

/**
 * Reads words that are one number: whole, decimal, fraction or both. All ways to understand them are tried; if the
 * plainest of them disagree the words are refused: 'twenty seven sixteenths' may be 27/16 or 20 and 7/16.
 */
export function readQuantity(words: readonly string[], found: string): Result<Quantity, LengthFault> {
  const readings = [...wholeReading(words), ...decimalReading(words), ...fractionReadings(words), ...mixedReadings(words)];
  const best = readings.some(({ plain }) => plain) ? readings.filter(({ plain }) => plain) : readings;
  const [first, other] = distinct(best.map(({ quantity }) => quantity));
  if (first === undefined) return lengthFault(found, whatIsWrong(words), EXPECTED);
  if (other !== undefined) return lengthFault(found, `that may be ${sayQuantity(first)} or ${sayQuantity(other)}`, 'an “and” between the whole number and the fraction');
  return success(first);
}

function wholeReading(words: readonly string[]): QuantityReading[] {
  const whole = wholeNumber(words);
  return whole === undefined ? [] : [{ quantity: { numerator: BigInt(whole), denominator: 1n }, plain: true }];
}

function decimalReading(words: readonly string[]): QuantityReading[] {
  const point = words.indexOf(DECIMAL_POINT);
  const whole = point === 0 ? 0 : wholeNumber(words.slice(0, Math.max(point, 0)));
  const decimals = point < 0 ? undefined : digitByDigit(words.slice(point + 1));
  if (whole === undefined || decimals === undefined) return [];
  return [{ quantity: { numerator: BigInt(`${whole}${decimals}`), denominator: 10n ** BigInt(decimals.length) }, plain: true }];
}

/** 'seven sixteenths', 'a quarter', 'half', 'nineteen sixteenths' (bold: a whole number may have lost its 'and'). */
function fractionReadings(words: readonly string[]): QuantityReading[] {
  const fraction = readFraction(words);
  if (fraction === undefined) return [];
  return [{ quantity: fraction, plain: fraction.numerator < fraction.denominator }];
}

/** 'three and seven sixteenths'; without 'and' it is bold, and only a number can precede. */
function mixedReadings(words: readonly string[]): QuantityReading[] {
  return words.flatMap((_, split) => {
    const whole = split === 0 ? undefined : wholeNumber(words.slice(0, split));
    const withAnd = words[split] === 'and';
    const fraction = whole === undefined ? undefined : readFraction(words.slice(withAnd ? split + 1 : split));
    if (whole === undefined || fraction === undefined || fraction.numerator >= fraction.denominator) return [];
    const numerator = BigInt(whole) * fraction.denominator + fraction.numerator;
    return [{ quantity: { ...fraction, numerator }, plain: withAnd }];
  });
}

function readFraction(words: readonly string[]): (Quantity & { readonly division: number }) | undefined {
  if (words.length === 1 && words[0] === 'half') return over(1, 2);
  if (words.length === 1 && words[0] === 'quarter') return over(1, 4);
  const [count, division] = splitDivision(words);
  if (division === undefined || count.length === 0) return undefined;
  const one = count.length === 1 && (count[0] === 'a' || count[0] === 'an');
  const numerator = one ? 1 : wholeNumber(count);
  return numerator === undefined || numerator === 0 ? undefined : over(numerator, division);
}

function over(numerator: number, division: number): Quantity & { readonly division: number } {
  return { numerator: BigInt(numerator), denominator: BigInt(division), division };
}

/** The counting words and the division at their end; thirty-seconds and sixty-fourths are two words and always one division. */
function splitDivision(words: readonly string[]): readonly [readonly string[], number | undefined] {
  const two = words.slice(-2).join(' ');
  const ofTwo = DIVISION_WORDS.get(two);
  if (words.length > 2 && ofTwo !== undefined) return [words.slice(0, -2), ofTwo];
  return ofTwo !== undefined && words.length === 2 ? [[], ofTwo] : [words.slice(0, -1), DIVISION_WORDS.get(words.at(-1) ?? '')];
}

function distinct(quantities: readonly Quantity[]): Quantity[] {
  return quantities.filter((one, index) => !quantities.slice(0, index).some((other) => one.numerator * other.denominator === other.numerator * one.denominator));
}

function sayQuantity({ numerator, denominator }: Quantity): string {
  const whole = numerator / denominator;
  const rest = numerator % denominator;
  return rest === 0n ? sayNumber(Number(whole)) : `${whole === 0n ? '' : `${whole} and `}${rest}/${denominator}`;
}

/** The likeliest slip in words that are no number. */
function whatIsWrong(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  if (words.length === 0) return 'no number was said';
  if (/^seconds?$/.test(last)) return 'seconds are a time; thirty-seconds of an inch are counted, as in “five thirty seconds”';
  if (splitDivision(words)[1] !== undefined) return `how many ${words.length > 1 ? words.slice(-2).join(' ') : last} is not clear`;
  if (words.includes(DECIMAL_POINT)) return 'the decimals are said digit by digit, after a whole number';
  if (wholeNumber(words.slice(0, 1)) !== undefined) return 'there are two numbers side by side, or words that belong to none';
  return 'that is no number';
}

/** 'half', 'a third', 'two thirds', 'three quarters' as a plain fraction under one, of any division; undefined otherwise. */
export function spokenFraction(words: readonly string[]): { readonly numerator: number; readonly denominator: number } | undefined {
  const fraction = readFraction(words);
  if (fraction === undefined || fraction.numerator >= fraction.denominator) return undefined;
  return { numerator: Number(fraction.numerator), denominator: fraction.division };
}
