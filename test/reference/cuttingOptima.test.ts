import { describe, expect, it } from 'vitest';
import { cutPlate } from '../../core/stock/guillotine/cutPlate.ts';
import { readInstance } from '../../core/stock/instances.ts';
import { pack } from '../../core/stock/packing/pack.ts';

const patient = { goOn: () => true };

function bars(capacity: number, sizes: readonly number[]): number {
  const plan = pack({ capacity, sizes }, patient);
  expect(plan.proven).toBe(true);
  return plan.bars.length;
}

describe('published optima', () => {
  it('packs PM_u010_05 (Martello and Pisinger, in the data of BPPLib.jl) into four, where first fit decreasing needs five', () => {
    expect(bars(150, [97, 42, 100, 77, 28, 80, 23, 40, 58, 25])).toBe(4);
  });

  it('packs Falkenauer_t60_00 (Falkenauer 1996, OR-Library binpack5) into twenty bins of three that each fill to the last unit', () => {
    const sizes = [495, 474, 473, 472, 466, 450, 445, 444, 439, 430, 419, 414, 410, 395, 372, 370, 366, 366, 366, 363, 361, 357, 355, 351, 350, 350, 347, 320, 315, 307,
      303, 299, 298, 298, 292, 288, 287, 283, 275, 275, 274, 273, 273, 272, 272, 271, 269, 269, 268, 263, 262, 261, 259, 258, 255, 254, 252, 252, 252, 251];
    expect(bars(1000, sizes)).toBe(20);
  });

  it('knows that lengths alone do not tell: six pieces of just over a third do not go into two bars', () => {
    expect(bars(99, [34, 34, 34, 34, 34, 30])).toBe(3);
  });

  it('cuts gcut1 (Beasley 1985, OR-Library) for 56460', () => {
    const text = '10\n250 250\n167 184 30728\n114 118 13452\n167 152 25384\n83 140 11620\n70 86 6020\n143 166 23738\n120 160 19200\n66 148 9768\n87 141 12267\n69 165 11385';
    const instance = readInstance(text);
    if (instance?.kind !== 'guillotine') throw new Error('gcut1 is a guillotine instance');
    expect(cutPlate(instance.problem, () => true)).toMatchObject({ value: 56_460, bound: 56_460, proven: true });
  });

  it('cuts cgcut1 (Christofides and Whitlock 1977, OR-Library) for 244 with its limits, and for 249 without', () => {
    const instance = readInstance('7\n15 10\n8 4 2 66\n3 7 1 35\n8 2 3 24\n3 4 5 17\n3 3 2 11\n3 2 2 8\n2 1 1 2');
    if (instance?.kind !== 'guillotine') throw new Error('cgcut1 is a guillotine instance');
    expect(cutPlate(instance.problem, () => true)).toMatchObject({ value: 244, bound: 244, proven: true });
    const free = { ...instance.problem, pieces: instance.problem.pieces.map(({ length, width, value }) => ({ length, width, value })) };
    expect(cutPlate(free, () => true).value).toBe(249);
  });
});
