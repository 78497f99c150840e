import { all, either, NOTHING, optional } from './expression.ts';
import type { Expression } from './expression.ts';
import { DECIMAL, FRACTION, MIXED, UNDER_HUNDRED, WHOLE } from './numbers.ts';

const INCHES = either('inches', 'inch');
const UNDER_TWELVE = either('one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven');
const IN_FEET = all(either(UNDER_HUNDRED, 'a'), either('foot', 'feet'), either(NOTHING, 'and a half', all(UNDER_TWELVE, optional(all('and', FRACTION)), optional(INCHES))));
const SMALL = all(either(WHOLE, 'a', DECIMAL), either('thou', 'thousandth', 'thousandths'), optional('of an inch'));
const PARTS_OF_AN_INCH = either(all(FRACTION, optional(either('of an inch', 'inch'))), 'half an inch', all(either('a', 'one', UNDER_TWELVE), either('tenth', 'tenths', 'hundredth', 'hundredths'), 'of an inch'));
const INCH_AND_A_PART = all(either(WHOLE, 'an'), INCHES, optional(all('and', FRACTION)));
const METRIC_UNITS = either('millimeters', 'millimeter', 'centimeters', 'centimeter', 'meters', 'meter');
const IN_METRIC = either(all(either(WHOLE, DECIMAL), METRIC_UNITS), all('a', either('millimeter', 'meter')), 'half a millimeter');

/** A length as it is said in the unit the bench is set to; the other unit costs a little. */
export const LENGTHS: { readonly inch: Expression; readonly millimetre: Expression } = {
  inch: lengths(all(either(MIXED, WHOLE, DECIMAL), optional('inches')), IN_METRIC),
  millimetre: lengths(all(either(WHOLE, DECIMAL), optional(METRIC_UNITS)), all(MIXED, optional('inches'))),
};

function lengths(usual: Expression, other: Expression): Expression {
  return either(usual, PARTS_OF_AN_INCH, INCH_AND_A_PART, IN_FEET, SMALL, 'zero', other);
}

const MINUTES = either('minutes', 'minute');
const HOURS = either('hours', 'hour');
/** 'thirty minutes', 'an hour and a half', 'two hours and ten minutes', 'a quarter of an hour', 'three days'. */
export const DURATION = either(
  all(either(UNDER_HUNDRED, all(UNDER_HUNDRED, 'and a half')), MINUTES), 'a minute', 'a minute and a half', 'half a minute',
  'half an hour', 'a quarter of an hour', 'three quarters of an hour',
  all(either(UNDER_HUNDRED, 'an'), HOURS, optional(either('and a half', 'and a quarter', 'and three quarters', all(optional('and'), UNDER_HUNDRED, MINUTES)))),
  all(UNDER_HUNDRED, 'and a half hours'),
  all(UNDER_HUNDRED, 'seconds'), all(either(UNDER_HUNDRED, 'a'), either('days', 'day')), all(either(UNDER_HUNDRED, 'a'), either('weeks', 'week')),
);

/** Parts of a size that are asked for: thirds and fifths too. */
export const FRACTION_OF = either(FRACTION, 'a third', 'one third', 'two thirds', ...['fifth', 'sixth', 'seventh', 'ninth', 'tenth'].map((part) => all(either('a', 'one'), part)), ...['two', 'three', 'four'].map((count) => `${count} fifths`));
