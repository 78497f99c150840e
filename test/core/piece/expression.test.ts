import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkIsLength } from '../../../core/piece/dimension.ts';
import type { Expression } from '../../../core/piece/expression.ts';
import { LONGEST_EXPRESSION, parseExpression } from '../../../core/piece/expression.ts';
import { formulaValue, makeFormula } from '../../../core/piece/formula.ts';
import { namesIn } from '../../../core/piece/linear.ts';

/** What an expression comes to, in nanometres, with its names at given lengths. */
function comesTo(text: string, lengths: Readonly<Record<string, number>> = {}): number | undefined | string {
  const parsed = parseExpression(text);
  const checked = parsed.ok ? checkIsLength(parsed.value) : parsed;
  if (!checked.ok) return `${checked.fault.found}: ${checked.fault.message}`;
  const references = [...namesIn(checked.value).keys()].map((name, node) => ({ name, node, copy: undefined }));
  return formulaValue(makeFormula(checked.value, references), ({ name }) => lengths[name] ?? NaN);
}

const INCH = 25_400_000;
const MM = 1_000_000;

describe('a size is read as it is written in the shop', () => {
  // One inch is 25.4 mm exactly (NIST SP 811, appendix B.6: international inch of 1959), one foot twelve inches.
  test.each([
    ['3 1/4 in', 3.25 * INCH],
    ['3/4 in', 0.75 * INCH],
    ['1 1/4 in', 1.25 * INCH],
    ['1/64 in', 396_875],
    ['4 ft', 1_219_200_000],
    ['1\' 2 1/2"', 14.5 * INCH],
    ['1 ft 2 1/2 in', 14.5 * INCH],
    ['87.3 mm', 87.3 * MM],
    ['8.73 cm', 87.3 * MM],
    ['1.2 m', 1200 * MM],
    ['3.4375 in', 3.4375 * INCH],
    ['1¼ in', 1.25 * INCH],
    ['½"', 0.5 * INCH],
    ['  2   3/8   in ', 2.375 * INCH],
    ['0 in', 0],
  ])('%s', (text, nanometres) => {
    expect(comesTo(text)).toBe(nanometres);
  });
});

describe('sizes are worked out with plain arithmetic', () => {
  const lengths = { 'inside.length': 46 * INCH, tenon: 1.75 * INCH, 'leg.2.width': 3.25 * INCH, rail: 7 };

  test.each([
    ['inside.length + 2 * tenon', 49.5 * INCH],
    ['inside.length+2*tenon', 49.5 * INCH],
    ['(inside.length - leg.2.width) / 2', 21.375 * INCH],
    ['-tenon + 2 in', 0.25 * INCH],
    ['2 * 3/4 in', 1.5 * INCH],
    ['1 1/2 * tenon', 2.625 * INCH],
    ['1/2 * tenon', 0.875 * INCH],
    ['inside.length / 4 in * 1 in', 11.5 * INCH],
    ['inside.length / tenon * 1 in', Math.round((46 / 1.75) * INCH)],
    ['tenon * tenon / tenon', 1.75 * INCH],
    ['10 in - 3 in - 2 in', 5 * INCH],
    ['12 in / 2 / 3', 2 * INCH],
    ['1 in / 3', 8_466_667],
    ['-(1 in / 3)', -8_466_667],
    ['rail / 2', 4],
    ['-rail / 2', -4],
    ['rail / 3 + rail / 3 + rail / 3', 7],
  ])('%s', (text, nanometres) => {
    expect(comesTo(text, lengths)).toBe(nanometres);
  });
});

describe('what is not a length is refused with the reason', () => {
  test.each([
    ['3', /without a unit.*in, mm, ft/u],
    ['2 * 3', /without a unit/u],
    ['3/4', /without a unit/u],
    ['leg.width / rail.width', /without a unit/u],
    ['leg.width * rail.width', /an area/u],
    ['2 / leg.width', /power -1.*turn the division round/u],
    ['3 in + 2', /a length and a number without a unit.*Only like/u],
    ['3-7/16 in', /mixed fraction is written with a space/u],
    ['leg.width + ', /the end.*ends too soon/u],
    ['', /Write the size/u],
    ['(leg.width', /the end.*opened at character 1/u],
    ['leg.width)', /one closing bracket too many/u],
    ['3 in 4 in', /'4'.*between two sizes/u],
    ['3,5 mm', /','.*with a point/u],
    ['.5 in', /digit before the point/u],
    ['1/0 in', /without a unit|over zero|number/u],
    ['Leg.width', /small letter/u],
    ['in', /a number before the unit|how many in/u],
    ['leg.width ^ 2', /'\^'/u],
    ['1234567890123 mm', /at most twelve digits/u],
    ['1.2.3 in', /at most twelve digits/u],
    ['('.repeat(60) + '1 in' + ')'.repeat(60), /Split it/u],
    ['1 in +'.repeat(100) + ' 1 in', /Split it/u],
  ])('%s', (text, reason) => {
    expect(comesTo(text)).toMatch(reason);
  });

  test('with the place inside the size', () => {
    const parsed = parseExpression('leg.width + * 2');
    expect(!parsed.ok && parsed.fault.at).toBe(12);
  });

  test('a division by nothing comes to nothing, rather than to a number', () => {
    expect(comesTo('tenon / (tenon - tenon) * 1 in', { tenon: 5 })).toBeUndefined();
    expect(comesTo('1 in / 0')).toBeUndefined();
  });
});

/** Written out with every bracket, so that reading it back can go only one way. */
function written(expression: Expression): string {
  switch (expression.kind) {
    case 'name': return expression.name;
    case 'number':
    case 'length': {
      const unit = expression.kind === 'length' ? ' mm' : '';
      const { numerator } = expression.value;
      return `${expression.kind === 'length' ? numerator / 1_000_000n : numerator}${unit}`;
    }
    case 'negate': return `-(${written(expression.of)})`;
    default: return `(${written(expression.left)}) ${expression.kind} (${written(expression.right)})`;
  }
}

/** Random expressions with an answer of their own, worked out in plain bigint fractions that are never reduced. */
interface Sample {
  readonly text: string;
  readonly value: readonly [bigint, bigint];
}

const NAMES = { 'leg.width': 82_550_000n, 'inside.length': 1_168_400_000n, gap: 396_875n } as const;

const leaf: fc.Arbitrary<Sample> = fc.oneof(
  fc.constantFrom(...Object.entries(NAMES)).map(([name, value]) => ({ text: name, value: [value, 1n] as const })),
  fc.tuple(fc.nat(99), fc.integer({ min: 1, max: 63 })).map(([whole, over]) => ({ text: `${whole} ${over}/64 in`, value: [BigInt(whole * 64 + over) * 25_400_000n, 64n] as const })),
  fc.nat(99_999).map((tenths) => ({ text: `${Math.floor(tenths / 10)}.${tenths % 10} mm`, value: [BigInt(tenths) * 100_000n, 1n] as const })),
);

const sample: fc.Arbitrary<Sample> = fc.letrec<{ any: Sample }>((tie) => ({
  any: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    leaf,
    fc.tuple(tie('any'), fc.constantFrom('+', '-'), tie('any')).map(([a, sign, b]) => ({
      text: `(${a.text} ${sign} ${b.text})`,
      value: [a.value[0] * b.value[1] + (sign === '+' ? 1n : -1n) * b.value[0] * a.value[1], a.value[1] * b.value[1]] as const,
    })),
    fc.tuple(fc.integer({ min: 1, max: 12 }), fc.boolean(), tie('any')).map(([count, times, a]) => ({
      text: times ? `${count} * ${a.text}` : `${a.text} / ${count}`,
      value: [times ? a.value[0] * BigInt(count) : a.value[0], times ? a.value[1] : a.value[1] * BigInt(count)] as const,
    })),
    fc.tuple(tie('any'), tie('any'), leaf).map(([a, b, under]) => ({
      text: `(${a.text} * ${b.text} / ${under.text})`,
      value: [a.value[0] * b.value[0] * under.value[1], a.value[1] * b.value[1] * under.value[0]] as const,
    })),
    tie('any').map((a) => ({ text: `-${a.text}`, value: [-a.value[0], a.value[1]] as const })),
  ),
})).any.filter(({ text }) => text.length < LONGEST_EXPRESSION);

function halfAway([numerator, denominator]: readonly [bigint, bigint]): bigint {
  const [top, bottom] = denominator < 0n ? [-numerator, -denominator] : [numerator, denominator];
  const whole = ((top < 0n ? -top : top) * 2n + bottom) / (2n * bottom);
  return top < 0n ? -whole : whole;
}

describe('whatever is written', () => {
  test('comes to the same as plain bigint fractions rounded once', () => {
    const lengths = Object.fromEntries(Object.entries(NAMES).map(([name, value]) => [name, Number(value)]));
    fc.assert(fc.property(sample, ({ text, value }) => {
      const expected = value[1] === 0n ? undefined : Number(halfAway(value));
      expect(comesTo(text, lengths)).toBe(expected !== undefined && Number.isSafeInteger(expected) ? expected : undefined);
    }), { numRuns: 2000 });
  });

  test('is read back the same after being written with all its brackets', () => {
    fc.assert(fc.property(sample, ({ text }) => {
      const once = parseExpression(text.replaceAll(/\d+ \d+\/64 in|\d+\.\d mm/gu, '7 mm'));
      if (!once.ok) throw new Error(once.fault.message);
      const again = parseExpression(written(once.value));
      if (!again.ok) return; // Brackets go deeper than is allowed.
      expect(shape(again.value)).toEqual(shape(once.value));
    }));
  });

  test('is read or refused, never thrown at', () => {
    const characters = fc.constantFrom(...'0 1 2 3 4 5 6 7 8 9 . / + - * ( ) \' " ½ i n f m t leg.width \t é {'.split(' '), ' ');
    fc.assert(fc.property(fc.string({ unit: characters, maxLength: 60 }), (text) => {
      const parsed = parseExpression(text);
      if (!parsed.ok) expect(parsed.fault.at).toBeLessThanOrEqual(text.length);
    }), { numRuns: 5000 });
  });
});

/** The expression without its places. */
function shape(expression: Expression): unknown {
  switch (expression.kind) {
    case 'name': return expression.name;
    case 'number':
    case 'length': return [expression.kind, expression.value];
    case 'negate': return ['negate', shape(expression.of)];
    default: return [expression.kind, shape(expression.left), shape(expression.right)];
  }
}
