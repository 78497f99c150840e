/**
 * One reading of the clocks, given to core by whoever calls it: core never asks for the time.
 * Within one boot the monotonic clock rules and is exact; across boots only a trusted wall clock tells.
 */
export interface Moment {
  /** Milliseconds since 1970 by the wall clock, right or wrong. */
  readonly wallMs: number;
  /** Whether the wall clock can be believed: synchronised, or kept by a battery. */
  readonly wallTrusted: boolean;
  /** Identity of this run of the machine; a new one after every power cut or restart. */
  readonly bootId: string;
  /** Milliseconds since this boot, counting suspend; never steps. */
  readonly monotonicMs: number;
}
