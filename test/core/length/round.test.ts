import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { negate, subtract, add } from '../../../core/length/arithmetic.ts';
import { lengthFigure } from '../../../core/length/figure.ts';
import { nanometres } from '../../../core/length/length.ts';
import { divisionOf, roundLength } from '../../../core/length/round.ts';
import type { Rounding } from '../../../core/length/rounding.ts';
import { anyLength, anyRounding, inches, SIXTY_FOURTH } from './lengths.ts';

const SIXTEENTHS: Rounding = { unit: 'inch', denominator: 16 };
const HALF_MILLIMETRES: Rounding = { unit: 'millimetre', step: nanometres(500_000) };

describe('rounding at the lips', () => {
  it('calls a sixty-fourth over the sixteenth full and a sixty-fourth under it scant', () => {
    expect(roundLength(add(inches(3.4375), SIXTY_FOURTH), SIXTEENTHS)).toEqual({ rounded: inches(3.4375), lost: 'full' });
    expect(roundLength(subtract(inches(3.4375), SIXTY_FOURTH), SIXTEENTHS)).toEqual({ rounded: inches(3.4375), lost: 'scant' });
    expect(roundLength(inches(3.4375), SIXTEENTHS)).toEqual({ rounded: inches(3.4375), lost: 'exact' });
  });

  it('rounds an exact half away from zero', () => {
    expect(roundLength(inches(1 / 32), SIXTEENTHS)).toEqual({ rounded: inches(1 / 16), lost: 'scant' });
    expect(roundLength(inches(-1 / 32), SIXTEENTHS)).toEqual({ rounded: inches(-1 / 16), lost: 'scant' });
    expect(roundLength(nanometres(87_250_000), HALF_MILLIMETRES)).toEqual({ rounded: 87_500_000, lost: 'scant' });
  });

  it('does not call the leftover of a third of nine inches full or scant', () => {
    expect(roundLength(nanometres(inches(3) + 1), SIXTEENTHS).lost).toBe('exact');
    expect(roundLength(nanometres(inches(3) + 25_400), SIXTEENTHS).lost).toBe('full');
  });

  it('takes a size apart for drawing', () => {
    expect(lengthFigure(inches(31.625), SIXTEENTHS)).toEqual({ negative: false, whole: 31, numerator: 5, denominator: 8, unit: 'inch', lost: 'exact' });
    expect(lengthFigure(inches(-2), SIXTEENTHS)).toEqual({ negative: true, whole: 2, numerator: 0, denominator: 1, unit: 'inch', lost: 'exact' });
    expect(lengthFigure(nanometres(803_500_000), HALF_MILLIMETRES)).toEqual({ negative: false, whole: 803, numerator: 0, denominator: 1, decimals: '5', unit: 'millimetre', lost: 'exact' });
    expect(lengthFigure(nanometres(-100), SIXTEENTHS).negative).toBe(false);
  });

  it('rounds to a whole number of divisions, never further than half of one, and the same on both sides of zero', () => {
    fc.assert(fc.property(anyLength, anyRounding, (length, rounding) => {
      const { rounded, lost } = roundLength(length, rounding);
      const division = divisionOf(rounding);
      expect(Math.abs(rounded % division)).toBe(0);
      expect(Math.abs(subtract(length, rounded)) * 2).toBeLessThanOrEqual(division);
      expect(roundLength(negate(length), rounding)).toEqual({ rounded: negate(rounded), lost });
      expect(roundLength(rounded, rounding)).toEqual({ rounded, lost: 'exact' });
    }));
  });

  it('tells full and scant as the size lies beyond or short of what is said', () => {
    fc.assert(fc.property(anyLength, anyRounding, (length, rounding) => {
      const { rounded, lost } = roundLength(length, rounding);
      const beyond = Math.abs(length) - Math.abs(rounded);
      expect(lost).toBe(Math.abs(beyond) < 1000 ? 'exact' : beyond > 0 ? 'full' : 'scant');
    }));
  });

  it('draws figures that make the rounded size again', () => {
    fc.assert(fc.property(anyLength, anyRounding, (length, rounding) => {
      const { whole, numerator, denominator, decimals = '', negative, unit } = lengthFigure(length, rounding);
      const size = unit === 'inch' ? whole * 25_400_000 + (numerator * 25_400_000) / denominator : whole * 1_000_000 + Number(decimals.padEnd(6, '0'));
      expect(negative ? -size : size).toBe(roundLength(length, rounding).rounded);
      if (numerator > 0) expect(numerator % 2).toBe(1);
    }));
  });
});
