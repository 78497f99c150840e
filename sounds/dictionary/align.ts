import { PHONES } from '../../kiosk/ear/graph/phones.ts';
import type { Pronunciation } from '../../kiosk/ear/graph/phones.ts';

/** A word and one way to say it. */
export interface Entry { readonly word: string; readonly sounds: Pronunciation }

/** For each letter of a word, the sounds that it stands for: none, one or two. */
export type Aligned = readonly Pronunciation[];

const ROUNDS = 4;
const MOST_SOUNDS = 2;
const CHUNKS = (PHONES.length + 1) ** MOST_SOUNDS;
const LETTERS = "abcdefghijklmnopqrstuvwxyz'";

/**
 * Finds which sounds each letter stands for, knowing nothing but that they come in the same order: expectation maximisation over all ways to share the
 * sounds out (A. Dempster, N. Laird, D. Rubin, 1977), then the likeliest way of each word. Words with more than two sounds to a letter are left out.
 */
export function align(entries: readonly Entry[]): Map<Entry, Aligned> {
  let chance = new Float64Array(LETTERS.length * CHUNKS).fill(1);
  for (let round = 0; round < ROUNDS; round += 1) {
    const counts = new Float64Array(chance.length);
    for (const entry of entries) countWays(entry, chance, counts);
    chance = perLetter(counts);
  }
  const aligned = new Map<Entry, Aligned>();
  for (const entry of entries) {
    const best = likeliest(entry, chance);
    if (best !== undefined) aligned.set(entry, best);
  }
  return aligned;
}

/** The cell of "this letter stands for sounds[from, to)". */
function cell(letter: string, sounds: Pronunciation, from: number, to: number): number {
  let chunk = 0;
  for (let at = from; at < to; at += 1) chunk = chunk * (PHONES.length + 1) + (sounds[at] ?? 0) + 1;
  return LETTERS.indexOf(letter) * CHUNKS + chunk;
}

/** Adds to the counts how likely each share is within its word: forward and backward sums. */
function countWays({ word, sounds }: Entry, chance: Float64Array, counts: Float64Array): void {
  const width = sounds.length + 1;
  const before = new Float64Array((word.length + 1) * width);
  const after = new Float64Array((word.length + 1) * width);
  before[0] = 1;
  after[word.length * width + sounds.length] = 1;
  forEachShare(word, sounds, (letter, from, to, at) => {
    before[(letter + 1) * width + to] = (before[(letter + 1) * width + to] ?? 0) + (before[letter * width + from] ?? 0) * (chance[at] ?? 0);
  });
  const shares: [number, number, number, number][] = [];
  forEachShare(word, sounds, (...share) => shares.push(share));
  for (const [letter, from, to, at] of shares.reverse()) {
    after[letter * width + from] = (after[letter * width + from] ?? 0) + (after[(letter + 1) * width + to] ?? 0) * (chance[at] ?? 0);
  }
  const whole = after[0] ?? 0;
  if (whole === 0) return;
  for (const [letter, from, to, at] of shares) {
    counts[at] = (counts[at] ?? 0) + ((before[letter * width + from] ?? 0) * (chance[at] ?? 0) * (after[(letter + 1) * width + to] ?? 0)) / whole;
  }
}

function forEachShare(word: string, sounds: Pronunciation, take: (letter: number, from: number, to: number, at: number) => void): void {
  for (let letter = 0; letter < word.length; letter += 1) {
    for (let from = 0; from <= sounds.length; from += 1) {
      for (let to = from; to <= Math.min(sounds.length, from + MOST_SOUNDS); to += 1) take(letter, from, to, cell(word[letter] ?? '', sounds, from, to));
    }
  }
}

function perLetter(counts: Float64Array): Float64Array<ArrayBuffer> {
  const chance = new Float64Array(counts.length);
  for (let letter = 0; letter < LETTERS.length; letter += 1) {
    const row = counts.subarray(letter * CHUNKS, (letter + 1) * CHUNKS);
    const sum = row.reduce((total, count) => total + count, 0);
    row.forEach((count, chunk) => { chance[letter * CHUNKS + chunk] = sum === 0 ? 0 : count / sum; });
  }
  return chance;
}

function likeliest({ word, sounds }: Entry, chance: Float64Array): Aligned | undefined {
  const width = sounds.length + 1;
  const best = new Float64Array((word.length + 1) * width);
  const cameFrom = new Int32Array(best.length).fill(-1);
  best[0] = 1;
  forEachShare(word, sounds, (letter, from, to, at) => {
    const here = (best[letter * width + from] ?? 0) * (chance[at] ?? 0);
    const there = (letter + 1) * width + to;
    if (here <= (best[there] ?? 0)) return;
    best[there] = here;
    cameFrom[there] = from;
  });
  if (best[word.length * width + sounds.length] === 0) return undefined;
  const parts: Pronunciation[] = [];
  let to = sounds.length;
  for (let letter = word.length; letter > 0; letter -= 1) {
    const from = cameFrom[letter * width + to] ?? 0;
    parts.unshift(sounds.slice(from, to));
    to = from;
  }
  return parts;
}
