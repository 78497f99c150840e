import type { Bench } from '../../core/bench/bench.ts';
import type { Moment } from '../../core/clock/moment.ts';
import type { Ear } from '../ear/earPort.ts';
import { UNKNOWN_WORD } from '../ear/grammar.ts';
import { SAMPLE_RATE_HZ } from '../ear/messages.ts';
import { loudestDb, SoundCheck, soundFaults, type Utterance } from '../ear/soundCheck.ts';
import type { TrialView } from '../hostPort.ts';
import { parseRequest, wouldDo } from './answering.ts';

export interface TrialOptions {
  readonly ear: Ear;
  readonly bench: () => Bench;
  readonly now: () => Moment;
  readonly changed: (view: TrialView | null) => void;
}

const MOST_SHOWN = 3;
const LONGEST_KEPT_SAMPLES = 15 * SAMPLE_RATE_HZ;
/** Brought to this loudness for playing back, but not so far that hiss becomes a roar. */
const PLAYED_PEAK = 0.5;
const MOST_GAIN = 20;

/** Listens in while the maker tries the microphone. What was said stays in memory until the next words, and is gone when the trial ends. */
export class MicrophoneTrial {
  readonly #options: TrialOptions;
  readonly #sound = new SoundCheck();
  #speaking: Float32Array[] = [];
  #said: readonly Float32Array[] = [];
  #last: Utterance | undefined;
  #heard: TrialView['heard'] = [];
  #calls = 0;
  #playing: AudioContext | undefined;

  constructor(options: TrialOptions) {
    this.#options = options;
    options.ear.tap({
      sound: (block) => {
        this.#sound.take(block);
        this.#tell();
      },
      passed: (blocks, ended) => this.#keep(blocks, ended),
      recognised: (said, meant) => this.#recognised(said, meant),
    });
    this.#tell();
  }

  end(): void {
    this.#options.ear.tap(undefined);
    void this.#playing?.close();
    this.#options.changed(null);
  }

  /** Plays what was said last, while the ear is deaf. Settles when it has sounded. */
  async playBack(): Promise<void> {
    if (this.#said.length === 0 || this.#playing !== undefined) return;
    const hear = this.#options.ear.deafen();
    const context = new AudioContext({ sampleRate: SAMPLE_RATE_HZ });
    this.#playing = context;
    this.#tell();
    try {
      await played(context, this.#said);
    } finally {
      this.#playing = undefined;
      hear();
      await context.close().catch(() => undefined);
      this.#tell();
    }
  }

  #keep(blocks: readonly Float32Array[], ended: boolean): void {
    const kept = this.#speaking.reduce((sum, block) => sum + block.length, 0);
    if (kept < LONGEST_KEPT_SAMPLES) this.#speaking.push(...blocks.map((block) => block.slice()));
    if (!ended) return;
    this.#said = this.#speaking;
    this.#last = { loudestDb: loudestDb(this.#said), ambientDb: this.#options.ear.shop?.ambientDb ?? null };
    this.#speaking = [];
    this.#tell();
  }

  #recognised(said: string, meant: string | undefined): void {
    const bench = this.#options.bench();
    const { addressWord } = bench.state.settings;
    const words = said.split(' ').filter((word) => word !== UNKNOWN_WORD);
    if (words[0] === addressWord) this.#calls += 1;
    const would = wouldDo(bench, parseRequest(meant ?? words.join(' '), bench), this.#options.now());
    const addressed = meant !== undefined;
    this.#heard = [{
      words: said.replaceAll(UNKNOWN_WORD, '…'), addressed,
      would: meant === '' ? 'my word: I would listen for what follows' : addressed ? would : `“${addressWord}” did not come first, so nothing; else: ${would}`,
    }, ...this.#heard].slice(0, MOST_SHOWN);
    this.#tell();
  }

  #tell(): void {
    const facts = this.#sound.facts;
    this.#options.changed({
      peakDb: facts?.peakDb ?? -90, calls: this.#calls, heard: this.#heard, faults: soundFaults(facts, this.#last),
      playableSeconds: this.#said.reduce((sum, block) => sum + block.length, 0) / SAMPLE_RATE_HZ, playing: this.#playing !== undefined,
    });
  }
}

function played(context: AudioContext, blocks: readonly Float32Array[]): Promise<void> {
  const length = blocks.reduce((sum, block) => sum + block.length, 0);
  const peak = blocks.reduce((most, block) => block.reduce((loudest, sample) => Math.max(loudest, Math.abs(sample)), most), 0);
  const buffer = new AudioBuffer({ length, numberOfChannels: 1, sampleRate: SAMPLE_RATE_HZ });
  let at = 0;
  for (const block of blocks) {
    buffer.getChannelData(0).set(block, at);
    at += block.length;
  }
  const source = new AudioBufferSourceNode(context, { buffer });
  const gain = new GainNode(context, { gain: Math.min(MOST_GAIN, PLAYED_PEAK / Math.max(peak, 1e-4)) });
  source.connect(gain).connect(context.destination);
  source.start();
  return new Promise((settle) => {
    source.onended = () => settle();
    // A context that is closed meanwhile ends nothing.
    setTimeout(settle, (length / SAMPLE_RATE_HZ) * 1000 + 2_000);
  });
}
