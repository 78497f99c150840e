import { loudnessDb } from './gate.ts';
import { SAMPLE_RATE_HZ } from './messages.ts';

const FRAME_SAMPLES = SAMPLE_RATE_HZ / 100;
const QUIETEST_DB = -90;
/** A voice's loudest twentieth of the time; blows are shorter still. */
const LOUD_SHARE = 0.95;
/** Before, between and after the words: what is there without them. */
const SOFT_SHARE = 0.1;

/**
 * How far a voice stands out of the noise around it: how much louder the loud hundredths of a second of what was said are than the soft ones. It needs no
 * knowledge of the shop, so it is right from the first word. Measured (test/bench/hearing/README.md): 44 dB and more in quiet, 13 to 16 over a fan
 * 10 dB softer than the voice, 5 to 8 over one as loud. A noise that comes and goes, as of planing, leaves gaps and counts as quiet.
 */
export class StandsOut {
  /** How many hundredths of a second had which loudness, in whole decibels from QUIETEST_DB up. */
  readonly #counts = new Uint32Array(1 - QUIETEST_DB);
  #total = 0;

  /** Takes sound as the microphone gave it. */
  take(samples: Float32Array): void {
    for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES) {
      const db = Math.min(0, Math.max(QUIETEST_DB, Math.round(loudnessDb(samples.subarray(at, at + FRAME_SAMPLES)))));
      this.#counts[db - QUIETEST_DB] = (this.#counts[db - QUIETEST_DB] ?? 0) + 1;
      this.#total += 1;
    }
  }

  /** In decibels, 0 up; undefined before there was anything. */
  get db(): number | undefined {
    return this.#total === 0 ? undefined : this.#reached(LOUD_SHARE) - this.#reached(SOFT_SHARE);
  }

  /** What was said is over. */
  reset(): void {
    this.#counts.fill(0);
    this.#total = 0;
  }

  #reached(share: number): number {
    let left = share * this.#total;
    const at = this.#counts.findIndex((count) => (left -= count) < 0);
    return at < 0 ? 0 : at;
  }
}
