import type { Moment } from './moment.ts';
import { lastMarkIn, type MarkName } from './marks.ts';
import { knownRun, readTimer, surelyRun, surelyRunAt, type TimerReading } from './reading.ts';
import type { Timer, TimerKind } from './timer.ts';
import { sayDoubt, sayMark } from './wording.ts';

/** Something the clocks have to say of their own accord. */
export interface Announcement {
  /** Numbers of the timers it is about: one, or all those in doubt after a power cut. */
  readonly timers: readonly number[];
  readonly mark: MarkName | 'in doubt';
  readonly say: string;
  readonly signal: 'mark' | 'due';
  /** 0 is the most urgent. */
  readonly urgency: number;
  /** It may be kept back so long for a lull in the hammering. */
  readonly mayWaitMs: number;
}

/** What is due is told in this order: glue does not wait. */
const KIND_ORDER: readonly TimerKind[] = ['open time', 'clamp', 'break', 'plain', 'rest'];
const MARK_ORDER: readonly Announcement['mark'][] = ['due', 'in doubt', 'still due', 'one minute', 'five minutes', 'half', 'one day'];

const MAY_WAIT_MS: Readonly<Record<TimerKind, number>> = { 'open time': 2_000, clamp: 20_000, rest: 120_000, break: 5_000, plain: 10_000 };

/**
 * What falls after `before` and no later than `now`, the most urgent first. Call it with the moment of the last call
 * and the present one. A timer speaks once: what was missed in a gap is told as one sentence that says so, and what
 * cannot be known after a power cut is said to be unknown, for all such timers together.
 */
export function announcements(timers: readonly Timer[], before: Moment, now: Moment): readonly Announcement[] {
  const told: Announcement[] = [];
  const inDoubt: { timer: Timer; reading: TimerReading }[] = [];
  for (const timer of timers) {
    if (timer.heldLeftMs !== undefined || timer.acknowledgedAt !== undefined) continue;
    const reading = readTimer(timer, now);
    if (reading.certainty === 'unknown' && before.bootId !== now.bootId && !reading.due) {
      inDoubt.push({ timer, reading });
      continue;
    }
    const fromMs = runBefore(timer, before, reading);
    const mark = lastMarkIn(timer, fromMs, reading.elapsedMs);
    if (mark) told.push(announce(timer, mark.name, sayMark({ timer, reading, mark, wentDueInGap: fromMs < timer.durationMs, restarted: before.bootId !== now.bootId })));
  }
  if (inDoubt.length > 0) told.push(announceDoubt(inDoubt));
  return told.sort((a, b) => a.urgency - b.urgency);
}

function announce(timer: Timer, mark: MarkName, say: string): Announcement {
  const due = mark === 'due' || mark === 'still due';
  return { timers: [timer.id], mark, say, signal: due ? 'due' : 'mark', urgency: urgencyOf(timer.kind, mark), mayWaitMs: MAY_WAIT_MS[timer.kind] };
}

function announceDoubt(inDoubt: readonly { timer: Timer; reading: TimerReading }[]): Announcement {
  return {
    timers: inDoubt.map(({ timer }) => timer.id), mark: 'in doubt', say: sayDoubt(inDoubt), signal: 'due', mayWaitMs: 0,
    urgency: Math.min(...inDoubt.map(({ timer }) => urgencyOf(timer.kind, 'in doubt'))),
  };
}

function urgencyOf(kind: TimerKind, mark: Announcement['mark']): number {
  return MARK_ORDER.indexOf(mark) * KIND_ORDER.length + KIND_ORDER.indexOf(kind);
}

/** How long the timer had run at the last call, on the same account as the reading. */
function runBefore(timer: Timer, before: Moment, reading: TimerReading): number {
  const setGoingMs = timer.setGoingMs ?? 0;
  const sure = surelyRun(timer);
  const point = reading.certainty === 'unknown' ? sure : knownRun(timer) ?? sure;
  if (point.at.bootId === before.bootId) return Math.max(setGoingMs, point.elapsedMs + before.monotonicMs - point.at.monotonicMs);
  if (timer.lastSeenAt?.bootId === before.bootId) {
    return Math.max(setGoingMs, (timer.lastSeenMs ?? 0) + before.monotonicMs - timer.lastSeenAt.monotonicMs);
  }
  return sure.at.bootId === before.bootId ? surelyRunAt(timer, before) : Math.max(setGoingMs, timer.lastSeenMs ?? 0);
}
