import { success, type Result } from '../result.ts';
import { lengthFault, type LengthFault } from './fault.ts';
import { DIGIT_WORDS, SMALL_NUMBERS, TENS_NUMBERS } from './sayNumber.ts';

const EXPECTED_NUMBER = 'a whole number such as “four” or “thirty one”';

export const DECIMAL_POINT = 'point';
export const ZERO_WORDS: readonly string[] = ['zero', 'oh', 'nought', 'naught'];
export const NUMBER_WORDS: readonly string[] = [...SMALL_NUMBERS.keys(), ...TENS_NUMBERS.keys(), 'hundred', 'thousand', 'a', 'and'];

/**
 * Lower-case words without punctuation, hyphens read as spaces: what the recogniser gives already, and what a
 * typed sentence becomes.
 */
export function plainWords(words: readonly string[]): string[] {
  return words.join(' ').toLowerCase().replace(/[^a-z0-9'./]+/g, ' ').replace(/[.'](?= |$)/g, '').split(' ').filter((word) => word !== '');
}

/** The value of words that are one whole number and nothing else: 'thirty one', 'a hundred and five'; undefined otherwise. */
export function wholeNumber(words: readonly string[]): number | undefined {
  const thousand = words.indexOf('thousand');
  if (thousand < 0) return underThousand(words);
  const thousands = underThousand(words.slice(0, thousand));
  const rest = afterAnd(words.slice(thousand + 1));
  if (thousands === undefined || thousands === 0 || rest === undefined) return undefined;
  return thousands * 1000 + rest;
}

function underThousand(words: readonly string[]): number | undefined {
  const hundred = words.indexOf('hundred');
  if (hundred < 0) return underHundred(words);
  if (hundred !== 1) return undefined;
  const [first = ''] = words;
  const hundreds = first === 'a' ? 1 : SMALL_NUMBERS.get(first);
  const rest = afterAnd(words.slice(2));
  if (hundreds === undefined || hundreds < 1 || hundreds > 9 || rest === undefined || rest > 99) return undefined;
  return hundreds * 100 + rest;
}

/** What follows a hundred or a thousand: nothing, or a smaller number, with or without 'and'. */
function afterAnd(words: readonly string[]): number | undefined {
  if (words.length === 0) return 0;
  const rest = words[0] === 'and' ? words.slice(1) : words;
  const value = underThousand(rest);
  return value === 0 || rest[0] === 'a' ? undefined : value;
}

function underHundred(words: readonly string[]): number | undefined {
  const [first = '', second] = words;
  if (words.length === 1) return SMALL_NUMBERS.get(first) ?? TENS_NUMBERS.get(first) ?? (ZERO_WORDS.includes(first) ? 0 : undefined);
  const tens = TENS_NUMBERS.get(first);
  const units = second === undefined ? undefined : SMALL_NUMBERS.get(second);
  if (words.length !== 2 || tens === undefined || units === undefined || units < 1 || units > 9) return undefined;
  return tens + units;
}

/** The digits said one by one after the point; undefined when a word is no digit. */
export function digitByDigit(words: readonly string[]): string | undefined {
  const digits = words.map((word) => (ZERO_WORDS.includes(word) ? 0 : (DIGIT_WORDS as readonly string[]).indexOf(word)));
  return digits.length === 0 || digits.includes(-1) ? undefined : digits.join('');
}

/** Reads a whole number from words ('twenty five') or figures ('25'); refuses everything else with the reason. */
export function readSpokenNumber(words: readonly string[]): Result<number, LengthFault> {
  const plain = plainWords(words);
  const found = plain.join(' ');
  const only = plain[0];
  if (only === undefined) return lengthFault('', 'no number was said', EXPECTED_NUMBER);
  if (plain.length === 1 && /^\d{1,6}$/.test(only)) return success(Number(only));
  const value = wholeNumber(plain);
  return value === undefined ? lengthFault(found, 'that is not one whole number', EXPECTED_NUMBER) : success(value);
}
