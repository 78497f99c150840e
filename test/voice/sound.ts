import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Sound for the ear's tests: 16 kHz, mono, -1 to 1. */
export const RATE_HZ = 16_000;

/** A recording of test/voice/recordings, by its name without '.wav'. */
export function recording(name: string): Float32Array {
  return readWav(readFileSync(join(import.meta.dirname, 'recordings', `${name}.wav`)));
}

/** @throws {Error} unless it is 16 kHz, mono, 16 bits */
export function readWav(file: Buffer): Float32Array {
  if (file.readUInt16LE(22) !== 1 || file.readUInt32LE(24) !== RATE_HZ || file.readUInt16LE(34) !== 16) throw new Error('a recording must be 16 kHz, mono, 16 bits');
  const data = file.indexOf('data', 36, 'latin1');
  const bytes = file.subarray(data + 8, data + 8 + file.readUInt32LE(data + 4));
  return Float32Array.from({ length: bytes.length / 2 }, (_, at) => bytes.readInt16LE(at * 2) / 32_768);
}

export function writeWav(samples: Float32Array): Buffer {
  const file = Buffer.alloc(44 + samples.length * 2);
  file.write('RIFF', 0, 'latin1');
  file.writeUInt32LE(36 + samples.length * 2, 4);
  file.write('WAVEfmt ', 8, 'latin1');
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(RATE_HZ, 24);
  file.writeUInt32LE(RATE_HZ * 2, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36, 'latin1');
  file.writeUInt32LE(samples.length * 2, 40);
  samples.forEach((sample, at) => file.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sample)) * 32_767), 44 + at * 2));
  return file;
}

/** The quiet of a room: white noise at about -70 dB below full scale, the same each time. */
export function quiet(seconds: number): Float32Array {
  const random = randomNumbers(1);
  return Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, () => (random() - 0.5) * 0.001);
}

export function joined(...parts: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Sound over sound. */
export function mixed(one: Float32Array, other: Float32Array): Float32Array {
  return Float32Array.from({ length: Math.max(one.length, other.length) }, (_, at) => (one[at] ?? 0) + (other[at] ?? 0));
}

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixedBits = Math.imul(state ^ (state >>> 15), state | 1);
    mixedBits ^= mixedBits + Math.imul(mixedBits ^ (mixedBits >>> 7), mixedBits | 61);
    return ((mixedBits ^ (mixedBits >>> 14)) >>> 0) / 4_294_967_296;
  };
}
