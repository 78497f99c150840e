import { assertNever } from '../result.ts';
import type { Moment } from '../clock/moment.ts';
import { readTimer } from '../clock/reading.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import type { Timer } from '../clock/timer.ts';

/** 'leg two clamps, twelve minutes left', with as much certainty as the clocks allow and no more. */
export function sayTimeLeft(timer: Timer, now: Moment): string {
  const reading = readTimer(timer, now);
  if (timer.heldLeftMs !== undefined) return `${timer.name} stands still with ${sayDuration(timer.heldLeftMs)} left`;
  if (reading.due && reading.certainty !== 'wall clock') return `${timer.name} is due`;
  switch (reading.certainty) {
    case 'exact':
      return `${timer.name}, ${sayDuration(reading.leftMs)} left`;
    case 'wall clock':
      return `${reading.due ? `${timer.name} is due` : `${timer.name}, ${sayDuration(reading.leftMs)} left`}, going by the wall clock over a restart`;
    case 'unknown': {
      const known = reading.atLeastElapsedMs === undefined ? '' : ` At least ${sayDuration(reading.atLeastElapsedMs)} of ${sayDuration(timer.durationMs)} have passed`;
      return `${timer.name}: the power was off, for how long I do not know.${known}`;
    }
    default:
      return assertNever(reading.certainty);
  }
}

/** 'It has run for five minutes', or at least so long where the power was off. */
export function sayRun(timer: Timer, now: Moment): string {
  const { elapsedMs, certainty } = readTimer(timer, now);
  return `it has run for ${certainty === 'unknown' ? 'at least ' : ''}${elapsedMs < 1000 ? 'less than a second' : sayDuration(elapsedMs)}`;
}
