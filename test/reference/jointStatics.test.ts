import { describe, expect, it } from 'vitest';
import { deepestMortise } from '../../core/joint/depth.ts';
import { chooseChisel, THIRD } from '../../core/joint/chisel.ts';
import { rackingOf } from '../../core/joint/racking.ts';
import { N_PER_MM2_PER_PSI, strengthOf } from '../../core/wood/woodStrength.ts';
import { nanometres } from '../../core/length/length.ts';
import { millimetres } from '../core/joint/shop.ts';


describe('racking by plain statics', () => {
  // A wood of 100 N/mm² in rupture and 8 N/mm² at the glue, which is taken as half of the shear along the grain.
  const wood = { rupturePsi: 100 / N_PER_MM2_PER_PSI, shearPsi: 16 / N_PER_MM2_PER_PSI };
  const push = { newtons: 300, heightMm: 700 };

  it('a tenon 10 by 50 mm breaks at 417 N·m (textbook: rupture · t · w² / 6)', () => {
    const cheek = [{ top: millimetres(0), bottom: millimetres(50), length: millimetres(40) }];
    expect(rackingOf(cheek, millimetres(10), wood, push).tenonNm).toBeCloseTo((100 * 10 * 50 ** 2) / 6 / 1000, 9);
    expect(rackingOf(cheek, millimetres(10), wood, push).tenonNm).toBeCloseTo(416.67, 2);
  });

  it('two cheeks 50 by 40 mm give at 341 to 342 N·m (textbook: 2 τ J / r, J = w l (w² + l²) / 12, r = ½ √(w² + l²))', () => {
    const cheek = [{ top: millimetres(0), bottom: millimetres(50), length: millimetres(40) }];
    const found = rackingOf(cheek, millimetres(10), wood, push);
    expect(found.glueNm).toBeCloseTo((2 * 8 * 50 * 40 * Math.hypot(50, 40)) / 6 / 1000, 9);
    expect(Math.abs(found.glueNm - 341)).toBeLessThan(1);
    expect(found.jointNm).toBe(found.glueNm);
  });

  it('a push of 300 N at 0.7 m asks 52.5 N·m of each of four joints', () => {
    const found = rackingOf([{ top: millimetres(0), bottom: millimetres(50), length: millimetres(40) }], millimetres(10), wood, push);
    expect(found.askedNm).toBeCloseTo(52.5, 12);
    expect(found.times).toBeCloseTo(found.jointNm / 52.5, 12);
  });

  it('twin tenons 20 mm wide, 20 mm apart, bend about their common middle: I = t (60³ − 20³) / 12', () => {
    const cheek = [{ top: millimetres(0), bottom: millimetres(20), length: millimetres(40) }, { top: millimetres(40), bottom: millimetres(60), length: millimetres(40) }];
    expect(rackingOf(cheek, millimetres(10), wood, push).tenonNm).toBeCloseTo((100 * 10 * (60 ** 3 - 20 ** 3)) / 12 / 30 / 1000, 9);
  });
});

describe('strength of woods', () => {
  it('is as the Wood Handbook prints it (USDA Forest Products Laboratory, Table 5-3b, 12 percent)', () => {
    expect(strengthOf('American beech')).toEqual({ rupturePsi: 14_900, shearPsi: 2_010 });
    expect(strengthOf('Sugar maple')).toEqual({ rupturePsi: 15_800, shearPsi: 2_330 });
    expect(strengthOf('white ash')).toEqual({ rupturePsi: 15_000, shearPsi: 1_910 });
    expect(strengthOf('cardboard')).toBeUndefined();
  });

  it('sugar maple shears at 16.1 MPa (1 psi = 6.894757 kPa, NIST SP 811)', () => {
    expect(2_330 * N_PER_MM2_PER_PSI).toBeCloseTo(16.1, 1);
  });
});

describe('published proportions', () => {
  it('a light stub mortise goes seven eighths into the stile (Fairham, Woodwork Joints)', () => {
    expect(deepestMortise(nanometres(2 * 25_400_000)).depth).toBe(nanometres(1.75 * 25_400_000));
    // Of a thinner stile, the quarter inch to the outer face rules (common practice, no source).
    expect(deepestMortise(nanometres(1.5 * 25_400_000)).depth).toBe(nanometres(1.25 * 25_400_000));
  });

  it('a tenon is a third of three quarter inch stuff, a quarter inch (Noyes, Handwork in Wood, 1910; Joyce: the nearest chisel)', () => {
    const chisels = [1 / 8, 1 / 4, 3 / 8].map((width) => nanometres(width * 25_400_000));
    expect(chooseChisel(nanometres(0.75 * 25_400_000), chisels, THIRD)).toEqual({ ok: true, value: 6_350_000 });
  });
});
