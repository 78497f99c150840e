import { wordsIn } from '../../core/talk/strict/expression.ts';
import type { Expression } from '../../core/talk/strict/expression.ts';
import { Attention } from './attention.ts';
import { Deafness } from './deafness.ts';
import type { Release } from './deafness.ts';
import type { Ear, EarDiagnosis, EarEvents, EarOptions, EarTap } from './earPort.ts';
import { Gain } from './gain.ts';
import { Gate } from './gate.ts';
import { asMeant, makeGrammar, wordsToAsk } from './grammar.ts';
import type { Grammar } from './grammar.ts';
import { LevelMeter } from './level.ts';
import { Microphone } from './microphone.ts';
import type { MicrophoneChoice, MicrophoneEvents, SoundSource } from './microphone.ts';
import { currentModel } from './models.ts';
import { CARE_TIMES, HEAP_GROWTH_BYTES, RecogniserCare } from './recogniserCare.ts';
import type { CareAddresses } from './recogniserCare.ts';
import { ShopSoundMeter } from './shopSound.ts';
import type { ShopSound } from './shopSound.ts';
import { OwnVoice } from './ownVoice.ts';
import { SoundFaultWatch } from './soundFault.ts';
import { StandsOut } from './standsOut.ts';
import { Steady } from './steady.ts';
import { earState } from './state.ts';
import type { EarFacts, EarState } from './state.ts';
import { trustSettingsAt, trustedWords } from './trust.ts';
import type { DependsOn } from './trust.ts';

const CAPTURE_URL = '/ear/capture-worklet.js';
const ADDRESSES: CareAddresses = { workerUrl: '/ear/recogniser-worker.js', engineUrl: '/ear/vosk.wasm', dictionaryUrl: '/ear/dictionary.txt.gz', model: currentModel };

/** Longest a new grammar waits for someone to finish speaking. */
const SWAP_WAITS_MS = 3_000;

export function createEar(options: EarOptions): Ear {
  return new BenchEar(options);
}

function fromMicrophone(events: MicrophoneEvents): SoundSource {
  return new Microphone(CAPTURE_URL, events);
}

/** Joins microphone, gate, recogniser and attention; each of them is a file of its own. */
class BenchEar implements Ear {
  readonly #events: EarEvents;
  readonly #dependsOn: DependsOn | undefined;
  readonly #gate = new Gate();
  readonly #gain = new Gain();
  readonly #meter = new LevelMeter();
  readonly #shop = new ShopSoundMeter();
  readonly #attention = new Attention('bench');
  readonly #deafness = new Deafness((deaf) => this.#deafChanged(deaf));
  readonly #care: RecogniserCare;
  readonly #microphone: SoundSource;
  #facts: EarFacts = { on: false, engine: 'starting', engineReason: '', microphone: 'starting', deaf: false, attending: false, addressWord: 'bench' };
  #state: EarState = earState(this.#facts);
  #meant: Grammar['meant'] = new Map();
  #attentionEnds: ReturnType<typeof setTimeout> | undefined;
  #whenQuiet: (() => void)[] = [];
  #tap: EarTap | undefined;
  #label: string | undefined;
  readonly #steady = new Steady();
  readonly #faults = new SoundFaultWatch();
  readonly #ownVoice = new OwnVoice();
  readonly #standsOut = new StandsOut();
  /** Until the engine has forgotten what was said before it went deaf, what it tells is of that. */
  #forgetting = 0;
  #wokeAt = -Infinity;

  constructor({ events, addresses = ADDRESSES, source = fromMicrophone, careTimes = CARE_TIMES, heapGrowthBytes = HEAP_GROWTH_BYTES, dependsOn }: EarOptions) {
    this.#events = events;
    this.#dependsOn = dependsOn;
    this.#care = new RecogniserCare(addresses, {
      partial: (words) => { if (this.#forgetting === 0) this.#notice(this.#attention.guess(words, performance.now())); },
      words: (words, sureness) => { if (this.#forgetting === 0) this.#take(asMeant(words, this.#meant), sureness); },
      loaded: (model) => this.#events.modelLoaded?.(model),
      refused: (url, reason) => this.#events.modelRefused?.(url, reason),
      changed: (engine, engineReason) => this.#learn({ engine, engineReason }),
      grammarSet: (grammar, guessedWords) => this.#useGrammar(grammar, guessedWords),
    }, careTimes, heapGrowthBytes);
    this.#microphone = source({
      block: (samples, ageMs = 0) => this.#hear(samples, performance.now() - ageMs),
      began: () => this.#learn({ microphone: 'hearing', sound: undefined }),
      lost: (microphone) => this.#lostMicrophone(microphone),
    });
  }

  get state(): EarState {
    return this.#state;
  }

  get shop(): ShopSound | undefined {
    return this.#shop.at(performance.now());
  }

  async start(): Promise<void> {
    this.#learn({ on: true });
    const engine = this.#care.ready ? Promise.resolve() : this.#care.start();
    await Promise.all([engine, this.#microphone.start(this.#label)]);
  }

  stop(): void {
    this.#microphone.stop();
    this.#care.stop();
    this.#shutGate();
    this.#attention.leave();
    this.#quietNow();
    this.#events.level(null);
    this.#learn({ on: false, engine: 'starting', microphone: 'starting', attending: false, sound: undefined });
  }

  async setGrammar(phrases: readonly string[], addressWord: string, sentences?: Expression): Promise<{ applied: boolean; unknownWords: readonly string[] }> {
    await this.#quiet();
    this.#attention.addressWord = addressWord;
    this.#learn({ addressWord });
    // The sentences have every word of the phrases.
    const words = sentences === undefined ? wordsToAsk(phrases, addressWord) : [...new Set([addressWord, ...wordsIn(sentences)])];
    const strict = sentences === undefined ? undefined : { sentences, addressWord };
    const grammar = await this.#care.setGrammar(words, (unknown) => makeGrammar(phrases, addressWord, unknown), strict);
    return { applied: grammar !== undefined, unknownWords: grammar?.unheard ?? [] };
  }

  listenNow(): void {
    if (!this.#facts.on) return;
    if (!this.#care.ready && this.#facts.engine !== 'starting') void this.#care.start();
    this.#attention.listen(performance.now());
    this.#attentionChanged();
  }

  openAnswerWindow(ms: number): void {
    this.#attention.awaitAnswer(ms, performance.now());
    this.#attentionChanged();
  }

  closeWindow(): void {
    this.#attention.leave();
    this.#attentionChanged();
  }

  deafen(): Release {
    return this.#deafness.deafen();
  }

  tap(tap: EarTap | undefined): void {
    this.#tap = tap;
  }

  async changeModel(): Promise<void> {
    if (this.#facts.on) await this.#care.start();
  }

  microphones(): Promise<readonly MicrophoneChoice[]> {
    return this.#microphone.choices();
  }

  chooseMicrophone(label: string): Promise<void> {
    this.#label = label === '' ? undefined : label;
    return this.#microphone.choose(this.#label);
  }

  async diagnosis(): Promise<EarDiagnosis> {
    const engine = await this.#care.health();
    return { processing: this.#microphone.settings, restarts: this.#care.restarts, floorDb: this.#gate.floorDb, engine };
  }

  #useGrammar({ meant, unheard }: Grammar, guessedWords: readonly string[]): void {
    this.#meant = meant;
    this.#events.unknownWords(unheard);
    this.#events.guessedWords?.(guessedWords);
  }

  /** `wholeAt` is when the microphone had all of it: what it heard while the mouth spoke stays unheard, however late a busy page gets it. */
  #hear(samples: Float32Array<ArrayBuffer>, wholeAt: number): void {
    this.#tap?.sound(samples);
    this.#watchFaults(samples);
    this.#steady.take(samples);
    this.#events.level(this.#meter.take(samples));
    if (this.#deafness.deaf || wholeAt < this.#wokeAt) {
      this.#ownVoice.take(samples);
      return;
    }
    this.#shop.take(samples, wholeAt);
    const { blocks, ended } = this.#gate.take(samples);
    if (blocks.length === 0) return;
    this.#tap?.passed(blocks, ended);
    for (const block of blocks) this.#standsOut.take(block);
    for (const block of this.#gain.apply(blocks, this.#gate.floorDb)) this.#care.hear(block);
    if (ended) void this.#utteranceEnded();
  }

  #watchFaults(samples: Float32Array): void {
    const sound = this.#faults.take(samples);
    if (sound === this.#facts.sound) return;
    this.#learn({ sound });
    if (sound === 'too loud') this.#events.distorted?.();
  }

  #shutGate(): void {
    this.#gate.shut();
    this.#gain.reset();
    this.#standsOut.reset();
  }

  async #utteranceEnded(): Promise<void> {
    this.#gain.reset();
    await this.#care.finish();
    if (!this.#gate.open) this.#standsOut.reset();
    this.#attention.fellQuiet();
    this.#attentionChanged();
    this.#quietNow();
    if (!this.#gate.open && !this.#attention.attending(performance.now())) await this.#care.renewIfGrown();
  }

  #deafChanged(deaf: boolean): void {
    const now = performance.now();
    if (deaf) {
      this.#attention.deafened(now);
      this.#shutGate();
      this.#forget();
      this.#quietNow();
    } else {
      this.#attention.woke(now);
      this.#wokeAt = now;
      const db = this.#ownVoice.loudness(this.#shop.at(now)?.ambientDb);
      if (db !== undefined) this.#events.ownVoice?.(db);
    }
    this.#facts = { ...this.#facts, deaf };
    this.#attentionChanged();
  }

  #take(heard: string, sureness: readonly number[]): void {
    const { words, doubtful } = trustedWords(heard, sureness, this.#facts.addressWord, this.#dependsOn, trustSettingsAt(this.#standsOut.db));
    const noticed = this.#attention.words(words, performance.now());
    if (heard !== '') this.#tap?.recognised(heard, noticed?.kind === 'heard' ? noticed.words : noticed && '');
    this.#notice(noticed, doubtful);
  }

  #notice(noticed: ReturnType<Attention['words']>, doubtful: readonly string[] = []): void {
    this.#attentionChanged();
    if (noticed?.kind === 'address') this.#events.address(noticed.settled);
    if (noticed?.kind === 'heard') this.#events.heard(noticed.words, doubtful);
  }

  /** Shows whether it attends, and looks again when the window ends. */
  #attentionChanged(): void {
    const now = performance.now();
    clearTimeout(this.#attentionEnds);
    const until = this.#attention.until;
    if (until !== undefined && until > now) this.#attentionEnds = setTimeout(() => this.#attentionChanged(), until - now + 1);
    this.#learn({ attending: this.#attention.attending(now) });
  }

  #lostMicrophone(microphone: EarFacts['microphone']): void {
    this.#shutGate();
    this.#forget();
    this.#meter.reset();
    this.#shop.reset();
    this.#steady.reset();
    this.#faults.reset();
    this.#quietNow();
    this.#events.level(null);
    this.#learn({ microphone, sound: undefined });
  }

  #forget(): void {
    this.#forgetting += 1;
    void this.#care.forget().finally(() => { this.#forgetting -= 1; });
  }

  #learn(news: Partial<EarFacts>): void {
    this.#facts = { ...this.#facts, ...news };
    const state = earState(this.#facts);
    if (state.name === this.#state.name && state.sentence === this.#state.sentence) return;
    this.#state = state;
    this.#events.state(state);
  }

  /** Settles when nobody is in the middle of a sentence, for a new grammar forgets what was said so far. */
  #quiet(): Promise<void> {
    if (!this.#gate.open || this.#deafness.deaf) return Promise.resolve();
    return new Promise((settle) => {
      this.#whenQuiet.push(settle);
      setTimeout(settle, SWAP_WAITS_MS);
    });
  }

  #quietNow(): void {
    for (const settle of this.#whenQuiet.splice(0)) settle();
  }
}
