import type { Row } from './pattern.ts';
import { ANSWER_ROWS } from './requests/answers.ts';
import { BOARD_ROWS } from './requests/boards.ts';
import { CHOPPING_ROWS } from './requests/chopping.ts';
import { CRAFT_ROWS } from './requests/craft.ts';
import { CLOCK_ROWS } from './requests/clocks.ts';
import { EDGE_ROWS } from './requests/edges.ts';
import { FACE_ROWS } from './requests/faces.ts';
import { FOLLOW_UP_ROWS } from './requests/followUps.ts';
import { HISTORY_ROWS } from './requests/history.ts';
import { JOINT_ROWS } from './requests/joints.ts';
import { LAYOUT_ROWS } from './requests/layout.ts';
import { PAPER_ROWS } from './requests/paper.ts';
import { RECKONING_ROWS } from './requests/reckoning.ts';
import { RECORDING_ROWS } from './requests/recording.ts';
import { SCREEN_ROWS } from './requests/screens.ts';
import { SIZE_ROWS } from './requests/sizes.ts';
import { TALK_ROWS } from './requests/talking.ts';
import { TROUBLE_ROWS } from './requests/troubles.ts';
import { TRUING_ROWS } from './requests/truing.ts';
import { WORK_ROWS } from './requests/work.ts';

/**
 * Everything that can be said, for the parser and for the recogniser alike. Rows before others are tried first; what
 * is one request in one row and another in a later one is the first.
 */
export const WHOLE_REQUESTS: readonly Row[] = [...TROUBLE_ROWS, ...FACE_ROWS, ...WORK_ROWS, ...TALK_ROWS, ...CLOCK_ROWS, ...SCREEN_ROWS, ...HISTORY_ROWS, ...RECORDING_ROWS, ...LAYOUT_ROWS, ...EDGE_ROWS, ...BOARD_ROWS, ...TRUING_ROWS, ...PAPER_ROWS, ...CHOPPING_ROWS, ...CRAFT_ROWS, ...JOINT_ROWS, ...SIZE_ROWS, ...RECKONING_ROWS];
export const ANSWERS: readonly Row[] = ANSWER_ROWS;
export const FOLLOW_UPS: readonly Row[] = FOLLOW_UP_ROWS;
