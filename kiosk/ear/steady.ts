import { SAMPLE_RATE_HZ } from './messages.ts';

/** Below every voice, above every offset. */
const CORNER_HZ = 40;
const KEPT = Math.exp((-2 * Math.PI * CORNER_HZ) / SAMPLE_RATE_HZ);

/**
 * Takes a steady offset out of the sound (a first-order high-pass at 40 Hz): cheap cards add one, and the gate would take it for a loud room in which nobody can be heard.
 */
export class Steady {
  #before: number | undefined;
  #out = 0;

  /** In place. */
  take(block: Float32Array): void {
    let before = this.#before ?? block[0] ?? 0;
    for (let at = 0; at < block.length; at += 1) {
      const sample = block[at] ?? 0;
      this.#out = KEPT * (this.#out + sample - before);
      before = sample;
      block[at] = this.#out;
    }
    this.#before = before;
  }

  reset(): void {
    this.#before = undefined;
    this.#out = 0;
  }
}
