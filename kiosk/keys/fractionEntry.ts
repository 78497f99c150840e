import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../../core/length/length.ts';
import type { Length } from '../../core/length/length.ts';
import { failure, success } from '../../core/result.ts';
import type { Result } from '../../core/result.ts';

/**
 * A size as it is typed, press by press, in the order in which it is said: whole inches, 'and', the numerator, and one key for
 * the denominator. Plain data: the presses, so that taking one back is dropping it.
 */
export interface FractionEntry {
  readonly unit: 'inch' | 'millimetre';
  readonly presses: readonly Press[];
}

export const DENOMINATORS = [2, 4, 8, 16, 32, 64] as const;
export type Denominator = (typeof DENOMINATORS)[number];

export type Press =
  | { readonly digit: number }
  /** Between the whole inches and the fraction; the point of a metric size. */
  | 'and'
  /** The stroke of a fraction, from a number pad: the denominator's digits follow. */
  | 'over'
  | { readonly over: Denominator };

/** What the presses amount to. */
export interface Typed {
  readonly whole: string;
  readonly and: boolean;
  readonly numerator: string;
  readonly over: boolean;
  /** Digits of a denominator begun on a number pad, or all of it. */
  readonly denominator: string;
}

export const EMPTY_ENTRY: FractionEntry = { unit: 'inch', presses: [] };
/** A press that says again what is there already. */
const NOTHING_NEW = '';
const LONGEST_INCHES = 240;
const LONGEST_MILLIMETRES = 6096;

export function emptyEntry(unit: FractionEntry['unit']): FractionEntry {
  return { unit, presses: [] };
}

/** Adds one press, or says why it cannot be. */
export function press(entry: FractionEntry, next: Press): Result<FractionEntry, string> {
  const typed = typedSoFar(entry);
  const refusal = entry.unit === 'inch' ? refuseInch(typed, next) : refuseMillimetre(typed, next);
  if (refusal === NOTHING_NEW) return success(entry);
  return refusal === null ? success({ ...entry, presses: [...entry.presses, next] }) : failure(refusal);
}

export function takeBack(entry: FractionEntry): FractionEntry {
  return { ...entry, presses: entry.presses.slice(0, -1) };
}

/** The presses read from the left. Digits without an 'and' before the denominator are a numerator alone. */
export function typedSoFar(entry: FractionEntry): Typed {
  let typed: Typed = { whole: '', and: false, numerator: '', over: false, denominator: '' };
  for (const each of entry.presses) typed = read(typed, each);
  return typed;
}

function read(typed: Typed, next: Press): Typed {
  if (next === 'and') return { ...typed, and: true };
  if (next === 'over') return { ...onlyNumerator(typed), over: true };
  if ('over' in next) return { ...onlyNumerator(typed), over: true, denominator: String(next.over) };
  if (typed.over) return { ...typed, denominator: typed.denominator + String(next.digit) };
  if (typed.and) return { ...typed, numerator: typed.numerator + String(next.digit) };
  return { ...typed, whole: typed.whole + String(next.digit) };
}

const onlyNumerator = (typed: Typed): Typed => (typed.and ? typed : { ...typed, whole: '', numerator: typed.whole });

function refuseInch(typed: Typed, next: Press): string | null {
  if (next === 'and') {
    if (typed.over) return 'The fraction is there already. Take back a press to change it.';
    if (typed.and) return NOTHING_NEW;
    return typed.whole === '' ? 'First the whole inches, then "and". For a size under an inch leave "and" out.' : null;
  }
  if (next === 'over' || 'over' in next) return refuseDenominator(typed, next === 'over' ? undefined : next.over);
  if (typed.over) return refuseDenominatorDigit(typed, next.digit);
  if (typed.and) return typed.numerator.length >= 2 || typed.numerator + String(next.digit) === '0' || Number(typed.numerator + String(next.digit)) > 63 ? 'The top of the fraction is 1 to 63.' : null;
  return Number(typed.whole + String(next.digit)) > LONGEST_INCHES ? `The longest size is ${LONGEST_INCHES} inches. Press "and" before the fraction.` : null;
}

function refuseDenominator(typed: Typed, over: Denominator | undefined): string | null {
  const numerator = onlyNumerator(typed).numerator;
  if (typed.denominator !== '') return 'The fraction is there already. Take back a press to change it.';
  if (typed.over && over === undefined) return NOTHING_NEW;
  if (numerator === '') return 'First the top of the fraction, then its bottom: 5, then eighths.';
  if (over !== undefined && Number(numerator) >= over) return tooMany(numerator, over, typed.and);
  if (Number(numerator) > 63) return tooMany(numerator, 64, typed.and);
  return Number(numerator) === 0 ? 'Nothing over something is nothing. Take back the 0.' : null;
}

const tooMany = (numerator: string, over: number, and: boolean): string =>
  `${numerator} over ${over} is an inch or more.${and ? ' Take back a press.' : ' Press "and" between the whole inches and the fraction.'}`;

function refuseDenominatorDigit(typed: Typed, digit: number): string | null {
  const begun = typed.denominator + String(digit);
  const fits = DENOMINATORS.filter((each) => String(each).startsWith(begun));
  if (fits.length === 0) return 'The bottom of a fraction is 2, 4, 8, 16, 32 or 64.';
  const numerator = Number(typed.numerator);
  return fits.every((each) => numerator >= each) ? tooMany(typed.numerator, fits[0] ?? 64, typed.and) : null;
}

function refuseMillimetre(typed: Typed, next: Press): string | null {
  if (next === 'and') return typed.and ? NOTHING_NEW : null;
  if (next === 'over' || 'over' in next) return 'Millimetres take a point, not a fraction.';
  if (typed.and) return typed.numerator.length >= 1 ? 'Millimetres take one digit after the point.' : null;
  return Number(typed.whole + String(next.digit)) > LONGEST_MILLIMETRES ? `The longest size is ${LONGEST_MILLIMETRES} millimetres.` : null;
}

/** Every denominator is known by its first digit, so a number pad need not type the second: 6 is 64. */
export function denominatorOf(typed: Typed): Denominator | undefined {
  return typed.denominator === '' ? undefined : DENOMINATORS.find((each) => String(each).startsWith(typed.denominator));
}

/** The size typed, or what is still missing. */
export function entryLength(entry: FractionEntry): Result<Length, string> {
  const typed = typedSoFar(entry);
  if (entry.presses.length === 0) return failure('Type the size you measured.');
  if (entry.unit === 'millimetre') {
    return success(nanometres(Number(typed.whole) * NANOMETRES_PER_MILLIMETRE + Number(typed.numerator) * (NANOMETRES_PER_MILLIMETRE / 10)));
  }
  const whole = Number(typed.whole) * NANOMETRES_PER_INCH;
  if (!typed.and && !typed.over) return success(nanometres(whole));
  if (typed.numerator === '') return failure('And how much? Press the top of the fraction.');
  const denominator = denominatorOf(typed);
  if (denominator === undefined) return failure(`${typed.numerator} over what? Press the bottom of the fraction.`);
  const numerator = Number(typed.numerator);
  if (numerator >= denominator) return failure(tooMany(typed.numerator, denominator, typed.and));
  const length = whole + numerator * (NANOMETRES_PER_INCH / denominator);
  return length > LONGEST_INCHES * NANOMETRES_PER_INCH ? failure(`The longest size is ${LONGEST_INCHES} inches.`) : success(nanometres(length));
}
