import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { looksLikeReading, parseReading } from '../../../core/length/parseReading.ts';

function read(text: string, unit: 'inch' | 'millimetre'): readonly [number, boolean] | string {
  const found = parseReading(text, unit);
  return found.ok ? [found.value.length, found.value.unitWritten] : found.fault.message;
}

describe('what a caliper types', () => {
  it('is read with its sign, its noughts, a point or a comma, with or without a unit', () => {
    expect(read('82.55', 'millimetre')).toEqual([82_550_000, false]);
    expect(read('82,55', 'millimetre')).toEqual([82_550_000, false]);
    expect(read('+0082.55', 'millimetre')).toEqual([82_550_000, false]);
    expect(read('3.2500', 'inch')).toEqual([82_550_000, false]);
    expect(read('+3.2500 in', 'millimetre')).toEqual([82_550_000, true]);
    expect(read('82.55mm', 'inch')).toEqual([82_550_000, true]);
    expect(read('3.25"', 'millimetre')).toEqual([82_550_000, true]);
    expect(read('3 1/4"', 'millimetre')).toEqual([82_550_000, true]);
    expect(read('8.255 cm', 'inch')).toEqual([82_550_000, true]);
    expect(read('-0.05', 'millimetre')).toEqual([-50_000, false]);
    expect(read('.5', 'inch')).toEqual([12_700_000, false]);
    expect(read(',5', 'inch')).toEqual([12_700_000, false]);
  });

  it('is exact to the last figure that an instrument shows: 0.0005 in and 0.001 mm', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 200_000 }), (count) => {
      expect(read((count / 10_000).toFixed(4), 'inch')).toEqual([count * 2_540, false]);
      expect(read((count / 1_000).toFixed(3), 'millimetre')).toEqual([count * 1_000, false]);
    }));
  });

  it('is nothing else: words, two numbers, a sum, a lone sign', () => {
    for (const text of ['', '+', 'mm', 'leg 2', '3+5', '1.2.3', '82.55 kg', '3/0']) expect([text, looksLikeReading(text)]).toEqual([text, false]);
  });
});
