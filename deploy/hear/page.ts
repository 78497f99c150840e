import type { Bench } from '../../core/bench/bench.ts';
import type { Moment } from '../../core/clock/moment.ts';
import { makeRecords } from '../../core/journal/record.ts';
import { advance, benchFrom } from '../../core/respond/advance.ts';
import { respond } from '../../core/respond/respond.ts';
import { phrasesFor } from '../../core/talk/grammar.ts';
import { parseRequest } from '../../core/talk/parse.ts';
import { createEar } from '../../kiosk/ear/ear.ts';
import type { Ear } from '../../kiosk/ear/earPort.ts';
import type { Asked, Heard, Opened, Outcome } from './outcome.ts';
import { measure, type Measured } from './levels.ts';

/** The page in which recordings are heard: the kiosk's ear and its answers, without store, mouth and screen. */
interface HearPage {
  /** Loads the ear. @throws {Error} with the ear's own sentence when it cannot hear */
  open(asked: Asked): Promise<Opened>;
  /** Plays a recording to the ear in real time, and tells what came of it. @throws {Error} when the browser cannot decode it */
  hear(url: string, addressed: boolean): Promise<Outcome>;
}

declare global {
  interface Window { hearPage: HearPage }
}

/** As a sound card plays; the ear's own context brings it to 16 kHz, as it does with a card. */
const PLAYED_HZ = 48_000;
const AFTER_SECONDS = 2.5;
const [LEAST_SETTLING_SECONDS, MOST_SETTLING_SECONDS] = [2, 15];
const QUIET_ROOM_DB = -62;
const GATE_FOLLOWS_DB_PER_SECOND = 2;
const LISTENS_BEFORE_MS = 200;
const GRAIN_SECONDS = 0.15;
const SHORTEST_GRAIN_SECONDS = 0.03;
const LOUDEST_HISS = 0.005;
/** Softer than this would be digital silence, which no microphone gives. */
const SOFTEST_ROOM = 0.0002;
const LAST_WORDS_WITHIN_MS = 10_000;

let context: AudioContext;
let microphone: MediaStreamAudioDestinationNode;
let idle: GainNode;
let ear: Ear;
let fresh: Bench;
let bench: Bench;
let phrases: readonly string[];
let heard: Heard[] = [];
let recognised: { readonly said: string; readonly meant: string | undefined; readonly at: number }[] = [];

const now = (): Moment => ({ wallMs: Date.now(), wallTrusted: true, bootId: 'hear', monotonicMs: performance.now() });

window.hearPage = {
  async open({ pieceText, grammar }) {
    fresh = benchFrom(makeRecords([{ kind: 'piece loaded', text: pieceText, from: 'the command line' }], null, now()));
    bench = fresh;
    phrases = grammar ?? phrasesFor(bench);
    context = new AudioContext({ sampleRate: PLAYED_HZ });
    microphone = new MediaStreamAudioDestinationNode(context, { channelCount: 1 });
    idle = quietRoom();
    // The browser's microphone is this stream from now on; everything behind it is the kiosk's.
    navigator.mediaDevices.getUserMedia = () => Promise.resolve(microphone.stream.clone());
    const began = performance.now();
    const guessed: string[] = [];
    ear = createEar({ events: {
      heard: answer, address: () => undefined, level: () => undefined, state: () => undefined, unknownWords: () => undefined,
      guessedWords: (words) => guessed.push(...words),
    } });
    ear.tap({ sound: () => undefined, passed: () => undefined, recognised: (said, meant) => recognised.push({ said, meant, at: performance.now() }) });
    await ear.start();
    const { applied, unknownWords } = await ear.setGrammar(phrases, bench.state.settings.addressWord);
    if (!applied) throw new Error(ear.state.sentence);
    return { loadMs: performance.now() - began, unheard: unknownWords, guessed: [...new Set(guessed)] };
  },
  async hear(url, addressed) {
    const bytes = await (await fetch(url)).arrayBuffer();
    const { measured, rateHz, channels } = await measuredAtItsRate(bytes);
    const sound = await context.decodeAudioData(bytes.slice(0));
    [bench, heard, recognised] = [fresh, [], []];
    const before = settlingSeconds(measured.levels.ambientDb);
    if (addressed) setTimeout(() => ear.listenNow(), before * 1000 - LISTENS_BEFORE_MS);
    const began = await play(between(roomOf(sound, measured, before), sound, roomOf(sound, measured, AFTER_SECONDS)));
    await lastWords();
    return outcome(measured, { rateHz, channels, seconds: sound.duration }, began + before * 1000);
  },
};

/** What was meant for the bench is answered as the kiosk would; nothing is kept. */
function answer(words: string): void {
  const at = performance.now();
  const request = parseRequest(words, bench);
  const { entries, reply } = respond(bench, request, now());
  const added = entries.length > 0 ? makeRecords(entries, bench.records.at(-1) ?? null, now()) : [];
  bench = advance(bench, reply, added);
  heard.push({ words, request, reply, writes: entries, heardAt: at, repliedAt: performance.now() });
}

/** Decoded at its own rate, so that its level is its own. */
async function measuredAtItsRate(bytes: ArrayBuffer): Promise<{ measured: Measured; rateHz: number; channels: number }> {
  const rateHz = rateOf(bytes) ?? PLAYED_HZ;
  const decoded = await new OfflineAudioContext(1, 1, rateHz).decodeAudioData(bytes.slice(0));
  const channels = Array.from({ length: decoded.numberOfChannels }, (_, channel) => decoded.getChannelData(channel));
  return { measured: measure(channels, rateHz), rateHz, channels: channels.length };
}

/** The rate of a WAV, if the browser can reckon at it. */
function rateOf(bytes: ArrayBuffer): number | undefined {
  const view = new DataView(bytes);
  const text = (at: number) => String.fromCharCode(...new Uint8Array(bytes, at, 4));
  for (let at = 12; at + 16 <= bytes.byteLength && text(0) === 'RIFF'; at += 8 + view.getUint32(at + 4, true) + (view.getUint32(at + 4, true) & 1)) {
    if (text(at) !== 'fmt ') continue;
    const rate = view.getUint32(at + 12, true);
    return rate >= 3_000 && rate <= 768_000 ? rate : undefined;
  }
  return undefined;
}

/** How long the ear needs to get used to a room: its gate begins with a quiet one and follows slowly. */
function settlingSeconds(ambientDb: number): number {
  return Math.min(MOST_SETTLING_SECONDS, Math.max(LEAST_SETTLING_SECONDS, 1 + (ambientDb - QUIET_ROOM_DB) / GATE_FOLLOWS_DB_PER_SECOND));
}

/**
 * What the room sounds like when nobody speaks: the recording's own softest stretch, in grains laid over each other, so that nothing repeats and no seam is heard; hiss of the same
 * loudness where there is no such stretch.
 */
function roomOf(sound: AudioBuffer, { room: [from, seconds], levels }: Measured, roomSeconds: number): Float32Array {
  const rate = sound.sampleRate;
  const samples = new Float32Array(Math.round(roomSeconds * rate));
  const hiss = Math.max(SOFTEST_ROOM, seconds < SHORTEST_GRAIN_SECONDS ? Math.min(LOUDEST_HISS, 10 ** (levels.ambientDb / 20) * Math.sqrt(3)) : 0);
  samples.forEach((_, at) => { samples[at] = (Math.random() * 2 - 1) * hiss; });
  if (seconds < SHORTEST_GRAIN_SECONDS) return samples;
  const softest = sound.getChannelData(0).subarray(Math.round(from * rate), Math.round((from + seconds) * rate));
  const grain = Math.min(softest.length, Math.round(GRAIN_SECONDS * rate));
  for (let start = -grain; start < samples.length; start += Math.floor(grain / 2)) {
    const source = Math.floor(Math.random() * (softest.length - grain + 1));
    for (let at = Math.max(0, -start); at < grain && start + at < samples.length; at += 1) {
      samples[start + at] = (samples[start + at] ?? 0) + Math.sin((Math.PI * at) / grain) * (softest[source + at] ?? 0);
    }
  }
  return samples;
}

/** All channels of a recording, with a room before and after on each. */
function between(before: Float32Array, sound: AudioBuffer, after: Float32Array): AudioBuffer {
  const { numberOfChannels, sampleRate, length } = sound;
  const whole = new AudioBuffer({ numberOfChannels, sampleRate, length: before.length + length + after.length });
  for (let channel = 0; channel < numberOfChannels; channel += 1) {
    const samples = whole.getChannelData(channel);
    samples.set(before);
    samples.set(sound.getChannelData(channel), before.length);
    samples.set(after, before.length + length);
  }
  return whole;
}

/** Hiss of a quiet room, which sounds whenever no recording does. */
function quietRoom(): GainNode {
  const buffer = new AudioBuffer({ length: 10 * PLAYED_HZ, sampleRate: PLAYED_HZ, numberOfChannels: 1 });
  const samples = buffer.getChannelData(0);
  samples.forEach((_, at) => { samples[at] = (Math.random() * 2 - 1) * 10 ** (QUIET_ROOM_DB / 20) * Math.sqrt(3); });
  const source = new AudioBufferSourceNode(context, { buffer, loop: true });
  const gain = new GainNode(context);
  source.connect(gain).connect(microphone);
  source.start();
  return gain;
}

/** Plays to the microphone; gives the moment when it began, by the page's clock. */
async function play(sound: AudioBuffer): Promise<number> {
  const source = new AudioBufferSourceNode(context, { buffer: sound });
  source.connect(microphone);
  idle.gain.value = 0;
  const began = performance.now();
  source.start();
  await new Promise<void>((ended) => { source.onended = () => ended(); });
  idle.gain.value = 1;
  return began;
}

/** Waits until the ear is through with what it heard. */
async function lastWords(): Promise<void> {
  await Promise.race([ear.diagnosis(), new Promise((late) => setTimeout(late, LAST_WORDS_WITHIN_MS))]);
}

function outcome({ levels, warnings, speechEnds, ends }: Measured, format: Outcome['format'], began: number): Outcome {
  const seconds = (at: number) => Math.round(at - began) / 1000;
  return {
    format, level: levels, warnings, speechEnds,
    recognised: recognised.map(({ said, meant, at }) => ({ said, addressed: meant !== undefined, at: seconds(at) })),
    heard: heard.map((each) => {
      const end = ends.findLast((one) => one <= seconds(each.heardAt)) ?? null;
      const after = (at: number) => (end === null ? null : Math.round(at - began - end * 1000));
      return { words: each.words, request: each.request, reply: each.reply, writes: each.writes, times: { endOfSpeech: end, heardAfterMs: after(each.heardAt), repliedAfterMs: after(each.repliedAt) } };
    }),
  };
}
