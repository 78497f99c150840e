/** Steps of volume: 0 is mute, 10 the loudest. */
export const LOUDEST = 10;
/** One step is clearly louder or softer and no jump: 10 dB are about twice as loud, 1 dB is just noticed (common figures of psychoacoustics). */
export const DECIBELS_PER_STEP = 3;

/** The gain for a volume: 1 at 10, 3 dB less a step, nothing at 0. Beyond the ends it stays at the end. */
export function gainOf(volume: number): number {
  if (!(volume > 0)) return 0;
  return 10 ** ((Math.min(volume, LOUDEST) - LOUDEST) * DECIBELS_PER_STEP / 20);
}
