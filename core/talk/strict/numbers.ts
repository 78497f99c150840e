import { DIGIT_WORDS, sayNumber } from '../../length/sayNumber.ts';
import { all, either, NOTHING, optional, rarely } from './expression.ts';
import type { Expression } from './expression.ts';

const counted = (from: number, to: number) => either(...Array.from({ length: to - from + 1 }, (_, index) => sayNumber(from + index)));
const ONES = counted(1, 9);
const TENS = either(...[20, 30, 40, 50, 60, 70, 80, 90].map(sayNumber));

/** What is said more rarely than its neighbours pays this, in hundredths of a natural logarithm. Guesses, checked by `npm run bench -- hearing`. */
export const RARE = 150;

/** 1 to 99. */
export const UNDER_HUNDRED = either(counted(1, 19), TENS, all(TENS, ONES));

/** 1 to 999, hundreds with or without 'and': 'a hundred and five'. */
export const WHOLE = either(UNDER_HUNDRED, all(either(ONES, 'a'), 'hundred', optional(all(optional('and'), UNDER_HUNDRED))));

const ZERO = either('zero', rarely('oh', RARE));
const DIGIT = either('zero', 'oh', ...DIGIT_WORDS.slice(1));
const DECIMALS = all(DIGIT, optional(all(DIGIT, optional(all(DIGIT, optional(DIGIT))))));
/** 'eighty seven point three', 'zero point oh five', 'point five'. */
export const DECIMAL = all(either(WHOLE, ZERO, NOTHING), 'point', DECIMALS);

/** How a division of the inch is said of one and of several. */
const DIVISIONS: readonly (readonly [division: number, one: string, several: string])[] = [[4, 'quarter', 'quarters'], [8, 'eighth', 'eighths'], [16, 'sixteenth', 'sixteenths'], [32, 'thirty second', 'thirty seconds'], [64, 'sixty fourth', 'sixty fourths']];

/** A fraction of the rule: 'a half', 'seven sixteenths'. Nobody says four eighths, but it is heard. */
export const FRACTION = either('a half', 'one half', 'half', ...DIVISIONS.flatMap(([division, one, several]) => [
  all(either(division === 8 ? 'an' : 'a', 'one'), one),
  ...(division === 4 ? ['quarter', 'three quarters', 'three fourths', 'one fourth'] : numerators(division, several)),
]));

function numerators(division: number, several: string): Expression[] {
  const odd = Array.from({ length: division / 2 - 1 }, (_, index) => spoken(2 * index + 3));
  const even = Array.from({ length: division / 2 - 1 }, (_, index) => spoken(2 * index + 2));
  return [all(either(...odd), several), all(either(...even), several)];
}

/** 'three and seven sixteenths'. Leaving the 'and' out can mean two sizes, so it is not listened for. */
export const MIXED = all(WHOLE, 'and', FRACTION);

export function spoken(count: number): string {
  return sayNumber(count).replaceAll('-', ' ');
}
