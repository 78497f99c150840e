import { absolute, add } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';
import { movement } from './movement.ts';

/** The moistures that a piece goes through in a year, and the one it has as it is made, in percent. */
export interface Year {
  readonly now: number;
  readonly driest: number;
  readonly dampest: number;
}

/** What a width does in a year, from what it is now. */
export interface Seasons {
  /** How much narrower it gets in the driest month; nothing when it is made drier than that. */
  readonly shrinks: Length;
  /** How much wider it gets in the dampest month. */
  readonly swells: Length;
  readonly narrowest: Length;
  readonly widest: Length;
  /** From the narrowest to the widest. */
  readonly travel: Length;
}

/** Movement of a width between the driest and the dampest month. Faults: a moisture outside 0 to 30; driest damper than dampest. */
export function seasonsOf(width: Length, coefficient: number, year: Year): Result<Seasons, InputFault> {
  if (year.driest > year.dampest) return failure({ key: 'driest', message: `The driest month comes out at ${year.driest.toFixed(1)} percent, damper than the dampest at ${year.dampest.toFixed(1)}. Turn them round.` });
  const down = movement(width, coefficient, year.now, Math.min(year.now, year.driest));
  if (!down.ok) return down;
  const up = movement(width, coefficient, year.now, Math.max(year.now, year.dampest));
  if (!up.ok) return up;
  const [shrinks, swells] = [absolute(down.value), up.value];
  const lowest = movement(width, coefficient, year.now, year.driest);
  const highest = movement(width, coefficient, year.now, year.dampest);
  if (!lowest.ok) return lowest;
  if (!highest.ok) return highest;
  return success({
    shrinks, swells, narrowest: add(width, lowest.value), widest: add(width, highest.value), travel: nanometres(highest.value - lowest.value),
  });
}
