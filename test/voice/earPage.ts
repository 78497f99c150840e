import { createEar } from '../../kiosk/ear/ear.ts';
import type { Ear, EarOptions } from '../../kiosk/ear/earPort.ts';
import type { MicrophoneEvents, SoundSource } from '../../kiosk/ear/microphone.ts';
import { CARE_TIMES } from '../../kiosk/ear/recogniserCare.ts';
import type { CareTimes } from '../../kiosk/ear/recogniserCare.ts';

export interface MakeOptions {
  readonly pushed?: boolean;
  /** The maker chose a model of this address. */
  readonly chosen?: string;
  /** Other addresses than the kiosk's for the model that ships and the dictionary. */
  readonly model?: string;
  readonly dictionary?: string;
  readonly times?: Partial<CareTimes>;
  readonly heapGrowthBytes?: number;
}

/** The page that the ear's tests run in: the ear alone, and what it said, in order. */
interface EarPage {
  readonly log: { readonly at: number; readonly event: string; readonly detail: unknown }[];
  ear: Ear;
  /** With `pushed` the ear hears only what push() gives it. */
  make(options: MakeOptions): void;
  /**
   * Gives 16 kHz sound as fast as it is worked through, and settles when all of it was; what is less than a block of 100 ms at the end is left out.
   * @throws {Error} when the engine is lost on the way
   */
  push(sound: Float32Array<ArrayBuffer>): Promise<void>;
  /**
   * The same in the time of the sound itself: for the ear, 100 ms pass with each block, so that attention lasts as long as it would at the bench.
   * @throws {Error} when the engine is lost on the way
   */
  hear(sound: Float32Array<ArrayBuffer>): Promise<void>;
  /** Gives sound as a microphone would, a block each 100 ms. */
  pushInTime(sound: Float32Array<ArrayBuffer>): Promise<void>;
  /** Fetches a WAV (16 kHz, mono, 16 bits). */
  wav(url: string): Promise<Float32Array<ArrayBuffer>>;
}

declare global {
  interface Window { page: EarPage }
}

const BLOCK = 1_600;
/** Five seconds: more at once, and the engine would seem not to answer. */
const BLOCKS_AT_ONCE = 50;
const WAV_HEADER_BYTES = 44;
const BLOCK_MS = BLOCK / 16;
let pushTo: MicrophoneEvents | undefined;
/** How far the ear's time is before the clock, in milliseconds; and its time while it goes by the sound and not by the clock. */
let ahead = 0;
let bySound: number | undefined;
const onTheClock = performance.now.bind(performance);
performance.now = () => bySound ?? onTheClock() + ahead;

const page: EarPage = {
  log: [],
  ear: createEar({ events: eventsInto('unmade') }),
  make({ pushed = false, times = {}, heapGrowthBytes, chosen, model = '/models/model.tar.gz', dictionary = '/ear/dictionary.txt.gz' }) {
    const options: EarOptions = {
      events: eventsInto(''),
      addresses: { workerUrl: '/ear/recogniser-worker.js', engineUrl: '/ear/vosk.wasm', dictionaryUrl: dictionary, model: (refused) => Promise.resolve(chosen === undefined || refused.has(chosen) ? model : chosen) },
      careTimes: { ...CARE_TIMES, ...times },
      ...(pushed ? { source: pushedSound } : {}),
      ...(heapGrowthBytes === undefined ? {} : { heapGrowthBytes }),
    };
    page.ear = createEar(options);
  },
  async push(sound) {
    for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) {
      pushTo?.block(sound.slice(at, at + BLOCK));
      if ((at / BLOCK) % BLOCKS_AT_ONCE === 0) await workedThrough();
    }
    await workedThrough();
  },
  async hear(sound) {
    bySound = performance.now();
    try {
      for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) {
        bySound += BLOCK_MS;
        pushTo?.block(sound.slice(at, at + BLOCK));
        await workedThrough();
      }
    } finally {
      ahead = bySound - onTheClock();
      bySound = undefined;
    }
  },
  async pushInTime(sound) {
    const began = performance.now();
    for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) {
      pushTo?.block(sound.slice(at, at + BLOCK));
      const next = began + (at + BLOCK) / 16;
      await new Promise((done) => setTimeout(done, next - performance.now()));
    }
  },
  async wav(url) {
    const bytes = await (await fetch(url)).arrayBuffer();
    return Float32Array.from(new Int16Array(bytes.slice(WAV_HEADER_BYTES)), (sample) => sample / 32_768);
  },
};
window.page = page;

/** The engine answers in order: when it tells how it is, it has heard all that came before. */
async function workedThrough(): Promise<void> {
  if ((await page.ear.diagnosis()).engine === undefined) throw new Error('the engine was lost');
}

function eventsInto(prefix: string): EarOptions['events'] {
  const note = (event: string) => (detail: unknown) => { page.log.push({ at: performance.now(), event: prefix + event, detail }); };
  return { heard: note('heard'), address: note('address'), level: note('level'), state: note('state'), unknownWords: note('unknown'), guessedWords: note('guessed'), modelLoaded: note('model'), modelRefused: note('refused') };
}

function pushedSound(events: MicrophoneEvents): SoundSource {
  return {
    settings: undefined,
    start: () => { pushTo = events; events.began(); return Promise.resolve(); },
    stop: () => { pushTo = undefined; },
    choices: () => Promise.resolve([]),
    choose: () => Promise.resolve(),
  };
}
