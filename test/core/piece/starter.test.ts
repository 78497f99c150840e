import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../../../core/length/length.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { misfits } from '../../../core/piece/fits.ts';
import { writePiece } from '../../../core/piece/load.ts';
import { readStarterInput, STARTER_DEFAULTS, STARTER_FIELDS, starterPiece } from '../../../core/piece/starter.ts';
import type { StarterField, StarterInput } from '../../../core/piece/starter.ts';
import { surfaced } from '../../../core/piece/starter/proportions.ts';
import { writeExact } from '../../../core/piece/writeExact.ts';
import { loadSound } from './demo.ts';

function inches(count: number): ReturnType<typeof nanometres> {
  return nanometres(count * NANOMETRES_PER_INCH);
}

/** Any answer that a field allows, at its limits more often than not. */
function anyAnswer(field: StarterField): fc.Arbitrary<unknown> {
  switch (field.kind) {
    case 'length': return fc.oneof(fc.constantFrom(field.min, field.default, field.max), fc.integer({ min: field.min, max: field.max }), fc.integer({ min: Math.ceil(field.min / 396_875), max: Math.floor(field.max / 396_875) }).map((count) => count * 396_875));
    case 'count': return fc.integer({ min: field.min, max: field.max });
    case 'choice': return fc.constantFrom(...field.choices);
    case 'text': return fc.oneof(fc.constantFrom(...field.suggestions), fc.constantFrom('é', "O'Neil's oak", '"quoted" \\ wood', '木'));
  }
}

const anyInput = fc.record(Object.fromEntries(STARTER_FIELDS.map((field) => [field.key, anyAnswer(field)]))) as unknown as fc.Arbitrary<StarterInput>;

function plannedOf(input: Partial<StarterInput>): (name: string) => string {
  const made = starterPiece(input);
  if (!made.ok) throw new Error(JSON.stringify(made.fault));
  const sizes = evaluate(loadSound(writePiece(made.value)), []);
  return (name) => {
    const value = sizeOf(sizes, name);
    return value === undefined ? 'none' : writeExact(value.length);
  };
}

describe('the starter', () => {
  test('makes a table that loads without a fault and fits together, or says which answers do not go together', () => {
    let made = 0;
    fc.assert(fc.property(anyInput, (input) => {
      const piece = starterPiece(input);
      if (!piece.ok) {
        // Only these two can be at odds when every answer is within its own limits.
        expect(piece.fault.map(({ key }) => key).filter((key) => key !== 'stock.rail' && key !== 'stretchers')).toEqual([]);
        return;
      }
      made++;
      expect(misfits(loadSound(writePiece(piece.value)), [])).toEqual([]);
    }), { numRuns: 300 });
    expect(made).toBeGreaterThan(100);
  }, 120_000);

  test('keeps what it was told: the inside sizes, the height and the overhang', () => {
    const plan = plannedOf({ 'inside.length': inches(48), 'inside.width': inches(22), height: inches(34), 'overhang.ends': inches(4), 'overhang.sides': inches(1) });
    expect(plan('longRail.shoulders')).toBe('48 in');
    expect(plan('shortRail.shoulders')).toBe('22 in');
    // Three layers of 5/4, surfaced to 1 1/16 in, less an eighth when trued again: 3 1/16, left at 3 in. 48 + 2 × 3 + 2 × 4 = 62.
    expect(plan('leg.width')).toBe('3 in');
    expect(plan('top.length')).toBe('62 in');
    expect(plan('top.width')).toBe('30 in');
    // 6/4 surfaces to 1 5/16 in.
    expect(plan('top.thickness')).toBe('1 5/16 in');
    expect(plan('leg.length')).toBe('32 11/16 in');
  });

  test('takes a third of the rail for the tenon, by the nearest chisel (Joyce, The Technique of Furniture Making)', () => {
    expect(plannedOf({ 'stock.rail': inches(1) })('longRailTenon.tenonThickness')).toBe('1/4 in');
    expect(plannedOf({ 'stock.rail': inches(1.25) })('longRailTenon.tenonThickness')).toBe('3/8 in');
    expect(plannedOf({ 'stock.rail': inches(1.75) })('longRailTenon.tenonThickness')).toBe('1/2 in');
    expect(plannedOf({ 'stock.rail': nanometres(27 * NANOMETRES_PER_MILLIMETRE) })('longRailTenon.tenonThickness')).toBe('8 mm');
  });

  // National Hardwood Lumber Association grading rules: standard thickness of hardwood lumber surfaced two sides.
  test.each([[1, '13/16 in'], [1.25, '1 1/16 in'], [1.5, '1 5/16 in'], [2, '1 3/4 in'], [3, '2 3/4 in'], [4, '3 3/4 in']])('rough boards of %s in plane to %s', (rough, finished) => {
    expect(writeExact(surfaced(inches(rough)))).toBe(finished);
  });

  test.each([['none', 0], ['sides', 2], ['sides and back', 3], ['all round', 4]] as const)('stretchers: %s makes %i of them', (stretchers, count) => {
    const made = starterPiece({ stretchers });
    const parts = made.ok ? made.value.parts.filter(({ id }) => id.endsWith('Stretcher')) : [];
    expect(parts.reduce((sum, part) => sum + part.count, 0)).toBe(count);
  });

  test('makes solid legs from the stock given', () => {
    const made = starterPiece({ legs: 'solid', 'stock.leg': inches(3) });
    expect(made.ok && made.value.parts[0]?.made).toEqual({ kind: 'solid' });
    expect(plannedOf({ legs: 'solid', 'stock.leg': inches(3) })('leg.width')).toBe('2 3/4 in');
  });

  test('says which answers are out of bounds, all at once', () => {
    const made = starterPiece({ height: inches(90), layers: 1, species: '' });
    expect(made.ok ? [] : made.fault.map(({ key, expected, found }) => [key, expected, found])).toEqual([
      ['height', 'from 12 in to 48 in', '90 in'],
      ['layers', 'a whole number from 2 to 6', '1'],
      ['species', 'words, at most 80 letters', "''"],
    ]);
  });

  test('says that rails are too thick for the legs, and that a low table has no room for stretchers', () => {
    const thick = starterPiece({ legs: 'solid', 'stock.leg': inches(1.5), 'stock.rail': inches(2) });
    expect(thick.ok ? '' : thick.fault[0]?.message).toBe('There is no room for tenons with rails 1 3/4 in thick in legs of 1 5/16 in. Take thinner boards for the rails, or make the legs stouter.');
    const low = starterPiece({ height: inches(12), stretchers: 'all round' });
    expect(low.ok ? '' : low.fault[0]?.message).toMatch(/at least .* high\. Leave them out/u);
  });
});

describe('answers as they are typed', () => {
  test('take their defaults where nothing is typed', () => {
    expect(readStarterInput({ height: ' ', species: '' })).toEqual({ ok: true, value: STARTER_DEFAULTS });
  });

  test('are read as lengths, choices and words', () => {
    const read = readStarterInput({ 'inside.length': '4 ft', height: '760', stretchers: 'sides', layers: '4', species: ' white oak ' }, 'millimetre');
    expect(read.ok && read.value).toMatchObject({ 'inside.length': inches(48), height: 760 * NANOMETRES_PER_MILLIMETRE, stretchers: 'sides', layers: 4, species: 'white oak' });
  });

  test('are refused with the reason, all at once', () => {
    const read = readStarterInput({ hieght: '30 in', height: '30', legs: 'turned', layers: 'three' });
    expect(read.ok ? [] : read.fault.map(({ key, message }) => `${key}: ${message}`)).toEqual([
      "hieght: Nothing is called 'hieght' here. Did you mean height?",
      expect.stringMatching(/^height: .*unit is missing/u),
      "legs: How the legs are made: give laminated or solid, not 'turned'.",
      "layers: Layers in a leg: give a whole number from 2 to 6, not 'three'.",
    ]);
  });
});

test('every field can be shown in a form: what to ask, a default within its limits', () => {
  expect(new Set(STARTER_FIELDS.map(({ key }) => key)).size).toBe(Object.keys(STARTER_DEFAULTS).length);
  for (const field of STARTER_FIELDS) {
    expect(field.say).toMatch(/^[a-z]/u);
    if (field.kind === 'length' || field.kind === 'count') expect(field.min <= field.default && field.default <= field.max).toBe(true);
    if (field.kind === 'choice') expect(field.choices).toContain(field.default);
  }
});
