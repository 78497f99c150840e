import type { Bench } from '../bench/bench.ts';
import { readSpokenNumber } from '../length/parseSpoken.ts';
import { sayNumber } from '../length/say.ts';
import type { Slot } from './slot.ts';
import { spoken } from './strict/numbers.ts';

const MOST = 1000;
/** Boards are listened for by the half dozen, so that not each new one changes what the ear listens for. */
const BOARDS_AT_A_TIME = 6;
/** A mortise is chopped in some ten stages. */
export const MOST_STAGES = 16;
export const MOST_TIMES = 60;
export const LOUDEST = 10;
/** What edges are honed to, in degrees; common practice, no source. */
export const EDGE_ANGLES = { from: 15, to: 60 } as const;

/** A whole number, up to a thousand whatever is listened for. */
function counted(listenedFor: (bench: Bench) => readonly number[]): Slot<number> {
  return {
    longest: 4,
    read: (words) => {
      const count = readSpokenNumber(words);
      if (!count.ok) return [{ fault: count.fault.message }];
      return [count.value >= 1 && count.value <= MOST ? { value: count.value } : { fault: `from one to ${sayNumber(MOST)}, not ${sayNumber(count.value)}` }];
    },
    samples: (bench) => listenedFor(bench).map(spoken),
  };
}

export const countSlot = counted(() => [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 24, 30, 36, 40, 48, 50, 60]);
export const boardSlot = counted((bench) => upTo(mostBoards(bench)));
export const nthSlot = counted((bench) => upTo(mostPlaced(bench)));
export const stageSlot = counted(() => upTo(MOST_STAGES));
export const loudnessSlot = counted(() => upTo(LOUDEST));
export const angleSlot = counted(() => [17, 20, 25, 28, 30, 32, 35, 40, 45]);

/** The highest number of a board that is listened for: on the rack, of a panel. */
export function mostBoards({ state: { rack, piece } }: Bench): number {
  const panels = (piece?.file.parts ?? []).map(({ made }) => (made.kind === 'panel' ? made.boards : 0));
  return Math.ceil(Math.max(1, ...rack.keys(), ...panels) / BOARDS_AT_A_TIME) * BOARDS_AT_A_TIME;
}

/** The most copies of a part that stand in places of their own: none, or two and more. */
export function mostPlaced({ state: { piece } }: Bench): number {
  return Math.max(0, ...(piece?.file.parts ?? []).map(({ count, places = [] }) => (places.length > 0 && count > 1 ? count : 0)));
}

function upTo(most: number): readonly number[] {
  return Array.from({ length: most }, (_, index) => index + 1);
}
