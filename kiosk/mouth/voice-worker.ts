/// <reference lib="webworker" />
import { failure, success, type Result } from '../../core/result.ts';
import { synthesise } from './flite.ts';
import { shapeSpeech } from './loudness.ts';
import type { VoiceAnswer, VoiceRequest } from './messages.ts';

/** The voice, off the page: compiles flite once, then turns phrases into samples that are ready to be played. */
declare const self: DedicatedWorkerGlobalScope;

let voice: Promise<Result<WebAssembly.Module, string>> = Promise.resolve(failure('the voice was not loaded yet'));

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
  const spoken = loaded.ok ? synthesise(loaded.value, request.phrase) : loaded;
  if (!spoken.ok) {
    send({ kind: 'not spoken', number, fault: spoken.fault });
    return;
  }
  const sound = shapeSpeech(spoken.value);
  send({ kind: 'spoken', number, sound }, [sound.samples.buffer]);
}

async function load(wasmUrl: string): Promise<Result<WebAssembly.Module, string>> {
  try {
    const response = await fetch(wasmUrl);
    if (!response.ok) return failure(`${wasmUrl}: the server answered ${response.status}`);
    return success(await WebAssembly.compile(await response.arrayBuffer()));
  } catch (error) {
    return failure(`${wasmUrl}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function send(message: VoiceAnswer, transfer: Transferable[] = []): void {
  self.postMessage(message, transfer);
}
