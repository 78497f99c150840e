import type { Reckoning } from '../reckoning/reckoning.ts';
import { bevel, bevelFromFace } from './reckon/bevel.ts';
import { chopping } from './reckon/chopping.ts';
import { tenonsMeeting } from './reckon/meeting.ts';
import { bridle, drawerRail, mortiseAndTenon } from './reckon/mortise.ts';
import { racking } from './reckon/racking.ts';

/** What the joints contribute to `npm run reckon`. */
export const JOINT_RECKONINGS: readonly Reckoning[] = [mortiseAndTenon, tenonsMeeting, bridle, drawerRail, racking, chopping, bevel, bevelFromFace];
