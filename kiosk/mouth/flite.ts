import { failure, type Result } from '../../core/result.ts';
import { addenda } from './pronounce.ts';
import { createWasi, ProcessExit, type Wasi } from './wasi.ts';
import { readWav, type Sound } from '../../sounds/wav.ts';

/** The voices inside flite.wasm that speak at 16 kHz (it has one more, 'kal', at 8 kHz). */
export type VoiceName = 'kal16' | 'rms' | 'slt' | 'awb';

/**
 * Chosen by how well a recogniser (pocketsphinx with a grammar of sizes, its US model) understood 40 random sizes as the mouth says them, in pink noise.
 * Words wrong in quiet and at 20, 15, 10 and 5 dB of speech over noise, in percent: rms 1.8 1.1 1.1 0.7 20.5; awb 0 1.5 1.5 5.5 11.4; slt 0 2.2
 * 5.9 8.4 26.0; kal16 4.4 2.6 2.9 4.0 3.3. rms is the best over most of that range, and sounds like a person; kal16, a buzz that carries furthest, is
 * ten times quicker and worth trying where it is always loud.
 */
export const DEFAULT_VOICE: VoiceName = 'rms';

export interface Phrase {
  readonly text: string;
  readonly voice: VoiceName;
  /** How much longer than the voice's own pace every sound is held: 1 is its own pace, 2 half as fast. */
  readonly stretch: number;
}

/** Long enough for any sentence of a step; a longer one is a mistake. */
const MOST_CHARACTERS = 600;
const OUTPUT = 'spoken.wav';
const LEXICON = 'words.lex';

/** A program that has not run yet, and the system it will run in. */
interface Fresh {
  readonly wasi: Wasi;
  readonly memory: WebAssembly.Memory;
  readonly start: () => void;
}

/**
 * The voice. Every phrase has an instance of its own, so that a fault leaves nothing behind and the same phrase always gives the same samples. Making an
 * instance takes longer than some phrases: one can be made ahead.
 */
export class Flite {
  readonly #module: WebAssembly.Module;
  #spare: Fresh | undefined;

  constructor(module: WebAssembly.Module) {
    this.#module = module;
  }

  /** Makes the next instance ahead, when there is time. A fault in it is told when it is wanted. */
  makeReady(): void {
    try {
      this.#spare ??= fresh(this.#module);
    } catch {
      this.#spare = undefined;
    }
  }

  /** Speaks one phrase. The fault is what the voice said, for whoever mends it. */
  speak(phrase: Phrase): Result<Sound, string> {
    const text = phrase.text.replace(/[^\x20-\x7e]+/g, ' ').trim();
    if (!/[a-z0-9]/i.test(text)) return failure('nothing to say');
    if (text.length > MOST_CHARACTERS) return failure(`a phrase of ${text.length} characters; at most ${MOST_CHARACTERS} can be said at once`);
    try {
      const program = this.#spare ?? fresh(this.#module);
      this.#spare = undefined;
      return run(program, ['flite', '-voice', phrase.voice, '-add_lex', LEXICON, '--setf', `duration_stretch=${phrase.stretch}`, '-t', text, '-o', OUTPUT]);
    } catch (error) {
      return failure(`the voice broke off: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
}

function fresh(module: WebAssembly.Module): Fresh {
  const wasi = createWasi(new Map([[LEXICON, new TextEncoder().encode(addenda())]]));
  const instance = new WebAssembly.Instance(module, wasi.imports);
  const { memory, _start: start } = instance.exports;
  if (!(memory instanceof WebAssembly.Memory) || typeof start !== 'function') throw new Error('it is not a program that can be run');
  return { wasi, memory, start: start as () => void };
}

function run({ wasi, memory, start }: Fresh, words: readonly string[]): Result<Sound, string> {
  wasi.attach(memory, words);
  try {
    start();
  } catch (error) {
    if (!(error instanceof ProcessExit)) throw error;
    if (error.code !== 0) return failure(`the voice refused (code ${error.code}): ${wasi.said().trim()}`);
  }
  const wav = wasi.file(OUTPUT);
  return wav === undefined ? failure(`the voice made no sound: ${wasi.said().trim()}`) : readWav(wav);
}

/** Speaks one phrase with a voice of its own, for whoever has few to speak. */
export function synthesise(module: WebAssembly.Module, phrase: Phrase): Result<Sound, string> {
  return new Flite(module).speak(phrase);
}
