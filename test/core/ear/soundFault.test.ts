import { describe, expect, it } from 'vitest';
import { Gate } from '../../../kiosk/ear/gate.ts';
import { SoundFaultWatch, type SoundFault } from '../../../kiosk/ear/soundFault.ts';
import { earState } from '../../../kiosk/ear/state.ts';
import { Steady } from '../../../kiosk/ear/steady.ts';
import { blows } from '../../voice/shopNoise.ts';
import { joined, quiet, RATE_HZ, recording } from '../../voice/sound.ts';

const BLOCK = 1_600;

function blocksOf(sound: Float32Array): Float32Array<ArrayBuffer>[] {
  return Array.from({ length: Math.floor(sound.length / BLOCK) }, (_, at) => Float32Array.from(sound.subarray(at * BLOCK, (at + 1) * BLOCK)));
}

/** Every fault that was told while that was heard, in order, each once. */
function faultsIn(sound: Float32Array, watch = new SoundFaultWatch()): (SoundFault | undefined)[] {
  return blocksOf(sound).map((block) => watch.take(block)).filter((fault, at, all) => at === 0 || fault !== all[at - 1]);
}

describe('a microphone that gives no sound', () => {
  it('is told after five seconds of samples all alike, and no longer when it hisses', () => {
    expect(faultsIn(joined(new Float32Array(6 * RATE_HZ), quiet(1)))).toEqual([undefined, 'no sound in it', undefined]);
    expect(faultsIn(new Float32Array(6 * RATE_HZ).fill(0.3)), 'an offset is no sound').toContain('no sound in it');
    expect(faultsIn(new Float32Array(4 * RATE_HZ))).toEqual([undefined]);
  });

  it('is not a quiet room', () => {
    expect(faultsIn(quiet(20))).toEqual([undefined]);
  });

  it('is told with what to do', () => {
    const state = earState({ on: true, engine: 'ready', engineReason: '', microphone: 'hearing', sound: 'no sound in it', deaf: false, attending: false, addressWord: 'bench' });
    expect(state).toEqual({ name: 'no microphone', sentence: expect.stringMatching(/switched off or muted.*keys/) as string });
  });
});

describe('a microphone that is too loud', () => {
  const cut = (sound: Float32Array, times: number) => sound.map((sample) => Math.max(-1, Math.min(1, times * sample)));

  it('is told when speech is cut again and again, and only then', () => {
    const speech = joined(...Array.from({ length: 5 }, () => recording('bench-record-leg-two')));
    const loudest = speech.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(faultsIn(cut(speech, 20 / loudest))).toContain('too loud');
    expect(faultsIn(cut(speech, 0.95 / loudest))).toEqual([undefined]);
  });

  it('is not told for a blow that no microphone bears', () => {
    expect(faultsIn(cut(blows(20, 1), 2))).toEqual([undefined]);
  });
});

describe('a card with an offset', () => {
  it('is heard with as if it had none', () => {
    const gate = new Gate();
    const steady = new Steady();
    let passed = 0;
    for (const block of blocksOf(joined(quiet(3), recording('bench-next-step'), quiet(2)).map((sample) => sample + 0.2))) {
      steady.take(block);
      passed += gate.take(block).blocks.length;
    }
    expect(passed).toBeGreaterThan(8);
    expect(gate.floorDb).toBeLessThan(-60);
  });

  it('leaves a voice as it was', () => {
    const speech = recording('bench-next-step');
    const power = (sound: Float32Array) => sound.reduce((sum, sample) => sum + sample * sample, 0);
    const through = Float32Array.from(speech);
    new Steady().take(through);
    expect(10 * Math.log10(power(through) / power(speech))).toBeCloseTo(0, 0);
  });
});
