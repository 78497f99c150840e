import type { Reckoning } from '../reckoning/reckoning.ts';
import { bevel, bevelFromFace } from './reckon/bevel.ts';

/** What the joints contribute to `npm run reckon`. */
export const JOINT_RECKONINGS: readonly Reckoning[] = [bevel, bevelFromFace];
