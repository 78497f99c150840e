/** Steps of volume: 0 is mute, 10 the loudest. */
export const LOUDEST = 10;
/** One step is clearly louder or softer and no jump: 10 dB are about twice as loud, 1 dB is just noticed (common figures of psychoacoustics). */
export const DECIBELS_PER_STEP = 3;

/** Decibels below full scale for a volume: 0 at 10, 3 less a step; for mute as for 1. */
export function decibelsOf(volume: number): number {
  return (Math.max(1, Math.min(volume, LOUDEST)) - LOUDEST) * DECIBELS_PER_STEP;
}

/** The gain for a volume raised by so many decibels: never more than 1, which the volume 10 has by itself; nothing at 0, however loud the shop. Beyond the ends it stays at the end. */
export function gainOf(volume: number, raiseDb = 0): number {
  if (!(volume > 0)) return 0;
  return Math.min(1, 10 ** (((Math.min(volume, LOUDEST) - LOUDEST) * DECIBELS_PER_STEP + raiseDb) / 20));
}
