import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { assertNever } from '../../../core/result.ts';
import { blows, planing } from '../../voice/shopNoise.ts';
import { joined, mixed, quiet, randomNumbers, RATE_HZ } from '../../voice/sound.ts';

/** Voices that the shipped model's recipe keeps out of training (sounds/speech-model/recipe/voices.py). */
export const HELD_OUT_VOICES = ['flite rms', 'espeak-ng en-us+f4', 'espeak-ng en-gb-scotland+m7', 'espeak-ng en-us+klatt3'] as const;
/** The learned voices that it keeps out (recipe/kokoro.py): nearer to people than any other synthesiser. */
export const LEARNED_VOICES = ['learned af_sarah', 'learned am_michael', 'learned bf_emma', 'learned bm_george'] as const;
export type Noise = 'clean' | 'planing' | 'blows' | 'fan' | 'saw';
const PROMPTS = '/usr/share/asterisk/sounds/en_US_f_Allison';
const RECIPE = join(import.meta.dirname, '..', '..', '..', 'sounds', 'speech-model', 'recipe');
const POCKETSPHINX_TEST = '/usr/share/pocketsphinx/test/data';

/** Debian packages whose recordings or programs are missing here, by what they are for. */
export function missingPackages(): readonly string[] {
  const needs = [['flite', '/usr/bin/flite'], ['espeak-ng', '/usr/bin/espeak-ng'], ['sox', '/usr/bin/sox'], ['python3', '/usr/bin/python3'], ['pocketsphinx', '/usr/bin/pocketsphinx_batch'],
    ['pocketsphinx-en-us', '/usr/share/pocketsphinx/model/en-us/en-us/mdef'], ['pocketsphinx-testdata', POCKETSPHINX_TEST],
    ['asterisk-core-sounds-en-g722', `${PROMPTS}/digits/15.g722`], ['libspandsp2', '/usr/share/doc/libspandsp2']] as const;
  return needs.filter(([, path]) => !existsSync(path)).map(([name]) => name);
}

/** Sound as the benchmark keeps it: a folder of raw files, each made once. */
export class SoundFolder {
  readonly folder: string;

  constructor(folder: string) {
    this.folder = folder;
    mkdirSync(folder, { recursive: true });
  }

  /** Words spoken by a synthesiser, at an even loudness, between half a second and a second of quiet. */
  spoken(words: string, voice: string): Float32Array {
    const file = this.#fileOf(words, voice);
    if (!existsSync(`${file}.raw`)) {
      const [engine = '', name = ''] = voice.split(' ');
      if (engine === 'flite') execFileSync('flite', ['-voice', name, '-t', words, '-o', `${file}.wav`]);
      else if (engine === 'espeak-ng') execFileSync('espeak-ng', ['-v', name, '-s', '150', '-w', `${file}.wav`, words]);
      execFileSync('sox', [`${file}.wav`, '-R', '-r', String(RATE_HZ), '-b', '16', '-c', '1', '-t', 'raw', `${file}.raw`, 'norm', '-12']);
    }
    return padded(readRaw(`${file}.raw`));
  }

  /** Says all of these by learned voices, in one go: their network takes seconds to be read. `gathered` is share/kokoro of what the recipe gathers. */
  speakLearned(gathered: string, wanted: readonly { readonly words: string; readonly voice: string }[]): void {
    const rows = wanted.map(({ words, voice }) => [voice.replace('learned ', ''), words, `${this.#fileOf(words, voice)}.wav`]).filter(([, , file = '']) => !existsSync(file));
    if (rows.length === 0) return;
    const list = join(this.folder, `learned-${process.pid}.json`);
    writeFileSync(list, JSON.stringify(rows));
    execFileSync('/usr/bin/python3', [join(RECIPE, 'say.py'), gathered, list], { stdio: 'inherit' });
    rmSync(list);
  }

  #fileOf(words: string, voice: string): string {
    return join(this.folder, `${voice}-${words}`.replace(/[^a-z0-9]+/gi, '_').slice(0, 150));
  }

  /** Prompts of Debian's asterisk-core-sounds-en-g722, one after another, as one recording. */
  prompted(names: readonly string[]): Float32Array {
    const sounds = names.map((name) => {
      const raw = join(this.folder, `prompt_${name.replace(/\//g, '_')}.raw`);
      if (!existsSync(raw)) execFileSync('/usr/bin/python3', [join(import.meta.dirname, 'g722.py'), `${PROMPTS}/${name}.g722`, raw]);
      return withoutSilence(readRaw(raw));
    });
    return padded(joined(...sounds.flatMap((sound) => [sound, quiet(0.05)])));
  }

  /** Keeps a sound under a name, for the page and for pocketsphinx. */
  keep(name: string, sound: Float32Array): string {
    const path = join(this.folder, `${name}.raw`);
    writeFileSync(path, Int16Array.from(sound, (sample) => Math.round(Math.max(-1, Math.min(1, sample)) * 32_767)));
    return path;
  }

  forget(path: string): void {
    rmSync(path);
  }
}

export function promptNames(): readonly string[] {
  return readdirSync(PROMPTS).filter((name) => name.endsWith('.g722')).map((name) => name.slice(0, -5)).sort();
}

export function pocketsphinxRecording(name: string): Float32Array {
  const bytes = readFileSync(join(POCKETSPHINX_TEST, name));
  return padded(toSound(name.endsWith('.wav') ? bytes.subarray(44) : bytes));
}

export function cardSentences(): readonly { readonly name: string; readonly words: string }[] {
  const lines = readFileSync(join(POCKETSPHINX_TEST, 'cards/cards.transcription'), 'utf8').split('\n');
  return lines.flatMap((line) => {
    const [, words = '', name = ''] = /^(?:<s>\s*)?(.*?)(?:\s*<\/s>)?\s*\((\S+)\)$/.exec(line.trim()) ?? [];
    return name === '' ? [] : [{ name: name.replace(/^.*\//, ''), words: words.toLowerCase() }];
  });
}

/** Speech over noise, `db` louder than it on the average over the speech alone. */
export function under(speech: Float32Array, kind: Noise, db: number): Float32Array {
  if (kind === 'clean') return speech;
  const seconds = speech.length / RATE_HZ;
  const sound = noise(kind, seconds);
  const loud = speech.filter((sample) => Math.abs(sample) > 0.002);
  const gain = Math.sqrt(power(loud) / power(sound)) / 10 ** (db / 20);
  return mixed(speech, sound.map((sample) => sample * gain));
}

/** Seconds of a noise, about as loud as sound can be. */
export function noise(kind: Exclude<Noise, 'clean'>, seconds: number): Float32Array {
  switch (kind) {
    case 'planing': return planing(seconds, 1);
    case 'blows': return blows(seconds, 1);
    case 'fan': return fan(seconds);
    case 'saw': return saw(seconds);
    default: return assertNever(kind);
  }
}

/** A hand saw: strokes of rasping noise, two a second. */
function saw(seconds: number): Float32Array {
  const random = randomNumbers(8);
  return Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, (_, at) => {
    const time = at / RATE_HZ;
    const stroke = Math.abs(Math.sin(2 * Math.PI * time)) ** 2;
    const teeth = 0.5 + 0.5 * Math.sin(2 * Math.PI * 90 * time);
    return stroke * teeth * (random() * 2 - 1);
  });
}

function fan(seconds: number): Float32Array {
  const random = randomNumbers(7);
  let low = 0;
  return Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, (_, at) => {
    low += 0.15 * (random() * 2 - 1 - low);
    return low + 0.1 * Math.sin((2 * Math.PI * 118 * at) / RATE_HZ);
  });
}

function power(sound: Float32Array): number {
  return sound.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, sound.length);
}

function padded(sound: Float32Array): Float32Array {
  return joined(quiet(0.5), sound, quiet(0.3));
}

function readRaw(path: string): Float32Array {
  return toSound(readFileSync(path));
}

function toSound(bytes: Buffer): Float32Array {
  return Float32Array.from({ length: Math.floor(bytes.length / 2) }, (_, at) => bytes.readInt16LE(at * 2) / 32_768);
}

function withoutSilence(sound: Float32Array): Float32Array {
  const threshold = 0.01 * sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const first = sound.findIndex((sample) => Math.abs(sample) > threshold);
  const last = sound.findLastIndex((sample) => Math.abs(sample) > threshold);
  return sound.slice(Math.max(0, first - 800), last + 800);
}
