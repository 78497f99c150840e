import { success, type Result } from '../result.ts';
import { add, negate } from './arithmetic.ts';
import { lengthFault, type LengthFault } from './fault.ts';
import { NANOMETRES_PER_FOOT, type Length } from './length.ts';
import { toLength, type Quantity, type WrittenUnit } from './quantity.ts';

const EXPECTED = 'a length such as 3 7/16, 3-7/16", 3.4375 in, 1\' 2 1/2" or 87.3 mm';
const LONGEST_TEXT = 80;

const NUMBER = String.raw`(?:(\d+)[\s-]+)?(\d+)\s*/\s*(\d+)|(\d+\.?\d*|\.\d+)`;
const ONE_UNIT = new RegExp(`^(?:${NUMBER})\\s*([a-z]+\\.?|["'])?$`);
const FEET_AND_INCHES = /^(.+?)\s*(?:'|(?:ft|foot|feet)\b\.?)\s*-?\s*(\S.*)$/;

const UNITS: ReadonlyMap<string, WrittenUnit> = new Map(Object.entries({
  inch: ['"', 'in', 'in.', 'inch', 'inches'],
  foot: ["'", 'ft', 'ft.', 'foot', 'feet'],
  millimetre: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  centimetre: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  metre: ['m', 'metre', 'metres', 'meter', 'meters'],
} satisfies Record<WrittenUnit, readonly string[]>).flatMap(([unit, spellings]) => spellings.map((spelling) => [spelling, unit as WrittenUnit] as const)));

/**
 * Reads a written length: fractions, decimals, feet and inches, millimetres, with any of the usual marks.
 * A fraction without a unit is inches. A whole number or a decimal without one takes `unitWhenNone`, and is refused
 * when that is not given. A trailing 'full' or 'scant' is dropped.
 */
export function parseLength(text: string, unitWhenNone?: 'inch' | 'millimetre'): Result<Length, LengthFault> {
  const found = text.trim().slice(0, LONGEST_TEXT);
  if (text.length > LONGEST_TEXT) return lengthFault(`${found}…`, 'that is too much for one length', EXPECTED);
  const plain = plainText(text).replace(/[\s,]+(?:full|scant)$/, '');
  if (plain === '') return lengthFault(found, 'nothing is written', EXPECTED);
  const unsigned = plain.replace(/^-\s*/, '');
  const size = readFeetAndInches(unsigned, found) ?? readOneUnit(unsigned, found, unitWhenNone);
  return size.ok && unsigned !== plain ? success(negate(size.value)) : size;
}

/** One spelling for each mark: ASCII primes, hyphens and slashes, and a space before a fraction written as one sign. */
function plainText(text: string): string {
  return text
    .replace(/[\u00bc-\u00be\u2150-\u215e\u2189]|[\u2070\u00b9\u00b2\u00b3\u2074-\u2079]+/g, (fraction) => ` ${fraction.normalize('NFKD')}`)
    .normalize('NFKC')
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2033\u201c\u201d\u02ba]|\u2032\u2032|\u2019\u2019|''/g, '"')
    .replace(/[\u2032\u2018\u2019\u02b9]/g, "'")
    .toLowerCase()
    .trim();
}

/** `1' 2 1/2"`; undefined when there are no feet with something after them. */
function readFeetAndInches(text: string, found: string): Result<Length, LengthFault> | undefined {
  const match = FEET_AND_INCHES.exec(text);
  if (match === null) return undefined;
  const [, feetText = '', inchText = ''] = match;
  if (!/^\d+$/.test(feetText)) return lengthFault(found, `“${feetText}” is no whole number of feet, and inches follow it`, 'whole feet before inches, as in 1\' 2 1/2"');
  const feet = readOneUnit(`${feetText}'`, found);
  const inches = readOneUnit(/["a-z]\.?$/.test(inchText) ? inchText : `${inchText}"`, found);
  if (!feet.ok) return feet;
  if (!inches.ok) return inches;
  if (!/(?:["]|in|in\.|inch|inches)$/.test(inchText) && /["'a-z]\.?$/.test(inchText)) return lengthFault(found, 'two units are mixed', 'inches after feet');
  if (inches.value >= NANOMETRES_PER_FOOT) return lengthFault(found, 'twelve inches or more follow the feet', 'less than twelve inches after the feet');
  return success(add(feet.value, inches.value));
}

function readOneUnit(text: string, found: string, unitWhenNone?: 'inch' | 'millimetre'): Result<Length, LengthFault> {
  const match = ONE_UNIT.exec(text);
  if (match === null) return lengthFault(found, whatIsWrong(text), EXPECTED);
  const [, whole, numerator, denominator, decimal, unitText] = match;
  if (/\d\s+-|-\s+\d/.test(text)) return lengthFault(found, 'the spaced dash may join or take away', '3-7/16 or 3 7/16 for three and seven sixteenths');
  const unit = unitText === undefined ? (decimal === undefined ? unitWhenNone ?? 'inch' : unitWhenNone) : UNITS.get(unitText);
  if (unit === undefined) {
    return unitText === undefined
      ? lengthFault(found, 'the unit is missing', `inches or millimetres, such as ${text} in or ${text} mm`)
      : lengthFault(found, `“${unitText}” is no unit known here`, 'in, ft, mm, cm or m');
  }
  if (decimal !== undefined) return toLength(decimalQuantity(decimal), unit, found);
  const over = { numerator: BigInt(numerator ?? 0), denominator: BigInt(denominator ?? 0), division: Number(denominator) };
  if (whole === undefined) return toLength(over, unit, found);
  if (over.denominator !== 0n && over.numerator >= over.denominator) return lengthFault(found, `${over.numerator}/${over.denominator} is no less than one, and a whole number stands before it`, 'a fraction under one after a whole number');
  return toLength({ ...over, numerator: BigInt(whole) * over.denominator + over.numerator }, unit, found);
}

function decimalQuantity(text: string): Quantity {
  const [whole = '', decimals = ''] = text.split('.');
  return { numerator: BigInt(`${whole}${decimals}`), denominator: 10n ** BigInt(decimals.length) };
}

/** The likeliest slip in a text that is no length. */
function whatIsWrong(text: string): string {
  if (/\d,\d/.test(text)) return 'a comma may mean thousands or decimals; write a point for decimals and nothing for thousands';
  if (!/\d/.test(text)) return 'there is no number in it';
  if (/\/\s*$|^\s*\//.test(text) || /\/.*\//.test(text)) return 'the fraction is not complete';
  if (/\.\d*\s*\/|\/\s*\d*\.|\.\d*\s+\d+\s*\//.test(text)) return 'decimals and a fraction are mixed';
  if (/^-/.test(text)) return 'there are two signs before the number';
  if (/\d\s+\d/.test(text)) return 'there are two numbers side by side';
  return 'that is no length';
}
