import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { mate } from '../../../core/true/mating.ts';
import { forceToClose, usualSpring } from '../../../core/true/springJoint.ts';
import { outOfSquareOver, squarenessOf } from '../../../core/true/squareEdge.ts';
import { surfaceOf, type FaceReadings, type Surface } from '../../../core/true/surface.ts';
import { flatnessLimit } from '../../../core/true/tolerance.ts';

const mm = (millimetres: number): Length => nanometres(Math.round(millimetres * 1_000_000));

function surface(readings: Partial<FaceReadings>): Surface {
  const made = surfaceOf({ length: mm(1000), width: mm(100), stations: [mm(0), mm(500), mm(1000)], ...readings });
  if (!made.ok) throw new Error(JSON.stringify(made.fault));
  return made.value;
}
const sticks = (...leftHigh: number[]) => ({ length: mm(100), leftHigh: leftHigh.map(mm) });

describe('two faces laid together', () => {
  it('meet all over when both are true', () => {
    expect(mate(surface({}), surface({}))).toMatchObject({ greatest: { gap: 0 }, rocks: [] });
  });

  it('gape in the middle where both are hollow, by both hollows', () => {
    const hollow = surface({ along: [mm(0), mm(0.2), mm(0)] });
    expect(mate(hollow, hollow)).toMatchObject({ greatest: { gap: mm(0.4), fromEnd: mm(500) }, rocks: [] });
  });

  it('rock end to end on a crown along, and side to side on a crown across', () => {
    expect(mate(surface({ along: [mm(0.3), mm(0), mm(0.3)] }), surface({})).rocks).toEqual(['end to end']);
    expect(mate(surface({ across: [mm(-0.3), mm(-0.3), mm(-0.3)] }), surface({})).rocks).toEqual(['side to side']);
  });

  it('rock corner to corner on a twist', () => {
    expect(mate(surface({ sticks: sticks(0, 0.5, 1) }), surface({})).rocks).toEqual(['corner to corner']);
  });

  it('meet where both are twisted by the same hand, for turning over leaves the hand as it is', () => {
    const [right, left] = [surface({ sticks: sticks(0, 0.5, 1) }), surface({ sticks: sticks(0, -0.5, -1) })];
    expect(mate(right, right).greatest.gap).toBeLessThanOrEqual(2);
    expect(mate(right, left).greatest.gap).toBeGreaterThan(mm(0.4));
  });

  it('never go into each other', () => {
    const reading = fc.array(fc.integer({ min: 0, max: 2_000_000 }).map(nanometres), { minLength: 3, maxLength: 3 });
    fc.assert(fc.property(reading, reading, (along, across) => {
      expect(Math.min(...mate(surface({ along }), surface({ across })).gaps)).toBeGreaterThanOrEqual(0);
    }));
  });
});

describe('a try square along an edge', () => {
  it('says which arris is high, and the wind of the edge', () => {
    const found = squarenessOf({ thickness: mm(25), stations: [mm(0), mm(500)], gaps: [mm(0.2), mm(-0.1)] });
    expect(found.ok && found.value).toMatchObject({ worst: { gap: mm(0.2), at: 0 }, offReferenceArris: [mm(0.2), 0], offOtherArris: [0, mm(0.1)], wind: mm(0.3) });
  });

  it('stands off over a longer length in proportion: 0.1 degrees over 100 mm are 0.175 mm (tangent)', () => {
    expect(outOfSquareOver(mm(25 * Math.tan(Math.PI / 1800)), mm(25), mm(100)) / 1e6).toBeCloseTo(0.1745, 3);
  });

  it('refuses a gap as wide as the edge', () => {
    expect(squarenessOf({ thickness: mm(25), stations: [mm(0)], gaps: [mm(25)] }).ok).toBe(false);
  });
});

describe('a spring joint', () => {
  const joint = { length: mm(1200), boardWidths: [mm(100), mm(100)] as const, thickness: mm(22), gap: mm(0.8), elasticityMpa: 12_600 };

  it('takes the load that bends a beam on two supports by that much: 5 W L³ / (384 E I) (Wood Handbook, chapter 9)', () => {
    const found = forceToClose(joint);
    if (!found.ok) throw new Error(JSON.stringify(found.fault));
    const inertia = (22 * 100 ** 3) / 12;
    expect((5 * found.value.forceN * 1200 ** 3) / (384 * 12_600 * inertia)).toBeCloseTo(0.4, 9);
  });

  it('bends the narrower board more', () => {
    const force = (widths: readonly [Length, Length]) => {
      const found = forceToClose({ ...joint, boardWidths: widths });
      return found.ok ? found.value.forceN : NaN;
    };
    expect(force([mm(50), mm(100)])).toBeLessThan(force([mm(100), mm(100)]));
  });

  it('is usually one thirty-second in four feet (common practice, no source)', () => {
    expect(usualSpring(nanometres(48 * 25_400_000))).toBe(793_750);
  });
});

describe('how true a face must be', () => {
  it('follows what it is for', () => {
    expect(flatnessLimit('glue', mm(1000)).limit).toBe(mm(0.15));
    expect(flatnessLimit('glue', mm(1000), mm(0.5)).limit).toBe(mm(0.5));
    // ISO 2768-2, table 1, class K, from memory: 0.6 mm up to 1000 mm.
    expect(flatnessLimit('joint', mm(800)).limit).toBe(mm(0.6));
    // EN 13329: 0.30 mm in a metre.
    expect(flatnessLimit('show', mm(2000)).limit).toBe(mm(0.6));
  });
});
