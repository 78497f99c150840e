import { all, either, optional, rarely } from './expression.ts';
import type { Expression } from './expression.ts';
import { RARE } from './numbers.ts';

const LETTERS = ['a', 'b', 'c', 'd'];
const NAMES = ['alpha', 'bravo', 'charlie', 'delta'];

const FACE = either(...LETTERS, ...NAMES);
/** Two in the order of the alphabet, by their letters or by their names. */
const FACES = either(FACE, ...[LETTERS, NAMES].flatMap((words) => words.flatMap((one, at) => (at < words.length - 1 ? [all(one, 'and', either(...words.slice(at + 1)))] : []))), 'all four', 'all four faces');
const WISH = all(either('show', 'hide', 'best'), FACES);
const LEVEL = either('hidden faces', 'hiding', 'best faces', 'shown faces', 'showing', 'glue lines', 'pairs', 'matching', 'matching pairs', 'arches', 'face marks');

/** What is said of faces, word for word. */
export const FACE_SENTENCES: Readonly<Record<'face' | 'faces' | 'likings' | 'quality' | 'level' | 'before', Expression>> = {
  face: FACE, faces: FACES, level: LEVEL, before: LEVEL,
  likings: all(WISH, optional(all(optional('and'), WISH)), optional(rarely(all(optional('and'), WISH), RARE))),
  quality: either('best', 'best one', 'shown', 'to show', 'hidden', 'to hide', 'face side', 'face edge', 'glue lines', 'straight', 'straight grain', 'quarter grain', 'flat', 'flat grain', 'figured', 'curly', 'plain', 'nothing'),
};
