import { loudnessDb } from './gate.ts';
import { SAMPLE_RATE_HZ } from './messages.ts';

/** What the sound of the last seconds is like. Decibels are below full scale. */
export interface SoundFacts {
  /** The loudest single sample. */
  readonly peakDb: number;
  /** Samples at full scale, each beside another: sound that was cut off. */
  readonly clipped: number;
  /** How far the sound lies off its middle, as a share of full scale, with its sign. */
  readonly offset: number;
  /** Not even the hiss that any microphone has. */
  readonly dead: boolean;
}

const WINDOW_MS = 3_000;
const FULL = 0.998;
/** Softer than any microphone that is switched on, even a digital one in a quiet room. */
const DEAD_DB = -88;
const SILENCE_DB = -90;

interface BlockFacts { readonly ms: number; readonly peak: number; readonly clipped: number; readonly sum: number; readonly samples: number; readonly db: number }

/** Looks at the microphone's sound itself: how loud at most, whether it was cut off, whether it lies off its middle. 16 kHz, -1 to 1. */
export class SoundCheck {
  #blocks: BlockFacts[] = [];

  take(block: Float32Array): void {
    this.#blocks.push(factsOf(block));
    let ms = this.#blocks.reduce((sum, each) => sum + each.ms, 0);
    while (ms > WINDOW_MS && this.#blocks.length > 1) ms -= this.#blocks.shift()?.ms ?? 0;
  }

  /** Undefined until there was any sound to judge. */
  get facts(): SoundFacts | undefined {
    const blocks = this.#blocks;
    if (blocks.length === 0) return undefined;
    const sum = (of: (block: BlockFacts) => number) => blocks.reduce((total, block) => total + of(block), 0);
    const peak = Math.max(...blocks.map((block) => block.peak));
    return {
      peakDb: peak <= 0 ? SILENCE_DB : Math.max(SILENCE_DB, 20 * Math.log10(peak)),
      clipped: sum((block) => block.clipped),
      offset: sum((block) => block.sum) / Math.max(1, sum((block) => block.samples)),
      dead: sum((block) => block.ms) >= WINDOW_MS / 2 && blocks.every(({ db }) => db <= DEAD_DB),
    };
  }
}

function factsOf(block: Float32Array): BlockFacts {
  let [peak, clipped, sum, before] = [0, 0, 0, 0];
  for (const sample of block) {
    const size = Math.abs(sample);
    if (size > peak) peak = size;
    if (size >= FULL && before >= FULL) clipped += 1;
    before = size;
    sum += sample;
  }
  return { ms: (block.length / SAMPLE_RATE_HZ) * 1000, peak, clipped, sum, samples: block.length, db: loudnessDb(block) };
}

/** What was said last: how loud it was against the room. */
export interface Utterance {
  /** The loudest hundredth of a second. */
  readonly loudestDb: number;
  readonly ambientDb: number | null;
}

const MOST_OFFSET = 0.02;
const SOFT_DB = -42;
const CLEAR_OF_ROOM_DB = 12;

/** What is wrong with the sound, and what to do about it; the worst first. */
export function soundFaults(facts: SoundFacts | undefined, last: Utterance | undefined): readonly string[] {
  if (facts === undefined) return [];
  if (facts.dead) return ['The microphone is open, but no sound at all comes from it: is it muted by a switch of its own, or in the system’s sound settings?'];
  return [
    ...(facts.clipped > 0 ? ['Loud sounds are cut off: turn the microphone’s input level down in the system’s sound settings, or move it away.'] : []),
    ...(Math.abs(facts.offset) > MOST_OFFSET ? [`The sound lies ${Math.round(Math.abs(facts.offset) * 100)} % off its middle: a fault of the sound card or the cable. Try another socket or microphone.`] : []),
    ...soft(last),
  ];
}

function soft(last: Utterance | undefined): readonly string[] {
  if (last === undefined) return [];
  const { loudestDb, ambientDb } = last;
  if (ambientDb !== null && loudestDb - ambientDb < CLEAR_OF_ROOM_DB) return [`Your voice was only ${Math.max(0, Math.round(loudestDb - ambientDb))} dB above the shop: move the microphone nearer to you, or away from what hums.`];
  return loudestDb < SOFT_DB ? ['Your voice comes softly: turn the microphone’s input level up in the system’s sound settings, or move it nearer.'] : [];
}

/** The loudest hundredth of a second of some blocks. */
export function loudestDb(blocks: readonly Float32Array[]): number {
  const frame = SAMPLE_RATE_HZ / 100;
  let loudest = SILENCE_DB;
  for (const block of blocks) for (let at = 0; at < block.length; at += frame) loudest = Math.max(loudest, loudnessDb(block.subarray(at, at + frame)));
  return loudest;
}
