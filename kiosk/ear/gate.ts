import { SAMPLE_RATE_HZ } from './messages.ts';

/** How the gate decides. Times are in milliseconds, loudness in decibels. */
export interface GateSettings {
  /** How far above the room's own noise a sound must be to open it. */
  readonly openAboveFloorDb: number;
  /** And to keep it open: the soft ends of words sink towards the noise. */
  readonly stayAboveFloorDb: number;
  /** Nothing softer than this (below full scale) opens the gate, however quiet the room. */
  readonly softestDb: number;
  /** A sound must last this long; a dry blow does not. */
  readonly openAfterMs: number;
  /** What is kept from before the gate opened, so that soft first consonants are not cut off. */
  readonly preRollMs: number;
  /** How long the gate stays open after the last speech; longer than a breath within a sentence, and than the engine's own end of speech (0.5 s). */
  readonly hangOverMs: number;
  /** The same after a sound too short to be speech, such as a mallet blow that rings. */
  readonly shortHangOverMs: number;
  /** Sound shorter than this is 'too short to be speech'. */
  readonly speechMs: number;
  /** How fast the floor follows a room that grows louder, in decibels a second. */
  readonly floorRiseDbPerSecond: number;
}

export const GATE_SETTINGS: GateSettings = {
  openAboveFloorDb: 6.5, stayAboveFloorDb: 4, softestDb: -62, openAfterMs: 90, preRollMs: 300, hangOverMs: 800, shortHangOverMs: 250, speechMs: 260, floorRiseDbPerSecond: 2,
};

/** What the gate lets through of one block. */
export interface Passed {
  /** Blocks for the recogniser, oldest first; the pre-roll comes with the first. */
  readonly blocks: readonly Float32Array<ArrayBuffer>[];
  /** True when the gate closed with this block: the utterance is over. */
  readonly ended: boolean;
}

const FRAME_MS = 10;
const FRAME_SAMPLES = (SAMPLE_RATE_HZ * FRAME_MS) / 1000;
/** The floor falls to a quieter room in about this many frames. */
const FLOOR_FALL_FRAMES = 10;
/** Most floors begin below this; the first second of a room settles it. */
const FIRST_FLOOR_DB = -60;
const SILENCE_DB = -90;
/** Loud without a break for so long, and it is no chance of the noise. */
const LASTING_MS = 30;

/**
 * The noise gate before the recogniser: an empty shop costs no reckoning, and the engine, which grows while it listens to noise, is given none.
 * Its floor follows the room, so a fan that starts opens it for some seconds and then no more.
 */
export class Gate {
  readonly #settings: GateSettings;
  #floorDb = FIRST_FLOOR_DB;
  #open = false;
  /** Loud time lately, leaking away in quiet frames: opens the gate when it reaches openAfterMs. */
  #loudMs = 0;
  /** Loud time since the gate opened. */
  #speechMs = 0;
  #quietMs = 0;
  #loudRunMs = 0;
  #preRoll: Float32Array<ArrayBuffer>[] = [];

  constructor(settings: GateSettings = GATE_SETTINGS) {
    this.#settings = settings;
  }

  get open(): boolean {
    return this.#open;
  }

  /** The loudness of the room without speech, in decibels below full scale. */
  get floorDb(): number {
    return this.#floorDb;
  }

  /** Takes a block of 16 kHz sound and gives back what is to be recognised. */
  take(block: Float32Array<ArrayBuffer>): Passed {
    let opened = false;
    let closed = false;
    for (let at = 0; at < block.length; at += FRAME_SAMPLES) {
      const was = this.#open;
      this.#frame(loudnessDb(block.subarray(at, at + FRAME_SAMPLES)));
      opened ||= !was && this.#open;
      closed ||= was && !this.#open;
    }
    if (!this.#open && !closed) return this.#keep(block);
    const blocks = opened ? [...this.#preRoll, block] : [block];
    if (opened) this.#preRoll = [];
    return { blocks, ended: closed && !this.#open };
  }

  /** Closes at once and forgets the pre-roll (what the room itself sounds like is remembered). */
  shut(): void {
    this.#open = false;
    this.#loudMs = 0;
    this.#preRoll = [];
  }

  #keep(block: Float32Array<ArrayBuffer>): Passed {
    this.#preRoll.push(block);
    const blockMs = (block.length / SAMPLE_RATE_HZ) * 1000;
    while (this.#preRoll.length * blockMs > this.#settings.preRollMs) this.#preRoll.shift();
    return { blocks: [], ended: false };
  }

  #frame(db: number): void {
    const { openAboveFloorDb, stayAboveFloorDb, softestDb, openAfterMs, hangOverMs, shortHangOverMs, speechMs } = this.#settings;
    const loud = db > Math.max(this.#floorDb + (this.#open ? stayAboveFloorDb : openAboveFloorDb), softestDb);
    this.#followFloor(db);
    this.#loudMs = loud ? Math.min(this.#loudMs + FRAME_MS, openAfterMs) : Math.max(0, this.#loudMs - FRAME_MS / 2);
    if (!this.#open) {
      if (this.#loudMs >= openAfterMs) this.#openNow();
      return;
    }
    if (loud) this.#speechMs += FRAME_MS;
    // One loud frame may be the noise itself; several in a row are a sound.
    this.#loudRunMs = loud ? this.#loudRunMs + FRAME_MS : 0;
    this.#quietMs = this.#loudRunMs >= LASTING_MS ? 0 : this.#quietMs + FRAME_MS;
    if (this.#quietMs >= (this.#speechMs < speechMs ? shortHangOverMs : hangOverMs)) this.shut();
  }

  #openNow(): void {
    this.#open = true;
    this.#speechMs = 0;
    this.#quietMs = 0;
    this.#loudRunMs = 0;
  }

  #followFloor(db: number): void {
    const heard = Math.max(db, SILENCE_DB);
    if (heard < this.#floorDb) this.#floorDb += (heard - this.#floorDb) / FLOOR_FALL_FRAMES;
    else this.#floorDb += Math.min(heard - this.#floorDb, (this.#settings.floorRiseDbPerSecond * FRAME_MS) / 1000);
  }
}

/** Root-mean-square loudness in decibels below full scale; silence is -90. */
export function loudnessDb(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  const power = samples.length === 0 ? 0 : sum / samples.length;
  return power <= 1e-9 ? SILENCE_DB : 10 * Math.log10(power);
}
