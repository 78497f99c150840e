import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveLinearProgram, type Requirement } from '../../../core/true/linearProgram.ts';

const atLeast = (bound: number, ...coefficients: number[]): Requirement => ({ coefficients, bound });
const reach = (row: readonly number[], at: readonly number[]): number => row.reduce((sum, value, index) => sum + value * (at[index] ?? 0), 0);

describe('a linear programme', () => {
  it('finds the corner that a textbook finds by drawing', () => {
    // Maximise 3x + 5y with x ≤ 4, 2y ≤ 12, 3x + 2y ≤ 18: 36 at (2, 6). Hillier and Lieberman, Introduction to Operations Research, the Wyndor example of chapter 3.
    const solved = solveLinearProgram({ minimise: [-3, -5], atLeast: [atLeast(-4, -1, 0), atLeast(-12, 0, -2), atLeast(-18, -3, -2), atLeast(0, 1, 0), atLeast(0, 0, 1)] });
    expect(solved.ok && solved.value[0]).toBeCloseTo(2, 9);
    expect(solved.ok && solved.value[1]).toBeCloseTo(6, 9);
  });

  it('says when the requirements contradict each other', () => {
    expect(solveLinearProgram({ minimise: [1], atLeast: [atLeast(2, 1), atLeast(-1, -1)] })).toEqual({ ok: false, fault: 'contradictory' });
  });

  it('says when there is no least', () => {
    expect(solveLinearProgram({ minimise: [-1, 0], atLeast: [atLeast(0, 1, 0), atLeast(0, 0, 1)] })).toEqual({ ok: false, fault: 'unbounded' });
  });

  it('does not go round in circles where many corners are one', () => {
    // Beale's example (1955), on which the plain rule cycles: the least value is -1/20.
    const solved = solveLinearProgram({ minimise: [-0.75, 150, -0.02, 6], atLeast: [
      atLeast(0, -0.25, 60, 0.04, -9), atLeast(0, -0.5, 90, 0.02, -3), atLeast(-1, 0, 0, -1, 0), ...[0, 1, 2, 3].map((index) => atLeast(0, ...[0, 1, 2, 3].map((other) => (other === index ? 1 : 0)))),
    ] });
    expect(solved.ok && reach([-0.75, 150, -0.02, 6], solved.value)).toBeCloseTo(-0.05, 9);
  });

  it('meets every requirement, and no corner of them is better', () => {
    const number = fc.integer({ min: -9, max: 9 });
    fc.assert(fc.property(fc.array(fc.tuple(number, number, fc.integer({ min: -9, max: 0 })), { minLength: 1, maxLength: 8 }), fc.tuple(number, number), (rows, minimise) => {
      const box = [atLeast(-10, 1, 0), atLeast(-10, -1, 0), atLeast(-10, 0, 1), atLeast(-10, 0, -1)];
      const requirements = [...rows.map(([a, b, bound]) => atLeast(bound, a, b)), ...box];
      const solved = solveLinearProgram({ minimise, atLeast: requirements });
      if (!solved.ok) throw new Error(solved.fault);
      for (const { coefficients, bound } of requirements) expect(reach(coefficients, solved.value)).toBeGreaterThan(bound - 1e-7);
      expect(reach(minimise, solved.value)).toBeLessThan(leastCorner(requirements, minimise) + 1e-7);
    }));
  });
});

/** The least value among all points where two requirements are met exactly and the others are met. */
function leastCorner(requirements: readonly Requirement[], minimise: readonly number[]): number {
  const corners = requirements.flatMap((first, index) => requirements.slice(index + 1).flatMap((second): (readonly [number, number])[] => {
    const [[a = 0, b = 0], [c = 0, d = 0]] = [first.coefficients, second.coefficients];
    const by = a * d - b * c;
    return by === 0 ? [] : [[(first.bound * d - b * second.bound) / by, (a * second.bound - first.bound * c) / by]];
  }));
  return Math.min(...corners.filter((at) => requirements.every(({ coefficients, bound }) => reach(coefficients, at) >= bound - 1e-9)).map((at) => reach(minimise, at)));
}
