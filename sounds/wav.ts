import { failure, success, type Result } from '../core/result.ts';

/** Sound of one channel. Samples run from -1 to 1. */
export interface Sound {
  readonly samples: Float32Array<ArrayBuffer>;
  /** Samples a second. */
  readonly rate: number;
}

const FULL_SCALE = 32_768;
const HEADER_BYTES = 44;
const PCM = 1;

/** Reads a WAV file of one channel and 16 bits (the RIFF layout: chunks of a name, a length and a body). The fault says what is wrong with it. */
export function readWav(file: Uint8Array): Result<Sound, string> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const name = (at: number) => String.fromCharCode(...file.subarray(at, at + 4));
  if (file.length < HEADER_BYTES || name(0) !== 'RIFF' || name(8) !== 'WAVE') return failure('not a WAV file');
  let rate: number | undefined;
  for (let at = 12; at + 8 <= file.length;) {
    const length = view.getUint32(at + 4, true);
    const body = at + 8;
    if (name(at) === 'fmt ') {
      if (view.getUint16(body, true) !== PCM || view.getUint16(body + 2, true) !== 1 || view.getUint16(body + 14, true) !== 16) return failure('not one channel of 16 bits');
      rate = view.getUint32(body + 4, true);
    } else if (name(at) === 'data') {
      if (rate === undefined) return failure('its samples come before its format');
      if (body + length > file.length) return failure('cut short');
      const samples = new Float32Array(length >> 1);
      for (let index = 0; index < samples.length; index++) samples[index] = view.getInt16(body + 2 * index, true) / FULL_SCALE;
      return success({ samples, rate });
    }
    at = body + length + (length & 1);
  }
  return failure('without samples');
}

/** Writes a WAV file of one channel and 16 bits; samples beyond -1 to 1 are cut. */
export function writeWav({ samples, rate }: Sound): Uint8Array<ArrayBuffer> {
  const file = new Uint8Array(HEADER_BYTES + 2 * samples.length);
  const view = new DataView(file.buffer);
  const name = (at: number, text: string) => { for (let index = 0; index < 4; index++) file[at + index] = text.charCodeAt(index); };
  name(0, 'RIFF');
  view.setUint32(4, file.length - 8, true);
  name(8, 'WAVE');
  name(12, 'fmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, PCM, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, 2 * rate, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  name(36, 'data');
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((sample, index) => { view.setInt16(HEADER_BYTES + 2 * index, Math.round(Math.min(Math.max(sample, -1), 1) * (FULL_SCALE - 1)), true); });
  return file;
}
