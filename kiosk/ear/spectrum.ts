import { SAMPLE_RATE_HZ } from './messages.ts';

/** Centres of the octave bands that are told, in hertz; the last one ends at 5.7 kHz, below the half of our rate. */
export const OCTAVE_CENTRES_HZ = [125, 250, 500, 1_000, 2_000, 4_000] as const;

/** What one block of sound holds, as mean squares beside full scale (a square wave at full scale is 1). */
interface BlockPower {
  /** A-weighted. */
  readonly weighted: number;
  /** Unweighted, one for each of OCTAVE_CENTRES_HZ. */
  readonly octaves: readonly number[];
}

const SIZE = 512;
const BIN_HZ = SAMPLE_RATE_HZ / SIZE;
const WINDOW = Float64Array.from({ length: SIZE }, (_, at) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (at + 0.5)) / SIZE));
/** The sum of a Hann window's squares is 3/8 of its length. */
const WINDOW_POWER = (3 / 8) * SIZE;
const BIN_WEIGHTS = Float64Array.from({ length: SIZE / 2 }, (_, bin) => aWeight(bin * BIN_HZ));
const BIN_OCTAVES = Int8Array.from({ length: SIZE / 2 }, (_, bin) => OCTAVE_CENTRES_HZ.findIndex((centre) => bin * BIN_HZ >= centre / Math.SQRT2 && bin * BIN_HZ < centre * Math.SQRT2));

/** A-weighting as a factor on power, 1 at 1 kHz (IEC 61672-1:2013, annex E, the curve as a formula; its constants from memory). */
export function aWeight(hertz: number): number {
  const f2 = hertz * hertz;
  const curve = (12_194 ** 2 * f2 * f2) / ((f2 + 20.6 ** 2) * Math.sqrt((f2 + 107.7 ** 2) * (f2 + 737.9 ** 2)) * (f2 + 12_194 ** 2));
  return curve * curve * 10 ** 0.2;
}

/** The power in a block of 16 kHz sound, A-weighted and by octaves; what is left over after its last 512 samples is not looked at. Nothing below 512. */
export function blockPower(block: Float32Array): BlockPower {
  const octaves = OCTAVE_CENTRES_HZ.map(() => 0);
  let weighted = 0;
  const parts = Math.floor(block.length / SIZE);
  for (let part = 0; part < parts; part += 1) {
    const powers = binPowers(block.subarray(part * SIZE, (part + 1) * SIZE));
    for (let bin = 0; bin < SIZE / 2; bin += 1) {
      const power = powers[bin] ?? 0;
      weighted += (power * (BIN_WEIGHTS[bin] ?? 0)) / parts;
      const octave = BIN_OCTAVES[bin] ?? -1;
      if (octave >= 0) octaves[octave] = (octaves[octave] ?? 0) + power / parts;
    }
  }
  return { weighted, octaves };
}

const real = new Float64Array(SIZE);
const imaginary = new Float64Array(SIZE);
const powers = new Float64Array(SIZE / 2);

/** The power in each bin, both halves of the spectrum together. */
function binPowers(samples: Float32Array): Float64Array {
  for (let at = 0; at < SIZE; at += 1) {
    real[REVERSED[at] ?? 0] = (samples[at] ?? 0) * (WINDOW[at] ?? 0);
  }
  imaginary.fill(0);
  transform();
  for (let bin = 0; bin < SIZE / 2; bin += 1) {
    const power = ((real[bin] ?? 0) ** 2 + (imaginary[bin] ?? 0) ** 2) / (SIZE * WINDOW_POWER);
    powers[bin] = bin === 0 ? power : 2 * power;
  }
  return powers;
}

const REVERSED = Uint16Array.from({ length: SIZE }, (_, at) => {
  let reversed = 0;
  for (let bit = 1; bit < SIZE; bit *= 2) reversed = reversed * 2 + ((at & bit) === 0 ? 0 : 1);
  return reversed;
});
const COSINES = Float64Array.from({ length: SIZE / 2 }, (_, at) => Math.cos((2 * Math.PI * at) / SIZE));
const SINES = Float64Array.from({ length: SIZE / 2 }, (_, at) => -Math.sin((2 * Math.PI * at) / SIZE));

/** The fast Fourier transform by twos (Cooley and Tukey 1965), in place, on samples put in bit-reversed order. */
function transform(): void {
  for (let half = 1; half < SIZE; half *= 2) {
    const step = SIZE / (2 * half);
    for (let start = 0; start < SIZE; start += 2 * half) {
      for (let at = 0; at < half; at += 1) butterfly(start + at, start + at + half, at * step);
    }
  }
}

function butterfly(one: number, other: number, turn: number): void {
  const cosine = COSINES[turn] ?? 0;
  const sine = SINES[turn] ?? 0;
  const a = real[one] ?? 0;
  const b = imaginary[one] ?? 0;
  const c = real[other] ?? 0;
  const d = imaginary[other] ?? 0;
  const turnedReal = c * cosine - d * sine;
  const turnedImaginary = c * sine + d * cosine;
  real[one] = a + turnedReal;
  imaginary[one] = b + turnedImaginary;
  real[other] = a - turnedReal;
  imaginary[other] = b - turnedImaginary;
}
