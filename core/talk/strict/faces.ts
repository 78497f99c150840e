import { all, either, optional } from './expression.ts';
import type { Expression } from './expression.ts';

const FACE = either('a', 'b', 'c', 'd', 'alpha', 'bravo', 'charlie', 'delta');
const FACES = either(FACE, all(FACE, 'and', FACE), all(FACE, FACE), 'all four', 'all four faces');
const WISH = all(either('show', 'hide', 'best'), FACES);
const LEVEL = either('hidden faces', 'hiding', 'best faces', 'shown faces', 'showing', 'glue lines', 'pairs', 'matching', 'matching pairs', 'arches', 'face marks');

/** What is said of faces, word for word. */
export const FACE_SENTENCES: Readonly<Record<'face' | 'faces' | 'likings' | 'quality' | 'level' | 'before', Expression>> = {
  face: FACE, faces: FACES, level: LEVEL, before: LEVEL,
  likings: all(WISH, optional(all(optional('and'), WISH)), optional(all(optional('and'), WISH))),
  quality: either('best', 'best one', 'shown', 'to show', 'hidden', 'to hide', 'face side', 'face edge', 'glue lines', 'straight', 'straight grain', 'quarter grain', 'flat', 'flat grain', 'figured', 'curly', 'plain', 'nothing'),
};
