import { NANOMETRES_PER_FOOT, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../length/length.ts';
import type { Rational } from './rational.ts';
import { product, rational, sum, ZERO } from './rational.ts';

/** A number as it is written in an expression, with its unit if it has one. */
export interface Literal {
  /** Nanometres with a unit, a plain number without. */
  readonly value: Rational;
  readonly hasUnit: boolean;
  /** How many characters it takes up. */
  readonly length: number;
}

const FEET = new Map([["'", true], ['′', true], ['ft', true], ['foot', true], ['feet', true]]);

/** Unit → nanometres. Words that stand here cannot be names of sizes. */
const UNITS: ReadonlyMap<string, number> = new Map([
  ...[...FEET.keys()].map((unit) => [unit, NANOMETRES_PER_FOOT] as const),
  ...['"', '″', 'in', 'inch', 'inches'].map((unit) => [unit, NANOMETRES_PER_INCH] as const),
  ...['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'].map((unit) => [unit, NANOMETRES_PER_MILLIMETRE] as const),
  ...['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'].map((unit) => [unit, 10 * NANOMETRES_PER_MILLIMETRE] as const),
  ...['m', 'metre', 'metres', 'meter', 'meters'].map((unit) => [unit, 1000 * NANOMETRES_PER_MILLIMETRE] as const),
]);

export function isUnit(word: string): boolean {
  return UNITS.has(word);
}

/** The fractions that Unicode has as one character (chapter 'Number Forms' and Latin-1). */
const VULGAR: ReadonlyMap<string, readonly [bigint, bigint]> = new Map([
  ['¼', [1n, 4n]], ['½', [1n, 2n]], ['¾', [3n, 4n]], ['⅓', [1n, 3n]], ['⅔', [2n, 3n]], ['⅕', [1n, 5n]], ['⅖', [2n, 5n]], ['⅗', [3n, 5n]],
  ['⅘', [4n, 5n]], ['⅙', [1n, 6n]], ['⅚', [5n, 6n]], ['⅛', [1n, 8n]], ['⅜', [3n, 8n]], ['⅝', [5n, 8n]], ['⅞', [7n, 8n]],
]);

const MIXED = /^(\d{1,12}) +(\d{1,6})\/(\d{1,6})(?![\d.])/u;
const MIXED_VULGAR = /^(\d{1,12})? *([¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/u;
const FRACTION = /^(\d{1,12})\/(\d{1,6})(?![\d.])/u;
const DECIMAL = /^(\d{1,12})(?:\.(\d{1,12}))?(?![\d.])/u;
const UNIT = /^ *(['′"″]|[a-z]+(?![A-Za-z0-9.]))/u;

/**
 * Reads `1 1/4 in`, `3/4 in`, `87.3 mm`, `1' 2 1/2"`, `4 ft`, `1½ in`, `2.5`, `1 1/2` from the start of a text.
 * A fraction (`3/4`) is one number only when a unit follows or whole inches go before it; else it is a division.
 * `undefined` when no number stands there (or one of more than twelve digits).
 */
export function readLiteral(text: string): Literal | undefined {
  const first = readOne(text);
  if (first === undefined || !first.feet) return first;
  const gap = /^ */u.exec(text.slice(first.length))?.[0].length ?? 0;
  const inches = readOne(text.slice(first.length + gap));
  if (inches?.unit !== NANOMETRES_PER_INCH) return first;
  return { value: sum(first.value, inches.value), hasUnit: true, length: first.length + gap + inches.length };
}

interface OneLiteral extends Literal {
  readonly unit: number | undefined;
  readonly feet: boolean;
}

function readOne(text: string): OneLiteral | undefined {
  const number = readMixed(text) ?? readFraction(text) ?? readDecimal(text);
  if (number === undefined) return undefined;
  const found = UNIT.exec(text.slice(number.length));
  const word = found?.[1] ?? '';
  const unit = UNITS.get(word);
  if (unit === undefined) return { ...number, hasUnit: false, unit, feet: false };
  const length = number.length + (found?.[0].length ?? 0);
  return { value: product(number.value, rational(BigInt(unit))), hasUnit: true, length, unit, feet: FEET.has(word) };
}

type BareNumber = Pick<Literal, 'value' | 'length'>;

function readMixed(text: string): BareNumber | undefined {
  const plain = MIXED.exec(text);
  if (plain !== null) {
    const [all, whole = '', numerator = '', denominator = ''] = plain;
    return mixed(BigInt(whole), BigInt(numerator), BigInt(denominator), all.length);
  }
  const vulgar = MIXED_VULGAR.exec(text);
  const fraction = VULGAR.get(vulgar?.[2] ?? '');
  if (vulgar === null || fraction === undefined) return undefined;
  return mixed(BigInt(vulgar[1] ?? 0), ...fraction, vulgar[0].length);
}

function mixed(whole: bigint, numerator: bigint, denominator: bigint, length: number): BareNumber | undefined {
  return denominator === 0n ? undefined : { value: sum(rational(whole), rational(numerator, denominator)), length };
}

function readFraction(text: string): BareNumber | undefined {
  const found = FRACTION.exec(text);
  if (found === null) return undefined;
  const [all, numerator = '', denominator = ''] = found;
  const unit = UNIT.exec(text.slice(all.length))?.[1] ?? '';
  return UNITS.has(unit) ? mixed(0n, BigInt(numerator), BigInt(denominator), all.length) : undefined;
}

function readDecimal(text: string): BareNumber | undefined {
  const found = DECIMAL.exec(text);
  if (found === null) return undefined;
  const [all, whole = '', decimals = ''] = found;
  const value = decimals === '' ? ZERO : rational(BigInt(decimals), 10n ** BigInt(decimals.length));
  return { value: sum(rational(BigInt(whole)), value), length: all.length };
}
