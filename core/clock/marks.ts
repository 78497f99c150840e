import type { Timer, TimerKind } from './timer.ts';

const SECOND = 1_000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

export type MarkName = 'half' | 'one day' | 'five minutes' | 'one minute' | 'due' | 'still due';

/** A point in a timer's run at which something is said. */
export interface Mark {
  readonly name: MarkName;
  /** How long the timer has run by then. */
  readonly atMs: number;
}

/** Said with that much left, on timers at least so long that it helps. No mark in a break: it is over in a minute or two. */
const MARKS: readonly { readonly name: MarkName; readonly leftMs: (durationMs: number) => number; readonly from: Readonly<Record<TimerKind, number>> }[] = [
  { name: 'half', leftMs: (durationMs) => durationMs / 2, from: { 'open time': 4 * MINUTE, clamp: 10 * MINUTE, rest: 2 * HOUR, break: Infinity, plain: 10 * MINUTE } },
  { name: 'one day', leftMs: () => DAY, from: { 'open time': Infinity, clamp: 3 * DAY, rest: 3 * DAY, break: Infinity, plain: 3 * DAY } },
  { name: 'five minutes', leftMs: () => 5 * MINUTE, from: { 'open time': 8 * MINUTE, clamp: 15 * MINUTE, rest: Infinity, break: Infinity, plain: 15 * MINUTE } },
  { name: 'one minute', leftMs: () => MINUTE, from: { 'open time': 90 * SECOND, clamp: 5 * MINUTE, rest: Infinity, break: Infinity, plain: 3 * MINUTE } },
];

/** After it went due, said again after these times, then every `then`, until it is acknowledged. */
const REMINDERS: Readonly<Record<TimerKind, { readonly afterMs: readonly number[]; readonly then: number }>> = {
  'open time': { afterMs: [30 * SECOND, MINUTE, 2 * MINUTE, 5 * MINUTE, 10 * MINUTE], then: 30 * MINUTE },
  clamp: { afterMs: [30 * SECOND, MINUTE, 2 * MINUTE, 5 * MINUTE, 10 * MINUTE], then: 30 * MINUTE },
  rest: { afterMs: [30 * MINUTE, 2 * HOUR], then: 12 * HOUR },
  break: { afterMs: [30 * SECOND, 2 * MINUTE, 5 * MINUTE], then: 10 * MINUTE },
  plain: { afterMs: [30 * SECOND, MINUTE, 2 * MINUTE, 5 * MINUTE, 10 * MINUTE], then: 30 * MINUTE },
};

/** Two marks closer than this are one: the half of a ten-minute timer is its five-minute mark. */
const CLOSE = 45 * SECOND;

/** The marks of a timer before it is due, and the due mark, in order of time. */
export function marksOf(timer: Pick<Timer, 'kind' | 'durationMs'>): readonly Mark[] {
  const { kind, durationMs } = timer;
  const marks = MARKS
    .filter(({ from }) => durationMs >= from[kind])
    .map(({ name, leftMs }) => ({ name, atMs: durationMs - leftMs(durationMs) }))
    .sort((a, b) => a.atMs - b.atMs);
  const apart = marks.filter(({ name, atMs }) => name !== 'half' || !marks.some((other) => other.name !== 'half' && Math.abs(other.atMs - atMs) < CLOSE));
  return [...apart, { name: 'due', atMs: durationMs }];
}

/** The last mark or reminder after `fromMs` of its run and no later than `toMs`. */
export function lastMarkIn(timer: Pick<Timer, 'kind' | 'durationMs'>, fromMs: number, toMs: number): Mark | undefined {
  const overdueMs = toMs - timer.durationMs;
  const reminder = overdueMs > 0 ? lastReminderBy(timer.kind, overdueMs) : undefined;
  const marks: Mark[] = [...marksOf(timer)];
  if (reminder !== undefined) marks.push({ name: 'still due', atMs: timer.durationMs + reminder });
  return marks.findLast(({ atMs }) => atMs > fromMs && atMs <= toMs);
}

function lastReminderBy(kind: TimerKind, overdueMs: number): number | undefined {
  const { afterMs, then } = REMINDERS[kind];
  const last = afterMs.at(-1) ?? 0;
  if (overdueMs < last + then) return afterMs.findLast((after) => after <= overdueMs);
  return last + Math.floor((overdueMs - last) / then) * then;
}
