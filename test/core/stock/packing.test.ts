import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack } from '../../../core/stock/packing/pack.ts';
import type { PackingProblem } from '../../../core/stock/packing/problem.ts';

const patient = { goOn: () => true };
const INCH = 25_400_000;

/** Tries every way: for a handful of pieces. */
function fewestByTrying({ capacity, sizes }: PackingProblem, rooms: readonly number[] = []): number {
  const [first, ...others] = sizes;
  if (first === undefined) return rooms.length;
  const into = rooms.flatMap((room, at) => (room >= first ? [fewestByTrying({ capacity, sizes: others }, rooms.map((one, index) => (index === at ? one - first : one)))] : []));
  return Math.min(...into, fewestByTrying({ capacity, sizes: others }, [...rooms, capacity - first]));
}

const problems = fc.integer({ min: 5, max: 40 }).chain((capacity) => fc.array(fc.integer({ min: 1, max: capacity }), { minLength: 1, maxLength: 8 }).map((sizes) => ({ capacity, sizes })));
const larger = fc.integer({ min: 50, max: 400 }).chain((capacity) => fc.array(fc.integer({ min: Math.ceil(capacity / 8), max: Math.ceil(capacity * 0.7) }), { minLength: 20, maxLength: 60 }).map((sizes) => ({ capacity, sizes })));

describe('packing pieces into bars', () => {
  it('finds as few bars as trying every way does', () => {
    fc.assert(fc.property(problems, (problem) => {
      const plan = pack(problem, patient);
      expect(plan.bars.length).toBe(fewestByTrying(problem));
      expect(plan).toMatchObject({ proven: true, bound: plan.bars.length });
    }), { numRuns: 150 });
  });

  it('uses every piece once and overfills no bar, and its bound is never above what it found', () => {
    fc.assert(fc.property(larger, (problem) => {
      const { bars, bound } = pack(problem, patient);
      expect(bars.flat().sort((a, b) => a - b)).toEqual(problem.sizes.map((_, index) => index));
      for (const bar of bars) expect(bar.reduce((sum, index) => sum + (problem.sizes[index] ?? 0), 0)).toBeLessThanOrEqual(problem.capacity);
      expect(bound).toBeLessThanOrEqual(bars.length);
    }), { numRuns: 40 });
  });

  it('finds the same number whatever the order of the pieces', () => {
    fc.assert(fc.property(larger, (problem) => {
      expect(pack({ ...problem, sizes: [...problem.sizes].reverse() }, patient).bars.length).toBe(pack(problem, patient).bars.length);
    }), { numRuns: 15 });
  });

  it('cuts five pieces that fill a board to the last 64th, kerf and all, from one board', () => {
    const kerf = INCH / 64;
    const piece = 19 * INCH + 3 * (INCH / 64);
    const board = 5 * piece + 4 * kerf;
    expect(pack({ capacity: board + kerf, sizes: Array.from({ length: 5 }, () => piece + kerf) }, patient).bars.length).toBe(1);
    expect(pack({ capacity: board + kerf - 1, sizes: Array.from({ length: 5 }, () => piece + kerf) }, patient).bars.length).toBe(2);
  });

  it('has four pieces of 23.9 in from 96 in with a kerf of an eighth, for there is no kerf after the last', () => {
    const kerf = INCH / 8;
    expect(pack({ capacity: 96 * INCH + kerf, sizes: Array.from({ length: 4 }, () => 23.9 * INCH + kerf) }, patient).bars.length).toBe(1);
  });

  it('gives a whole plan and a sure bound when it is stopped at once', () => {
    const sizes = Array.from({ length: 60 }, (_, index) => 250 + ((index * 37) % 240));
    const { bars, bound } = pack({ capacity: 1000, sizes }, { goOn: () => false });
    expect(bars.flat()).toHaveLength(60);
    expect(bound).toBeLessThanOrEqual(bars.length);
  });

  it('packs ten thousand pieces of a few sizes', () => {
    const sizes = Array.from({ length: 10_000 }, (_, index) => [17, 23, 31, 44][index % 4] ?? 17);
    const plan = pack({ capacity: 100, sizes }, patient);
    expect(plan.bars.flat()).toHaveLength(10_000);
    expect(plan.proven).toBe(true);
  });

  it('throws on a piece longer than the bar and on sizes that are no whole numbers', () => {
    expect(() => pack({ capacity: 10, sizes: [11] }, patient)).toThrow('longer than the bar');
    expect(() => pack({ capacity: 10, sizes: [0] }, patient)).toThrow('whole numbers');
  });
});
