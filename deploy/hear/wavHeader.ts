import { failure, success, type Result } from '../../core/result.ts';

/** What a recording says of itself. */
export interface RecordingFormat {
  readonly coding: string;
  readonly rateHz: number;
  readonly channels: number;
  readonly bits: number;
  readonly seconds: number;
}

/** A recording that can be tried: its format if it is a WAV, and what its owner should know. */
export interface RecordingHead {
  readonly format?: RecordingFormat;
  readonly warnings: readonly string[];
}

const HEADER_BYTES = 12;
const EXTENSIBLE = 0xfffe;
const CODINGS: ReadonlyMap<number, string> = new Map([[1, 'PCM'], [3, 'floating point'], [6, 'A-law'], [7, 'µ-law'], [0x55, 'MP3'], [2, 'Microsoft ADPCM'], [0x11, 'IMA ADPCM'], [0x31, 'GSM']]);
const PLAIN = ['PCM', 'floating point', 'A-law', 'µ-law'];
const SHORTEST_SECONDS = 0.2;
/** It is heard in real time. */
const LONGEST_SECONDS = 600;
const TELEPHONE_HZ = 8_000;
const MODEL_HZ = 16_000;

/**
 * Reads the head of a WAV (RIFF, as in IBM's and Microsoft's "Multimedia Programming Interface and Data Specifications 1.0"; chunks of a name, a length and a body), for words
 * about it: the sound itself is decoded by the browser. What is no WAV is left to the browser altogether.
 */
export function readHead(file: Uint8Array): Result<RecordingHead, string> {
  if (file.length === 0) return failure('it is empty');
  const name = (at: number) => String.fromCharCode(...file.subarray(at, at + 4));
  if (name(0) !== 'RIFF') return success({ warnings: [] });
  if (file.length < HEADER_BYTES || name(8) !== 'WAVE') return failure('it begins as a RIFF file, and is no WAV');
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  let format: Omit<RecordingFormat, 'seconds'> & { bytesPerSecond: number } | undefined;
  for (let at = HEADER_BYTES; at + 8 <= file.length;) {
    const length = view.getUint32(at + 4, true);
    const body = at + 8;
    if (name(at) === 'fmt ' && body + 16 <= file.length) format = formatAt(view, body, length);
    if (name(at) === 'data') return format === undefined ? failure('its samples come before it says what they are') : judged(format, length, file.length - body);
    at = body + length + (length & 1);
  }
  return failure(format === undefined ? 'it is a WAV that ends before it says what its sound is' : 'it is a WAV without samples');
}

function formatAt(view: DataView, at: number, length: number): Omit<RecordingFormat, 'seconds'> & { bytesPerSecond: number } {
  const tag = view.getUint16(at, true);
  const code = tag === EXTENSIBLE && length >= 26 && at + 26 <= view.byteLength ? view.getUint16(at + 24, true) : tag;
  return {
    coding: CODINGS.get(code) ?? `code ${code}`, channels: view.getUint16(at + 2, true), rateHz: view.getUint32(at + 4, true),
    bytesPerSecond: view.getUint32(at + 8, true), bits: view.getUint16(at + 14, true),
  };
}

function judged({ bytesPerSecond, ...rest }: Omit<RecordingFormat, 'seconds'> & { bytesPerSecond: number }, says: number, left: number): Result<RecordingHead, string> {
  if (rest.channels === 0 || rest.rateHz === 0 || bytesPerSecond === 0) return failure(`its head makes no sense: ${rest.channels} channels of ${rest.rateHz} Hz`);
  const bytes = Math.min(says, left);
  if (bytes === 0) return failure('it has no samples');
  const format = { ...rest, seconds: bytes / bytesPerSecond };
  if (format.seconds > LONGEST_SECONDS) return failure(`it is ${Math.round(format.seconds)} seconds long, and is heard in real time: at most ${LONGEST_SECONDS} seconds`);
  return success({ format, warnings: warningsOn(format, says, left, bytesPerSecond) });
}

function warningsOn({ coding, rateHz, channels, seconds }: RecordingFormat, says: number, left: number, bytesPerSecond: number): readonly string[] {
  // Programs that write as they record leave the length at its largest.
  const cutShort = says > left && says < 0xffff_f000;
  return [
    ...(cutShort ? [`it is cut short: ${(says / bytesPerSecond).toFixed(1)} seconds are announced, and ${seconds.toFixed(1)} are there`] : []),
    ...(rateHz <= TELEPHONE_HZ ? [`${rateHz} samples a second are telephone sound: "s" and "f" are told apart above what it has, and the speech model learnt at ${MODEL_HZ}`] : rateHz < MODEL_HZ ? [`${rateHz} samples a second are fewer than the speech model learnt at (${MODEL_HZ})`] : []),
    ...(channels > 1 ? [`${channels} channels: the ear hears them mixed`] : []),
    ...(seconds < SHORTEST_SECONDS ? [`it is only ${Math.round(seconds * 1000)} milliseconds long`] : []),
    ...(PLAIN.includes(coding) ? [] : [`it is coded as ${coding}, which the browser may not know`]),
  ];
}
