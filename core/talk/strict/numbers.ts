import { DIGIT_WORDS, sayNumber } from '../../length/sayNumber.ts';
import { all, either, NOTHING, optional, rarely } from './expression.ts';
import type { Expression } from './expression.ts';

/** What is said more rarely than its neighbours pays this, in hundredths of a natural logarithm. Guesses, checked by `npm run bench -- hearing`. */
export const RARE = 150;

const DECADE = 10;
const FIRST_DECADE = 20;
const MADE = new Map<string, Expression>();

/** Whole numbers from one to another, both among them, 0 to 99; one object for each pair. */
export function counted(from: number, to: number): Expression {
  const key = `${from} ${to}`;
  const made = MADE.get(key) ?? makeCounted(from, to);
  MADE.set(key, made);
  return made;
}

function makeCounted(from: number, to: number): Expression {
  const each = (low: number, high: number) => Array.from({ length: Math.max(0, high - low + 1) }, (_, index) => spoken(low + index));
  const whole = [20, 30, 40, 50, 60, 70, 80, 90].filter((ten) => ten >= from && ten + DECADE - 1 <= to);
  const first = whole[0] ?? to + 1;
  const past = first + whole.length * DECADE;
  const tens = either(...whole.map(spoken));
  return either(...each(from, Math.min(first - 1, to)), ...(whole.length > 0 ? [tens, all(tens, either(...each(1, DECADE - 1)))] : []), ...(past < FIRST_DECADE ? [] : each(past, to)));
}

/** 'a hundred', 'one hundred and five': to 199, which is longer than any bench. */
const HUNDRED = all(either('a', 'one'), 'hundred', optional(all(optional('and'), counted(1, 99))));
/** More than one, so that what follows is said of several: 2 to 199. */
export const SEVERAL = either(counted(2, 99), rarely(HUNDRED, RARE));
/** 1 to 999, hundreds with or without 'and'. */
export const WHOLE = either(counted(1, 99), all(either(counted(1, 9), 'a'), 'hundred', optional(all(optional('and'), counted(1, 99)))));

const ZERO = either('zero', rarely('oh', RARE));
const DIGIT = either('zero', 'oh', ...DIGIT_WORDS.slice(1));
/** 'point four three': to a thousandth, or to the ten-thousandth that ends every sixteenth of an inch, 'four three seven five'. */
export const POINT = all('point', DIGIT, optional(all(DIGIT, optional(all(DIGIT, optional(rarely('five', RARE)))))));
/** 'zero point oh five', 'point five': less than one. */
export const UNDER_ONE = all(either(ZERO, NOTHING), POINT);
/** 'point three', as in 'eighty seven point three'. */
export const ONE_DECIMAL = all('point', DIGIT);

/** How a division of the inch is said of one and of several. */
const DIVISIONS: readonly (readonly [division: number, one: string, several: string])[] = [[8, 'eighth', 'eighths'], [16, 'sixteenth', 'sixteenths'], [32, 'thirty second', 'thirty seconds'], [64, 'sixty fourth', 'sixty fourths']];
/** Up to here marks are counted on the tape as they come, 'ten sixteenths'; of finer ones nobody counts what has a shorter name. */
const COUNTED_ON_THE_TAPE = 16;

/** A fraction of the rule in its lowest terms, 'a half', 'seven sixteenths'; more rarely as it is counted on the tape, 'four eighths'. */
export const FRACTION = either('a half', 'one half', 'half', 'a quarter', 'one quarter', 'quarter', 'three quarters', rarely(either('one fourth', 'a fourth', 'three fourths'), RARE), ...DIVISIONS.flatMap(([division, one, several]) => [
  all(either(division === 8 ? 'an' : 'a', 'one'), one),
  all(numerators(division, 3), several),
  ...(division <= COUNTED_ON_THE_TAPE ? [rarely(all(numerators(division, 2), several), RARE)] : []),
]));

/** Every other one, under the division. */
function numerators(division: number, from: 2 | 3): Expression {
  return either(...Array.from({ length: division / 2 - 1 }, (_, index) => spoken(2 * index + from)));
}

export function spoken(count: number): string {
  return sayNumber(count).replaceAll('-', ' ');
}
