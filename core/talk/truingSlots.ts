import type { Bench } from '../bench/bench.ts';
import type { GapSense, SideMeant } from '../bench/request.ts';
import { readSpokenNumber } from '../length/parseSpoken.ts';
import type { Spot } from '../true/guide.ts';
import type { TruedFace } from '../true/readings.ts';
import { alongSlot } from './measures.ts';
import { namesOf } from './names.ts';
import type { Reading, Slot } from './slot.ts';
import { partSlot } from './subjects.ts';
import { nameKey } from './words.ts';

const FACES: ReadonlyMap<string, TruedFace> = new Map([
  ['reference face', 'face'], ['face', 'face'], ['other face', 'other face'], ['second face', 'other face'],
  ['reference edge', 'edge'], ['edge', 'edge'], ['other edge', 'other edge'], ['second edge', 'other edge'],
]);
const HERE = new Set(['it', 'this', 'this board', 'this one']);
export const SIDE_WORDS: readonly string[] = [...FACES.keys()];

interface Rest { readonly words: readonly string[]; readonly meant: SideMeant }

/** 'leg two', 'the other face of layer two of leg three', 'top board two edge', 'layer two', 'this face', 'it': a side of a board, as far as it is said. */
export const sideSlot: Slot<SideMeant> = {
  longest: 12,
  read: (words, bench) => {
    const rests = faceOf(words).flatMap((rest) => boardOf(rest));
    return rests.flatMap(({ words: left, meant }) => partOf(left, meant, bench));
  },
  samples: ({ state }) => {
    const names = [...namesOf(state.piece).parts.values()].map(({ name, count }) => (count > 1 ? `${name} two` : name));
    return ['it', 'this face', 'reference face', 'other face', 'second edge', 'layer two', 'board two', 'other face of layer two', ...names.flatMap((name, index) => (index % 3 === 0 ? [name] : index % 3 === 1 ? [`other edge of ${name}`] : [`${name} layer three other face`]))];
  },
};

/** The words with the name of a face taken off their end or, before 'of', their beginning; and as they are. */
function faceOf(words: readonly string[]): readonly Rest[] {
  const found: Rest[] = [{ words, meant: {} }];
  for (const length of [1, 2]) {
    const last = FACES.get(nameKey(words.slice(-length)));
    if (last && words.length >= length) found.push({ words: words.slice(0, -length), meant: { face: last } });
    const first = FACES.get(nameKey(words.slice(0, length)));
    if (first && words[length] === 'of') found.push({ words: words.slice(length + 1), meant: { face: first } });
  }
  return found;
}

/** With 'layer two of' before, or 'layer two' behind, taken off. */
function boardOf({ words, meant }: Rest): readonly Rest[] {
  const at = words.findIndex((word) => word === 'layer' || word === 'board');
  const number = at < 0 ? undefined : readSpokenNumber(words.slice(at + 1, at + 2));
  if (!number?.ok || words[at + 1] === undefined) return [{ words, meant }];
  const [before, after] = [words.slice(0, at), words.slice(at + 2)];
  if (before.length > 0 && after.length > 0) return [];
  const rest = before.length > 0 ? before : after[0] === 'of' ? after.slice(1) : after;
  return [{ words: rest, meant: { ...meant, board: number.value } }];
}

function partOf(words: readonly string[], meant: SideMeant, bench: Bench): readonly Reading<SideMeant>[] {
  const name = nameKey(words);
  if (name === '' || name === 'this') return meant.face === undefined && meant.board === undefined ? [] : [{ value: meant }];
  if (HERE.has(name)) return meant.face === undefined && meant.board === undefined ? [{ value: {} }] : [];
  return partSlot.read(words, bench).map((reading): Reading<SideMeant> => ('value' in reading ? { ...reading, value: { ...meant, ...reading.value } } : reading));
}

const SPOTS: ReadonlyMap<string, Spot> = new Map([['marked end', 'marked end'], ['near end', 'marked end'], ['middle', 'middle'], ['far end', 'far end']]);
export const SPOT_WORDS: readonly string[] = [...SPOTS.keys()];

/** 'the middle', 'the far end', 'twelve inches': a place along a board, from its marked end. */
export const spotSlot: Slot<Spot> = {
  longest: 14,
  read: (words, bench) => {
    const spot = SPOTS.get(nameKey(words));
    return spot === undefined ? alongSlot.read(words, bench) : [{ value: spot }];
  },
  samples: (bench) => [...SPOTS.keys(), ...alongSlot.samples(bench).slice(3)],
};

const LEANS: readonly (readonly [string, GapSense])[] = (['left', 'right'] as const).flatMap((end) => ['', ' end', ' high', ' is high', ' end high', ' end is high'].map((more) => `${end}${more}`).concat(['high', 'high on the', 'high at the'].map((before) => `${before} ${end}`)).map((words) => [words, end] as const));
const ACROSS: readonly (readonly [string, GapSense])[] = [['hollow', 'hollow'], ['crowned', 'crowned'], ['high', 'crowned']];
const LIGHTS: readonly (readonly [string, GapSense])[] = [
  ...(['far side', 'at the far side', 'light at the far side'] as const).map((words) => [words, 'far side'] as const),
  ...(['face side', 'at the face', 'light at the face'] as const).map((words) => [words, 'face side'] as const),
];
const SENSES: ReadonlyMap<string, GapSense> = new Map([...LEANS, ...ACROSS, ...LIGHTS].map(([words, sense]) => [nameKey(words.split(' ')), sense]));

/** Which way a gap goes; each instrument shows ways of its own, and only those are listened for with it. */
function sensed(phrases: readonly (readonly [string, GapSense])[]): Slot<GapSense> {
  return {
    longest: 5,
    read: (words) => {
      const sense = SENSES.get(nameKey(words));
      return sense ? [{ value: sense }] : [];
    },
    samples: () => phrases.map(([words]) => words),
  };
}

/** 'left end high', 'hollow', 'at the far side' */
export const senseSlot = sensed([...LEANS, ...ACROSS, ...LIGHTS]);
/** Of winding sticks. */
export const leanSlot = sensed(LEANS);
/** Of a straightedge across. */
export const acrossSlot = sensed(ACROSS);
/** Of a square. */
export const lightSlot = sensed(LIGHTS);
