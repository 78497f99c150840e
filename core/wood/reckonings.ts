import type { Reckoning } from '../reckoning/reckoning.ts';
import { lumber, roughSize, wood } from './reckon/lumber.ts';
import { meter, moistureInAir, ovenDry, stockReady } from './reckon/moisture.ts';
import { roomForMovement, topInAYear, woodMovement } from './reckon/movement.ts';

/** What is known of wood contributes to `npm run reckon`. */
export const WOOD_RECKONINGS: readonly Reckoning[] = [wood, moistureInAir, woodMovement, topInAYear, roomForMovement, stockReady, ovenDry, meter, lumber, roughSize];
