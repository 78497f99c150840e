/// <reference lib="webworker" />
import { failure, success, type Result } from '../../core/result.ts';
import { DEFAULT_VOICE, Flite } from './flite.ts';
import { shapeSpeech } from './loudness.ts';
import type { VoiceAnswer, VoiceRequest } from './messages.ts';

/** The voice, off the page: compiles flite once, then turns phrases into samples that are ready to be played. */
declare const self: DedicatedWorkerGlobalScope;

let voice: Promise<Result<Flite, string>> = Promise.resolve(failure('the voice was not loaded yet'));

self.addEventListener('message', (event: MessageEvent<VoiceRequest>) => { void answer(event.data); });

async function answer(request: VoiceRequest): Promise<void> {
  if (request.kind === 'load') {
    voice = load(request.wasmUrl);
    const loaded = await voice;
    send(loaded.ok ? { kind: 'loaded' } : { kind: 'not loaded', fault: loaded.fault });
    return;
  }
  const loaded = await voice;
  const { number } = request;
  const spoken = loaded.ok ? loaded.value.speak(request.phrase) : loaded;
  if (!spoken.ok) {
    send({ kind: 'not spoken', number, fault: spoken.fault });
    return;
  }
  const sound = shapeSpeech(spoken.value);
  send({ kind: 'spoken', number, sound }, [sound.samples.buffer]);
  if (loaded.ok) loaded.value.makeReady();
}

async function load(wasmUrl: string): Promise<Result<Flite, string>> {
  try {
    const response = await fetch(wasmUrl);
    if (!response.ok) return failure(`${wasmUrl}: the server answered ${response.status}`);
    const flite = new Flite(await WebAssembly.compile(await response.arrayBuffer()));
    // A word, unheard: what is used for the first time is compiled now, and not while the maker waits.
    const tried = flite.speak({ text: 'one', voice: DEFAULT_VOICE, stretch: 1 });
    flite.makeReady();
    return tried.ok ? success(flite) : tried;
  } catch (error) {
    return failure(`${wasmUrl}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function send(message: VoiceAnswer, transfer: Transferable[] = []): void {
  self.postMessage(message, transfer);
}
