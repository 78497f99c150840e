import { assertNever } from '../result.ts';
import type { Moment } from './moment.ts';
import { sayDuration } from './sayDuration.ts';

/** What is odd about two readings of the clocks that follow each other. */
export type ClockFault =
  /** The machine was off or restarted; `offMs` by the wall clock when it can be trusted. */
  | { readonly kind: 'restarted'; readonly offMs?: number }
  /** The wall clock was set back or on, against the monotonic clock. */
  | { readonly kind: 'backwards' | 'jumped forward'; readonly byMs: number }
  /** Nobody looked for so long: the page crashed, was reloaded, or the machine slept. */
  | { readonly kind: 'gap'; readonly ms: number };

/** Heartbeats come every few seconds; a pause of this length is told. */
const GAP_MS = 30_000;
/** The wall clock may be slewed by up to 500 parts in a million while it is set right (adjtime(3), NTP); twice that, and 2 s, is no jump. */
const SLEW = 1 / 1000;
const JUMP_MS = 2_000;

/** Compares what the wall clock and the monotonic clock say about the time between two readings; null when all is well. */
export function clockFault(before: Moment, now: Moment): ClockFault | null {
  const wallMs = now.wallMs - before.wallMs;
  if (before.bootId !== now.bootId) {
    return { kind: 'restarted', ...(before.wallTrusted && now.wallTrusted && wallMs >= 0 ? { offMs: wallMs } : {}) };
  }
  const trueMs = now.monotonicMs - before.monotonicMs;
  const byMs = wallMs - trueMs;
  if (Math.abs(byMs) > JUMP_MS + Math.abs(trueMs) * SLEW) {
    return { kind: byMs < 0 ? 'backwards' : 'jumped forward', byMs: Math.abs(byMs) };
  }
  return trueMs > GAP_MS ? { kind: 'gap', ms: trueMs } : null;
}

/** One sentence for the maker. */
export function sayClockFault(fault: ClockFault): string {
  switch (fault.kind) {
    case 'restarted':
      return fault.offMs === undefined ? 'The bench was restarted; for how long the power was off I do not know.' : `The bench was restarted, ${sayDuration(fault.offMs)} after I last looked.`;
    case 'backwards':
      return `The wall clock was set back by ${sayDuration(fault.byMs)}.`;
    case 'jumped forward':
      return `The wall clock was set on by ${sayDuration(fault.byMs)}.`;
    case 'gap':
      return `The bench did not look at the clocks for ${sayDuration(fault.ms)}.`;
    default:
      return assertNever(fault);
  }
}
