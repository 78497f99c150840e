import { SPECIES } from './speciesTable.ts';
import type { Species } from './speciesFigures.ts';

export const SPECIES_SOURCE = 'USDA Forest Products Laboratory, Wood Handbook (GTR-190), Tables 4-3, 4-4, 5-3b, 5-5b and 13-5';

/** Every name and other name of a wood, for choosing from. */
export const SPECIES_NAMES: readonly string[] = SPECIES.flatMap(({ name, also }) => [name, ...also]);

const BY_NAME: ReadonlyMap<string, Species> = new Map(SPECIES.flatMap((species) => [species.name, ...species.also].map((name) => [plain(name), species] as const)));

/** By the name that a piece file or a person gives it; undefined for a wood that is not in the table. */
export function speciesCalled(name: string): Species | undefined {
  return BY_NAME.get(plain(name));
}

function plain(name: string): string {
  return name.trim().toLowerCase().replace(/[\s-]+/g, ' ');
}

/** How dense a wood is for gluing. The limits between the classes are common practice, no source. */
export type Density = 'low' | 'medium' | 'high';

/** Low under 0.45 (softwoods, poplar), high from 0.60 (oak, hard maple, ash, beech, birch); between them cherry, walnut, soft maple. */
export function densityOf(gravity: number): Density {
  return gravity < 0.45 ? 'low' : gravity < 0.6 ? 'medium' : 'high';
}
