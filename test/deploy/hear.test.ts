import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { measure } from '../../deploy/hear/levels.ts';
import { readHead } from '../../deploy/hear/wavHeader.ts';

const RECORDING = readFileSync(join(import.meta.dirname, '..', 'voice', 'recordings', 'bench-next-step.wav'));

/** A WAV of this coding; `samples` bytes of sound. */
function wav({ code = 1, channels = 1, rate = 16_000, bits = 16, samples = 64_000, says = samples }: { code?: number; channels?: number; rate?: number; bits?: number; samples?: number; says?: number } = {}): Buffer {
  const file = Buffer.alloc(44 + samples);
  file.write('RIFF', 0, 'latin1');
  file.writeUInt32LE(36 + samples, 4);
  file.write('WAVEfmt ', 8, 'latin1');
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(code, 20);
  file.writeUInt16LE(channels, 22);
  file.writeUInt32LE(rate, 24);
  file.writeUInt32LE((rate * channels * bits) / 8, 28);
  file.writeUInt16LE((channels * bits) / 8, 32);
  file.writeUInt16LE(bits, 34);
  file.write('data', 36, 'latin1');
  file.writeUInt32LE(says, 40);
  return file;
}

const warnings = (file: Buffer) => { const head = readHead(file); return head.ok ? head.value.warnings.join(' | ') : `refused: ${head.fault}`; };

describe('a recording to be heard', () => {
  it('says what it is', () => {
    expect(readHead(RECORDING)).toMatchObject({ ok: true, value: { format: { coding: 'PCM', rateHz: 16_000, channels: 1, bits: 16 }, warnings: [] } });
  });

  it.each<[string, Buffer, RegExp]>([
    ['of a telephone, µ-law', wav({ code: 7, rate: 8_000, bits: 8 }), /8000 samples a second are telephone sound/],
    ['in stereo', wav({ channels: 2, rate: 48_000, bits: 24 }), /2 channels: the ear hears them mixed/],
    ['of 11 kHz', wav({ rate: 11_025 }), /fewer than the speech model learnt at/],
    ['that is tiny', wav({ samples: 320 }), /only 10 milliseconds long/],
    ['that is cut short', wav({ samples: 32_000, says: 320_000 }), /cut short: 10\.0 seconds are announced, and 1\.0 are there/],
    ['coded in another way', wav({ code: 0x11, bits: 4 }), /coded as IMA ADPCM, which the browser may not know/],
    ['that is empty', Buffer.alloc(0), /^refused: it is empty/],
    ['without samples', wav({ samples: 0 }), /^refused: it has no samples/],
    ['that ends in its head', wav().subarray(0, 20), /^refused: it is a WAV that ends before it says what its sound is/],
    ['without a data chunk', wav().subarray(0, 36), /^refused: it is a WAV without samples/],
    ['of another kind of RIFF', Buffer.concat([Buffer.from('RIFF\x10\0\0\0AVI ', 'latin1'), Buffer.alloc(40)]), /^refused: it begins as a RIFF file, and is no WAV/],
    ['of no channels', wav({ channels: 0 }), /^refused: its head makes no sense: 0 channels/],
    ['that takes an hour', wav({ rate: 100, bits: 8, samples: 360_000 }), /^refused: it is 3600 seconds long, and is heard in real time: at most 600/],
  ])('%s is told in words', (_, file, words) => {
    expect(warnings(file)).toMatch(words);
  });

  it('that a program is still writing, with its length at the largest, is not called cut short', () => {
    expect(warnings(wav({ says: 0xffff_ffff }))).toBe('');
  });

  it('of any bytes is told in words, or left to the browser', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 60 }), fc.boolean(), (bytes, asWav) => {
      const head = readHead(asWav ? Buffer.concat([Buffer.from('RIFF\0\0\0\0WAVE', 'latin1'), bytes]) : bytes);
      expect(head.ok || head.fault.length > 5).toBe(true);
    }), { numRuns: 500 });
  });
});

describe('the level of a recording', () => {
  const RATE = 16_000;
  const tone = (seconds: number, peak: number) => Float32Array.from({ length: seconds * RATE }, (_, at) => peak * Math.sin((2 * Math.PI * 400 * at) / RATE));

  it('of a tone is its peak, and three decibels less as root mean square', () => {
    const { levels, warnings: told } = measure([tone(1, 0.5)], RATE);
    expect(levels.peakDb).toBeCloseTo(-6.02, 1);
    expect(levels.rmsDb).toBeCloseTo(-9.03, 1);
    expect(levels.dcOffset).toBeCloseTo(0, 5);
    expect(told).toEqual([]);
  });

  it('finds where speech ends, between and at last, and the room beside it', () => {
    const sound = new Float32Array(4 * RATE).map((_, at) => Math.sin(at) * 0.0005);
    sound.set(tone(1, 0.3), RATE / 2);
    sound.set(tone(0.5, 0.3), 2.5 * RATE);
    const { ends, speechEnds, room: [from, seconds], levels } = measure([sound], RATE);
    expect(ends).toEqual([1.5, 3]);
    expect(speechEnds).toBe(3);
    expect([from, seconds].map((each) => Number(each.toFixed(2)))).toEqual([1.5, 1]);
    expect(levels.ambientDb).toBeCloseTo(-69, 0);
  });

  it('tells what is cut off, off its middle, soft, silent, or lost in the mix', () => {
    const told = (...channels: Float32Array[]) => measure(channels, RATE).warnings.join(' | ');
    expect(told(tone(1, 2).map((sample) => Math.max(-1, Math.min(1, sample))))).toMatch(/samples are cut off/);
    expect(told(tone(1, 0.2).map((sample) => sample + 0.1))).toMatch(/10 % off its middle/);
    expect(told(tone(1, 0.002))).toMatch(/soft: -57 dB/);
    expect(told(new Float32Array(RATE))).toBe('it is silent');
    expect(told(tone(1, 0.3), tone(1, 0.3).map((sample) => -sample))).toMatch(/nearly cancel each other out/);
    expect(told(tone(1, 0.3), tone(1, 0.3))).toBe('');
  });
});
