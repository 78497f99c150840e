import { failure, success, type Result } from '../../core/result.ts';
import type { Phrase } from './flite.ts';
import type { VoiceAnswer, VoiceRequest } from './messages.ts';
import type { Sound } from '../../sounds/wav.ts';

export type VoiceState = 'starting' | 'ready' | 'broken';

/** The part of a Worker that the voice needs. */
export type VoiceWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

export interface VoiceOptions {
  readonly startWorker: () => VoiceWorker;
  readonly wasmUrl: string;
  readonly changed: (state: VoiceState, fault: string) => void;
  readonly times?: VoiceTimes;
}

export interface VoiceTimes {
  /** From the start until the voice must have been read and compiled. */
  readonly loadMs: number;
  /** Until a phrase must have been made. */
  readonly phraseMs: number;
  /** How long a broken voice is let be before the next phrase tries it again. */
  readonly restMs: number;
}

/** A slow board reads and compiles 21 MB in some seconds, and makes a phrase in well under one. */
export const VOICE_TIMES: VoiceTimes = { loadMs: 30_000, phraseMs: 8_000, restMs: 20_000 };

export interface Voice {
  /** Reads and compiles the voice, if that is not done; settles when it is done or has failed. */
  load(): Promise<void>;
  /** Makes one phrase. Always settles. Phrases are made one after the other. */
  speak(phrase: Phrase): Promise<Result<Sound, string>>;
  /** Forgets the rest after a fault, so that the next phrase tries at once. */
  retry(): void;
  close(): void;
}

interface Running {
  readonly worker: VoiceWorker;
  readonly loaded: Promise<Result<true, string>>;
  readonly pending: Map<number, (spoken: Result<Sound, string>) => void>;
}

/**
 * The voice's worker, looked after: every request settles by a deadline; a worker that broke or hung is replaced and the phrase tried once more; a
 * voice that cannot be loaded, or breaks twice on one phrase, is let rest and then tried again.
 */
export function createVoice(options: VoiceOptions): Voice {
  const { loadMs, phraseMs, restMs } = options.times ?? VOICE_TIMES;
  let running: Running | undefined;
  let number = 0;
  let restUntil = 0;
  let fault = '';
  let turn: Promise<unknown> = Promise.resolve();

  function start(): Running {
    const worker = options.startWorker();
    const pending: Running['pending'] = new Map();
    options.changed('starting', '');
    const answers = (settleLoad: (loaded: Result<true, string>) => void) => {
      worker.addEventListener('message', (event) => { read((event as MessageEvent<VoiceAnswer>).data, pending, settleLoad); });
      worker.addEventListener('error', (event) => {
        const said = failure(`the voice's worker failed: ${(event).message || 'its script did not load'}`);
        settleLoad(said);
        for (const settle of pending.values()) settle(said);
      });
    };
    const loaded = settled(answers, loadMs, 'the voice was not loaded in time');
    void loaded.then((result) => { if (result.ok) options.changed('ready', ''); });
    post(worker, { kind: 'load', wasmUrl: options.wasmUrl });
    return { worker, loaded, pending };
  }

  function ensureRunning(): Result<Running, string> {
    try {
      running ??= start();
      return success(running);
    } catch (error) {
      return failure(`the voice's worker was not started: ${error instanceof Error ? error.message : String(error)}`);
    }
  }

  function stop(): void {
    running?.worker.terminate();
    for (const settle of running?.pending.values() ?? []) settle(failure('the voice was stopped'));
    running = undefined;
  }

  function broken(said: string): Result<never, string> {
    stop();
    fault = said;
    restUntil = performance.now() + restMs;
    options.changed('broken', said);
    return failure(said);
  }

  async function attempt(phrase: Phrase): Promise<Result<Sound, string> & { readonly loaded: boolean }> {
    const begun = ensureRunning();
    if (!begun.ok) return { ...begun, loaded: false };
    const { worker, loaded, pending } = begun.value;
    const ready = await loaded;
    if (!ready.ok) return { ...ready, loaded: false };
    const own = ++number;
    const spoken = await settled<Sound>((settle) => {
      pending.set(own, settle);
      post(worker, { kind: 'speak', number: own, phrase });
    }, phraseMs, 'the voice did not answer in time');
    pending.delete(own);
    return { ...spoken, loaded: true };
  }

  async function speakNow(phrase: Phrase): Promise<Result<Sound, string>> {
    if (performance.now() < restUntil) return failure(fault);
    const first = await attempt(phrase);
    if (first.ok) return first;
    if (!first.loaded) return broken(first.fault);
    stop();
    const second = await attempt(phrase);
    return second.ok ? second : broken(second.fault);
  }

  async function loadNow(): Promise<void> {
    if (performance.now() < restUntil) return;
    const begun = ensureRunning();
    const ready = begun.ok ? await begun.value.loaded : begun;
    if (!ready.ok) broken(ready.fault);
  }

  function inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
    const done = turn.then(work);
    turn = done;
    return done;
  }

  return {
    load: () => inTurn(loadNow),
    speak: (phrase) => inTurn(() => speakNow(phrase)),
    retry() { restUntil = 0; },
    close: stop,
  };
}

function post(worker: VoiceWorker, request: VoiceRequest): void {
  worker.postMessage(request);
}

function read(answer: VoiceAnswer, pending: Running['pending'], settleLoad: (loaded: Result<true, string>) => void): void {
  switch (answer.kind) {
    case 'loaded': { settleLoad(success(true)); return; }
    case 'not loaded': { settleLoad(failure(answer.fault)); return; }
    case 'spoken': return pending.get(answer.number)?.(success(answer.sound));
    case 'not spoken': return pending.get(answer.number)?.(failure(answer.fault));
  }
}

/** A promise that is settled by what `begin` is given, or by the deadline. */
function settled<Value>(begin: (settle: (result: Result<Value, string>) => void) => void, deadlineMs: number, late: string): Promise<Result<Value, string>> {
  return new Promise((resolve) => {
    const deadline = setTimeout(() => { resolve(failure(`${late} (${deadlineMs} ms)`)); }, deadlineMs);
    begin((result) => {
      clearTimeout(deadline);
      resolve(result);
    });
  });
}
