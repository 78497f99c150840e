import { describe, expect, it } from 'vitest';
import { clampsFor, gramsFor, GM2_PER_LB_PER_1000_SQUARE_FEET, MPA_PER_PSI, NEWTONS_PER_LBF, PRESSURE_PSI, squareInches, totalForceLbf } from '../../core/glue/clamping.ts';
import { ADHESIVES, adhesiveCalled } from '../../core/glue/adhesive.ts';
import { clampStretch } from '../../core/glue/stretch.ts';
import { warmBoard } from '../../core/glue/warming.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../core/length/length.ts';
import { densityOf, speciesCalled } from '../../core/wood/species.ts';

const inch = (count: number): Length => nanometres(Math.round(count * NANOMETRES_PER_INCH));

describe('clamping and spreading, against published figures', () => {
  it('an edge joint of 36 by 3/4 in at 150 psi takes 4050 lbf in all (statics: pressure × area)', () => {
    expect(totalForceLbf(squareInches(inch(36), inch(0.75)), 150)).toBeCloseTo(4_050, 9);
    expect(totalForceLbf(squareInches(inch(48), inch(1)), 200)).toBeCloseTo(9_600, 9);
  });

  it('35 lb to 1000 square feet are 170.9 g/m², 50 lb 244 (a trade article; 170 to 250)', () => {
    expect(35 * GM2_PER_LB_PER_1000_SQUARE_FEET).toBeCloseTo(170.9, 1);
    expect(50 * GM2_PER_LB_PER_1000_SQUARE_FEET).toBeCloseTo(244.1, 1);
    expect(adhesiveCalled('yellow glue').spreadGm2).toEqual([170, 250]);
  });

  it('a square metre takes its spread in grams', () => {
    const [from, to] = gramsFor((1000 / 25.4) ** 2, [170, 250]);
    expect([from, to].map((grams) => Math.round(grams))).toEqual([170, 250]);
  });

  it('pressures are 0.69 to 1.03 MPa on low, 1.21 to 1.72 on high density (a trade article in both units; Wood Handbook, chapter 10: about 0.7 to 1.7)', () => {
    expect(PRESSURE_PSI.low.map((psi) => psi * MPA_PER_PSI)).toEqual([expect.closeTo(0.69, 2), expect.closeTo(1.03, 2)]);
    expect(PRESSURE_PSI.high.map((psi) => psi * MPA_PER_PSI)).toEqual([expect.closeTo(1.21, 2), expect.closeTo(1.72, 2)]);
  });

  it('oak and hard maple are dense, softwoods and poplar light (the same article)', () => {
    expect(['red oak', 'hard maple', 'poplar', 'white pine', 'cherry'].map((wood) => densityOf(speciesCalled(wood)?.gravity ?? 0))).toEqual(['high', 'high', 'low', 'low', 'medium']);
  });

  it('1 lbf is 4.448222 N (NIST SP 811, B.8)', () => expect(NEWTONS_PER_LBF).toBe(4.448222));

  it('spacing is twice the board behind: a 36 in edge with 3 in of wood and 800 lbf clamps wants six (plain statics by hand: 4050 / 800 → 6, 36 / 6 → 6)', () => {
    expect(clampsFor({ length: inch(36), width: inch(0.75), behind: inch(3) }, [150, 150], 800)).toMatchObject({ ok: true, value: { forForce: 6, forSpread: 6, wanted: 6, spacing: inch(6) } });
  });

  it('a cold shop may need up to twice the clamp time (published): twice at the lowest temperature; a reacting glue twice for every 10 °C (engineering rule)', () => {
    expect(clampStretch('by drying', 10, 10)).toBe(2);
    expect(clampStretch('by reacting', 11, 10)).toBe(2);
    expect(clampStretch('by reacting', 21, 10)).toBe(1);
  });

  it('no class may be used under the lowest temperature published for it: 13 °C white, 7 cross-linking, 21 urea', () => {
    for (const [name, lowest] of [['white glue', 13], ['cross-linking glue', 7], ['urea glue', 21]] as const) expect(ADHESIVES.find((glue) => glue.name === name)?.usual.lowestC).toBe(lowest);
  });
});

describe('warming up', () => {
  it('follows Newton\'s law of cooling: three quarters of the way takes twice the time of half of it', () => {
    const board = { thickness: inch(1), gravity: 0.6, fromC: 0, roomC: 20 };
    const [half, most] = [warmBoard({ ...board, toC: 10 }), warmBoard({ ...board, toC: 15 })];
    expect(half.ok && most.ok && most.value.minutes / half.value.minutes).toBeCloseTo(2, 1);
  });
});
