import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Signal } from '../../../core/bench/reply.ts';
import { activeLevel, PEAK_LIMIT, SPEECH_LEVEL } from '../../../kiosk/mouth/loudness.ts';
import { HIGHEST_HERTZ, LOWEST_HERTZ, renderSignals, SIGNAL_RECIPES } from '../../../sounds/signals/recipe.ts';
import { readWav, type Sound } from '../../../sounds/wav.ts';
import { decibels, peakOf, secondsOf, silences } from './voices.ts';

const sounds = renderSignals();
const NAMES = Object.keys(sounds) as Signal[];

/** The power of a sound at one pitch (Goertzel's algorithm). */
function powerAt({ samples, rate }: Sound, hertz: number): number {
  const turn = 2 * Math.cos(2 * Math.PI * hertz / rate);
  let [one, two] = [0, 0];
  for (const sample of samples) [one, two] = [sample + turn * one - two, one];
  return (one * one + two * two - turn * one * two) / samples.length ** 2;
}

/** The share of a sound's power within a band, from pitches 20 Hz apart. */
function shareBetween(sound: Sound, from: number, to: number): number {
  let [inside, all] = [0, 0];
  for (let hertz = 20; hertz < sound.rate / 2; hertz += 20) {
    const power = powerAt(sound, hertz);
    all += power;
    if (hertz >= from && hertz <= to) inside += power;
  }
  return inside / all;
}

/** When each note begins and ends, measured in the samples. */
function measuredRhythm(sound: Sound): readonly { readonly atMs: number; readonly ms: number }[] {
  const gaps = silences(sound, -40, 20);
  const edges = [0, ...gaps.flatMap(({ atMs, ms }) => [atMs, atMs + ms]), 1000 * secondsOf(sound)];
  return Array.from({ length: edges.length / 2 }, (_, index) => ({ atMs: edges[2 * index] ?? 0, ms: (edges[2 * index + 1] ?? 0) - (edges[2 * index] ?? 0) })).filter(({ ms }) => ms > 20);
}

/** Loudness every 10 ms, as a shape between 0 and 1. */
function envelope({ samples, rate }: Sound): number[] {
  const width = rate / 100;
  return Array.from({ length: 130 }, (_, index) => Math.sqrt(samples.subarray(index * width, (index + 1) * width).reduce((sum, sample) => sum + sample * sample, 0) / width));
}

describe('the signals', () => {
  it.each(NAMES)('"%s" is as loud as the voice or louder, does not clip, begins and ends at zero', (name) => {
    const { samples, rate } = sounds[name];
    const raised = decibels(activeLevel(samples, rate) / SPEECH_LEVEL);
    expect(raised).toBeGreaterThan(-2);
    expect(raised).toBeLessThan(6);
    expect(peakOf(samples)).toBeLessThan(PEAK_LIMIT);
    expect(Math.abs(samples.at(0) ?? NaN) + Math.abs(samples.at(-1) ?? NaN)).toBe(0);
  });

  it.each(NAMES)('"%s" is short', (name) => {
    expect(secondsOf(sounds[name])).toBeLessThan(name === 'due' ? 1.5 : 0.6);
  });

  it('"heard" is over before the maker speaks', () => {
    expect(secondsOf(sounds.heard)).toBeLessThan(0.12);
  });

  // ISO 7731 (danger signals for work places, auditory) wants the main parts of a signal between 500 and 2500 Hz; taken as an idea, figures from memory.
  it.each(NAMES)('"%s" sounds between 500 and 2500 Hz', (name) => {
    expect(shareBetween(sounds[name], LOWEST_HERTZ - 40, HIGHEST_HERTZ + 40)).toBeGreaterThan(0.97);
  });

  it.each(NAMES)('"%s" has its notes where the recipe says', (name) => {
    const notes = measuredRhythm(sounds[name]);
    const written = SIGNAL_RECIPES[name].notes;
    expect(notes).toHaveLength(written.length);
    notes.forEach((note, index) => {
      expect(Math.abs(note.atMs - (written[index]?.atMs ?? NaN))).toBeLessThan(20);
      expect(Math.abs(note.ms - (written[index]?.ms ?? NaN))).toBeLessThan(30);
    });
  });

  it('are told apart by rhythm alone', () => {
    expect(new Set(NAMES.map((name) => SIGNAL_RECIPES[name].rhythm)).size).toBe(NAMES.length);
    for (const one of NAMES) {
      for (const other of NAMES.filter((name) => name !== one)) {
        const [a, b] = [envelope(sounds[one]), envelope(sounds[other])];
        const between = Math.sqrt(a.reduce((sum, value, index) => sum + (value - (b[index] ?? 0)) ** 2, 0));
        const whole = Math.sqrt(Math.max(...[a, b].map((shape) => shape.reduce((sum, value) => sum + value * value, 0))));
        expect(between / whole, `${one} beside ${other}`).toBeGreaterThan(0.35);
      }
    }
  });

  it('are told apart by pitch alone: no two have the same notes', () => {
    const tune = (name: Signal) => [...new Set(SIGNAL_RECIPES[name].notes.map((note) => note.hertz))].sort((a, b) => a - b).join(' ');
    expect(new Set(NAMES.map(tune)).size).toBe(NAMES.length);
  });

  it('"due" is the loudest and the longest: it calls across the shop', () => {
    for (const name of NAMES.filter((other) => other !== 'due')) {
      expect(secondsOf(sounds.due)).toBeGreaterThan(2 * secondsOf(sounds[name]));
      expect(activeLevel(sounds.due.samples, sounds.due.rate)).toBeGreaterThan(activeLevel(sounds[name].samples, sounds[name].rate));
    }
  });

  it.each(NAMES)('"%s" lies as a file beside its recipe, the same to one step of 16 bits', (name) => {
    const file = readWav(readFileSync(join(import.meta.dirname, '../../../sounds/signals', `${name.replaceAll(' ', '-')}.wav`)));
    if (!file.ok) throw new Error(`${file.fault}: write it again with npm run signals`);
    expect(file.value.samples).toHaveLength(sounds[name].samples.length);
    file.value.samples.forEach((sample, index) => expect(Math.abs(sample - (sounds[name].samples[index] ?? NaN))).toBeLessThan(1.6 / 32_768));
  });
});
