import { describe, expect, it } from 'vitest';
import { checkDiagonals } from '../../core/layout/diagonals.ts';
import { checkFourSided } from '../../core/layout/fourSided.ts';
import { linearTolerance, squareTolerance } from '../../core/layout/generalTolerance.ts';
import { nanometres, type Length } from '../../core/length/length.ts';

const mm = (count: number): Length => nanometres(Math.round(count * 1_000_000));

describe('diagonals against closed form', () => {
  it('a rectangle of 300 by 400 has diagonals of 500 (Euclid, Elements I.47)', () => {
    expect(checkDiagonals(mm(500), mm(500), { along: mm(400), across: mm(300) })).toMatchObject({ ok: true, value: { longer: 'neither', whenSquare: mm(500), sides: { farSideRight: 0, offDegrees: 0, diagonal: mm(500) } } });
  });

  it('a rhombus of 500 with diagonals of 600 and 800 leans by 140 over 500 (worked by hand: (800² − 600²) / (4 × 500))', () => {
    const found = checkDiagonals(mm(800), mm(600), { along: mm(500), across: mm(500) });
    expect(found).toMatchObject({ ok: true, value: { longer: 'first', whenSquare: 707_106_781, sides: { farSideRight: mm(140) } } });
    // Its sharp corner: 2 · atan(600 / 800) = 73.7398°.
    expect(found.ok && found.value.sides?.offDegrees).toBeCloseTo(90 - 73.73979529168804, 9);
  });

  it('a small push of 2 mm on 400 by 300 makes the diagonals differ by about 2aδ/√(a² + b²) = 3.2 mm (derived, plane geometry)', () => {
    const found = checkDiagonals(mm(501.6), mm(498.4), { along: mm(400), across: mm(300) });
    expect(found.ok && found.value.sides?.farSideRight).toBe(mm(2));
  });

  it('a trapezium of 600 and 400 with legs of 260 (100 out, 240 high) has equal diagonals of √(600 · 400 + leg²) (Ptolemy, Almagest I.10)', () => {
    const leg = mm(260);
    const height = 240; // 100² + 240² = 260²
    const diagonal = mm(Math.hypot(500, height));
    const found = checkFourSided({ ab: mm(600), bc: leg, cd: mm(400), da: leg, ac: diagonal, bd: diagonal });
    expect(found.ok && found.value.whenSymmetrical).toBe(nanometres(Math.round(Math.sqrt(600 * 400 + 260 ** 2) * 1e6)));
    expect(found.ok && found.value.whenSymmetrical).toBe(diagonal);
    expect(found.ok && found.value.corners.map(({ degrees }) => degrees.toFixed(6))).toEqual(['67.380135', '67.380135', '112.619865', '112.619865']);
  });
});

describe('general tolerances', () => {
  it('are the rows of ISO 2768-1 table 1 (fine and medium), and of ISO 2768-2 table 2, class K (from memory)', () => {
    expect([6, 30, 120, 400, 1000, 2000].map((size) => linearTolerance(mm(size), 'fine') / 1000)).toEqual([50, 100, 150, 200, 300, 500]);
    expect([6, 30, 120, 400, 1000, 2000, 4000].map((size) => linearTolerance(mm(size), 'medium') / 1000)).toEqual([100, 200, 300, 500, 800, 1200, 2000]);
    expect([100, 300, 1000, 3000].map((size) => squareTolerance(mm(size)) / 1000)).toEqual([400, 600, 800, 1000]);
  });
});
