import { loudnessDb } from './gate.ts';
import { SAMPLE_RATE_HZ } from './messages.ts';

/** The loudest hundredth of a second of clear speech in what the model learnt from, in decibels below full scale. */
const LEARNT_DB = -18;
/** A whisper at the far end of the bench gets no more than this: what is left is the microphone's own hiss. */
const MOST_GAIN_DB = 40;
/** A voice that can be heard at all will be so far above the noise of the room before the sentence is over: what is lifted on the first syllable's account would be the noise. */
const VOICE_ABOVE_NOISE_DB = 12;
/** How fast it forgets a loud word, in decibels a second: slower than a sentence, faster than a walk away from the bench. */
const FORGET_DB_PER_SECOND = 4;
/** What opened the gate and is followed by sound this much softer was a blow, and no measure for the words after it. */
const BLOW_ABOVE_DB = 10;
/** For so long it must be softer. */
const BLOW_SECONDS = 0.2;
/** Then the blow is forgotten this fast. */
const FORGET_BLOW_DB_PER_SECOND = 60;
const FRAME_SAMPLES = SAMPLE_RATE_HZ / 100;

/**
 * Brings a soft voice to the loudness that the model learnt at: it has no ear for level of its own (of 22 sentences it had 21 at that loudness, 18 when 12 dB
 * softer, 1 when 24 dB softer). Unlike the browser's automatic gain it stands behind the gate, so an empty shop is never lifted; and each
 * utterance is measured afresh, so a mallet blow does not make the next word softer. It only lifts, never lowers.
 */
export class Gain {
  #peakDb: number | undefined;
  #factor = 1;
  /** The loudest so far is what the utterance began with. */
  #peakIsFirst = false;
  /** Since when everything was much softer than that, in seconds. */
  #softSeconds = 0;

  /** Of the blocks of one utterance, in order; the first call takes all that came up to its beginning. @param floorDb how loud the room is without the voice */
  apply(blocks: readonly Float32Array<ArrayBuffer>[], floorDb = -Infinity): readonly Float32Array<ArrayBuffer>[] {
    const loudest = Math.max(...blocks.map(loudestFrameDb));
    const seconds = blocks.reduce((sum, block) => sum + block.length, 0) / SAMPLE_RATE_HZ;
    const first = this.#peakDb === undefined;
    this.#peakDb = this.#peak(loudest, seconds);
    const wanted = 10 ** (Math.min(MOST_GAIN_DB, Math.max(0, LEARNT_DB - Math.max(this.#peakDb, floorDb + VOICE_ABOVE_NOISE_DB))) / 20);
    const from = first ? wanted : this.#factor;
    this.#factor = wanted;
    return blocks.map((block) => ramped(block, from, wanted));
  }

  /** The utterance is over. */
  reset(): void {
    this.#peakDb = undefined;
  }

  #peak(loudestDb: number, seconds: number): number {
    const before = this.#peakDb;
    if (before === undefined || loudestDb >= before) {
      this.#peakIsFirst = before === undefined;
      this.#softSeconds = 0;
      return loudestDb;
    }
    this.#softSeconds = loudestDb < before - BLOW_ABOVE_DB ? this.#softSeconds + seconds : 0;
    const blow = this.#peakIsFirst && this.#softSeconds >= BLOW_SECONDS;
    return Math.max(loudestDb, before - (blow ? FORGET_BLOW_DB_PER_SECOND : FORGET_DB_PER_SECOND) * seconds);
  }
}

function loudestFrameDb(block: Float32Array): number {
  let loudest = -Infinity;
  for (let at = 0; at < block.length; at += FRAME_SAMPLES) loudest = Math.max(loudest, loudnessDb(block.subarray(at, at + FRAME_SAMPLES)));
  return loudest;
}

/** Glides from one factor to the other, for a step in loudness would sound like a click. */
function ramped(block: Float32Array<ArrayBuffer>, from: number, to: number): Float32Array<ArrayBuffer> {
  if (from === 1 && to === 1) return block;
  return block.map((sample, at) => Math.max(-1, Math.min(1, sample * (from + ((to - from) * at) / block.length))));
}
