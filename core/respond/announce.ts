import type { Bench } from '../bench/bench.ts';
import type { Reply } from '../bench/reply.ts';
import { announcements, type Announcement } from '../clock/announce.ts';
import type { Moment } from '../clock/moment.ts';

/** What the clocks say of their own accord, and whether it is urgent enough to interrupt. */
export interface ClockCall {
  readonly reply: Reply;
  readonly priority: 'due' | 'mark';
  /** Timers told about, so that a later word on the same one takes its place. */
  readonly key: string;
  readonly timers: readonly number[];
  readonly mayWaitMs: number;
}

/** Everything the clocks have to say between two looks at them, the most urgent first. */
export function clockCalls(bench: Bench, before: Moment, now: Moment): readonly ClockCall[] {
  return announcements(bench.state.timers, before, now).map(callFor);
}

function callFor(announcement: Announcement): ClockCall {
  const due = announcement.signal === 'due';
  return {
    reply: { say: announcement.say, note: announcement.say, signal: announcement.signal },
    priority: due ? 'due' : 'mark',
    key: `clock ${announcement.timers.join(' ')}`,
    timers: announcement.timers,
    mayWaitMs: announcement.mayWaitMs,
  };
}
