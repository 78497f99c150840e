import { all, either, optional, rarely } from './expression.ts';
import { DECIMAL, RARE, UNDER_HUNDRED, WHOLE } from './numbers.ts';

const SCALE = optional(rarely(either('celsius', 'fahrenheit'), RARE));

/** 'five degrees', 'minus two degrees', 'fifty four degrees fahrenheit'. */
export const DEGREES = all(optional(rarely('minus', RARE)), either(UNDER_HUNDRED, rarely('zero', RARE)), either('degrees', rarely('degree', RARE)), SCALE);

/** 'eighty percent', 'nine point five percent'. */
export const PERCENT = all(either(UNDER_HUNDRED, rarely(either('a hundred', 'one hundred', DECIMAL), RARE)), 'percent');

/** 'eight hundred pounds', 'one thousand pounds'. */
export const POUNDS = all(either(WHOLE, all(WHOLE, 'thousand', optional(all(optional('and'), WHOLE)))), either('pounds', rarely('kilograms', RARE)));

/** 'eight hundred grams', 'one thousand and fifty grams'. */
export const GRAMS = all(either(WHOLE, all(WHOLE, 'thousand', optional(all(optional('and'), WHOLE)))), 'grams');
