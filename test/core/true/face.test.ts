import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { trueBoard } from '../../../core/true/board.ts';
import { firstFace, mostThickness, secondFace, thicknessLeft } from '../../../core/true/plane.ts';
import { planingPlan } from '../../../core/true/planing.ts';
import { seenBySticks, shapeOf } from '../../../core/true/shape.ts';
import { surfaceOf, type FaceReadings, type Surface } from '../../../core/true/surface.ts';

const mm = (millimetres: number): Length => nanometres(Math.round(millimetres * 1_000_000));
const BOARD = { length: mm(1200), width: mm(150), stations: [mm(50), mm(400), mm(800), mm(1150)] };

function surface(readings: Partial<FaceReadings> = {}): Surface {
  const made = surfaceOf({ ...BOARD, ...readings });
  if (!made.ok) throw new Error(JSON.stringify(made.fault));
  return made.value;
}

function planed(of: Surface): readonly Length[] {
  const found = firstFace(of);
  if (!found.ok) throw new Error(found.fault);
  return found.value.depths;
}

const reading = fc.integer({ min: 0, max: 3_000_000 }).map(nanometres);
const signed = fc.integer({ min: -3_000_000, max: 3_000_000 }).map(nanometres);
const four = <Value>(of: fc.Arbitrary<Value>) => fc.array(of, { minLength: 4, maxLength: 4 });
const anyFace = fc.record({ along: four(reading), leftHigh: four(signed), across: four(signed) })
  .map(({ along, leftHigh, across }) => surface({ along, sticks: { length: mm(600), leftHigh }, across }));

describe('what sticks and straightedge say of a face', () => {
  it('is nothing on a true one', () => {
    expect(planed(surface()).every((depth) => depth === 0)).toBe(true);
  });

  it('is a twist that the sticks magnify: 0.5 mm over 100 mm shows as 3 mm on sticks of 600 (similar triangles)', () => {
    expect(seenBySticks(mm(0.5), mm(600), mm(100))).toBe(mm(3));
    const twisted = surface({ width: mm(100), sticks: { length: mm(600), leftHigh: [mm(0), mm(1), mm(2), mm(3)] } });
    expect(shapeOf(twisted).wind).toMatchObject({ lift: mm(0.5), highFarCorner: 'left' });
  });

  it('is a crown or a hollow across, and along', () => {
    const shape = shapeOf(surface({ across: [mm(0), mm(-0.5), mm(0), mm(0)], along: [mm(0), mm(0.4), mm(0.8), mm(0)] }));
    expect(shape.across).toEqual({ amount: mm(-0.5), at: mm(400) });
    expect(shape.along).toEqual({ amount: mm(0.8), at: mm(800) });
  });

  it.each<[Partial<FaceReadings>, string]>([
    [{ stations: [mm(50)] }, 'stations'], [{ stations: [mm(50), mm(40)] }, 'stations'], [{ stations: [mm(50), mm(1300)] }, 'stations'], [{ width: mm(0) }, 'width'],
    [{ along: [mm(1)] }, 'along'], [{ along: [mm(0), mm(-1), mm(0), mm(0)] }, 'along'], [{ across: [] }, 'across'], [{ sticks: { length: mm(100), leftHigh: [mm(0), mm(0), mm(0), mm(0)] } }, 'stick'],
  ])('is refused with the reading that is wrong: %o', (readings, key) => {
    const made = surfaceOf({ ...BOARD, ...readings });
    expect(made.ok || made.fault.key).toBe(key);
  });
});

describe('the first face', () => {
  it('takes a quarter of the wind off two corners when all else is true', () => {
    // A twist lifts one diagonal by a quarter of the lift over a mean plane and drops the other: the zone is half of the lift.
    const depths = planed(surface({ stations: [mm(0), mm(1200)], sticks: { length: mm(150), leftHigh: [mm(0), mm(2)] } }));
    expect(depths).toEqual([0, 0.5, 1, 1, 0.5, 0].map(mm));
  });

  it('is never beaten by any other plane, and never cuts below the lowest point it may', () => {
    fc.assert(fc.property(anyFace, fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })), (face, [along, across]) => {
      const depths = planed(face);
      expect(Math.min(...depths)).toBeLessThanOrEqual(1);
      expect(Math.min(...depths)).toBeGreaterThanOrEqual(0);
      const over = face.points.map(({ height, fromEnd, fromLeft }) => height / 1e6 - along * (fromEnd / face.length) - across * (fromLeft / face.width));
      expect(Math.max(...depths) / 1e6).toBeLessThanOrEqual(Math.max(...over) - Math.min(...over) + 1e-5);
    }));
  });

  it('is the narrowest zone that trying every three points finds', () => {
    fc.assert(fc.property(anyFace, (face) => {
      expect(Math.max(...planed(face)) / 1e6).toBeCloseTo(narrowestByTrial(face), 4);
    }), { numRuns: 25 });
  });

  it('leaves a plane', () => {
    fc.assert(fc.property(anyFace, (face) => {
      const depths = planed(face);
      const left = face.points.map(({ height, fromEnd, fromLeft }, index) => ({ z: height - (depths[index] ?? 0), x: fromEnd, y: fromLeft }));
      const [a, b, c] = [left[0], left[2], left[10]];
      if (!a || !b || !c) throw new Error('a face of twelve points');
      const across = (b.z - a.z) / (b.y - a.y);
      const along = (c.z - a.z - across * (c.y - a.y)) / (c.x - a.x);
      for (const { x, y, z } of left) expect(Math.abs(z - a.z - along * (x - a.x) - across * (y - a.y))).toBeLessThan(10);
    }));
  });
});

/** The least range of heights over all planes parallel to one through three of the points or through two of them and the direction of two others. */
function narrowestByTrial({ points, length, width }: Surface): number {
  const at = points.map(({ height, fromEnd, fromLeft }) => [fromEnd / length, fromLeft / width, height / 1e6] as const);
  let least = Infinity;
  const tryDirections = (u: readonly number[], v: readonly number[]) => {
    const [[ux = 0, uy = 0, uz = 0], [vx = 0, vy = 0, vz = 0]] = [u, v];
    const by = ux * vy - uy * vx;
    if (Math.abs(by) < 1e-9) return;
    const [a, b] = [(uz * vy - uy * vz) / by, (ux * vz - uz * vx) / by];
    const over = at.map(([x, y, z]) => z - a * x - b * y);
    least = Math.min(least, Math.max(...over) - Math.min(...over));
  };
  const spans = at.flatMap((p, i) => at.slice(i + 1).map((q) => [q[0] - p[0], q[1] - p[1], q[2] - p[2]]));
  for (const [index, u] of spans.entries()) for (const v of spans.slice(index + 1)) tryDirections(u, v);
  return least;
}

describe('both faces', () => {
  const crooked = surface({ sticks: { length: mm(600), leftHigh: [mm(0), mm(4), mm(8), mm(12)] } });

  it('leave the thickness of the thinnest place, parallel to the first', () => {
    const first = firstFace(crooked);
    if (!first.ok) throw new Error(first.fault);
    const thicknesses = crooked.points.map(() => mm(25));
    const left = thicknessLeft(first.value, thicknesses);
    expect(Math.min(...secondFace(first.value, thicknesses, left))).toBe(0);
  });

  it('leave no more, however the first is laid, than the linear programme says', () => {
    fc.assert(fc.property(anyFace, four(fc.integer({ min: 20_000_000, max: 26_000_000 }).map(nanometres)), (face, thicknesses) => {
      const board = trueBoard(face, mm(0.1), thicknesses);
      expect(board.thickness?.afterLeastCut).toBeLessThanOrEqual((board.thickness?.most ?? 0) + 2);
    }));
  });

  it('are laid for the thickness that is wanted where the least cut would not leave it', () => {
    fc.assert(fc.property(anyFace, four(fc.integer({ min: 20_000_000, max: 26_000_000 }).map(nanometres)), (face, thicknesses) => {
      const all = face.points.map(({ station }) => thicknesses[station] ?? mm(0));
      const most = mostThickness(face, all);
      const board = trueBoard(face, mm(0.1), thicknesses, nanometres(most - 5));
      expect(thicknessLeft(board.first, all)).toBeGreaterThanOrEqual(most - 10);
    }));
  });

  it('say so when no plane leaves the thickness that is wanted', () => {
    const thin = crooked.points.map(() => mm(20));
    expect(firstFace(crooked, { thickness: mm(22), thicknesses: thin })).toEqual({ ok: false, fault: 'too thin' });
  });
});

describe('the order of planing', () => {
  it('takes the high places down in stages that add up to every place’s shavings', () => {
    fc.assert(fc.property(anyFace, (face) => {
      const depths = planed(face);
      const plan = planingPlan(face, depths, mm(0.1));
      expect(plan.stages.length).toBeLessThanOrEqual(4);
      expect(plan.stages.reduce((sum, { shavings }) => sum + shavings, 0)).toBe(plan.most);
      for (const [index, count] of plan.shavings.entries()) {
        expect(count * 100_000).toBeGreaterThanOrEqual(depths[index] ?? 0);
        expect((count - 1) * 100_000).toBeLessThan(depths[index] ?? 0);
      }
    }));
  });

  it('has nothing to do on a true face', () => {
    expect(planingPlan(surface(), planed(surface()), mm(0.1)).stages).toEqual([]);
  });
});
