import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres } from '../../../core/length/length.ts';
import { readSpokenLength, readSpokenNumber, SPOKEN_LENGTH_WORDS } from '../../../core/length/parseSpoken.ts';
import { roundLength } from '../../../core/length/round.ts';
import { sayLength, sayLengthDigits, sayNumber, sayOrdinal } from '../../../core/length/say.ts';
import { anyLength, anyRounding, everySixtyFourth, inches, INCH_ROUNDINGS } from './lengths.ts';

function read(words: string, unit?: 'inch' | 'millimetre'): number | string {
  const result = readSpokenLength(words.split(' '), unit);
  return result.ok ? result.value : result.fault.message;
}

describe('a spoken length', () => {
  it.each([
    ['three and seven sixteenths', 3.4375], ['a quarter', 0.25], ['one quarter', 0.25], ['three fourths', 0.75], ['an inch and a half', 1.5], ['three inches and seven sixteenths', 3.4375],
    ['five thirty-seconds', 5 / 32], ['five thirty seconds', 5 / 32], ['twenty-five thirty-seconds', 25 / 32], ['one thirty second', 1 / 32], ['three sixty fourths of an inch', 3 / 64], ['two foot four and a half', 28.5],
    ['half an inch', 0.5], ['a half inch', 0.5], ['quarter inch', 0.25], ['one and a half inches', 1.5], ['thirty one and five eighths inches full', 31.625], ['thirty-one, and five eighths inches, full?', 31.625],
    ['sixteen inches', 16], ['one hundred and five sixteenths', 100.3125], ['one hundred and five and five sixteenths', 105.3125], ['a hundred and one inches', 101], ['two hundred and twenty five thirty seconds', 200 + 25 / 32],
    ['three seven sixteenths', 3.4375], ['nineteen sixteenths', 1.1875], ['five quarters', 1.25], ['a foot and a half', 18], ['two and a half feet', 30], ['six feet two inches', 74], ['two feet and half an inch', 24.5],
    ['five thousandths', 0.005], ['five thou', 0.005], ['three and five thousandths inches', 3.005], ['three point four three seven five inches', 3.4375], ['point five inches', 0.5], ['minus a quarter', -0.25], ['zero inches', 0], ['3 7/16 in', 3.4375],
  ])('hears “%s” in inches', (words, value) => {
    expect(read(words)).toBe(inches(value));
  });

  it.each([
    ['eighty seven point three millimetres', 87_300_000], ['eighty-seven point three millimeters', 87_300_000], ['eight point seven three centimetres', 87_300_000], ['half a millimetre', 500_000],
    ['a metre and a half', 1_500_000_000], ['twelve and a half millimetres', 12_500_000], ['one millimeter', 1_000_000], ['point oh five millimetres', 50_000],
  ])('hears “%s” in metric', (words, value) => {
    expect(read(words)).toBe(value);
  });

  it('takes the unit the bench is set to for a bare number', () => {
    expect(read('three point four three seven five', 'inch')).toBe(inches(3.4375));
    expect(read('eighty seven point three', 'millimetre')).toBe(87_300_000);
    expect(read('sixteen', 'inch')).toBe(inches(16));
  });

  it.each([
    ['', 'no length was said'], ['full', 'no length was said'], ['sixteen', 'the unit is missing'], ['three point five', 'the unit is missing'], ['thirty two seconds', 'seconds are a time'], ['thirty seconds', 'seconds are a time'],
    ['three four', 'two numbers side by side'], ['five eighths and three', 'two numbers side by side'], ['twenty seven sixteenths', 'may be 1 and 11/16 or 20 and 7/16'], ['three hundred and five thousandths', 'may be 305/1000 or 300 and 5/1000'],
    ['sixty fourths', 'how many sixty fourths'], ['sixteenths', 'how many sixteenths'], ['a third', 'no rule is divided in parts of 1/3'], ['two and four fifths', '1/5'], ['two foot and five eighths', 'part of a foot or of an inch'],
    ['one foot fourteen', 'twelve inches or more'], ['two and a half feet three', 'feet are not a whole number'], ['two feet ten millimetres', 'two units'], ['three inches two inches', 'two units'], ['one inch and five', 'not a fraction under one'],
    ['one and a half inches and a half', 'not a fraction under one'], ['three inches seven sixteenths', 'follows the unit'], ['inch', 'no number was said'], ['ten thousand inches', 'longer than any board'], ['point', 'digit by digit'],
    ['three point twenty five inches', 'digit by digit'], ['three and seven sixteenths millimetres', 'metric rule'], ['of an inch', 'no number'], ['banana', 'no number'], ['three of an inch', 'not clear'], ['1/0', 'divided by zero'],
  ])('refuses “%s” and says why', (words, reason) => {
    expect(read(words)).toContain(reason);
  });

  it('refuses bare sixteenths where millimetres are the rule', () => {
    expect(read('three and one sixteenth', 'millimetre')).toContain('metric rule');
    expect(read('three and one sixteenth inches', 'millimetre')).toBe(inches(3.0625));
  });
});

describe('a size said', { timeout: 120_000 }, () => {
  const sixteenths = { unit: 'inch', denominator: 16 } as const;
  const halfMillimetres = { unit: 'millimetre', step: nanometres(500_000) } as const;

  it.each([
    [31.625, 'thirty-one, and five eighths inches'], [31.640625, 'thirty-one, and five eighths inches, full'], [31.609375, 'thirty-one, and five eighths inches, scant'], [1, 'one inch'], [2, 'two inches'],
    [1 / 16, 'one sixteenth of an inch'], [7 / 16, 'seven sixteenths of an inch'], [0.5, 'half an inch'], [1.5, 'one, and a half inches'], [0.25, 'one quarter of an inch'], [-3.75, 'minus three, and three quarters inches'],
    [0, 'zero inches'], [105.3125, 'one hundred five, and five sixteenths inches'],
  ])('says %d inches as “%s”', (value, said) => {
    expect(sayLength(inches(value), sixteenths)).toBe(said);
  });

  it('leaves the unit out, counts feet or says millimetres only when told to', () => {
    expect(sayLength(inches(31.625), sixteenths, { unit: false })).toBe('thirty-one, and five eighths');
    expect(sayLength(inches(28.5), sixteenths, { feet: true })).toBe('two feet, four, and a half inches');
    expect(sayLength(inches(24.5), sixteenths, { feet: true })).toBe('two feet, and half an inch');
    expect(sayLength(inches(12), sixteenths, { feet: true })).toBe('one foot');
    expect(sayLength(nanometres(803_500_000), halfMillimetres)).toBe('eight hundred three point five millimetres');
    expect(sayLength(nanometres(1_000_000), halfMillimetres)).toBe('one millimetre');
    expect(sayLength(inches(31.625), halfMillimetres)).toBe('eight hundred three point five millimetres, scant');
  });

  it('says a size digit by digit', () => {
    expect(sayLengthDigits(inches(15.46875), { unit: 'inch', denominator: 32 })).toBe('one, five, and one, five, over, three, two, inches');
    expect(sayLengthDigits(inches(0.4375), sixteenths)).toBe('seven, over, one, six, inches');
    expect(sayLengthDigits(inches(-50), sixteenths)).toBe('minus, five, zero, inches');
    expect(sayLengthDigits(nanometres(803_500_000), halfMillimetres)).toBe('eight, zero, three, point, five, millimetres');
  });

  it('is heard back as it was meant, every sixty-fourth from 1/64 in to 20 ft', () => {
    for (const rounding of INCH_ROUNDINGS) {
      for (const length of everySixtyFourth()) {
        const said = sayLength(length, rounding);
        const back = readSpokenLength(said.split(' '));
        if (!back.ok || back.value !== roundLength(length, rounding).rounded) expect.fail(`${length} nm, “${said}”`);
      }
    }
  });

  it('is heard back with and without unit, with feet, hyphens and commas or none', () => {
    fc.assert(fc.property(anyLength, anyRounding, fc.boolean(), fc.boolean(), fc.boolean(), (length, rounding, unit, feet, plain) => {
      const said = sayLength(length, rounding, { unit, feet });
      const heard = plain ? said.replaceAll(',', '').replaceAll('-', ' ') : said;
      expect(read(heard, rounding.unit)).toBe(roundLength(length, rounding).rounded);
    }), { numRuns: 2000 });
  });

  it('keeps to the words that the ear is told to listen for', () => {
    const words = new Set(SPOKEN_LENGTH_WORDS);
    fc.assert(fc.property(anyLength, anyRounding, fc.boolean(), (length, rounding, feet) => {
      for (const word of sayLength(length, rounding, { feet }).split(/[\s,-]+/)) expect(words).toContain(word);
    }));
  });

  it('gives a whole number of nanometres or a reason for any words at all', () => {
    const anyWords = fc.array(fc.constantFrom(...SPOKEN_LENGTH_WORDS, 'banana', '7/16', '3', ''), { maxLength: 9 });
    fc.assert(fc.property(anyWords, fc.constantFrom(undefined, 'inch', 'millimetre'), (words, unit) => {
      const result = readSpokenLength(words, unit);
      if (result.ok) expect(Number.isSafeInteger(result.value)).toBe(true);
      else expect(result.fault.message.length).toBeGreaterThan(10);
    }), { numRuns: 5000 });
  });
});

describe('numbers in words', () => {
  it('says numbers and their ordinals', () => {
    expect([0, 12, 21, 40, 105, 1000, 123_456].map(sayNumber)).toEqual(['zero', 'twelve', 'twenty-one', 'forty', 'one hundred five', 'one thousand', 'one hundred twenty-three thousand four hundred fifty-six']);
    expect([1, 2, 3, 8, 12, 16, 20, 32, 64].map(sayOrdinal)).toEqual(['first', 'second', 'third', 'eighth', 'twelfth', 'sixteenth', 'twentieth', 'thirty-second', 'sixty-fourth']);
  });

  it('hears every number it says', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 999_999 }), (count) => {
      expect(readSpokenNumber(sayNumber(count).split(/[ -]/))).toEqual({ ok: true, value: count });
    }));
  });

  it.each(['', 'three four', 'fifteen two', 'twenty ten', 'hundred', 'zero hundred', 'a', 'and five', 'five and', 'thousand', 'one hundred and', 'banana', '3.5'])('refuses “%s”', (words) => {
    expect(readSpokenNumber(words.split(' ')).ok).toBe(false);
  });
});
