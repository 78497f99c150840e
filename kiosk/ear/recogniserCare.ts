import { Recogniser, RecogniserError } from './recogniser.ts';
import type { Patience, RecogniserAddresses, RecogniserEvents } from './recogniser.ts';
import type { Grammar } from './grammar.ts';
import type { Health, StrictGrammar } from './messages.ts';
import type { EngineFault } from './state.ts';
import { singularsOf } from './words/plural.ts';

export interface CareAddresses extends Omit<RecogniserAddresses, 'modelUrl'> {
  /** Where the model is; asked anew at each start, for another may have been installed. `refused` are those that could not be used here. */
  readonly model: (refused: ReadonlySet<string>) => Promise<string>;
}

export interface ModelInUse {
  readonly url: string;
  /** From asking for it to hearing with it. */
  readonly loadMs: number;
}

export interface CareTimes extends Patience {
  /** Pauses before each new try after a failure; when they are used up it gives up until asked. */
  readonly retryAfterMs: readonly number[];
  /** How often it is asked whether it is well. */
  readonly checkEveryMs: number;
  /** This long without a failure, and the failures before are forgotten. */
  readonly forgiveAfterMs: number;
  /** A model that was not there is looked for again this often, for it may be being installed. */
  readonly lookForModelMs: number;
}

export const CARE_TIMES: CareTimes = {
  loadWithinMs: 60_000, answerWithinMs: 8_000, retryAfterMs: [500, 3_000, 10_000], checkEveryMs: 5_000, forgiveAfterMs: 600_000, lookForModelMs: 30_000,
};

/** The engine grows while it listens and never gives back: past this growth since it was loaded, a fresh one is started when nobody is speaking. */
export const HEAP_GROWTH_BYTES = 150 * 1024 * 1024;

export interface CareEvents extends Omit<RecogniserEvents, 'crashed'> {
  changed(state: 'starting' | 'ready' | EngineFault, reason: string): void;
  /** The grammar is in force from now on; how these of its words are said was guessed. */
  grammarSet(grammar: Grammar, guessedWords: readonly string[]): void;
  loaded?(model: ModelInUse): void;
  /** This model is given up, and another one is tried. */
  refused?(url: string, reason: string): void;
}

/** Makes the grammar once it is known which words the model lacks. */
export type MakeGrammar = (unknownWords: ReadonlySet<string>) => Grammar;

/**
 * Keeps a recogniser alive: loads it, asks it every few seconds whether it is well, starts a fresh one when it is not, and gives up politely
 * after some tries. `start()` begins afresh at any time.
 */
export class RecogniserCare {
  readonly #addresses: CareAddresses;
  readonly #events: CareEvents;
  readonly #times: CareTimes;
  readonly #heapGrowthBytes: number;
  #recogniser: Recogniser | undefined;
  #grammar: { words: readonly string[]; make: MakeGrammar; strict: StrictGrammar | undefined } | undefined;
  #swap: Promise<unknown> = Promise.resolve();
  #failures = 0;
  #lastFailureAt = 0;
  #heap = 0;
  /** As it was soon after loading; undefined until it was asked. */
  #heapAtFirst: number | undefined;
  #round = 0;
  /** The model that is loaded or was tried last. */
  #modelUrl = '';
  readonly #refused = new Set<string>();
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** How often a fresh engine had to be started since the page was loaded, for the diagnosis. */
  restarts = 0;

  constructor(addresses: CareAddresses, events: CareEvents, times: CareTimes = CARE_TIMES, heapGrowthBytes = HEAP_GROWTH_BYTES) {
    this.#addresses = addresses;
    this.#events = events;
    this.#times = times;
    this.#heapGrowthBytes = heapGrowthBytes;
  }

  get ready(): boolean {
    return this.#recogniser !== undefined;
  }

  /** Starts, or starts afresh after it gave up; a model that was refused is tried again. Settles when it is ready or a fault was told. */
  async start(): Promise<void> {
    this.#failures = 0;
    this.#refused.clear();
    await this.#load();
  }

  stop(): void {
    this.#round += 1;
    clearTimeout(this.#timer);
    this.#recogniser?.end();
    this.#recogniser = undefined;
  }

  hear(sound: Float32Array<ArrayBuffer>): void {
    this.#recogniser?.hear(sound);
  }

  /** Ends the utterance; its words, if any, have come as an event when this settles. */
  finish(): Promise<void> {
    return this.#askInPassing((recogniser) => recogniser.finish());
  }

  /** Drops what was heard; what comes before this settles is of what was dropped. */
  forget(): Promise<void> {
    return this.#askInPassing((recogniser) => recogniser.forget());
  }

  /**
   * Sets the grammar now, or as soon as there is an engine; it is set again after each restart.
   * @param words those that the model must be asked about
   * @param strict what is listened for instead of phrases, where the model lets us
   * @returns the grammar as it was made, or undefined while there is no engine to ask
   */
  setGrammar(words: readonly string[], make: MakeGrammar, strict?: StrictGrammar): Promise<Grammar | undefined> {
    this.#grammar = { words, make, strict };
    const swap = this.#swap.then(() => this.#applyGrammar());
    this.#swap = swap;
    return swap;
  }

  /** How the engine is, or undefined when there is none that answers. */
  async health(): Promise<Health | undefined> {
    return this.#recogniser?.health().catch(() => undefined);
  }

  /** Starts a fresh engine if the present one has grown too large. Call it when nobody is speaking. */
  async renewIfGrown(): Promise<void> {
    if (this.#heapAtFirst === undefined || this.#heap - this.#heapAtFirst < this.#heapGrowthBytes) return;
    this.restarts += 1;
    await this.#load();
  }

  /** Quietly: the fault that is shown stays until there is better news. */
  async #load(quietly = false): Promise<void> {
    this.stop();
    const round = this.#round;
    if (!quietly) this.#events.changed('starting', '');
    try {
      const { model, ...addresses } = this.#addresses;
      const began = performance.now();
      const modelUrl = await model(this.#refused);
      this.#modelUrl = modelUrl;
      const recogniser = await Recogniser.load({ ...addresses, modelUrl }, {
        partial: (words) => this.#events.partial(words),
        words: (words, sureness) => this.#events.words(words, sureness),
        crashed: (reason) => { if (round === this.#round) this.#failed(new RecogniserError('engine failed', reason)); },
      }, this.#times);
      if (round !== this.#round) {
        recogniser.end();
        return;
      }
      this.#recogniser = recogniser;
      this.#heapAtFirst = undefined;
      await this.#applyGrammar();
      // An engine that failed over its first grammar was given up meanwhile.
      if (round !== this.#round) return;
      this.#check(round);
      this.#events.loaded?.({ url: modelUrl, loadMs: performance.now() - began });
      this.#events.changed('ready', '');
    } catch (error) {
      if (round === this.#round) this.#failed(error);
    }
  }

  async #applyGrammar(): Promise<Grammar | undefined> {
    const recogniser = this.#recogniser;
    const wanted = this.#grammar;
    if (recogniser === undefined || wanted === undefined) return undefined;
    try {
      const { unknown, guessed } = await recogniser.learn(wanted.words);
      const singulars = unknown.length === 0 ? [] : (await recogniser.learn(unknown.flatMap(singularsOf))).unknown;
      const grammar = wanted.make(new Set([...unknown, ...singulars]));
      await recogniser.setGrammar(grammar, wanted.strict);
      this.#events.grammarSet(grammar, guessed);
      return grammar;
    } catch (error) {
      if (recogniser === this.#recogniser) this.#failed(error);
      return undefined;
    }
  }

  /** Asks what needs no answer; a failure is the care's business, not the asker's. */
  async #askInPassing(ask: (recogniser: Recogniser) => Promise<unknown>): Promise<void> {
    const recogniser = this.#recogniser;
    if (recogniser === undefined) return;
    try {
      await ask(recogniser);
    } catch (error) {
      if (recogniser === this.#recogniser) this.#failed(error);
    }
  }

  /** Asks for a sign of life, and again after a while. */
  #check(round: number): void {
    this.#timer = setTimeout(() => {
      if (round !== this.#round) return;
      void this.#askInPassing(async (recogniser) => {
        this.#heap = (await recogniser.health()).heapBytes;
        this.#heapAtFirst ??= this.#heap;
        this.#check(round);
      });
    }, this.#times.checkEveryMs);
  }

  #failed(error: unknown): void {
    const fault = error instanceof RecogniserError ? error.fault : 'engine failed';
    const reason = error instanceof Error ? error.message : String(error);
    this.stop();
    const now = performance.now();
    if (now - this.#lastFailureAt > this.#times.forgiveAfterMs) this.#failures = 0;
    this.#lastFailureAt = now;
    if (fault === 'no model' || fault === 'broken model') {
      void this.#withoutModel(fault, reason);
      return;
    }
    const pause = this.#times.retryAfterMs[this.#failures];
    this.#failures += 1;
    if (pause === undefined) {
      void this.#withoutModel('engine failed', reason);
      return;
    }
    this.#events.changed('starting', reason);
    this.#again(pause);
  }

  /** The model in use is given up: another one takes its place if there is one, else the fault is told. */
  async #withoutModel(fault: EngineFault, reason: string): Promise<void> {
    const round = this.#round;
    const url = this.#modelUrl;
    this.#refused.add(url);
    const other = await this.#addresses.model(this.#refused).catch(() => url);
    if (round !== this.#round) return;
    if (!this.#refused.has(other)) {
      this.#failures = 0;
      this.#events.refused?.(url, reason);
      await this.#load();
      return;
    }
    this.#refused.delete(url);
    this.#events.changed(fault, reason);
    if (fault === 'no model') this.#again(this.#times.lookForModelMs, true);
  }

  #again(afterMs: number, quietly = false): void {
    const round = this.#round;
    this.#timer = setTimeout(() => {
      if (round !== this.#round) return;
      this.restarts += 1;
      void this.#load(quietly);
    }, afterMs);
  }
}
