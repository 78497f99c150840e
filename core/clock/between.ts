import type { Moment } from './moment.ts';

/** How long it was from one moment to a later one, and what that stands on. */
export type Between =
  | { readonly by: 'exact' | 'wall clock'; readonly ms: number }
  | { readonly by: 'unknown' };

/**
 * Milliseconds from `earlier` to `later`. Within one boot exact by the monotonic clock (negative when they were given
 * the wrong way round); across boots by the wall clock, if it was trusted at both and did not go back; else unknown.
 */
export function between(earlier: Moment, later: Moment): Between {
  if (earlier.bootId === later.bootId) return { by: 'exact', ms: later.monotonicMs - earlier.monotonicMs };
  if (earlier.wallTrusted && later.wallTrusted && later.wallMs >= earlier.wallMs) {
    return { by: 'wall clock', ms: later.wallMs - earlier.wallMs };
  }
  return { by: 'unknown' };
}
