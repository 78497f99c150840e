import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutPlate } from '../../../core/stock/guillotine/cutPlate.ts';
import type { Layout, PlateProblem } from '../../../core/stock/guillotine/plate.ts';

interface Room { readonly length: number; readonly width: number }

/** What a layout is worth, walking its cuts; throws when a piece does not fit or a cut misses its part of the plate. */
function worth(problem: PlateProblem, layout: Layout, room: Room, counts: number[]): number {
  if (layout.kind === 'waste') return 0;
  if (layout.kind === 'piece') {
    const piece = problem.pieces[layout.piece];
    if (piece === undefined || piece.length > room.length || piece.width > room.width) throw new Error('a piece is laid where it does not fit');
    counts[layout.piece] = (counts[layout.piece] ?? 0) + 1;
    return piece.value;
  }
  const size = layout.across === 'length' ? room.length : room.width;
  if (layout.at <= 0 || layout.at >= size) throw new Error('a cut misses its part of the plate');
  const part = (extent: number): Room => (layout.across === 'length' ? { ...room, length: extent } : { ...room, width: extent });
  return worth(problem, layout.first, part(layout.at), counts) + worth(problem, layout.second, part(size - layout.at), counts);
}

/** Every cut of every rectangle, within what is left of each piece: for small plates. */
function bestByTrying(problem: PlateProblem, { length, width }: Room, left: readonly number[]): Map<string, number> {
  const found = new Map<string, number>([[left.map(() => 0).join(','), 0]]);
  const offer = (counts: readonly number[], value: number): void => {
    const key = counts.join(',');
    if (counts.every((count, piece) => count <= (left[piece] ?? 0)) && (found.get(key) ?? -1) < value) found.set(key, value);
  };
  problem.pieces.forEach((piece, index) => {
    if (piece.length <= length && piece.width <= width) offer(left.map((_, at) => (at === index ? 1 : 0)), piece.value);
  });
  const cuts = [...Array.from({ length: length - 1 }, (_, at) => [{ length: at + 1, width }, { length: length - at - 1, width }] as const), ...Array.from({ length: width - 1 }, (_, at) => [{ length, width: at + 1 }, { length, width: width - at - 1 }] as const)];
  for (const [a, b] of cuts) {
    const others = [...bestByTrying(problem, b, left)];
    for (const [first, value] of bestByTrying(problem, a, left)) {
      for (const [second, more] of others) offer(first.split(',').map((count, piece) => Number(count) + Number(second.split(',')[piece])), value + more);
    }
  }
  return found;
}

const small = fc.record({
  length: fc.integer({ min: 2, max: 4 }), width: fc.integer({ min: 2, max: 3 }),
  pieces: fc.array(fc.record({ length: fc.integer({ min: 1, max: 3 }), width: fc.integer({ min: 1, max: 3 }), value: fc.integer({ min: 1, max: 20 }), most: fc.integer({ min: 0, max: 2 }) }), { minLength: 1, maxLength: 2 }),
});

describe('cutting a plate', () => {
  it('is worth as much as trying every cut finds, with pieces limited in number', () => {
    fc.assert(fc.property(small, (problem) => {
      const plan = cutPlate(problem, () => true);
      const tried = bestByTrying(problem, problem, problem.pieces.map(({ most }) => most));
      expect(plan).toMatchObject({ value: Math.max(...tried.values()), proven: true });
    }), { numRuns: 25 });
  });

  it('lays out what it says it is worth, every piece inside and none more often than allowed', () => {
    const pieces = fc.array(fc.record({ length: fc.integer({ min: 8, max: 40 }), width: fc.integer({ min: 8, max: 40 }), value: fc.integer({ min: 1, max: 900 }), most: fc.integer({ min: 1, max: 3 }) }), { minLength: 1, maxLength: 8 });
    fc.assert(fc.property(pieces, (list) => {
      const problem = { length: 60, width: 45, pieces: list };
      const plan = cutPlate(problem, () => true);
      const counts = list.map(() => 0);
      expect(worth(problem, plan.layout, problem, counts)).toBe(plan.value);
      expect(counts.every((count, piece) => count <= (list[piece]?.most ?? 0))).toBe(true);
      expect(plan.bound).toBeGreaterThanOrEqual(plan.value);
    }), { numRuns: 40 });
  });

  it('leaves a plate whole in which nothing fits', () => {
    expect(cutPlate({ length: 5, width: 5, pieces: [{ length: 6, width: 1, value: 3 }] }, () => true)).toMatchObject({ value: 0, layout: { kind: 'waste' }, proven: true });
  });
});
