import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWav, writeWav } from '../../../sounds/wav.ts';

describe('a WAV file', () => {
  it('holds the samples to within half a step of 16 bits', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true })), fc.constantFrom(8_000, 16_000, 48_000), (values, rate) => {
      const read = readWav(writeWav({ samples: Float32Array.from(values), rate }));
      if (!read.ok) throw new Error(read.fault);
      expect(read.value.rate).toBe(rate);
      expect(read.value.samples).toHaveLength(values.length);
      read.value.samples.forEach((sample, index) => expect(Math.abs(sample - (values[index] ?? NaN))).toBeLessThan(1 / 16_384));
    }));
  });

  it('is refused, never thrown over, when it is damaged', () => {
    const whole = writeWav({ samples: new Float32Array(100).fill(0.5), rate: 16_000 });
    fc.assert(fc.property(fc.nat(whole.length - 1), fc.nat(255), fc.nat(whole.length), (at, value, length) => {
      const damaged = whole.slice(0, length);
      if (at < length) damaged[at] = value;
      const read = readWav(damaged);
      if (length < whole.length && at > 43) expect(read.ok).toBe(false);
    }), { numRuns: 2_000 });
  });

  it.each([
    ['not a WAV file', (file: Uint8Array) => file.fill(0, 0, 4)],
    ['not one channel of 16 bits', (file: Uint8Array) => file.fill(2, 22, 23)],
    ['cut short', (file: Uint8Array) => file.subarray(0, 60)],
  ])('says what is wrong: %s', (fault, damage) => {
    expect(readWav(damage(writeWav({ samples: new Float32Array(20), rate: 16_000 })))).toEqual({ ok: false, fault });
  });
});
