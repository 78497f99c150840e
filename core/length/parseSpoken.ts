import { success, type Result } from '../result.ts';
import { add, negate } from './arithmetic.ts';
import { lengthFault, type LengthFault } from './fault.ts';
import { NANOMETRES_PER_FOOT, type Length } from './length.ts';
import { parseLength } from './parseWritten.ts';
import { toLength, type WrittenUnit } from './quantity.ts';
import { readQuantity } from './spokenQuantity.ts';
import { plainWords } from './spokenNumber.ts';

export { readSpokenNumber } from './spokenNumber.ts';
export { SPOKEN_LENGTH_WORDS } from './spokenWords.ts';

const EXPECTED = 'a length such as “three and seven sixteenths inches” or “eighty seven point three millimetres”';

const UNIT_WORDS: ReadonlyMap<string, WrittenUnit> = new Map([
  ['inch', 'inch'], ['inches', 'inch'], ['foot', 'foot'], ['feet', 'foot'],
  ['mm', 'millimetre'], ['millimetre', 'millimetre'], ['millimetres', 'millimetre'], ['millimeter', 'millimetre'], ['millimeters', 'millimetre'],
  ['cm', 'centimetre'], ['centimetre', 'centimetre'], ['centimetres', 'centimetre'], ['centimeter', 'centimetre'], ['centimeters', 'centimetre'],
  ['metre', 'metre'], ['metres', 'metre'], ['meter', 'metre'], ['meters', 'metre'],
]);

type Reading = Result<Length, LengthFault>;
type BareUnit = 'inch' | 'millimetre';

/**
 * Reads a length from the words of an utterance, all of them: 'three and seven sixteenths', 'an inch and a half',
 * 'two foot four and a half', 'eighty seven point three millimetres'; figures ('3 7/16 in') are read as written.
 * A fraction of a sixteenth or the like without a unit is inches; a bare number takes `unitWhenNone`, and is refused
 * when that is not given. A trailing 'full' or 'scant' is dropped. What could mean two lengths is refused.
 */
export function readSpokenLength(words: readonly string[], unitWhenNone?: BareUnit): Reading {
  if (words.some((word) => /\d/.test(word))) return parseLength(words.join(' '), unitWhenNone);
  const plain = plainWords(words);
  const found = plain.join(' ');
  const told = ['full', 'scant'].includes(plain.at(-1) ?? '') ? plain.slice(0, -1) : plain;
  const negative = told[0] === 'minus';
  const size = negative ? told.slice(1) : told;
  if (size.length === 0) return lengthFault(found, 'no length was said', EXPECTED);
  const reading = readSize(size, found, unitWhenNone);
  return reading.ok && negative ? success(negate(reading.value)) : reading;
}

function readSize(words: readonly string[], found: string, bare?: BareUnit): Reading {
  const units = words.flatMap((word, index) => (UNIT_WORDS.has(word) ? [index] : []));
  const [first] = units;
  if (first === undefined) return readBare(words, found, bare);
  const unit = UNIT_WORDS.get(words[first] ?? '') ?? 'inch';
  const before = words.slice(0, first);
  const after = words.slice(first + 1);
  if (after.length === 0) return readInUnit(before, unit, found);
  if (unit === 'foot') return readFeetAndInches(before, after, found);
  if (units.length > 1) return lengthFault(found, 'there are two units in it', 'one length with one unit, or feet and inches');
  return readUnitAndFraction(before, after, unit, found);
}

/** No unit was said: a fraction that only an inch rule has is inches, anything else needs to be told. */
function readBare(words: readonly string[], found: string, bare?: BareUnit): Reading {
  const quantity = readQuantity(words, found);
  if (!quantity.ok) return quantity;
  const unit = bare ?? (quantity.value.division === undefined ? undefined : 'inch');
  if (unit === undefined) return lengthFault(found, 'the unit is missing', `“${found} inches” or “${found} millimetres”`);
  return toLength(quantity.value, unit, found);
}

/** 'three and a half inches', 'half an inch', 'seven sixteenths of an inch', 'an inch'. */
function readInUnit(words: readonly string[], unit: WrittenUnit, found: string): Reading {
  const articles = words.at(-1) === 'a' || words.at(-1) === 'an';
  const ofUnit = articles && words.length > 1;
  const counted = ofUnit ? words.slice(0, words.at(-2) === 'of' ? -2 : -1) : words;
  const quantity = articles && !ofUnit ? readQuantity(['one'], found) : readQuantity(counted, found);
  if (!quantity.ok) return quantity;
  if (ofUnit && quantity.value.division === undefined) return lengthFault(found, 'a whole number of what is not clear', EXPECTED);
  return toLength(quantity.value, unit, found);
}

/** 'an inch and a half', 'three inches and seven sixteenths', 'a metre and a half'. */
function readUnitAndFraction(before: readonly string[], after: readonly string[], unit: WrittenUnit, found: string): Reading {
  const whole = readInUnit(before, unit, found);
  if (!whole.ok) return whole;
  const fraction = after[0] === 'and' ? readQuantity(after.slice(1), found) : lengthFault(found, `“${after.join(' ')}” follows the unit`, EXPECTED);
  if (!fraction.ok) return fraction;
  const { division, numerator, denominator } = fraction.value;
  const wholeCount = readQuantity(before.length === 1 && /^an?$/.test(before[0] ?? '') ? ['one'] : before, found);
  if (division === undefined || numerator >= denominator || (wholeCount.ok && wholeCount.value.denominator !== 1n)) {
    return lengthFault(found, `“${after.slice(1).join(' ')}” after the unit is not a fraction under one`, 'a whole number, its unit, and one fraction: “an inch and a half”');
  }
  const part = toLength(fraction.value, unit, found);
  return part.ok ? success(add(whole.value, part.value)) : part;
}

/** 'two foot four and a half', 'six feet two inches', 'two feet and half an inch', 'a foot and a half'. */
function readFeetAndInches(before: readonly string[], after: readonly string[], found: string): Reading {
  if (after.join(' ') === 'and a half') return readUnitAndFraction(before, after, 'foot', found);
  const feet = readInUnit(before, 'foot', found);
  if (!feet.ok) return feet;
  if (feet.value % NANOMETRES_PER_FOOT !== 0) return lengthFault(found, 'the feet are not a whole number, and inches follow', 'whole feet before inches');
  const rest = after[0] === 'and' ? after.slice(1) : after;
  const saidInches = rest.some((word) => UNIT_WORDS.has(word));
  if (rest.some((word) => UNIT_WORDS.has(word) && UNIT_WORDS.get(word) !== 'inch')) return lengthFault(found, 'there are two units in it', 'feet and inches');
  const inches = readSize(rest, found, 'inch');
  if (!inches.ok) return inches;
  if (!saidInches && after[0] === 'and' && inches.value < NANOMETRES_PER_FOOT / 12) return lengthFault(found, 'that may be a part of a foot or of an inch', 'the unit said once more: “two foot and five eighths of an inch”');
  if (inches.value >= NANOMETRES_PER_FOOT) return lengthFault(found, 'twelve inches or more follow the feet', 'less than twelve inches after the feet');
  return success(add(feet.value, inches.value));
}
