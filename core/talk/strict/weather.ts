import type { TemperatureScale } from '../../wood/temperature.ts';
import { all, either, optional, rarely } from './expression.ts';
import type { Expression } from './expression.ts';
import { counted, ONE_DECIMAL, RARE } from './numbers.ts';

/** What a shop and its glue come to, in each scale; who forgets that the bench is set to the other is heard too, rather than taken for colder. */
const CELSIUS = either(all(either(counted(2, 45), rarely(either('zero', counted(46, 99)), RARE)), 'degrees'), 'one degree', rarely(all('minus', counted(2, 30), 'degrees'), RARE));
const FAHRENHEIT = all(counted(2, 99), 'degrees');

/** 'five degrees', 'minus two degrees', 'fifty four degrees fahrenheit', in the scale that the bench is set to. */
export function degreesIn(scale: TemperatureScale): Expression {
  const [usual, other] = scale === 'celsius' ? [CELSIUS, FAHRENHEIT] as const : [FAHRENHEIT, CELSIUS] as const;
  return either(all(usual, optional(rarely(scale, RARE))), rarely(all(other, scale === 'celsius' ? 'fahrenheit' : 'celsius'), RARE));
}

/** Of the air: 'eighty percent'. */
export const HUMIDITY = all(either(counted(5, 99), rarely(either('a hundred', 'one hundred'), RARE)), 'percent');

/** Of wood: 'nine percent', 'nine point five percent'. */
export const MOISTURE = all(counted(3, 35), optional(rarely(ONE_DECIMAL, RARE)), 'percent');

/** Of parts: 'eight hundred grams', 'one thousand and fifty grams'. */
const HUNDREDS = all(counted(1, 9), 'hundred', optional(all(optional('and'), counted(1, 99))));
export const GRAMS = all(either(counted(10, 99), HUNDREDS, all(counted(1, 19), 'thousand', optional(all(optional('and'), either(counted(1, 99), HUNDREDS))))), 'grams');

/** Of clamps: 'eight hundred pounds', 'one thousand two hundred pounds'. */
const ROUND_HUNDREDS = all(either(counted(1, 9), 'a'), 'hundred', optional(all(optional('and'), 'fifty')));
export const POUNDS = all(either(counted(20, 99), ROUND_HUNDREDS, all(either(counted(1, 9), 'a'), 'thousand', optional(all(optional('and'), ROUND_HUNDREDS)))), either('pounds', rarely('kilograms', RARE)));
