import { describe, expect, it } from 'vitest';
import { ShopSoundMeter } from '../../../kiosk/ear/shopSound.ts';
import { aWeight, blockPower, OCTAVE_CENTRES_HZ } from '../../../kiosk/ear/spectrum.ts';
import { blows } from '../../voice/shopNoise.ts';
import { joined, mixed, quiet, randomNumbers, RATE_HZ, recording } from '../../voice/sound.ts';

const BLOCK = 1_600;
const decibels = (power: number) => 10 * Math.log10(power);
const sine = (hertz: number, peak = 1) => Float32Array.from({ length: BLOCK }, (_, at) => peak * Math.sin((2 * Math.PI * hertz * at) / RATE_HZ));
const noise = (seconds: number, rms: number, seed = 5) => {
  const random = randomNumbers(seed);
  return Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, () => (random() * 2 - 1) * rms * Math.sqrt(3));
};

/** The meter after it heard that, block after block, and the time then. */
function after(sound: Float32Array, meter = new ShopSoundMeter(), from = 0): { meter: ShopSoundMeter; now: number } {
  let now = from;
  for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) {
    now += 100;
    meter.take(sound.subarray(at, at + BLOCK), now);
  }
  return { meter, now };
}

describe('the spectrum of the shop', () => {
  // IEC 61672-1:2013, table 3: A-weighting at nominal frequencies, in decibels; values from memory.
  it.each([[63, -26.2], [125, -16.1], [250, -8.6], [500, -3.2], [1_000, 0], [2_000, 1.2], [4_000, 1]])('weighs %d Hz with %d dB', (hertz, db) => {
    // Nominal frequencies stand for exact powers of ten.
    const exact = 1_000 * 10 ** (3 * Math.round((10 * Math.log10(hertz / 1_000)) / 3) / 10);
    expect(decibels(aWeight(exact))).toBeCloseTo(db, 0);
    expect(Math.abs(decibels(aWeight(exact)) - db)).toBeLessThan(0.06);
  });

  it('of a full-scale sine is half its square, in its own octave and in no other', () => {
    for (const [octave, hertz] of OCTAVE_CENTRES_HZ.entries()) {
      const { octaves, weighted } = blockPower(sine(hertz));
      expect(decibels(octaves[octave] ?? 0)).toBeCloseTo(-3.01, 1);
      expect(decibels(weighted)).toBeCloseTo(-3.01 + decibels(aWeight(hertz)), 0);
      octaves.forEach((power, other) => { if (other !== octave) expect(decibels(power)).toBeLessThan(-30); });
    }
  });

  it('of white noise grows by 3 dB an octave', () => {
    const sums = OCTAVE_CENTRES_HZ.map(() => 0);
    const sound = noise(20, 0.1);
    for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) blockPower(sound.subarray(at, at + BLOCK)).octaves.forEach((power, octave) => { sums[octave] = (sums[octave] ?? 0) + power; });
    for (let octave = 2; octave < sums.length; octave += 1) expect(decibels((sums[octave] ?? 0) / (sums[octave - 1] ?? 1))).toBeCloseTo(3, 0);
  });
});

describe('how loud the shop is', () => {
  it('is not told before it was heard for a second', () => {
    const { meter, now } = after(noise(0.9, 0.01));
    expect(meter.at(now)).toBeUndefined();
    after(noise(0.1, 0.01), meter, now);
    expect(meter.at(now + 100)).toBeDefined();
  });

  it('is the fan, not the sentence said over it nor the blows', () => {
    const fan = noise(20, 0.01);
    const alone = after(fan);
    const spoken = after(mixed(fan, joined(quiet(12), recording('bench-record-leg-two'))));
    const hammered = after(mixed(fan, blows(20, 0.5)));
    const ambient = alone.meter.at(alone.now)?.ambientDb ?? NaN;
    expect(spoken.meter.at(spoken.now)?.ambientDb).toBeCloseTo(ambient, 0);
    expect(Math.abs((hammered.meter.at(hammered.now)?.ambientDb ?? NaN) - ambient)).toBeLessThan(3);
  });

  it('follows a fan that starts within ten seconds', () => {
    const { meter, now } = after(noise(20, 0.001));
    const before = meter.at(now)?.ambientDb ?? NaN;
    const later = after(noise(10, 0.01, 8), meter, now);
    expect((meter.at(later.now)?.ambientDb ?? NaN) - before).toBeCloseTo(20, 0);
  });

  it('is forgotten with another microphone', () => {
    const { meter, now } = after(noise(5, 0.01));
    meter.reset();
    expect(meter.at(now)).toBeUndefined();
  });
});

describe('hammering', () => {
  const regular = (seconds: number, everySeconds: number) => {
    const sound = noise(seconds, 0.003);
    const random = randomNumbers(4);
    for (let at = RATE_HZ; at < sound.length; at += Math.round(everySeconds * RATE_HZ)) {
      for (let index = 0; index < 3_200 && at + index < sound.length; index += 1) sound[at + index] = (sound[at + index] ?? 0) + 0.5 * Math.exp(-index / 400) * (random() * 2 - 1);
    }
    return sound;
  };

  it('is noticed after some blows in a row, and over soon after the last', () => {
    const { meter, now } = after(joined(noise(3, 0.003), regular(6, 0.8)));
    expect(meter.at(now)?.hammering).toBe(true);
    const later = after(noise(2.5, 0.003), meter, now);
    expect(meter.at(later.now)).toMatchObject({ hammering: false, lull: true });
  });

  it('has no lull between its blows', () => {
    const meter = new ShopSoundMeter();
    const sound = joined(noise(3, 0.003), regular(10, 0.9));
    let lulls = 0;
    for (let at = 0; at + BLOCK <= sound.length; at += BLOCK) {
      const now = (at / BLOCK) * 100;
      meter.take(sound.subarray(at, at + BLOCK), now);
      if (now > 8_000 && meter.at(now)?.lull) lulls += 1;
    }
    expect(lulls).toBe(0);
  });

  it('is not one blow, nor a sentence, nor a fan', () => {
    for (const sound of [regular(1.5, 9), recording('bench-record-leg-two'), noise(5, 0.05)]) {
      const { meter, now } = after(joined(noise(4, 0.003), sound));
      expect(meter.at(now)?.hammering).toBe(false);
    }
  });

  it('a fan alone is one long lull', () => {
    const { meter, now } = after(noise(10, 0.05));
    expect(meter.at(now)?.lull).toBe(true);
  });
});
