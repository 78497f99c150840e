import { describe, expect, it } from 'vitest';
import { negate } from '../../core/length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../core/length/length.ts';
import { atRingAngle, coefficientFromShrinkage, coefficientsOf, movement, movementFromGreen } from '../../core/wood/movement.ts';
import { speciesCalled } from '../../core/wood/species.ts';
import { SPECIES } from '../../core/wood/speciesTable.ts';

const inch = (count: number): Length => nanometres(Math.round(count * NANOMETRES_PER_INCH));

function coefficient(name: string): { readonly radial: number; readonly tangential: number } {
  const species = speciesCalled(name);
  const found = species && coefficientsOf(species);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

/** In inches. */
function moved(width: number, perPoint: number, from: number, to: number): number {
  const found = movement(inch(width), perPoint, from, to);
  if (!found.ok) throw new Error(JSON.stringify(found.fault));
  return found.value / NANOMETRES_PER_INCH;
}

describe('movement, against the Wood Handbook', () => {
  it('a flat-sawn white fir board 9.15 in wide, 8 to 11 percent, grows 0.067 in to 9.217 in (chapter 13, worked example; 1.7 mm, 233.7 mm)', () => {
    const grown = moved(9.15, coefficient('white fir').tangential, 8, 11);
    expect(grown).toBeCloseTo(0.067, 3);
    expect(9.15 + grown).toBeCloseTo(9.217, 3);
    expect(232 + 25.4 * grown).toBeCloseTo(233.7, 0);
  });

  it('red alder, 8 in flat-sawn, 6 points: 0.1248 in (a magazine chart from the same table, coefficient rounded to 0.0026)', () => {
    expect(moved(8, 0.0026, 6, 12)).toBeCloseTo(0.1248, 4);
    expect(moved(8, coefficient('red alder').tangential, 6, 12)).toBeCloseTo(0.1248, 2);
  });

  it.each([
    ['sugar maple top, 36 in flat-sawn, 7 to 11', 36, 'sugar maple', 'tangential', 7, 11, 0.508],
    ['cherry, 36 in, 6 to 10', 36, 'cherry', 'tangential', 6, 10, 0.357],
    ['white oak quarter-sawn, 36 in, 6 to 10', 36, 'white oak', 'radial', 6, 10, 0.259],
    ['walnut, 900 mm, 6 to 11', 900 / 25.4, 'walnut', 'tangential', 6, 11, 12.33 / 25.4],
    ['eastern white pine, 24 in, 6 to 12', 24, 'white pine', 'tangential', 6, 12, 0.305],
  ] as const)('%s percent (plain arithmetic on the coefficients of Table 13-5, equation 13-2)', (_, width, wood, grain, from, to, expected) => {
    expect(moved(width, coefficient(wood)[grain], from, to)).toBeCloseTo(expected, 3);
  });

  it('shrinkage of 11.9 percent makes a coefficient of 0.00431 (American beech, Tables 4-3 and 13-5; equation 13-3 at 10 percent)', () => {
    expect(coefficientFromShrinkage(11.9)).toBeCloseTo(0.00431, 5);
  });

  it('all printed coefficients follow from the printed shrinkage to the fifth decimal, but for groups of woods, teak and mahogany', () => {
    const exempt = ['white oak', 'teak', 'true mahogany'];
    const pairs = SPECIES.flatMap(({ name, shrinkage, coefficient: printed }) => (shrinkage && printed && !exempt.includes(name) ? [{ name, shrinkage, printed }] : []));
    expect(pairs.length).toBeGreaterThanOrEqual(18);
    for (const { name, shrinkage, printed } of pairs) {
      for (const grain of ['radial', 'tangential'] as const) expect(Math.abs(coefficientFromShrinkage(shrinkage[grain]) - printed[grain]), `${name}, ${grain}`).toBeLessThanOrEqual(0.0000105);
    }
  });

  it('most woods change about one percent for four points of moisture (a wood council\'s general figure), radial and tangential taken together', () => {
    const all = SPECIES.flatMap((species) => coefficientsOf(species) ?? []).map(({ radial, tangential }) => (radial + tangential) / 2);
    expect(all.reduce((sum, one) => sum + one, 0) / all.length).toBeCloseTo(0.01 / 4, 3);
  });

  it('the green-based method agrees within five percent at furniture moistures (chapter 13)', () => {
    const byCoefficient = moved(36, coefficient('hard maple').tangential, 8, 12);
    const green = movementFromGreen(inch(36), 9.9, 8, 12);
    expect(green.ok && green.value / NANOMETRES_PER_INCH / byCoefficient).toBeCloseTo(1, 1);
    expect(green.ok && Math.abs(green.value / NANOMETRES_PER_INCH / byCoefficient - 1)).toBeLessThan(0.05);
  });

  it('softwood width from green to 15 percent shrinks 2.8 percent (Green, FPL-RP-489: S = 6.031 − 0.215 M, and PS 20-70); white fir of mixed grain comes within half a point', () => {
    const found = movementFromGreen(inch(10), atRingAngle({ radial: 3.3, tangential: 7 }, 45), 30, 15);
    expect(found.ok && negate(found.value) / NANOMETRES_PER_INCH / 10).toBeCloseTo((6.031 - 0.215 * 15) / 100, 2);
  });
});

describe('the table of woods', () => {
  it('holds twenty woods or more, each with its movement', () => {
    expect(SPECIES.length).toBeGreaterThanOrEqual(20);
    for (const species of SPECIES) expect(coefficientsOf(species), species.name).toBeDefined();
  });

  it('knows every wood by one name only', () => {
    const names = SPECIES.flatMap(({ name, also }) => [name, ...also]).map((name) => name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
  });

  it('red oak as sold moves 21 percent more than northern red oak alone (Tables 13-5 and 4-3)', () => {
    expect(coefficient('red oak').tangential / coefficient('northern red oak').tangential).toBeCloseTo(1.21, 2);
  });

  it('sugar maple is 12 percent harder than northern red oak (maple floor trade body)', () => {
    const [maple, oak] = [speciesCalled('Sugar maple')?.strength, speciesCalled('northern red oak')?.strength];
    expect((maple?.hardnessLbf ?? 0) / (oak?.hardnessLbf ?? 1)).toBeCloseTo(1.12, 2);
  });
});
