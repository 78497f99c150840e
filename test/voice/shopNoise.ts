import { randomNumbers, RATE_HZ } from './sound.ts';

/** Plane strokes, one in a second: noise around 2 to 4 kHz that swells and dies, given by its peak. */
export function planing(seconds: number, peak: number): Float32Array {
  const random = randomNumbers(5);
  let low = 0;
  return Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, (_, at) => {
    const white = random() * 2 - 1;
    low += 0.45 * (white - low);
    const stroke = Math.max(0, Math.sin((2 * Math.PI * at) / RATE_HZ));
    return peak * (stroke * (white - low) + 0.002 * white);
  });
}

/** Mallet on chisel: blows at uneven times, each a click and a ring at 310 Hz. */
export function blows(seconds: number, peak: number): Float32Array {
  const random = randomNumbers(6);
  const sound = new Float32Array(Math.round(seconds * RATE_HZ));
  for (let at = 0; at < sound.length; at += Math.round((0.4 + 0.7 * random()) * RATE_HZ)) {
    for (let after = 0; after < 4_800 && at + after < sound.length; after += 1) {
      const time = after / RATE_HZ;
      sound[at + after] = (sound[at + after] ?? 0) + peak * (Math.exp(-60 * time) * (random() * 2 - 1) + 0.8 * Math.exp(-25 * time) * Math.sin(2 * Math.PI * 310 * time));
    }
  }
  return sound;
}
