import type { Reckoning } from '../reckoning/reckoning.ts';
import { matingFaces, springJoint, squareEdge, sticks } from './reckon/boards.ts';
import { face } from './reckon/face.ts';

/** What this folder answers by name. */
export const TRUE_RECKONINGS: readonly Reckoning[] = [face, sticks, matingFaces, squareEdge, springJoint];
