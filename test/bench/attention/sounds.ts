import { randomNumbers, RATE_HZ } from '../../voice/sound.ts';

/** Steady noise of a fan: low-passed, with the hum of its motor; root mean square 1. */
export function fan(seconds: number, seed = 7): Float32Array {
  const random = randomNumbers(seed);
  let low = 0;
  return toRms(Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, (_, at) => {
    low += 0.15 * (random() * 2 - 1 - low);
    return low + 0.1 * Math.sin((2 * Math.PI * 118 * at) / RATE_HZ);
  }), 1);
}

const SCALE_HZ = [220, 247, 262, 294, 330, 349, 392] as const;
const BEAT_SECONDS = 0.5;

/** Something like music: a chord that changes every other second, a tune over it with vibrato, a drum on each beat; root mean square 1. */
export function music(seconds: number, seed = 3): Float32Array {
  const random = randomNumbers(seed);
  const pick = () => SCALE_HZ[Math.floor(random() * SCALE_HZ.length)] ?? 220;
  const sound = new Float32Array(Math.round(seconds * RATE_HZ));
  for (let beat = 0; beat * BEAT_SECONDS < seconds; beat += 1) {
    const start = Math.round(beat * BEAT_SECONDS * RATE_HZ);
    addDrum(sound, start, random);
    addTone(sound, start, BEAT_SECONDS, 2 * pick(), 0.3, 5);
    if (beat % 4 === 0) for (const part of [1, 1.26, 1.5]) addTone(sound, start, 4 * BEAT_SECONDS, part * pick(), 0.15, 0);
  }
  return toRms(sound, 1);
}

function addTone(sound: Float32Array, start: number, seconds: number, hertz: number, strength: number, vibratoHz: number): void {
  const length = Math.min(Math.round(seconds * RATE_HZ), sound.length - start);
  for (let at = 0; at < length; at += 1) {
    const time = at / RATE_HZ;
    const phase = 2 * Math.PI * hertz * time + (vibratoHz > 0 ? 0.6 * Math.sin(2 * Math.PI * vibratoHz * time) : 0);
    const envelope = Math.min(1, at / 400) * Math.exp(-1.5 * time);
    sound[start + at] = (sound[start + at] ?? 0) + strength * envelope * (Math.sin(phase) + 0.5 * Math.sin(2 * phase) + 0.25 * Math.sin(3 * phase));
  }
}

function addDrum(sound: Float32Array, start: number, random: () => number): void {
  for (let at = 0; at < 2_400 && start + at < sound.length; at += 1) {
    const time = at / RATE_HZ;
    sound[start + at] = (sound[start + at] ?? 0) + Math.exp(-30 * time) * (0.5 * (random() * 2 - 1) + Math.sin(2 * Math.PI * 90 * time));
  }
}

/** As a small radio sounds: what is below `lowestHz` and above `highestHz` falls by 12 dB an octave. */
export function bandLimited(sound: Float32Array, lowestHz = 200, highestHz = 4_500): Float32Array {
  return twice(twice(sound, (each) => highPassed(each, lowestHz)), (each) => lowPassed(each, highestHz));
}

function twice(sound: Float32Array, filter: (sound: Float32Array) => Float32Array): Float32Array {
  return filter(filter(sound));
}

function lowPassed(sound: Float32Array, hertz: number): Float32Array {
  const share = 1 - Math.exp((-2 * Math.PI * hertz) / RATE_HZ);
  let low = 0;
  return sound.map((sample) => (low += share * (sample - low)));
}

function highPassed(sound: Float32Array, hertz: number): Float32Array {
  const low = lowPassed(sound, hertz);
  return sound.map((sample, at) => sample - (low[at] ?? 0));
}

function rms(sound: Float32Array): number {
  return Math.sqrt(sound.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, sound.length));
}

/** Root mean square over the parts that sound. */
export function speechRms(sound: Float32Array): number {
  const loudest = sound.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return rms(sound.filter((sample) => Math.abs(sample) > loudest / 50));
}

export function toRms(sound: Float32Array, wanted: number): Float32Array {
  const factor = wanted / Math.max(1e-9, rms(sound));
  return sound.map((sample) => sample * factor);
}

export function scaled(sound: Float32Array, decibels: number): Float32Array {
  const factor = 10 ** (decibels / 20);
  return sound.map((sample) => sample * factor);
}
