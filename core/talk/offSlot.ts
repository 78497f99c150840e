import type { Off, Slot } from './slot.ts';
import { nameKey } from './words.ts';

const [LENGTH, WIDTH, THICKNESS] = [['length'], ['width'], ['thickness']];
/** 'A sixteenth long' may be the whole length; 'too long' cannot. */
const WAYS: readonly (readonly [words: string, Off])[] = [
  ...(['short', 'too short'] as const).map((words) => [words, { dimensions: LENGTH, sign: -1 }] as const),
  ...(['narrow', 'too narrow'] as const).map((words) => [words, { dimensions: WIDTH, sign: -1 }] as const),
  ...(['thin', 'too thin'] as const).map((words) => [words, { dimensions: THICKNESS, sign: -1 }] as const),
  ['too long', { dimensions: LENGTH, sign: 1 }], ['too wide', { dimensions: WIDTH, sign: 1 }], ['too thick', { dimensions: THICKNESS, sign: 1 }],
];
const BY_WORDS: ReadonlyMap<string, Off> = new Map(WAYS.map(([words, off]) => [nameKey(words.split(' ')), off]));

/** 'short', 'too wide' */
export const offSlot: Slot<Off> = {
  longest: 2,
  read: (words) => {
    const off = BY_WORDS.get(nameKey(words));
    return off ? [{ value: off }] : [];
  },
  samples: () => WAYS.map(([words]) => words),
};
