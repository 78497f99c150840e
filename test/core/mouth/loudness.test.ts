import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { activeLevel, limit, PEAK_LIMIT, shapeSpeech, SPEECH_LEVEL } from '../../../kiosk/mouth/loudness.ts';
import { gainOf } from '../../../kiosk/mouth/volume.ts';
import { decibels, peakOf, secondsOf, speak } from './voices.ts';

const PHRASES = ['Long rail', 'shoulder to shoulder', 'thirty-one', 'and five eighths inches', 'Next', 'saw the tenon cheeks', 'full', 'no'];

describe('the loudness of speech', () => {
  it('is the same for every phrase, to within a decibel', () => {
    for (const phrase of PHRASES) {
      const { samples, rate } = shapeSpeech(speak(phrase));
      expect(Math.abs(decibels(activeLevel(samples, rate) / SPEECH_LEVEL)), phrase).toBeLessThan(1);
    }
  });

  it('never clips, and begins and ends at zero', () => {
    for (const phrase of PHRASES) {
      const { samples } = shapeSpeech(speak(phrase));
      expect(peakOf(samples)).toBeLessThanOrEqual(PEAK_LIMIT);
      expect(Math.abs(samples.at(0) ?? NaN) + Math.abs(samples.at(-1) ?? NaN)).toBe(0);
    }
  });

  it('never clips, whatever sound comes in', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { maxLength: 3_000 }), (values) => {
      const { samples } = shapeSpeech({ samples: Float32Array.from(values), rate: 16_000 });
      expect(samples.every((sample) => Math.abs(sample) <= PEAK_LIMIT)).toBe(true);
    }), { numRuns: 50 });
  });

  it('drops the silence that the voice leaves before and after, so that words begin at once', () => {
    const raw = speak('thirty-one');
    const shaped = shapeSpeech(raw);
    expect(secondsOf(raw) - secondsOf(shaped)).toBeGreaterThan(0.1);
    expect(shaped.samples.findIndex((sample) => Math.abs(sample) > 0.01) / shaped.rate).toBeLessThan(0.06);
  });

  it('makes nothing of silence', () => {
    expect(shapeSpeech({ samples: new Float32Array(800), rate: 16_000 }).samples).toHaveLength(0);
    expect(shapeSpeech({ samples: new Float32Array(0), rate: 16_000 }).samples).toHaveLength(0);
  });

  it('bends peaks without turning louder into softer', () => {
    const values = Array.from({ length: 400 }, (_, index) => limit(index / 100));
    values.forEach((value, index) => expect(value).toBeGreaterThanOrEqual(values[index - 1] ?? 0));
    expect(limit(0.5)).toBe(0.5);
    expect(limit(-4)).toBeCloseTo(-PEAK_LIMIT, 3);
  });
});

describe('the volume', () => {
  it('changes by 3 dB a step, is mute at 0 and whole at 10', () => {
    for (let volume = 2; volume <= 10; volume++) expect(decibels(gainOf(volume) / gainOf(volume - 1))).toBeCloseTo(3, 6);
    expect([gainOf(0), gainOf(10), gainOf(-3), gainOf(14), gainOf(NaN)]).toEqual([0, 1, 0, 1, 0]);
  });
});
