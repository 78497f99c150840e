import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { careDue, caredFor, cutFor, FRESH_EDGE, minutesWonByHoning, USUAL_UPKEEP } from '../../../core/edge/upkeep.ts';

describe('an edge that is used', () => {
  it('wants the strop after about a minute of chopping, the stone after twenty, the grinding after eight honings (common practice, no source)', () => {
    expect(careDue(cutFor(FRESH_EDGE, 0.9), USUAL_UPKEEP)).toBeUndefined();
    expect(careDue(cutFor(FRESH_EDGE, 1), USUAL_UPKEEP)).toBe('stropped');
    const stropped = Array.from({ length: 20 }).reduce<typeof FRESH_EDGE>((wear) => caredFor(cutFor(wear, 1), 'stropped'), FRESH_EDGE);
    expect(stropped.stropsSinceHoning).toBe(20);
    expect(careDue(stropped, USUAL_UPKEEP)).toBe('honed');
    const honed = Array.from({ length: 8 }).reduce<typeof FRESH_EDGE>((wear) => caredFor(wear, 'honed'), FRESH_EDGE);
    expect(careDue(honed, USUAL_UPKEEP)).toBe('ground');
    expect(caredFor(honed, 'ground')).toEqual(FRESH_EDGE);
  });

  it('never wants less for more cutting', () => {
    const weight = { stropped: 1, honed: 2, ground: 3 };
    const due = (minutes: number) => { const care = careDue(cutFor(FRESH_EDGE, minutes), USUAL_UPKEEP); return care === undefined ? 0 : weight[care]; };
    fc.assert(fc.property(fc.double({ min: 0, max: 60, noNaN: true }), fc.double({ min: 0, max: 60, noNaN: true }), (minutes, more) => {
      expect(due(minutes + more)).toBeGreaterThanOrEqual(due(minutes));
    }));
  });

  it('is worth honing when the dull edge would cost more than the honing', () => {
    // A third slower over 40 minutes costs 10 of them: 40 − 40 / 1.3333.
    expect(minutesWonByHoning(40, 100 / 3, 8)).toBeCloseTo(2, 6);
    expect(minutesWonByHoning(10, 30, 8)).toBeLessThan(0);
  });
});
