import { describe, expect, it } from 'vitest';
import { stackOf, tightened } from '../../core/layout/stack.ts';
import { nanometres, type Length } from '../../core/length/length.ts';

const mm = (count: number): Length => nanometres(Math.round(count * 1_000_000));
const one = { pieces: 1, factor: { numerator: 1, denominator: 1 } };

describe('tolerance stacks worked by hand', () => {
  it('0.3 and 0.4 mm: 0.7 at worst, 0.5 by root sum square (propagation of independent uncertainties, JCGM 100:2008, 5.1.2, from memory)', () => {
    expect(stackOf([{ ...one, tolerance: mm(0.3) }, { ...one, tolerance: mm(0.4) }])).toEqual({ worst: mm(0.7), rootSumSquare: mm(0.5), parts: [0.36, 0.64] });
  });

  it('four alike: four times at worst, twice by root sum square; for half a millimetre each an eighth, or a quarter', () => {
    const { worst, rootSumSquare } = stackOf([{ ...one, tolerance: mm(0.2), pieces: 4 }]);
    expect([worst, rootSumSquare]).toEqual([mm(0.8), mm(0.4)]);
    expect(tightened(mm(0.2), worst, mm(0.5))).toBe(mm(0.125));
    expect(tightened(mm(0.2), rootSumSquare, mm(0.5))).toBe(mm(0.25));
  });
});
