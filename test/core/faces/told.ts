import fc from 'fast-check';
import { FACES, type End } from '../../../core/faces/face.ts';
import { LEVELS } from '../../../core/faces/levels.ts';
import { FIGURES, withLiking, type CopyLikes, type Quality } from '../../../core/faces/likes.ts';
import { sidesIn, type Stand } from '../../../core/faces/stand.ts';
import { TURNS } from '../../../core/faces/face.ts';

/** Likes as they are told at the bench: 'show A B; hide C; arch numbered; up other'. */
export function likes(text: string): CopyLikes {
  return text.split(';').map((part) => part.trim().split(' ')).reduce<CopyLikes>((so, [what = '', ...rest]) => {
    if (what === 'arch' || what === 'up') return { ...so, [what]: rest[0] as End };
    if (what === '') return so;
    const faces = FACES.filter((face) => rest.includes(face));
    return withLiking(so, { faces, as: rest.filter((word) => !FACES.includes(word as never)).reduce((name, word) => `${name} ${word}`, what) as Quality });
  }, { faces: {} });
}

const end = fc.constantFrom<End>('numbered', 'other');
const faceTold = fc.record({
  wish: fc.constantFrom('show' as const, 'hide' as const, 'best' as const),
  mark: fc.constant('face side' as const), glueLines: fc.constant(true as const), figure: fc.constantFrom(...FIGURES),
}, { requiredKeys: [] });

/** Anything that can be told of a copy, sensible or not. */
export const anyLikes: fc.Arbitrary<CopyLikes> = fc.record({
  faces: fc.record({ A: faceTold, B: faceTold, C: faceTold, D: faceTold }, { requiredKeys: [] }),
  up: end, arch: end,
}, { requiredKeys: ['faces'] });

export const anyOrder = fc.shuffledSubarray([...LEVELS], { minLength: LEVELS.length });

const CORNERS = ['front left', 'front right', 'back right', 'back left'];

/** Legs of square section in the first so many of these places, which stand round the piece. */
export function legsIn(places: readonly string[] = CORNERS): Stand {
  return { kind: 'upright', places: places.map((name) => ({ name, sides: sidesIn(name) })), turns: TURNS };
}
