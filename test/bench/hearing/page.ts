import { Recogniser } from '../../../kiosk/ear/recogniser.ts';

/** The page that the hearing benchmark runs in: the recogniser alone, without gate and attention. */
interface HearingPage {
  /** Loads engine and model, and tells how long that took. */
  load(): Promise<number>;
  /** Teaches the grammar's words and sets it; gives the words that the model cannot hear. */
  setGrammar(phrases: readonly string[]): Promise<readonly string[]>;
  /** What is heard in a recording (raw, 16 kHz, 16 bits), utterances joined by ' / ', and how long the hearing took. */
  hear(url: string): Promise<{ readonly text: string; readonly tookMs: number; readonly seconds: number }>;
  heapBytes(): Promise<number>;
}

declare global {
  interface Window { hearing: HearingPage }
}

const BLOCK = 1_600;
const LOAD_WITHIN_MS = 120_000;
let recogniser: Recogniser | undefined;
let heard: string[] = [];

function ready(): Recogniser {
  if (recogniser === undefined) throw new Error('the model is not loaded');
  return recogniser;
}

window.hearing = {
  async load() {
    recogniser?.end();
    const began = performance.now();
    const addresses = { workerUrl: '/ear/recogniser-worker.js', engineUrl: '/ear/vosk.wasm', modelUrl: '/models/model.tar.gz', dictionaryUrl: '/ear/dictionary.txt.gz' } as const;
    const events = { partial: () => undefined, words: (words: string) => { heard.push(words); }, crashed: (reason: string) => { throw new Error(reason); } };
    recogniser = await Recogniser.load(addresses, events, LOAD_WITHIN_MS);
    return performance.now() - began;
  },
  async setGrammar(phrases) {
    const words = [...new Set(phrases.flatMap((phrase) => phrase.split(' ')))].filter((word) => !word.startsWith('['));
    const learned = await ready().learn(words);
    await ready().setGrammar(phrases);
    return learned.unknown;
  },
  async hear(url) {
    const samples = new Int16Array(await (await fetch(url)).arrayBuffer());
    const sound = Float32Array.from(samples, (sample) => sample / 32_768);
    heard = [];
    const began = performance.now();
    for (let at = 0; at < sound.length; at += BLOCK) ready().hear(sound.slice(at, at + BLOCK));
    await ready().finish();
    return { text: heard.join(' / '), tookMs: performance.now() - began, seconds: sound.length / 16_000 };
  },
  async heapBytes() { return (await ready().health()).heapBytes; },
};
