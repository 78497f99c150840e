import type { Reckoning } from '../reckoning/reckoning.ts';
import { faces } from './reckon/faces.ts';

/** What the faces contribute to `npm run reckon`. */
export const FACE_RECKONINGS: readonly Reckoning[] = [faces];
