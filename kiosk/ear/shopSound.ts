import { loudnessDb } from './gate.ts';
import { SAMPLE_RATE_HZ } from './messages.ts';
import { blockPower, OCTAVE_CENTRES_HZ } from './spectrum.ts';

/** How loud the shop is, as the microphone hears it: decibels below its full scale, for nobody knows what that is in the air. */
export interface ShopSound {
  /** A-weighted, without the blows and words that come and go: the median of the last ten seconds. */
  readonly ambientDb: number;
  /** The same by octaves around 125, 250, 500, 1000, 2000 and 4000 Hz, unweighted. */
  readonly octavesDb: readonly number[];
  /** Blows come one after the other. */
  readonly hammering: boolean;
  /** Nothing loud just now: no blow is ringing, nobody speaks, and the next blow of a row is not about to fall. */
  readonly lull: boolean;
}

/** Long enough for the median to stand still while someone says a sentence. */
const WINDOW_BLOCKS = 100;
/** A quarter of the window is enough for a first figure. */
const FEWEST_BLOCKS = 10;
/** This far above the shop's own noise a sound is no part of it. */
const LOUD_ABOVE_DB = 12;
/** The loudest hundredth of a second of a blow is this far above what was there three hundredths before; a voice takes longer to swell. */
const BLOW_RISE_DB = 18;
const RISE_FRAMES = 3;
/** A blow has fallen by this much after BLOW_MS. */
const BLOW_FALL_DB = 10;
const BLOW_MS = 300;
/** Blows further apart than this are no row. */
const ROW_GAP_MS = 2_000;
const FEWEST_IN_ROW = 3;
/** Nothing loud for this long is a lull. */
const LULL_MS = 700;
/** In a row of blows, the pause must be longer than usual by this much before it counts as one. */
const LONGER_THAN_USUAL = 1.6;
const SILENCE = 1e-9;
const FRAME_SAMPLES = SAMPLE_RATE_HZ / 100;

/** Listens to how loud the shop is: one block of 100 ms after the other, none of them while the mouth speaks. */
export class ShopSoundMeter {
  #weightedDb: number[] = [];
  #octavesDb: (readonly number[])[] = [];
  #loudAt = -Infinity;
  /** A sudden rise that may turn out to be a blow. */
  #rise: { readonly at: number; readonly db: number } | undefined;
  #blows: number[] = [];
  /** The loudness of the last frames of the block before. */
  #framesBefore: readonly number[] = [];

  /** Takes a block that ended at `now` (milliseconds that never go back); gives its A-weighted loudness. */
  take(block: Float32Array, now: number): number {
    const { weighted, octaves } = blockPower(block);
    const db = decibels(weighted);
    this.#weightedDb.push(db);
    this.#octavesDb.push(octaves.map(decibels));
    if (this.#weightedDb.length > WINDOW_BLOCKS) {
      this.#weightedDb.shift();
      this.#octavesDb.shift();
    }
    this.#notice(db, this.#riseDb(block), now);
    return db;
  }

  /** Undefined until the first second was heard. */
  at(now: number): ShopSound | undefined {
    if (this.#weightedDb.length < FEWEST_BLOCKS) return undefined;
    const row = this.#row(now);
    const pauseMs = Math.max(LULL_MS, row.length < FEWEST_IN_ROW ? 0 : LONGER_THAN_USUAL * median(row.slice(1).map((blow, index) => blow - (row[index] ?? blow))));
    return {
      ambientDb: median(this.#weightedDb),
      octavesDb: OCTAVE_CENTRES_HZ.map((_, octave) => median(this.#octavesDb.map((each) => each[octave] ?? 0))),
      hammering: row.length >= FEWEST_IN_ROW,
      lull: now - this.#loudAt >= pauseMs,
    };
  }

  /** Another microphone, another scale. */
  reset(): void {
    this.#weightedDb = [];
    this.#octavesDb = [];
    this.#blows = [];
    this.#rise = undefined;
    this.#framesBefore = [];
    this.#loudAt = -Infinity;
  }

  /** How far the loudest frame of a block stands above what was there a moment before it. */
  #riseDb(block: Float32Array): number {
    const frames = [...this.#framesBefore];
    for (let at = 0; at < block.length; at += FRAME_SAMPLES) frames.push(loudnessDb(block.subarray(at, at + FRAME_SAMPLES)));
    const loudest = frames.indexOf(Math.max(...frames));
    this.#framesBefore = frames.slice(-RISE_FRAMES);
    return loudest < RISE_FRAMES ? 0 : (frames[loudest] ?? 0) - (frames[loudest - RISE_FRAMES] ?? 0);
  }

  #notice(db: number, riseDb: number, now: number): void {
    const loud = db > median(this.#weightedDb) + LOUD_ABOVE_DB;
    if (loud) this.#loudAt = now;
    if (this.#rise !== undefined && db < this.#rise.db - BLOW_FALL_DB) {
      if (now - this.#rise.at <= BLOW_MS) this.#blows = [...this.#blows.slice(-15), this.#rise.at];
      this.#rise = undefined;
    }
    if (loud && riseDb > BLOW_RISE_DB) this.#rise = { at: now, db };
  }

  /** The blows that follow each other up to now; none when the last is long ago. */
  #row(now: number): readonly number[] {
    const row: number[] = [];
    let next = now;
    for (const blow of [...this.#blows].reverse()) {
      if (next - blow > ROW_GAP_MS) break;
      row.unshift(blow);
      next = blow;
    }
    return row;
  }
}

function decibels(power: number): number {
  return 10 * Math.log10(Math.max(power, SILENCE));
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? 0;
}
