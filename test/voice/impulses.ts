import { randomNumbers, RATE_HZ } from './sound.ts';

/** The sudden sounds of a shop, each with its echo in the room: peak 1. */
export type Impulse = 'mallet blow' | 'dropped chisel' | 'dropped board';
export const IMPULSES: readonly Impulse[] = ['mallet blow', 'dropped chisel', 'dropped board'];

/** One ring of a struck thing. */
interface Ring {
  readonly atSeconds: number;
  readonly hertz: number;
  readonly strength: number;
  /** Time in which it dies away to a third. */
  readonly dieSeconds: number;
}

/** The click of each stroke: noise that is over in some milliseconds. */
const CLICK_SECONDS = 0.004;
/** The echo of a garage is 20 dB softer than the blow and dies away by 60 dB in half a second (common practice, no source). */
const ECHO_STRENGTH = 0.1;
const ECHO_DIE_SECONDS = 0.5 / 6.9;

const RINGS: Readonly<Record<Impulse, readonly Ring[]>> = {
  'mallet blow': [{ atSeconds: 0, hertz: 310, strength: 0.8, dieSeconds: 0.04 }, { atSeconds: 0, hertz: 720, strength: 0.4, dieSeconds: 0.02 }],
  // A bar of steel rings long, and it jumps twice.
  'dropped chisel': [0, 0.14, 0.21].flatMap((atSeconds, jump) => [2_350, 3_900, 5_600].map((hertz) => ({ atSeconds, hertz, strength: 0.5 / (jump + 1), dieSeconds: 0.09 }))),
  // A board booms, and its other end follows.
  'dropped board': [0, 0.12].flatMap((atSeconds, end) => [85, 190, 420].map((hertz) => ({ atSeconds, hertz, strength: 0.7 / (end + 1), dieSeconds: 0.05 }))),
};

/** One of them, at that peak, half a second long. */
export function impulse(kind: Impulse, peak: number, seed = 8): Float32Array {
  const random = randomNumbers(seed);
  const sound = new Float32Array(RATE_HZ / 2);
  for (const start of new Set(RINGS[kind].map(({ atSeconds }) => atSeconds))) addClick(sound, start, random);
  for (const ring of RINGS[kind]) addRing(sound, ring);
  for (let at = 0; at < sound.length; at += 1) sound[at] = (sound[at] ?? 0) + ECHO_STRENGTH * Math.exp(-at / RATE_HZ / ECHO_DIE_SECONDS) * (2 * random() - 1);
  const loudest = sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return sound.map((sample) => (peak * sample) / loudest);
}

/** The same thing again and again, every so many seconds, over silence. */
export function inARow(kind: Impulse, seconds: number, everySeconds: number, peak: number): Float32Array {
  const sound = new Float32Array(Math.round(seconds * RATE_HZ));
  for (let blow = 0; blow * everySeconds < seconds; blow += 1) {
    const start = Math.round(blow * everySeconds * RATE_HZ);
    impulse(kind, peak, blow + 1).forEach((sample, at) => { if (start + at < sound.length) sound[start + at] = (sound[start + at] ?? 0) + sample; });
  }
  return sound;
}

function addClick(sound: Float32Array, atSeconds: number, random: () => number): void {
  const start = Math.round(atSeconds * RATE_HZ);
  for (let at = 0; at < 6 * CLICK_SECONDS * RATE_HZ && start + at < sound.length; at += 1) {
    sound[start + at] = (sound[start + at] ?? 0) + Math.exp(-at / RATE_HZ / CLICK_SECONDS) * (2 * random() - 1);
  }
}

function addRing(sound: Float32Array, { atSeconds, hertz, strength, dieSeconds }: Ring): void {
  const start = Math.round(atSeconds * RATE_HZ);
  for (let at = 0; start + at < sound.length; at += 1) {
    const time = at / RATE_HZ;
    sound[start + at] = (sound[start + at] ?? 0) + strength * Math.exp(-time / dieSeconds) * Math.sin(2 * Math.PI * hertz * time);
  }
}
