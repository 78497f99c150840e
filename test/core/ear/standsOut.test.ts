import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { StandsOut } from '../../../kiosk/ear/standsOut.ts';
import { trustSettingsAt, trustedWords } from '../../../kiosk/ear/trust.ts';
import { joined, mixed, quiet, randomNumbers, RATE_HZ } from '../../voice/sound.ts';

const SECOND = RATE_HZ;

function hiss(seconds: number, loudness: number): Float32Array {
  const random = randomNumbers(3);
  return Float32Array.from({ length: Math.round(seconds * SECOND) }, () => (random() * 2 - 1) * loudness * Math.sqrt(3));
}

/** As steady as a voice never is, and as loud. */
function tone(seconds: number, hertz: number, amplitude: number): Float32Array {
  return Float32Array.from({ length: Math.round(seconds * SECOND) }, (_, at) => amplitude * Math.sin((2 * Math.PI * hertz * at) / SECOND));
}

function standsOut(sound: Float32Array): number | undefined {
  const measured = new StandsOut();
  measured.take(sound);
  return measured.db;
}

describe('how far a voice stands out of the noise', () => {
  const voice = joined(quiet(0.5), tone(1.5, 220, 0.3), quiet(0.8));

  it('is far in a quiet shop', () => {
    expect(standsOut(voice)).toBeGreaterThan(40);
  });

  it('is little over a fan about as loud', () => {
    expect(standsOut(mixed(voice, hiss(2.8, 0.2)))).toBeLessThan(6);
  });

  it('is what the voice is above the fan', () => {
    expect(standsOut(mixed(voice, hiss(2.8, 0.02)))).toBeCloseTo(20 * Math.log10(0.3 / Math.SQRT2 / 0.02), -0.5);
  });

  it('does not depend on how far away the microphone is', () => {
    fc.assert(fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), (factor) => {
      const sound = mixed(voice, hiss(2.8, 0.05));
      expect(Math.abs((standsOut(sound.map((sample) => sample * factor)) ?? 0) - (standsOut(sound) ?? 0))).toBeLessThanOrEqual(1);
    }));
  });

  it('is not known before anything was heard, nor after what was said is over', () => {
    const measured = new StandsOut();
    expect(measured.db).toBeUndefined();
    measured.take(voice);
    measured.reset();
    expect(measured.db).toBeUndefined();
  });
});

describe('how sure the ear must be', () => {
  it('is more over a loud fan', () => {
    const heard = ['show the parts', [0.8, 0.8, 0.8], 'bench'] as const;
    expect(trustedWords(...heard, undefined, trustSettingsAt(30)).words).toBe('show the parts');
    expect(trustedWords(...heard, undefined, trustSettingsAt(6)).words).toBe('[unk]');
  });

  it('never falls as the noise rises', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 60, noNaN: true }), fc.double({ min: 0, max: 60, noNaN: true }), (one, other) => {
      const [louder, quieter] = [trustSettingsAt(Math.min(one, other)), trustSettingsAt(Math.max(one, other))];
      for (const setting of ['leastWord', 'leastWordOfFew', 'leastAskedWord', 'clearWord'] as const) expect(louder[setting]).toBeGreaterThanOrEqual(quieter[setting]);
    }));
  });

  it('is as in quiet where nothing is known of the noise', () => {
    expect(trustSettingsAt(undefined)).toEqual(trustSettingsAt(60));
  });
});
