/// <reference lib="webworker" />
/**
 * The recogniser's worker: our own handling around the speech engine's compiled code. It is served as a file with a policy of its own,
 * because the engine builds functions from strings; the page never may.
 */
import startVosk from 'vosk-engine';
import { describe, fetchModel, LoadError, startEngine } from './engine.ts';
import type { Engine, EngineRecognizer, Printed, StartEngine } from './engine.ts';
import { SAMPLE_RATE_HZ } from './messages.ts';
import type { FromWorker, NumberedAsk, StrictGrammar, ToWorker } from './messages.ts';
import { openVocabulary } from './vocabulary.ts';
import type { Vocabulary } from './vocabulary.ts';
import { fetchDictionary } from './words/fetch.ts';

const port = self as unknown as DedicatedWorkerGlobalScope;

interface Loaded { readonly engine: Engine; readonly printed: Printed; readonly vocabulary: Vocabulary }
interface Listening { readonly recogniser: EngineRecognizer; heardSomething: boolean }

let loaded: Loaded | undefined;
let listening: Listening | undefined;
let recognisers = 0;
let lastPartial = '';
let buffer: { address: number; samples: number } | undefined;

port.addEventListener('message', (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if ('sound' in message) hear(message.sound);
  else void answer(message);
});

async function answer(ask: NumberedAsk): Promise<void> {
  try {
    post({ number: ask.number, done: true, ...(await fulfil(ask)) });
  } catch (error) {
    const fault = error instanceof LoadError ? { fault: error.fault } : {};
    post({ number: ask.number, failed: describe(error, error instanceof Error ? '' : loaded?.printed.lastLine ?? ''), ...fault });
  }
}

async function fulfil(ask: NumberedAsk): Promise<Partial<Extract<FromWorker, { done: true }>>> {
  switch (ask.ask) {
    case 'load': {
      loaded = await load(ask);
      return { loaded: { followsSentences: loaded.vocabulary.follow !== undefined } };
    }
    case 'grammar': return swapGrammar(ask.phrases, ask.strict);
    case 'finish': return finish();
    case 'forget': return forget();
    case 'learn words': return { learned: ready().vocabulary.learn(ask.words) };
    case 'health': return { health: { heapBytes: loaded?.engine.HEAPU8.byteLength ?? 0, recognisers } };
  }
}

async function load({ engineUrl, modelUrl, dictionaryUrl }: Extract<NumberedAsk, { ask: 'load' }>): Promise<Loaded> {
  const [{ engine, printed }, files, dictionary] = await Promise.all([
    startEngine(startVosk as StartEngine, engineUrl), fetchModel(modelUrl), fetchDictionary(dictionaryUrl).catch((error: unknown) => describe(error, '')),
  ]);
  if (typeof dictionary !== 'string') return { engine, printed, vocabulary: openVocabulary(engine, files, dictionary, printed) };
  // A model that brings its own words can do without the dictionary.
  if (!files.has('graph/words.txt')) throw new LoadError('engine failed', dictionary);
  return { engine, printed, vocabulary: openVocabulary(engine, files, undefined, printed) };
}

function ready(): Loaded {
  if (loaded === undefined) throw new Error('the model is not loaded yet');
  return loaded;
}

function swapGrammar(phrases: readonly string[], strict: StrictGrammar | undefined): object {
  const { vocabulary } = ready();
  const followed = strict !== undefined && vocabulary.follow !== undefined;
  // Sentences are put in the place of those before, which must not be in use then; phrases can be refused, and then the old ones stay.
  if (followed) free();
  if (followed) vocabulary.follow(strict.sentences, strict.addressWord);
  const recogniser = newRecogniser(followed ? [] : [JSON.stringify(phrases)]);
  free();
  listening = { recogniser, heardSomething: false };
  lastPartial = '';
  return {};
}

function newRecogniser(grammar: readonly [string] | readonly []): EngineRecognizer {
  const { engine, vocabulary } = ready();
  const recogniser = new engine.Recognizer(vocabulary.model, SAMPLE_RATE_HZ, ...grammar);
  recognisers += 1;
  recogniser.SetWords(true);
  return recogniser;
}

function free(): void {
  if (listening === undefined) return;
  listening.recogniser.delete();
  listening = undefined;
  recognisers -= 1;
}

function hear(sound: Float32Array): void {
  if (listening === undefined) return;
  try {
    const { engine } = ready();
    const address = bufferFor(engine, sound.length);
    const at = address / Float32Array.BYTES_PER_ELEMENT;
    // The engine reckons with samples as a sound card counts them, -32768 to 32767.
    for (let index = 0; index < sound.length; index += 1) engine.HEAPF32[at + index] = (sound[index] ?? 0) * 32_768;
    listening.heardSomething = true;
    if (listening.recogniser.AcceptWaveform(address, sound.length)) postWords(listening.recogniser.Result());
    else postPartial(listening.recogniser.PartialResult());
  } catch (error) {
    post({ event: 'crashed', reason: describe(error, loaded?.printed.lastLine ?? '') });
  }
}

/** One buffer, kept while blocks keep their length. */
function bufferFor(engine: Engine, samples: number): number {
  if (buffer?.samples !== samples) {
    if (buffer !== undefined) engine._free(buffer.address);
    buffer = { address: engine._malloc(samples * Float32Array.BYTES_PER_ELEMENT), samples };
  }
  return buffer.address;
}

function finish(): object {
  if (listening?.heardSomething === true) {
    listening.heardSomething = false;
    postWords(listening.recogniser.FinalResult());
  }
  return {};
}

function forget(): object {
  if (listening?.heardSomething === true) {
    listening.heardSomething = false;
    listening.recogniser.FinalResult();
  }
  lastPartial = '';
  return {};
}

function postWords(json: string): void {
  lastPartial = '';
  const { text, result = [] } = JSON.parse(json) as { text?: string; result?: readonly { readonly conf: number }[] };
  if (text !== undefined && text !== '') post({ event: 'words', words: text, sureness: result.map(({ conf }) => conf) });
}

function postPartial(json: string): void {
  const { partial } = JSON.parse(json) as { partial?: string };
  if (partial === undefined || partial === '' || partial === lastPartial) return;
  lastPartial = partial;
  post({ event: 'partial', words: partial });
}

function post(message: FromWorker): void {
  port.postMessage(message);
}
