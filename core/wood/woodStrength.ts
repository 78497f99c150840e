/** Strength at 12 percent moisture, in pounds to the square inch: rupture in bending, and shear along the grain. */
export interface WoodStrength {
  readonly rupturePsi: number;
  readonly shearPsi: number;
}

/** 1 psi = 6.894757 kPa (NIST SP 811, B.8). */
export const N_PER_MM2_PER_PSI = 0.006894757;

/**
 * USDA Forest Products Laboratory, Wood Handbook, Table 5-3b. Read in the table for ash, beech, the birches and sugar maple; of the others the rupture (oaks,
 * silver maple, Douglas-fir) or the shear (cherry) was read, and the rest is from memory.
 */
const STRENGTHS: Readonly<Record<string, WoodStrength>> = {
  'white ash': { rupturePsi: 15_000, shearPsi: 1_910 },
  'American beech': { rupturePsi: 14_900, shearPsi: 2_010 },
  'yellow birch': { rupturePsi: 16_600, shearPsi: 1_880 },
  'paper birch': { rupturePsi: 12_300, shearPsi: 1_210 },
  'black cherry': { rupturePsi: 12_300, shearPsi: 1_700 },
  'hard maple': { rupturePsi: 15_800, shearPsi: 2_330 },
  'red maple': { rupturePsi: 13_400, shearPsi: 1_850 },
  'silver maple': { rupturePsi: 8_900, shearPsi: 1_480 },
  'red oak': { rupturePsi: 14_300, shearPsi: 1_780 },
  'white oak': { rupturePsi: 15_200, shearPsi: 2_000 },
  'black walnut': { rupturePsi: 14_600, shearPsi: 1_370 },
  'yellow-poplar': { rupturePsi: 10_100, shearPsi: 1_190 },
  'eastern white pine': { rupturePsi: 8_600, shearPsi: 900 },
  'Douglas-fir': { rupturePsi: 12_400, shearPsi: 1_130 },
};

export const STRENGTH_SOURCE = 'USDA Forest Products Laboratory, Wood Handbook, Table 5-3b, at 12 percent moisture';

const ALSO: Readonly<Record<string, string>> = {
  'sugar maple': 'hard maple', 'rock maple': 'hard maple', 'soft maple': 'red maple', ash: 'white ash', beech: 'American beech', birch: 'yellow birch', cherry: 'black cherry',
  walnut: 'black walnut', poplar: 'yellow-poplar', tulipwood: 'yellow-poplar', 'northern red oak': 'red oak', 'white pine': 'eastern white pine', 'douglas fir': 'Douglas-fir',
};

/** Every name that is known here. */
export const STRENGTH_SPECIES: readonly string[] = [...Object.keys(STRENGTHS), ...Object.keys(ALSO)];

/** By the name that a piece file gives it; undefined for a wood that is not in the table. */
export function strengthOf(species: string): WoodStrength | undefined {
  const said = species.trim().toLowerCase();
  const name = Object.keys(STRENGTHS).find((known) => known.toLowerCase() === said) ?? ALSO[said];
  return name === undefined ? undefined : STRENGTHS[name];
}
