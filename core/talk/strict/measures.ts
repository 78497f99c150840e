import { all, either, NOTHING, optional, rarely } from './expression.ts';
import type { Expression } from './expression.ts';
import { counted, FRACTION, ONE_DECIMAL, POINT, RARE, SEVERAL, UNDER_ONE, WHOLE } from './numbers.ts';

/** What is said of lengths in the unit that the bench is set to; what is said in the other one costs more. */
export interface LengthsOfUnit {
  /** A size of something: to a little over sixteen feet. */
  readonly length: Expression;
  /** To a foot: what is trimmed, added, set out, or thick. */
  readonly small: Expression;
  /** Nothing, or less than an inch: a gap, a kerf, a shaving. */
  readonly gap: Expression;
  /** From the end of a board, nothing among them. */
  readonly along: Expression;
}

/** 'three quarters of an inch', 'half an inch', 'a quarter inch' */
const PART = either(all(FRACTION, optional(either('of an inch', rarely('inch', RARE)))), 'half an inch');
const AND_A_PART = optional(all('and', FRACTION));

/** What may follow the count of several inches; what has the same beginning is said once, or the graph takes long to make. */
const AFTER_SEVERAL = either(all(AND_A_PART, optional('inches')), all('inches and', FRACTION));
const AFTER_ONE = either(NOTHING, all('and', FRACTION, optional('inches')), all('inch', AND_A_PART));
/** A rule of inches has fractions. */
const DECIMALS = rarely(all(POINT, optional('inches')), RARE);

/** 'thirty one and five eighths inches', 'three inches and a half', 'an inch and a half', 'three point four inches', with up to so many inches. */
function inches(several: Expression, more: readonly Expression[] = []): Expression {
  return either(all(several, either(AFTER_SEVERAL, ...more)), all('one', either(AFTER_ONE, ...more)), all('an inch', AND_A_PART));
}

const FEET = all(either(all(either('a', 'one'), 'foot'), all(counted(2, 20), either('foot', 'feet'))), either(
  NOTHING, 'and a half', 'one', 'one inch', all('one and', FRACTION, optional('inches')), all(counted(2, 11), AND_A_PART, optional('inches'))));
const THOUSANDTHS = all(either(all(either('a', 'one'), either('thou', 'thousandth')), all(counted(2, 99), either('thou', 'thousandths'))), optional('of an inch'));
const TENTHS = all(either(all(either('a', 'one'), either('tenth', 'hundredth')), all(counted(2, 9), either('tenths', 'hundredths'))), 'of an inch');

const METRIC_PARTS = all(either(WHOLE, 'zero'), ONE_DECIMAL);
const SEVERAL_METRIC = either(counted(2, 99), all(either(counted(1, 9), 'a'), 'hundred', optional(all(optional('and'), counted(1, 99)))));
const IN_METRIC = either(all(either(SEVERAL_METRIC, METRIC_PARTS), either('millimeters', 'centimeters')), all('one', either('millimeter', 'centimeter', 'meter')), 'a meter', all(either(counted(2, 9), all(counted(1, 9), ONE_DECIMAL)), 'meters'), 'half a millimeter');
/** 'one thousand one hundred and sixty eight', 'two thousand': a table, a board. */
const THOUSANDS = all(either('a', counted(1, 4)), 'thousand', optional(all(optional('and'), WHOLE)), optional(ONE_DECIMAL));
const MILLIMETRES = either(all('one', optional('millimeter')), all(either(SEVERAL_METRIC, METRIC_PARTS, THOUSANDS), optional('millimeters')));
const SMALL_METRIC = either('half a millimeter', 'a millimeter', 'one millimeter', all(either(counted(2, 99), all(either(counted(1, 99), 'zero', NOTHING), ONE_DECIMAL)), 'millimeters'));
const FEW_MILLIMETRES = either('zero', 'half a millimeter', 'a millimeter', all('one', optional('millimeter')), all(counted(2, 20), optional('millimeters')), all(either(counted(1, 9), 'zero', NOTHING), ONE_DECIMAL, optional('millimeters')));
/** The other unit than the bench is set to. */
const OTHER = RARE;

const UNDER_ONE_INCH = all(UNDER_ONE, optional('inches'));
const SIZE = either(inches(SEVERAL, [DECIMALS]), PART, UNDER_ONE_INCH, rarely(FEET, RARE / 2));
const LESS_THAN_AN_INCH = either(PART, UNDER_ONE_INCH, THOUSANDTHS, rarely(TENTHS, RARE), 'zero');
const TO_A_FOOT = either(inches(counted(2, 12), [DECIMALS]), PART, UNDER_ONE_INCH);

export const LENGTHS: { readonly inch: LengthsOfUnit; readonly millimetre: LengthsOfUnit } = {
  inch: {
    length: either(SIZE, rarely(THOUSANDTHS, RARE), rarely(IN_METRIC, OTHER)),
    small: either(TO_A_FOOT, rarely(THOUSANDTHS, RARE), rarely(SMALL_METRIC, OTHER)),
    gap: either(LESS_THAN_AN_INCH, rarely(SMALL_METRIC, OTHER)),
    along: either(inches(SEVERAL), PART, 'zero', rarely(FEET, RARE / 2), rarely(IN_METRIC, OTHER)),
  },
  millimetre: {
    length: either(MILLIMETRES, IN_METRIC, rarely(SIZE, OTHER)),
    small: either(MILLIMETRES, 'half a millimeter', rarely(TO_A_FOOT, OTHER)),
    gap: either(FEW_MILLIMETRES, rarely(LESS_THAN_AN_INCH, OTHER)),
    along: either(MILLIMETRES, 'zero', rarely(IN_METRIC, RARE), rarely(inches(SEVERAL), OTHER)),
  },
};

/** Parts of a size that are asked for: thirds and fifths too, but none finer than a sixteenth. */
export const FRACTION_OF = either(
  'half', 'a half', 'one half', 'a third', 'one third', 'two thirds', 'a quarter', 'one quarter', 'three quarters', rarely(either('one fourth', 'a fourth', 'three fourths'), RARE),
  ...['two', 'three', 'four'].map((count) => `${count} fifths`), ...['three', 'five', 'seven'].map((count) => rarely(`${count} eighths`, RARE)),
  all(either('a', 'one'), either('fifth', 'sixth', 'seventh', 'ninth', 'tenth', 'twelfth', 'sixteenth')), all(either('an', 'one'), 'eighth'),
);
