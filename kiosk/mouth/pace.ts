/** How fast words are said. */
export type Speech = 'normal' | 'slow';

export interface Pace {
  /** How much longer than the voice's own every sound is held. */
  readonly stretch: number;
  /** How much longer than usual the pauses are. */
  readonly pauses: number;
}

/**
 * Normal is about 150 words a minute over the sentences of the bench, pauses included; slow about 110, for a size that is to be set on a rule while
 * it is said.
 */
export const PACES: Readonly<Record<Speech, Pace>> = {
  normal: { stretch: 1.15, pauses: 1 },
  slow: { stretch: 1.6, pauses: 1.75 },
};
