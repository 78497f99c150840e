import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bevelOf, setbackForFace, type BevelInput } from '../../../core/joint/bevel.ts';
import { nanometres } from '../../../core/length/length.ts';
import { inches } from './shop.ts';

const FOOT: BevelInput = { setback: inches(3, 8), otherSetback: inches(3, 8), shaving: nanometres(101_600), across: 'end grain', section: { width: inches(13, 4), thickness: inches(3) } };
const lengths = fc.integer({ min: 10_000, max: 100_000_000 }).map(nanometres);

function sound(input: BevelInput) {
  const bevel = bevelOf(input);
  if (!bevel.ok) throw new Error(JSON.stringify(bevel.fault));
  return bevel.value;
}

describe('a foot bevel', () => {
  it('of equal setbacks lies at 45 degrees and leaves a flat foot within its lines', () => {
    const { angleDegrees, flat, stops } = sound(FOOT);
    expect(angleDegrees).toBeCloseTo(45, 12);
    expect(flat).toEqual({ width: inches(5, 2), thickness: inches(9, 4) });
    expect(stops).toEqual([{ side: 'width', at: inches(13, 8) }, { side: 'thickness', at: inches(3, 2) }]);
  });

  it('of three and four parts has a face of five, and takes twelve fifths off the arris', () => {
    const bevel = sound({ ...FOOT, setback: nanometres(4_000_000), otherSetback: nanometres(3_000_000), shaving: nanometres(100_000) });
    expect(bevel.faceWidth).toBe(5_000_000);
    expect(bevel.depth).toBe(2_400_000);
    expect(bevel.shavings).toBe(24);
    expect(bevel.angleDegrees).toBeCloseTo(36.8699, 4);
  });

  it('is planed with just enough shavings, and not one more', () => {
    fc.assert(fc.property(lengths, lengths, fc.integer({ min: 10_000, max: 2_000_000 }).map(nanometres), (setback, otherSetback, shaving) => {
      const { shavings } = sound({ setback, otherSetback, shaving, across: 'long grain' });
      // In whole numbers: n shavings reach a depth of ab/√(a²+b²) when n²s²(a²+b²) ≥ a²b².
      const [a, b, s] = [BigInt(setback), BigInt(otherSetback), BigInt(shaving)];
      const reach = (count: number): boolean => BigInt(count) ** 2n * s * s * (a * a + b * b) >= a * a * b * b;
      expect(reach(shavings)).toBe(true);
      expect(shavings === 1 || !reach(shavings - 1)).toBe(true);
    }));
  });

  it('along the grain may be planed right through', () => {
    expect(sound({ ...FOOT, across: 'long grain' }).stops).toEqual([]);
  });

  it('out of the usual sizes is told of, and one that leaves nothing is refused', () => {
    expect(sound(FOOT).warnings).toEqual([]);
    expect(sound({ ...FOOT, setback: inches(1, 8) }).warnings).toHaveLength(1);
    expect(bevelOf({ ...FOOT, otherSetback: inches(3, 2) }).ok).toBe(false);
    expect(bevelOf({ ...FOOT, setback: nanometres(0) }).ok).toBe(false);
    expect(bevelOf({ ...FOOT, shaving: nanometres(0) }).ok).toBe(false);
  });
});

it('the setback of a chamfer gives back its face', () => {
  fc.assert(fc.property(lengths, (face) => {
    const setback = setbackForFace(face);
    expect(Math.abs(sound({ setback, otherSetback: setback, shaving: face, across: 'long grain' }).faceWidth - face)).toBeLessThanOrEqual(1);
  }));
});
