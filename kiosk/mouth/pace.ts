import type { VoiceName } from './flite.ts';

/** How fast words are said. */
export type Speech = 'normal' | 'slow';

export interface Pace {
  /** How much longer than the voice's own every sound is held. */
  readonly stretch: number;
  /** How much longer than usual the pauses are. */
  readonly pauses: number;
}

/** What brings each voice to about 150 words a minute over the sentences of the bench, pauses included (measured; test/core/mouth/flite.test.ts holds the first). */
const NORMAL_STRETCH: Readonly<Record<VoiceName, number>> = { kal16: 1.25, rms: 1, slt: 1.1, awb: 1.05 };

/** Slow is about 110 words a minute: for a size that is set on a rule while it is said. The pauses grow more than the words, which blur when drawn out. */
const SLOW: Pace = { stretch: 1.3, pauses: 1.75 };

export function paceOf(speech: Speech, voice: VoiceName): Pace {
  const own = NORMAL_STRETCH[voice];
  return speech === 'normal' ? { stretch: own, pauses: 1 } : { stretch: Math.round(100 * own * SLOW.stretch) / 100, pauses: SLOW.pauses };
}
