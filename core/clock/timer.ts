import type { Moment } from './moment.ts';

export const TIMER_KINDS = ['open time', 'clamp', 'rest', 'break', 'plain'] as const;
export type TimerKind = (typeof TIMER_KINDS)[number];

/** What is asked for when a timer starts. Durations are whole milliseconds. */
export interface TimerRequest {
  readonly kind: TimerKind;
  /** What it is called aloud: 'leg two clamps'. Unique among the running timers (the fold adds a number if not). */
  readonly name: string;
  readonly durationMs: number;
  /** Where the duration comes from, said when it is up: 'common practice', 'your setting'. */
  readonly basis: string;
}

/** How long a timer had run at one moment; time it was held is not counted. */
export interface RunSoFar {
  readonly at: Moment;
  readonly elapsedMs: number;
}

/**
 * A running (or due) timer. Breaks repeat: after acknowledgement the next one counts from then.
 *
 * A timer that crosses power cuts keeps two accounts: `known`, the last moment at which its time was really known,
 * from which a trusted wall clock can still find the whole of it; and `surely`, what the monotonic clock saw of it.
 */
export interface Timer extends TimerRequest {
  /** Number of the journal entry that started it; never reused. */
  readonly id: number;
  readonly startedAt: Moment;
  /** The name that was asked for, when another timer had it already: see wasCalled. */
  readonly askedName?: string;
  /** When set, the timer stands still with this much left. */
  readonly heldLeftMs?: number;
  /** Acknowledged as due: silent from then on (a break starts again instead). */
  readonly acknowledgedAt?: Moment;
  /** The last clock reading known before a gap (power cut, crash), for saying what is known for certain. */
  readonly lastSeenAt?: Moment;
  /** How long it had run at `lastSeenAt`. */
  readonly lastSeenMs?: number;
  /** Absent: nothing had run at `startedAt`. Null: it can no longer be known, only `surely` is left. */
  readonly known?: (RunSoFar & { readonly by: 'exact' | 'wall clock' }) | null;
  /** Seen by the monotonic clock, whatever the wall clock says. Absent: the same as `known`. */
  readonly surely?: RunSoFar;
  /** How long it had run when it was last set going (started 0, resumed, begun again); marks before that are past. */
  readonly setGoingMs?: number;
}
