import { blockPower } from './spectrum.ts';

/** A voice is at its usual loudness in about a quarter of its time; the rest is pauses and soft sounds. */
const USUAL_PART = 0.75;
const FEWEST_BLOCKS = 8;
/** Less above the shop's own noise than this, and it is not known what was heard. */
const CLEARLY_ABOVE_DB = 6;

/** How loud the kiosk hears itself while it is deaf to words: the only way to know what its loudness means in this shop. */
export class OwnVoice {
  #powers: number[] = [];

  take(block: Float32Array): void {
    this.#powers.push(blockPower(block).weighted);
  }

  /** A-weighted decibels below full scale of what was taken since the last call, the shop's noise taken off; undefined when it was too short or too soft to tell. */
  loudness(ambientDb: number | undefined): number | undefined {
    const powers = this.#powers.sort((one, other) => one - other);
    this.#powers = [];
    if (powers.length < FEWEST_BLOCKS || ambientDb === undefined) return undefined;
    const usual = powers[Math.floor(USUAL_PART * powers.length)] ?? 0;
    const ambient = 10 ** (ambientDb / 10);
    return usual < ambient * 10 ** (CLEARLY_ABOVE_DB / 10) ? undefined : 10 * Math.log10(usual - ambient);
  }
}
