import { afterAll, beforeAll } from 'vitest';
import { openInRoom } from './inRoom.ts';
import { glueByVoice, secondWindow, workByVoice } from './inRoomByVoice.ts';
import { itsOwnVoice, loudShop } from './inRoomOwnVoice.ts';
import { sheetsOfPaper } from './inRoomPaper.ts';
import type { WholeKiosk } from './wholeKiosk.ts';

/** One kiosk in one room for all that is heard there, for to open it takes longer than most tests; those that leave something behind come last. */
let kiosk: WholeKiosk;
beforeAll(async () => { kiosk = await openInRoom(); });
afterAll(() => kiosk.close());

for (const tests of [itsOwnVoice, sheetsOfPaper, workByVoice, loudShop, glueByVoice, secondWindow]) tests(() => kiosk);
