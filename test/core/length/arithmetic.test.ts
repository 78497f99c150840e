import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { absolute, add, divideHalfAway, fractionOf, negate, ratio, scale, shareOut, subtract, timesWhole } from '../../../core/length/arithmetic.ts';
import { nanometres } from '../../../core/length/length.ts';
import { anyLength, inches } from './lengths.ts';

const anyCount = fc.integer({ min: 1, max: 500 });

describe('arithmetic of lengths', () => {
  it('adds a rail, two tenons and a saw cut exactly', () => {
    expect(add(inches(31.625), timesWhole(inches(1.25), 2), inches(1 / 16))).toBe(inches(34.1875));
    expect(subtract(inches(3), inches(3.0625))).toBe(inches(-0.0625));
  });

  it('halves a sixty-fourth upwards, and away from zero below it', () => {
    expect(fractionOf(nanometres(396_875), 1, 2)).toBe(198_438);
    expect(fractionOf(nanometres(-396_875), 1, 2)).toBe(-198_438);
    expect(fractionOf(inches(7.5), 1, 3)).toBe(inches(2.5));
  });

  it('shares a top into equal parts that make the top again', () => {
    expect(shareOut(inches(10), 3)).toEqual([84_666_666, 84_666_667, 84_666_667]);
    expect(shareOut(inches(-10), 3)).toEqual([-84_666_666, -84_666_667, -84_666_667]);
  });

  it('tells how many times one length goes into another, in lowest terms', () => {
    expect(ratio(inches(3), inches(4.5))).toEqual({ numerator: 2, denominator: 3 });
    expect(ratio(inches(-3), inches(4.5))).toEqual({ numerator: -2, denominator: 3 });
    expect(ratio(inches(0), inches(-4.5))).toEqual({ numerator: 0, denominator: 1 });
    expect(scale(inches(4.5), ratio(inches(3), inches(4.5)))).toBe(inches(3));
  });

  it('throws on what only a bug can ask for', () => {
    expect(() => nanometres(0.5)).toThrow(RangeError);
    expect(() => nanometres(Number.NaN)).toThrow(RangeError);
    expect(() => shareOut(inches(1), 0)).toThrow(RangeError);
    expect(() => shareOut(inches(1), 2.5)).toThrow(RangeError);
    expect(() => ratio(inches(1), inches(0))).toThrow(RangeError);
    expect(() => fractionOf(inches(1), 1, 0)).toThrow(RangeError);
    expect(() => timesWhole(inches(1), 1.5)).toThrow(RangeError);
    expect(() => add(nanometres(Number.MAX_SAFE_INTEGER), inches(1))).toThrow(RangeError);
  });

  it('never says minus zero', () => {
    expect(Object.is(negate(inches(0)), 0)).toBe(true);
    expect(Object.is(fractionOf(inches(-1), 0, 3), 0)).toBe(true);
    expect(Object.is(ratio(inches(0), inches(-1)).numerator, 0)).toBe(true);
  });
});

describe('properties of the arithmetic', () => {
  it('takes away exactly what was added, in any order', () => {
    fc.assert(fc.property(fc.array(anyLength, { maxLength: 30 }), anyLength, (lengths, other) => {
      const sum = add(...lengths, other);
      expect(subtract(sum, other)).toBe(add(...lengths));
      expect(add(other, ...lengths.toReversed())).toBe(sum);
      expect(add(sum, negate(sum))).toBe(0);
    }));
  });

  it('shares out the whole, with parts that differ by at most a nanometre', () => {
    fc.assert(fc.property(anyLength, anyCount, (whole, count) => {
      const parts = shareOut(whole, count);
      expect(parts).toHaveLength(count);
      expect(add(...parts)).toBe(whole);
      expect(Math.max(...parts) - Math.min(...parts)).toBeLessThanOrEqual(1);
    }));
  });

  it('keeps every mark of a shared length within a nanometre of its true place', () => {
    fc.assert(fc.property(anyLength, anyCount, (whole, count) => {
      let mark = 0n;
      shareOut(whole, count).forEach((part, index) => {
        mark += BigInt(part);
        const error = mark * BigInt(count) - BigInt(whole) * BigInt(index + 1);
        expect(error < BigInt(count) && error > BigInt(-count)).toBe(true);
      });
    }));
  });

  it('lets no float out', () => {
    fc.assert(fc.property(anyLength, anyLength, anyCount, anyCount, (a, b, n, d) => {
      const results = [add(a, b), subtract(a, b), negate(a), absolute(a), timesWhole(a, n), fractionOf(a, n, d), ...shareOut(a, n)];
      if (b !== 0) results.push(scale(a, { numerator: n, denominator: d }));
      for (const result of results) expect(Number.isSafeInteger(result) && !Object.is(result, -0)).toBe(true);
    }));
  });

  it('divides to the nearest whole number, half away from zero', () => {
    fc.assert(fc.property(fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n }), fc.bigInt({ min: 1n, max: 10n ** 10n }), fc.boolean(), (n, d, flip) => {
      const divisor = flip ? -d : d;
      const error = divideHalfAway(n, divisor) * divisor - n;
      const size = error < 0n ? -error : error;
      expect(2n * size <= d).toBe(true);
      if (2n * size === d) expect((divideHalfAway(n, divisor) * divisor) ** 2n > n * n).toBe(true);
    }));
  });
});
