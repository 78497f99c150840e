import type { Signal } from '../../core/bench/reply.ts';
import type { Sound } from '../wav.ts';

/** One note: when it begins, how long it sounds, and its pitch. */
export interface Note {
  readonly atMs: number;
  readonly ms: number;
  readonly hertz: number;
}

export interface SignalRecipe {
  readonly notes: readonly Note[];
  /** Louder than the voice by this many decibels. */
  readonly raisedDb: number;
  /** The rhythm, for people: '.' short, '-' long. */
  readonly rhythm: string;
}

export const SIGNAL_RATE = 16_000;
/** The voice's own loudness (kiosk/mouth/loudness.ts): root mean square while a note sounds, -18 dB of full scale. */
const LEVEL_DB = -18;
/** The band in which a signal is heard best through noise and with hearing that has lost its highs. */
export const LOWEST_HERTZ = 500;
export const HIGHEST_HERTZ = 2_500;

const SHORT_MS = 90;
const LONG_MS = 260;

/** Notes one after the other with `gapMs` between them. */
function inTurn(gapMs: number, ...notes: readonly (readonly [ms: number, hertz: number])[]): readonly Note[] {
  let atMs = 0;
  return notes.map(([ms, hertz]) => {
    const note = { atMs, ms, hertz };
    atMs += ms + gapMs;
    return note;
  });
}

/** Every signal has a rhythm of its own as well as a tune, so that it is told apart by either alone. README.md says why each is as it is. */
export const SIGNAL_RECIPES: Readonly<Record<Signal, SignalRecipe>> = {
  heard: { rhythm: '.', raisedDb: 0, notes: inTurn(0, [SHORT_MS, 1_500]) },
  done: { rhythm: '.-', raisedDb: 0, notes: inTurn(30, [SHORT_MS, 1_000], [LONG_MS, 1_500]) },
  'not understood': { rhythm: '..', raisedDb: 0, notes: inTurn(80, [SHORT_MS, 900], [SHORT_MS, 700]) },
  wrong: { rhythm: '...', raisedDb: 0, notes: inTurn(60, [SHORT_MS, 550], [SHORT_MS, 550], [SHORT_MS, 550]) },
  mark: { rhythm: '-', raisedDb: 2, notes: inTurn(0, [500, 1_200]) },
  due: {
    rhythm: '........', raisedDb: 4,
    notes: inTurn(40, ...Array.from({ length: 8 }, (_, index) => [110, index % 2 === 0 ? 1_100 : 1_650] as const)),
  },
};

const RISE_MS = 8;
const FALL_MS = 25;
/** Strength of each harmonic beside the one before it: several tones at once are not all masked by one noise. */
const HARMONIC = 0.5;

/** Renders a signal: samples that begin and end at zero. The same recipe always gives the same samples. */
export function renderSignal({ notes, raisedDb }: SignalRecipe): Sound {
  const endMs = Math.max(...notes.map((note) => note.atMs + note.ms));
  const samples = new Float32Array(Math.round(endMs / 1000 * SIGNAL_RATE) + 1);
  const level = 10 ** ((LEVEL_DB + raisedDb) / 20);
  for (const note of notes) addNote(samples, note, level);
  return { samples, rate: SIGNAL_RATE };
}

/** All signals by name. */
export function renderSignals(): Readonly<Record<Signal, Sound>> {
  const entries = Object.entries(SIGNAL_RECIPES).map(([name, recipe]) => [name, renderSignal(recipe)] as const);
  return Object.fromEntries(entries) as Record<Signal, Sound>;
}

function addNote(samples: Float32Array, { atMs, ms, hertz }: Note, level: number): void {
  const start = Math.round(atMs / 1000 * SIGNAL_RATE);
  const count = Math.round(ms / 1000 * SIGNAL_RATE);
  const harmonics = harmonicsOf(hertz);
  const loudness = Math.sqrt(harmonics.reduce((sum, { strength }) => sum + strength ** 2 / 2, 0));
  for (let index = 0; index < count; index++) {
    const seconds = index / SIGNAL_RATE;
    const wave = harmonics.reduce((sum, harmonic) => sum + harmonic.strength * Math.sin(2 * Math.PI * harmonic.hertz * seconds), 0);
    samples[start + index] = (samples[start + index] ?? 0) + level / loudness * envelope(1000 * seconds, ms) * wave;
  }
}

function harmonicsOf(hertz: number): readonly { readonly hertz: number; readonly strength: number }[] {
  const count = Math.floor(HIGHEST_HERTZ / hertz);
  return Array.from({ length: count }, (_, index) => ({ hertz: hertz * (index + 1), strength: HARMONIC ** index }));
}

/** Rises and falls as a half cosine, so that no note clicks. */
function envelope(atMs: number, lengthMs: number): number {
  const halfCosine = (part: number) => (1 - Math.cos(Math.PI * Math.min(Math.max(part, 0), 1))) / 2;
  return halfCosine(atMs / RISE_MS) * halfCosine((lengthMs - atMs) / FALL_MS);
}
