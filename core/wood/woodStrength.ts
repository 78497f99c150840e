import { SPECIES } from './speciesTable.ts';
import { speciesCalled } from './species.ts';
import type { Strength } from './speciesFigures.ts';

/** Strength at 12 percent moisture, in pounds to the square inch: rupture in bending, and shear along the grain. */
export type WoodStrength = Pick<Strength, 'rupturePsi' | 'shearPsi'>;

/** 1 psi = 6.894757 kPa (NIST SP 811, B.8). */
export const N_PER_MM2_PER_PSI = 0.006894757;

export const STRENGTH_SOURCE = 'USDA Forest Products Laboratory, Wood Handbook, Table 5-3b, at 12 percent moisture';

/** Every name of a wood whose strength is known here. */
export const STRENGTH_SPECIES: readonly string[] = SPECIES.flatMap(({ name, also, strength }) => (strength === undefined ? [] : [name, ...also]));

/** By the name that a piece file gives it; undefined for a wood that is not in the table. */
export function strengthOf(species: string): WoodStrength | undefined {
  const strength = speciesCalled(species)?.strength;
  return strength && { rupturePsi: strength.rupturePsi, shearPsi: strength.shearPsi };
}
