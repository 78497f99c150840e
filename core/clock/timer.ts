import type { Moment } from './moment.ts';

export type TimerKind = 'open time' | 'clamp' | 'rest' | 'break' | 'plain';

/** What is asked for when a timer starts. Durations are whole milliseconds. */
export interface TimerRequest {
  readonly kind: TimerKind;
  /** What it is called aloud: 'leg two clamps'. Unique among the running timers (the fold adds a number if not). */
  readonly name: string;
  readonly durationMs: number;
  /** Where the duration comes from, said with the first announcement: 'common practice', 'your setting'. */
  readonly basis: string;
}

/** A running (or due) timer. Breaks repeat: after acknowledgement the next one counts from then. */
export interface Timer extends TimerRequest {
  /** Number of the journal entry that started it; never reused. */
  readonly id: number;
  readonly startedAt: Moment;
  /** When set, the timer stands still with this much left. */
  readonly heldLeftMs?: number;
  /** Acknowledged as due: silent from then on (a break starts again instead). */
  readonly acknowledgedAt?: Moment;
  /** The last clock reading known before a gap (power cut, crash), for saying what is known for certain. */
  readonly lastSeenAt?: Moment;
}
