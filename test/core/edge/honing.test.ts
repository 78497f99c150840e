import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleFor, bevelLength, projectionAtHeight, projectionFor, shimAngle, shimFor } from '../../../core/edge/honing.ts';
import { gritSequence } from '../../../core/edge/grit.ts';
import { microBevelGrowth } from '../../../core/edge/microBevel.ts';
import { nanometres, type Length } from '../../../core/length/length.ts';

const mm = (millimetres: number): Length => nanometres(Math.round(millimetres * 1_000_000));
const inMm = (length: Length): number => length / 1_000_000;
const GUIDE = { radius: mm(12.5), axisBelowBack: mm(8) };

describe('a blade in a roller guide', () => {
  it.each([[25, 46.73], [30, 38.86], [35, 33.22]])('stands out for %s degrees by %s mm (p = (R + e cos θ) / sin θ, worked by hand)', (angle, projection) => {
    expect(inMm(projectionFor(angle, GUIDE))).toBeCloseTo(projection, 2);
  });

  it('has the angle that its projection gives, both ways', () => {
    fc.assert(fc.property(fc.double({ min: 15, max: 50, noNaN: true }), fc.integer({ min: 3, max: 25 }), fc.integer({ min: 0, max: 20 }), (angle, radius, axis) => {
      const guide = { radius: mm(radius), axisBelowBack: mm(axis) };
      const back = angleFor(projectionFor(angle, guide), guide);
      expect(back.ok && back.value).toBeCloseTo(angle, 4);
    }));
  });

  it('that does not reach the stone is told', () => {
    expect(angleFor(mm(9), { radius: mm(12.5), axisBelowBack: mm(0) }).ok).toBe(false);
  });
});

describe('angles at the stone', () => {
  it.each([[25, 47.32], [30, 40], [35, 34.87]])('a jig 20 mm over the stone holds %s degrees at %s mm (p = h / sin θ)', (angle, projection) => {
    expect(inMm(projectionAtHeight(angle, mm(20)))).toBeCloseTo(projection, 2);
  });

  it.each([[3.2, 25, 7.57], [3, 30, 6]])('a blade of %s mm has at %s degrees a bevel of %s mm (t / sin θ)', (thickness, angle, bevel) => {
    expect(inMm(bevelLength(mm(thickness), angle))).toBeCloseTo(bevel, 2);
  });

  it('a bevel at 20 degrees is about a quarter longer than one at 25 (sin 25 / sin 20)', () => {
    expect(bevelLength(mm(3), 20) / bevelLength(mm(3), 25)).toBeCloseTo(1.236, 3);
  });

  it('a rule of half a millimetre 25 mm from the edge makes a back bevel of 1.15 degrees', () => {
    const found = shimAngle(mm(0.5), mm(25));
    expect(found.ok && found.value).toBeCloseTo(1.146, 3);
    expect(found.ok && shimFor(found.value, mm(25))).toBe(mm(0.5));
  });
});

describe('a micro-bevel', () => {
  const edge = { groundDegrees: 25, honedDegrees: 30, thickness: mm(3.2) };

  it('grows by the law of sines, more for a smaller difference of angles', () => {
    const found = microBevelGrowth(edge, mm(0.1), mm(1.6));
    // sin 25 / sin 5 = 4.849, worked by hand: 0.485 mm a honing, three whole honings to 1.6 mm.
    expect(found.ok && inMm(found.value.growthEach)).toBeCloseTo(0.4849, 4);
    expect(found.ok && found.value.honingsToGrinding).toBe(3);
  });

  it('needs a steeper angle than it was ground at', () => {
    expect(microBevelGrowth({ ...edge, honedDegrees: 25 }, mm(0.1), mm(1.6)).ok).toBe(false);
  });
});

describe('the stones that are owned', () => {
  it('go from coarse to fine, and a step that is too wide is told', () => {
    const found = gritSequence([6000, 400, 1000], 'grind');
    expect(found.ok && found.value).toEqual({ grits: [400, 1000, 6000], gaps: [{ from: 1000, to: 6000, between: 2400 }] });
  });

  it('are not all needed to hone, and only the finest to refresh', () => {
    const owned = [220, 1000, 3000, 8000];
    const order = (care: 'refresh' | 'hone' | 'grind') => {
      const found = gritSequence(owned, care);
      return found.ok ? found.value.grits : [];
    };
    expect(order('hone')).toEqual([1000, 3000, 8000]);
    expect(order('refresh')).toEqual([8000]);
    expect(gritSequence([], 'hone').ok).toBe(false);
  });
});
