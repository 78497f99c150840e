import { describe, expect, it } from 'vitest';
import { Gate, GATE_SETTINGS, loudnessDb } from '../../../kiosk/ear/gate.ts';
import { LevelMeter } from '../../../kiosk/ear/level.ts';
import { joined, mixed, quiet, randomNumbers, RATE_HZ, recording } from '../../voice/sound.ts';

const BLOCK = 1_600;

/** Runs sound through a gate; what it let through, in seconds, and when the gate closed. */
function through(gate: Gate, sound: Float32Array): { passed: Float32Array; seconds: number; endings: number } {
  const blocks: Float32Array[] = [];
  let endings = 0;
  for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) {
    const { blocks: out, ended } = gate.take(sound.slice(at, at + BLOCK));
    blocks.push(...out);
    if (ended) endings += 1;
  }
  const passed = joined(...blocks);
  return { passed, seconds: passed.length / RATE_HZ, endings };
}

const noise = (seconds: number, peak: number, seed = 7) => {
  const random = randomNumbers(seed);
  return Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, () => (random() * 2 - 1) * peak);
};
/** A blow: a loud burst that dies away by 8.7 dB for each unit of `dampingPerSecond` and second. */
const blow = (dampingPerSecond: number): Float32Array => noise(0.4, 0.9).map((sample, at) => sample * Math.exp((-at / RATE_HZ) * dampingPerSecond));

describe('the noise gate', () => {
  it('lets nothing of an empty shop through', () => {
    expect(through(new Gate(), quiet(60)).seconds).toBe(0);
  });

  it('lets a sentence through whole, with a moment before it, and closes after it', () => {
    const sentence = recording('bench-next-step');
    const gate = new Gate();
    const { passed, endings } = through(gate, joined(quiet(2), sentence, quiet(3)));
    expect(endings).toBe(1);
    expect(gate.open).toBe(false);
    // Every loud frame of the sentence is in what passed.
    const energy = (sound: Float32Array) => sound.reduce((sum, sample) => sum + sample * sample, 0);
    expect(energy(passed) / energy(sentence)).toBeGreaterThan(0.999);
    expect(passed.length / RATE_HZ).toBeLessThan(sentence.length / RATE_HZ + 0.3 + GATE_SETTINGS.hangOverMs / 1000 + 0.2);
  });

  it('gives a soft first consonant from before it opened', () => {
    const soft = noise(0.15, 0.0004, 3);
    const { passed } = through(new Gate(), joined(quiet(2), soft, noise(0.6, 0.2), quiet(2)));
    const opening = passed.findIndex((sample) => Math.abs(sample) > 0.01);
    expect(opening / RATE_HZ).toBeGreaterThanOrEqual(0.2);
  });

  it('stays open over a breath within a sentence', () => {
    expect(through(new Gate(), joined(quiet(1), noise(0.5, 0.2), quiet(0.6), noise(0.5, 0.2), quiet(2))).endings).toBe(1);
  });

  it('does not open for a dry blow', () => {
    expect(through(new Gate(), joined(quiet(1), blow(100), quiet(3))).seconds).toBe(0);
  });

  it('opens briefly for a mallet blow that rings, and is closed before the next', () => {
    const blows = joined(quiet(1), ...Array.from({ length: 10 }, () => joined(blow(35), quiet(1.1))));
    const { seconds, endings } = through(new Gate(), blows);
    expect(endings).toBe(10);
    expect(seconds).toBeLessThan(10 * 0.9);
  });

  it('gets used to a fan within some seconds and still opens for a voice over it', () => {
    const gate = new Gate();
    const fan = noise(40, 0.03);
    through(gate, joined(quiet(2), fan));
    expect(through(gate, noise(20, 0.03, 9)).seconds).toBe(0);
    const speech = recording('bench-next-step');
    expect(through(gate, mixed(noise(4, 0.03, 11), joined(new Float32Array(RATE_HZ), speech))).seconds).toBeGreaterThan(1);
  });

  it('hears a soft voice again when the fan stops', () => {
    const gate = new Gate();
    through(gate, joined(noise(30, 0.05), quiet(2)));
    expect(through(gate, joined(noise(0.6, 0.02), quiet(2))).endings).toBe(1);
  });

  it('forgets what came before when it is shut', () => {
    const gate = new Gate();
    through(gate, joined(quiet(1), noise(0.5, 0.2)));
    gate.shut();
    expect(gate.open).toBe(false);
    const { passed } = through(gate, joined(noise(0.2, 0.2), quiet(2)));
    expect(passed.length).toBeLessThan(1.5 * RATE_HZ);
  });
});

describe('loudness', () => {
  it('of a full-scale sine is 3.01 dB below a full-scale square (root mean square of a sine, any textbook)', () => {
    const sine = Float32Array.from({ length: RATE_HZ }, (_, at) => Math.sin((2 * Math.PI * 1_000 * at) / RATE_HZ));
    expect(loudnessDb(sine)).toBeCloseTo(-3.01, 2);
    expect(loudnessDb(new Float32Array(160).fill(1))).toBeCloseTo(0, 6);
  });

  it('of silence and of nothing is the bottom of the meter', () => {
    expect(loudnessDb(new Float32Array(160))).toBe(-90);
    expect(loudnessDb(new Float32Array(0))).toBe(-90);
  });

  it('rises at once on the meter and falls slowly', () => {
    const meter = new LevelMeter();
    expect(meter.take(new Float32Array(1_600).fill(0.1))).toBeCloseTo(-20, 3);
    expect(meter.take(new Float32Array(1_600))).toBeCloseTo(-24, 3);
    for (let blocks = 0; blocks < 100; blocks += 1) meter.take(new Float32Array(1_600));
    expect(meter.take(new Float32Array(1_600))).toBe(-90);
  });
});
