import { FACES, type Face } from '../faces/face.ts';
import type { Level } from '../faces/levels.ts';
import type { Liking, Quality } from '../faces/likes.ts';
import type { Slot } from './slot.ts';
import { canonical, nameKey } from './words.ts';

/** The letters, as they sound among other words; and names that cannot be taken for each other across a loud shop. */
const LETTERS: ReadonlyMap<string, Face> = new Map([
  ['a', 'A'], ['eh', 'A'], ['alpha', 'A'], ['b', 'B'], ['be', 'B'], ['bee', 'B'], ['bravo', 'B'], ['c', 'C'], ['see', 'C'], ['sea', 'C'], ['charlie', 'C'], ['d', 'D'], ['delta', 'D'],
]);
const ALL: ReadonlySet<string> = new Set(['all', 'every', 'all four', 'all face', 'all four face', 'every face', 'each face']);

/** Some faces: 'A', 'face A', 'faces A and B', 'alpha and bravo', 'all four faces'. The article is a letter here. */
function readFaces(words: readonly string[]): readonly Face[] | undefined {
  const rest = words.filter((word) => word !== 'and');
  if (ALL.has(rest.map(canonical).join(' '))) return FACES;
  const letters = rest.filter((word, index) => index > 0 || canonical(word) !== 'face');
  const faces = letters.map((word) => LETTERS.get(word));
  return faces.length === 0 || words[0] === 'and' || words.at(-1) === 'and' || faces.some((face) => face === undefined) ? undefined : FACES.filter((face) => faces.includes(face));
}

export const facesSlot: Slot<readonly Face[]> = {
  longest: 7,
  read: (words) => {
    const faces = readFaces(words);
    return faces ? [{ value: faces }] : [];
  },
  samples: () => ['a', 'b', 'c', 'd', 'a and b', 'b and c', 'c and d', 'a and d', 'alpha', 'bravo', 'charlie', 'delta', 'alpha and bravo', 'charlie and delta', 'all four'],
};

export const faceSlot: Slot<Face> = {
  longest: 1,
  read: ([word = '']) => {
    const face = LETTERS.get(word);
    return face ? [{ value: face }] : [];
  },
  samples: () => ['a', 'b', 'c', 'd', 'alpha', 'bravo', 'charlie', 'delta'],
};

const WISHES: ReadonlyMap<string, Liking['as']> = new Map([['show', 'show'], ['hide', 'hide'], ['best', 'best']]);

/** Wishes in a row: 'show A and B, hide C', 'best D hide B'. */
export const likingsSlot: Slot<readonly Liking[]> = {
  longest: 16,
  read: (words) => {
    const starts = words.flatMap((word, at) => (WISHES.has(canonical(word)) ? [at] : []));
    if (starts[0] !== 0) return [];
    const likings = starts.map((start, index): Liking | undefined => {
      const told = words.slice(start + 1, starts[index + 1] ?? words.length);
      const faces = readFaces(index < starts.length - 1 && told.at(-1) === 'and' ? told.slice(0, -1) : told);
      const as = WISHES.get(canonical(words[start] ?? ''));
      return faces && as ? { faces, as } : undefined;
    });
    return likings.every((liking) => liking !== undefined) ? [{ value: likings }] : [];
  },
  samples: () => ['show a and b', 'show b and c hide d', 'hide c', 'hide a and d', 'best a', 'best d hide b', 'show alpha and bravo hide charlie', 'hide delta', 'show c and d hide a and b', 'best charlie and hide alpha', 'show all four faces'],
};

const QUALITY_WORDS: ReadonlyMap<string, Quality> = new Map([
  ['best', 'best'], ['best one', 'best'], ['shown', 'show'], ['to show', 'show'], ['hidden', 'hide'], ['to hide', 'hide'], ['face side', 'face side'], ['face edge', 'face edge'], ['glue line', 'glue lines'],
  ['straight', 'straight'], ['straight grain', 'straight'], ['quarter grain', 'straight'], ['flat', 'flat'], ['flat grain', 'flat'], ['figured', 'figured'], ['curly', 'figured'], ['plain', 'plain'], ['nothing', 'plain'],
]);

export const qualitySlot: Slot<Quality> = {
  longest: 3,
  read: (words) => {
    const quality = QUALITY_WORDS.get(nameKey(words));
    return quality ? [{ value: quality }] : [];
  },
  samples: () => ['best', 'best one', 'hidden', 'to show', 'shown', 'to hide', 'face side', 'face edge', 'glue lines', 'straight grain', 'flat grain', 'figured', 'curly', 'straight', 'flat', 'plain', 'nothing'],
};

const LEVEL_NAMES: ReadonlyMap<string, Level> = new Map([
  ['hiding', 'hidden'], ['hidden face', 'hidden'], ['best face', 'best'], ['shown face', 'shown'], ['showing', 'shown'], ['glue line', 'glue lines'], ['pair', 'pairs'], ['matching', 'pairs'], ['matching pair', 'pairs'], ['arch', 'arches'], ['arche', 'arches'], ['face mark', 'face marks'],
]);

export const levelSlot: Slot<Level> = {
  longest: 2,
  read: (words) => {
    const level = LEVEL_NAMES.get(nameKey(words));
    return level ? [{ value: level }] : [];
  },
  samples: () => ['hidden faces', 'hiding', 'best faces', 'shown faces', 'showing', 'glue lines', 'pairs', 'matching', 'arches', 'face marks'],
};
