import type { Moment } from '../../../core/clock/moment.ts';
import { startTimer } from '../../../core/clock/change.ts';
import type { Timer, TimerRequest } from '../../../core/clock/timer.ts';

export const SECOND = 1_000;
export const MINUTE = 60 * SECOND;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

/** 2026-03-07T12:00Z, an ordinary Saturday at the bench. */
export const NOON = Date.UTC(2026, 2, 7, 12);

/** A moment `afterMs` into the first boot, its wall clock right. */
export function at(afterMs: number, changes: Partial<Moment> = {}): Moment {
  return { wallMs: NOON + afterMs, wallTrusted: true, bootId: 'first', monotonicMs: 100_000 + afterMs, ...changes };
}

/** A moment in a later boot: `afterMs` since noon in truth, `upMs` since the machine came up. */
export function rebooted(afterMs: number, upMs: number, changes: Partial<Moment> = {}): Moment {
  return { wallMs: NOON + afterMs, wallTrusted: true, bootId: 'second', monotonicMs: upMs, ...changes };
}

export function timer(changes: Partial<TimerRequest> = {}, started: Moment = at(0), id = 1): Timer {
  return startTimer({ kind: 'clamp', name: 'leg two clamps', durationMs: 30 * MINUTE, basis: 'common practice', ...changes }, id, started);
}
