import { describe, expect, test } from 'vitest';
import { finishCautions, glueCautions } from '../../../core/work/cautions.ts';
import { glueTimes, REST, TOLERANCES } from '../../../core/work/figures.ts';
import { stepsFor } from '../../../core/work/plan.ts';
import { bakersTable, part, piece } from './pieces.ts';

const MM = 1_000_000;
const MINUTE = 60_000;

describe('tolerances against published ones', () => {
  test('glued faces and tenons keep to the gap that gives the best strength, 0.05 to 0.15 mm (a university extension column)', () => {
    for (const gap of [TOLERANCES.gluedGap, TOLERANCES.tenonFit]) {
      expect(gap).toBeGreaterThan(0.05 * MM);
      expect(Math.abs(gap - 0.15 * MM)).toBeLessThan(0.005 * MM);
    }
  });

  test('lengths and diagonals of 400 to 1000 mm are within ISO 2768-1 medium, 0.8 mm; shoulders within fine, 0.3 mm', () => {
    expect(TOLERANCES.diagonals).toBeLessThanOrEqual(0.8 * MM);
    expect(TOLERANCES.length).toBeLessThanOrEqual(0.8 * MM);
    expect(TOLERANCES.shoulders).toBeLessThanOrEqual(0.3 * MM);
  });

  test('flat and square are within ISO 2768-2 class K: 0.6 mm to 1000 mm, 0.4 mm to 100 mm (from memory)', () => {
    expect(TOLERANCES.flat).toBeLessThanOrEqual(0.6 * MM);
    expect(TOLERANCES.square).toBeLessThanOrEqual(0.4 * MM);
  });

  test('what is to be glued is held closer than what is only to be planed', () => {
    expect(TOLERANCES.gluedGap).toBeLessThan(TOLERANCES.flat);
  });
});

describe('glue times', () => {
  test('are the piece’s own where it gives them, and say so', () => {
    expect(glueTimes({ kind: 'PVA', openMinutes: 8, clampMinutes: 45, fullCureHours: 12 })).toEqual({
      open: { durationMs: 8 * MINUTE, basis: 'your piece file' },
      clamp: { durationMs: 45 * MINUTE, basis: 'your piece file' },
      cure: { durationMs: 12 * 60 * MINUTE, basis: 'your piece file' },
    });
  });

  // Ranges of label figures at about 21 °C: common practice, no source; hot hide glue in clamps: Noyes 1910, at least 6 hours; urea: a reference article, 8 to 10 hours.
  test.each([
    ['PVA', [4, 10], [30, 60]], ['aliphatic PVA', [4, 10], [30, 60]], ['cross-linking PVA', [5, 10], [30, 60]], ['liquid hide glue', [10, 10], [120, 720]],
    ['hot hide glue', [1, 2], [360, 720]], ['slow epoxy', [20, 60], [360, 1440]], ['one-part polyurethane', [10, 30], [45, 360]], ['urea-formaldehyde', [15, 30], [480, 600]],
  ])('of %s keep to the safe end of the usual range: short open time, long clamp time', (kind, [shortest], [, longest]) => {
    const { open, clamp } = glueTimes({ kind });
    expect(open).toEqual({ durationMs: (shortest ?? 0) * MINUTE, basis: 'common practice' });
    expect(clamp.durationMs).toBeGreaterThan(0);
    expect(clamp.durationMs).toBeLessThanOrEqual((longest ?? 0) * MINUTE);
    expect(clamp.durationMs).toBeGreaterThanOrEqual((longest ?? 0) * MINUTE * 0.5);
  });

  test('an unknown glue is treated as the most hurried of the common ones', () => {
    expect(glueTimes({ kind: 'whatever is in the pot' }).open.durationMs).toBe(4 * MINUTE);
  });

  test('a rest after ripping is a day at least (common practice: overnight to a week, no standard figure)', () => {
    expect(REST.durationMs).toBeGreaterThanOrEqual(12 * 60 * MINUTE);
    expect(REST.durationMs).toBeLessThanOrEqual(7 * 24 * 60 * MINUTE);
    expect(REST.basis).toMatch(/common practice/);
  });
});

describe('cautions', () => {
  const withFinish = (kind: string) => piece([part('board', 'board', 1)], [], { finish: { kind, coats: 1, recoatHours: 1 } }).file;
  const ids = (kind: string): readonly string[] => finishCautions(withFinish(kind)).map(({ id }) => id);

  test.each(['boiled linseed oil', 'tung oil', 'oil varnish', 'hard wax oil', 'varnish', 'something from a tin'])('rags with %s can set themselves alight, or may for all we know', (kind) => {
    expect(ids(kind)).toContain('oily rags');
  });

  test.each(['shellac', 'water-based varnish', 'beeswax', 'soap'])('rags with %s do not', (kind) => {
    expect(ids(kind)).not.toContain('oily rags');
  });

  test('spirit and solvents ask for fresh air and no flame', () => {
    expect(ids('shellac')).toContain('fumes');
    expect(ids('soap')).not.toContain('fumes');
  });

  test('epoxy and polyurethane ask for gloves; every glue asks whether the shop is warm enough', () => {
    const glued = (kind: string): readonly string[] => glueCautions(piece([part('board', 'board', 1)], [], { adhesive: { kind } }).file).map(({ id }) => id);
    expect(glued('epoxy')).toEqual(['cold glue', 'glue on skin', 'clamps']);
    expect(glued('PVA')).toEqual(['cold glue', 'clamps']);
  });

  test('what strikes, saws, planes or lifts has its caution, each by one name and one wording', () => {
    const said = new Map<string, string>();
    for (const step of stepsFor(bakersTable())) {
      for (const { id, say } of step.cautions) expect(said.set(id, said.get(id) ?? say).get(id)).toBe(say);
      if (step.tools.includes('mallet') && step.tools.some((tool) => tool.endsWith('chisel'))) expect(step.cautions.map(({ id }) => id)).toContain('mallet');
      if (step.operation === 'rip' || step.operation === 'rough crosscut' || step.operation === 'saw tenons') expect(step.cautions.map(({ id }) => id)).toContain('saw');
      if (step.tools.some((tool) => tool.includes('drill'))) expect(step.cautions.map(({ id }) => id)).toContain('drill');
    }
  });
});
