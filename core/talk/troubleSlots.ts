import type { Trouble } from '../work/troubles.ts';
import { DEEDS, type Deed } from '../work/deeds.ts';
import { ALONE, FAULTS, HALVES, MISFITS } from './jointFaults.ts';
import type { Slot } from './slot.ts';
import { nameKey } from './words.ts';

/** What a board is, or has a …; common practice, no source. */
const WARPS: readonly (readonly [string, Trouble])[] = [
  ['cupped', 'cup'], ['cup', 'cup'], ['twisted', 'wind'], ['twist', 'wind'], ['in wind', 'wind'], ['wind', 'wind'], ['bowed', 'bow'], ['bow', 'bow'], ['high in the middle', 'hump'], ['hump', 'hump'], ['hump in the middle', 'hump'],
  ['hollow', 'hollow'], ['hollow in the middle', 'hollow'], ['low in the middle', 'hollow'], ['high at the corners', 'high corners'], ['high on the corners', 'high corners'],
  ['not square', 'edge out of square'], ['out of square', 'edge out of square'], ['not flat', 'not flat'],
];

/** Reads one of a few phrases. */
function phrases<Value>(all: readonly (readonly [string, Value])[], longest: number): Slot<Value> {
  const byWords: ReadonlyMap<string, Value> = new Map(all.map(([words, value]) => [nameKey(words.split(' ')), value]));
  return {
    longest,
    read: (words) => {
      const value = byWords.get(nameKey(words));
      return value === undefined ? [] : [{ value }];
    },
    samples: () => all.map(([words]) => words),
  };
}

export const warpSlot = phrases(WARPS, 5);
export const misfitSlot = phrases([...ALONE.map((word) => [word, word] as const), ...MISFITS.map((word) => [`too ${word}`, word] as const)], 2);
export const faultSlot = phrases(FAULTS, 4);
export const halfSlot = phrases(HALVES.map((half) => [half, half] as const), 1);
export const deedSlot: Slot<Deed> = phrases((Object.keys(DEEDS) as Deed[]).map((deed) => [deed, deed] as const), 1);
