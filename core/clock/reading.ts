import { between } from './between.ts';
import type { Moment } from './moment.ts';
import type { RunSoFar, Timer } from './timer.ts';

export type Certainty = 'exact' | 'wall clock' | 'unknown';

export interface TimerReading {
  /** How long it has run; when the certainty is 'unknown', at least. */
  readonly elapsedMs: number;
  /** Never negative; when the certainty is 'unknown', at most. */
  readonly leftMs: number;
  /** How long ago it went due, 0 when it is not; when the certainty is 'unknown', at least. */
  readonly overdueMs: number;
  /** Due for certain. An 'unknown' timer that is not due may be due all the same. */
  readonly due: boolean;
  readonly certainty: Certainty;
  /** Only when the certainty is 'unknown'. */
  readonly atLeastElapsedMs?: number;
}

/** Two trusted wall readings may differ from the monotonic clock by this much before they contradict it. */
const WALL_SLACK_MS = 2_000;

/**
 * What a timer says at `now`, with as much certainty as the clocks allow and no more: exact within one boot, by the
 * wall clock across boots if it was trusted on both sides, else unknown with what has surely run.
 */
export function readTimer(timer: Timer, now: Moment): TimerReading {
  const { elapsedMs, certainty } = runAt(timer, now);
  const leftMs = timer.durationMs - elapsedMs;
  const due = leftMs <= 0 && timer.heldLeftMs === undefined;
  return {
    elapsedMs, leftMs: Math.max(0, leftMs), overdueMs: due ? Math.max(0, -leftMs) : 0, due, certainty,
    ...(certainty === 'unknown' ? { atLeastElapsedMs: elapsedMs } : {}),
  };
}

/** How long a timer has run at `now` and what that stands on; 'unknown' means at least. */
export function runAt(timer: Timer, now: Moment): { elapsedMs: number; certainty: Certainty } {
  const known = knownRun(timer);
  if (timer.heldLeftMs !== undefined) {
    return { elapsedMs: timer.durationMs - timer.heldLeftMs, certainty: known?.by ?? 'unknown' };
  }
  const surelyMs = surelyRunAt(timer, now);
  if (known) {
    const since = between(known.at, now);
    if (since.by === 'exact') return { elapsedMs: known.elapsedMs + Math.max(0, since.ms), certainty: known.by };
    const contradicted = since.by === 'wall clock' && known.elapsedMs + since.ms < surelyMs - WALL_SLACK_MS;
    if (since.by === 'wall clock' && !contradicted) {
      return { elapsedMs: Math.max(surelyMs, known.elapsedMs + since.ms), certainty: 'wall clock' };
    }
  }
  return { elapsedMs: surelyMs, certainty: 'unknown' };
}

/** What the monotonic clock alone saw of it up to `now`. */
export function surelyRunAt(timer: Timer, now: Moment): number {
  const { at, elapsedMs } = surelyRun(timer);
  return at.bootId === now.bootId ? elapsedMs + Math.max(0, now.monotonicMs - at.monotonicMs) : elapsedMs;
}

export function knownRun(timer: Timer): (RunSoFar & { readonly by: 'exact' | 'wall clock' }) | null {
  return timer.known === undefined ? { at: timer.startedAt, elapsedMs: 0, by: 'exact' } : timer.known;
}

export function surelyRun(timer: Timer): RunSoFar {
  return timer.surely ?? knownRun(timer) ?? { at: timer.startedAt, elapsedMs: 0 };
}
