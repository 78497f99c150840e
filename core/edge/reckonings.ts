import type { Reckoning } from '../reckoning/reckoning.ts';
import { bevel, fixedHeightJig, honingGuide, shim } from './reckon/angles.ts';
import { capIron, grits, honingPays, microBevel } from './reckon/care.ts';

/** What this folder answers by name. */
export const EDGE_RECKONINGS: readonly Reckoning[] = [honingGuide, fixedHeightJig, bevel, shim, microBevel, grits, capIron, honingPays];
