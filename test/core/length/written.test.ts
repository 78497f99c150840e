import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../../core/length/parseWritten.ts';
import { roundLength } from '../../../core/length/round.ts';
import { nanometres } from '../../../core/length/length.ts';
import { writeLength } from '../../../core/length/write.ts';
import { anyLength, anyRounding, everySixtyFourth, inches, INCH_ROUNDINGS } from './lengths.ts';

function read(text: string, unit?: 'inch' | 'millimetre'): number | string {
  const result = parseLength(text, unit);
  return result.ok ? result.value : result.fault.message;
}

describe('a written length', { timeout: 120_000 }, () => {
  it.each([
    ['3 7/16', 3.4375], ['3-7/16"', 3.4375], ['3-7/16', 3.4375], ['3.4375 in', 3.4375], ['3.4375in.', 3.4375], ['1\' 2 1/2"', 14.5], ['1\'2-1/2"', 14.5],
    ['1\' 2 1/2', 14.5], ['1′ 2½″', 14.5], ['1’ 2 ½”', 14.5], ['1 ft 2 1/2 in', 14.5], ['6ft. 2in.', 74], ["3'", 36], ['1.5 ft', 18], ['2 1/2 feet', 30],
    ['7/16', 0.4375], ['7 / 16', 0.4375], ['7⁄16', 0.4375], ['⁷⁄₁₆', 0.4375], ['3⁷⁄₁₆', 3.4375], ['⅞', 0.875], ['3½', 3.5], ['3 ⅝ inches', 3.625], ['5/4', 1.25],
    ['.5 in', 0.5], ['0.005 in', 0.005], ['27/1000', 0.027], ['-3/8', -0.375], ['−3/8"', -0.375], ['16 IN', 16], ['31 5/8 in full', 31.625], ['31 5/8 in, scant', 31.625], ["3''", 3],
  ])('reads %s in inches', (text, value) => {
    expect(read(text)).toBe(inches(value));
  });

  it.each([
    ['87.3 mm', 87_300_000], ['87.3mm', 87_300_000], ['8.73cm', 87_300_000], ['8.73 centimetres', 87_300_000], ['0.0873 meters', 87_300_000], ['1 m', 1_000_000_000],
    ['1/2 mm', 500_000], ['12 1/2 millimeters', 12_500_000],
  ])('reads %s in metric', (text, value) => {
    expect(read(text)).toBe(value);
  });

  it('takes the unit it is told for a bare number, and inches for a bare fraction', () => {
    expect(read('3.5', 'inch')).toBe(inches(3.5));
    expect(read('87.3', 'millimetre')).toBe(87_300_000);
    expect(read('3 7/16', 'inch')).toBe(inches(3.4375));
  });

  it('rounds decimals finer than a nanometre to the nearest, half away from zero', () => {
    expect(read('0.0000005 mm')).toBe(1);
    expect(read('-0.0000005 mm')).toBe(-1);
    expect(read('0.00000049 mm')).toBe(0);
  });

  it.each([
    ['', 'nothing is written'], ['   ', 'nothing is written'], ['16', 'the unit is missing'], ['3.5', 'the unit is missing'], ['1/0', 'divided by zero'], ['3 1/0', 'divided by zero'],
    ['5/7 in', 'no rule is divided in parts of 1/7'], ['⅓', 'no rule is divided in parts of 1/3'], ['1/128', '1/128'], ['3 4', 'two numbers side by side'], ['1,5 mm', 'comma'], ['1,000 mm', 'comma'],
    ['3 - 7/16', 'spaced dash'], ['3 19/16', 'no less than one'], ['3.5/8', 'mixed'], ['3.5 1/8', 'mixed'], ['1 m 20 mm', 'no length'], ["1' 5 mm", 'two units'], ['1\' 14"', 'twelve inches or more'],
    ['1.5\' 2"', 'whole number of feet'], ['99999999 in', 'longer than any board'], ['3 7/16 furlong', 'no unit known'], ['3 constructor', 'no unit known'], ['7/16 mm', 'metric rule'], ['--3 in', 'two signs'],
    ['3 7/', 'not complete'], ['1/2/3', 'not complete'], ['1e3 in', 'no length'], ['wide', 'no number'], ['NaN', 'no number'], ['Infinity in', 'no number'], ['0x10 in', 'no length'], ['9'.repeat(100), 'too much'],
  ])('refuses %j and says why', (text, reason) => {
    expect(read(text)).toContain(reason);
  });

  it('refuses a bare sixteenth where millimetres are the rule', () => {
    expect(read('3 7/16', 'millimetre')).toContain('metric rule');
    expect(read('3 1/2', 'millimetre')).toBe(3_500_000);
  });

  it('says what was found, what is wrong and what to do', () => {
    expect(parseLength('5/7 in')).toEqual({ ok: false, fault: {
      found: '5/7 in', expected: 'halves, quarters, eighths, sixteenths, thirty-seconds or sixty-fourths, or decimals',
      message: '“5/7 in”: no rule is divided in parts of 1/7. Expected halves, quarters, eighths, sixteenths, thirty-seconds or sixty-fourths, or decimals.' } });
  });

  it('writes sizes as they stand on a drawing', () => {
    expect(writeLength(inches(31.625), { unit: 'inch', denominator: 16 })).toBe('31 5/8 in');
    expect(writeLength(inches(31.640625), { unit: 'inch', denominator: 16 })).toBe('31 5/8 in full');
    expect(writeLength(inches(-0.25), { unit: 'inch', denominator: 8 })).toBe('-1/4 in');
    expect(writeLength(inches(0), { unit: 'inch', denominator: 8 })).toBe('0 in');
    expect(writeLength(inches(31.625), { unit: 'millimetre', step: nanometres(500_000) })).toBe('803.5 mm scant');
  });

  it('reads back every sixty-fourth from 1/64 in to 20 ft as it was written', () => {
    for (const rounding of INCH_ROUNDINGS) {
      for (const length of everySixtyFourth()) {
        const back = parseLength(writeLength(length, rounding), 'inch');
        if (!back.ok || back.value !== roundLength(length, rounding).rounded) expect.fail(`${length} nm, ${writeLength(length, rounding)}`);
      }
    }
  });

  it('reads back any length at any rounding as it was written', () => {
    fc.assert(fc.property(anyLength, anyRounding, (length, rounding) => {
      expect(read(writeLength(length, rounding))).toBe(roundLength(length, rounding).rounded);
    }));
  });

  it('gives a whole number of nanometres or a reason for any text at all', () => {
    const scraps = fc.array(fc.constantFrom('3', '7', '16', '/', ' ', '-', '.', ',', "'", '"', 'in', 'mm', 'ft', '½', '⁷', '″', '0', 'm', 'full', '⁄', '−'), { maxLength: 12 }).map((parts) => parts.join(''));
    fc.assert(fc.property(fc.oneof(scraps, fc.string({ maxLength: 100, unit: 'grapheme' })), fc.constantFrom(undefined, 'inch', 'millimetre'), (text, unit) => {
      const result = parseLength(text, unit);
      if (result.ok) expect(Number.isSafeInteger(result.value) && !Object.is(result.value, -0)).toBe(true);
      else expect(result.fault.message.length).toBeGreaterThan(10);
    }), { numRuns: 2000 });
  });
});
