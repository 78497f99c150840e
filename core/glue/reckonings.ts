import type { Reckoning } from '../reckoning/reckoning.ts';
import { clamps, warmUp } from './reckon/clamps.ts';
import { glueTonight } from './reckon/tonight.ts';

/** Gluing contributes to `npm run reckon`. */
export const GLUE_RECKONINGS: readonly Reckoning[] = [glueTonight, clamps, warmUp];
