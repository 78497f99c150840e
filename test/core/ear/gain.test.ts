import { describe, expect, it } from 'vitest';
import { Gain } from '../../../kiosk/ear/gain.ts';
import { loudnessDb } from '../../../kiosk/ear/gate.ts';
import { RATE_HZ } from '../../voice/sound.ts';

const tone = (seconds: number, peak: number) => Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, (_, at) => peak * Math.sin((2 * Math.PI * 200 * at) / RATE_HZ));
const last = (blocks: readonly Float32Array[]) => loudnessDb(blocks.at(-1) ?? new Float32Array());

describe('the gain', () => {
  it('brings voices of any loudness to about the same', () => {
    for (const peak of [0.15, 0.05, 0.01, 0.003]) expect(last(new Gain().apply([tone(0.1, peak)])), `${peak}`).toBeCloseTo(-18, 0);
  });

  it('leaves a loud voice as it is', () => {
    const loud = tone(0.1, 0.5);
    expect(new Gain().apply([loud])[0]).toBe(loud);
  });

  it('never lifts hiss by more than 40 dB', () => {
    const hiss = tone(0.1, 0.0001);
    expect(last(new Gain().apply([hiss]))).toBeCloseTo(loudnessDb(hiss) + 40, 1);
  });

  it('gives way at once when the voice rises within a sentence, without clipping', () => {
    const gain = new Gain();
    gain.apply([tone(0.1, 0.01)]);
    const [risen = new Float32Array()] = gain.apply([tone(0.1, 0.15)]);
    expect(Math.max(...risen)).toBeLessThanOrEqual(1);
    expect(last(gain.apply([tone(0.1, 0.15)]))).toBeCloseTo(-18, 0);
  });

  it('measures each utterance afresh', () => {
    const gain = new Gain();
    gain.apply([tone(0.1, 0.9)]);
    gain.reset();
    expect(last(gain.apply([tone(0.1, 0.01)]))).toBeCloseTo(-18, 0);
  });

  it('does not lift a fan for the sake of a first syllable that is hardly louder', () => {
    const [said = new Float32Array()] = new Gain().apply([tone(0.1, 0.05)], loudnessDb(tone(0.1, 0.05)) - 3);
    expect(loudnessDb(said)).toBeCloseTo(-27, 0);
  });
});
