import { startWorker } from '../workers.ts';
import type { WorkerAddress } from '../workers.ts';
import type { Grammar } from './grammar.ts';
import type { Ask, FromWorker, Health, Learned, LoadFault, NumberedAsk, StrictGrammar, ToWorker } from './messages.ts';

export interface RecogniserAddresses {
  readonly workerUrl: WorkerAddress;
  readonly engineUrl: string;
  readonly modelUrl: string;
  /** How words are said, for models that hear whatever words they are given. */
  readonly dictionaryUrl: string;
}

export interface RecogniserEvents {
  partial(words: string): void;
  /** @param sureness of each of the words, 0 to 1 */
  words(words: string, sureness: readonly number[]): void;
  /** The engine failed while listening, or the worker died; nothing more will be heard from it. */
  crashed(reason: string): void;
}

/** The recogniser did not do what it was asked; `fault` says which way, when it is known. */
export class RecogniserError extends Error {
  readonly fault: LoadFault | 'no answer' | 'refused';

  constructor(fault: RecogniserError['fault'], message: string) {
    super(message);
    this.fault = fault;
  }
}

interface Waiting {
  readonly settle: (answer: Extract<FromWorker, { done: true }>) => void;
  readonly fail: (error: RecogniserError) => void;
  readonly timer: ReturnType<typeof setTimeout>;
}

/** How long it may take. */
export interface Patience {
  /** A model that has not loaded by then never will. */
  readonly loadWithinMs: number;
  /** Longest wait for an answer once the model is loaded; decoding lags behind by less than this even on a slow board. */
  readonly answerWithinMs: number;
}

/** The first grammar of sentences takes a second to make on a desk, with its model, and several on a slow board that has other things to do. */
const GRAMMAR_WITHIN_MS = 30_000;

/**
 * The page's end of one recogniser worker. Everything it is asked settles: with the answer, with the worker's reason, or with 'no answer' at the
 * deadline. It lives once: after `end()` or a failed load, make another.
 */
export class Recogniser {
  readonly #worker: Worker;
  readonly #events: RecogniserEvents;
  readonly #answerWithinMs: number;
  readonly #waiting = new Map<number, Waiting>();
  #lastNumber = 0;
  #grammarsInMaking = 0;
  #followsSentences = false;
  #ended = false;

  private constructor(workerUrl: WorkerAddress, events: RecogniserEvents, answerWithinMs: number) {
    this.#events = events;
    this.#answerWithinMs = answerWithinMs;
    this.#worker = startWorker(workerUrl, 'recogniser');
    this.#worker.addEventListener('message', (event: MessageEvent<FromWorker>) => this.#take(event.data));
    // A script that cannot be fetched or parsed, or is refused by the policy, says so here and nowhere else.
    this.#worker.addEventListener('error', (event) => this.#die(event.message || 'the recogniser\'s script could not be started'));
  }

  /**
   * Starts a worker and loads engine and model.
   * @throws {RecogniserError} with the fault, within `loadWithinMs` at the latest; the worker is gone by then
   */
  static async load(addresses: RecogniserAddresses, events: RecogniserEvents, { loadWithinMs, answerWithinMs }: Patience): Promise<Recogniser> {
    const recogniser = new Recogniser(addresses.workerUrl, events, answerWithinMs);
    const absolute = (url: string) => new URL(url, location.href).href;
    try {
      const { loaded } = await recogniser.#ask({ ask: 'load', engineUrl: absolute(addresses.engineUrl), modelUrl: absolute(addresses.modelUrl), dictionaryUrl: absolute(addresses.dictionaryUrl) }, loadWithinMs);
      recogniser.#followsSentences = loaded?.followsSentences === true;
      return recogniser;
    } catch (error) {
      recogniser.end();
      throw error;
    }
  }

  /** Sends 16 kHz sound; the block is handed over and must not be used again. */
  hear(sound: Float32Array<ArrayBuffer>): void {
    if (!this.#ended) this.#post({ sound }, [sound.buffer]);
  }

  /** @throws {RecogniserError} and keeps the old grammar when the engine refuses the new one */
  async setGrammar(grammar: Grammar, strict?: StrictGrammar): Promise<void> {
    const phrases = strict !== undefined && this.#followsSentences ? [] : grammar.phrases;
    this.#grammarsInMaking += 1;
    try {
      await this.#ask({ ask: 'grammar', phrases, ...(strict === undefined ? {} : { strict }) });
    } finally {
      this.#grammarsInMaking -= 1;
    }
  }

  /** Ends the utterance; its words, if any, have come as an event when this settles. */
  async finish(): Promise<void> {
    await this.#ask({ ask: 'finish' });
  }

  /** Drops what was heard since the last words. */
  async forget(): Promise<void> {
    await this.#ask({ ask: 'forget' });
  }

  /** Makes the words hearable in the next grammar, as far as the model lets us. */
  async learn(words: readonly string[]): Promise<Learned> {
    return (await this.#ask({ ask: 'learn words', words })).learned ?? { unknown: words, guessed: [] };
  }

  async health(): Promise<Health> {
    const { health } = await this.#ask({ ask: 'health' });
    if (health === undefined) throw new RecogniserError('refused', 'the recogniser answered without its health');
    return health;
  }

  /** Stops the worker at once, whatever it is doing, and frees all its memory. */
  end(): void {
    this.#ended = true;
    this.#worker.terminate();
    this.#failAll(new RecogniserError('refused', 'the recogniser was stopped'));
  }

  /** While a grammar is made, all else waits behind it. */
  #ask(ask: Ask, withinMs = this.#grammarsInMaking > 0 ? GRAMMAR_WITHIN_MS : this.#answerWithinMs): Promise<Extract<FromWorker, { done: true }>> {
    if (this.#ended) return Promise.reject(new RecogniserError('refused', 'the recogniser was stopped'));
    this.#lastNumber += 1;
    const number = this.#lastNumber;
    return new Promise((settle, fail) => {
      const timer = setTimeout(() => {
        this.#waiting.delete(number);
        fail(new RecogniserError('no answer', `the recogniser did not answer "${ask.ask}" within ${Math.round(withinMs / 1000)} seconds`));
      }, withinMs);
      this.#waiting.set(number, { settle, fail, timer });
      this.#post({ ...ask, number } satisfies NumberedAsk, []);
    });
  }

  #post(message: ToWorker, handedOver: Transferable[]): void {
    this.#worker.postMessage(message, handedOver);
  }

  #take(message: FromWorker): void {
    if (this.#ended) return;
    if ('event' in message) this.#tell(message);
    else this.#settle(message);
  }

  #tell(message: Extract<FromWorker, { event: string }>): void {
    switch (message.event) {
      case 'partial': this.#events.partial(message.words); break;
      case 'words': this.#events.words(message.words, message.sureness); break;
      case 'crashed': this.#die(message.reason); break;
    }
  }

  #settle(message: Extract<FromWorker, { number: number }>): void {
    const waiting = this.#waiting.get(message.number);
    if (waiting === undefined) return;
    this.#waiting.delete(message.number);
    clearTimeout(waiting.timer);
    if ('done' in message) waiting.settle(message);
    else waiting.fail(new RecogniserError(message.fault ?? 'refused', message.failed));
  }

  #die(reason: string): void {
    if (this.#ended) return;
    this.#failAll(new RecogniserError('engine failed', reason));
    this.end();
    this.#events.crashed(reason);
  }

  #failAll(error: RecogniserError): void {
    for (const { fail, timer } of this.#waiting.values()) {
      clearTimeout(timer);
      fail(error);
    }
    this.#waiting.clear();
  }
}
