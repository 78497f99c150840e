import { loudnessDb } from './gate.ts';

/** Falls slowly and rises at once, so that a glance at the meter catches a short word. */
const FALL_DB_PER_BLOCK = 4;
const QUIETEST_DB = -90;

/** The level meter: one figure for each block of sound (ten a second), in decibels below full scale, -90 to 0. */
export class LevelMeter {
  #db = QUIETEST_DB;

  /** Takes a block and gives the level to show. */
  take(block: Float32Array): number {
    const now = Math.min(0, loudnessDb(block));
    this.#db = Math.max(now, this.#db - FALL_DB_PER_BLOCK, QUIETEST_DB);
    return this.#db;
  }

  reset(): void {
    this.#db = QUIETEST_DB;
  }
}
