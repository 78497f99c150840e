import { describe, expect, it } from 'vitest';
import { checkLikings, facesLiked, NO_LIKES, warnOf, withLiking, type Liking } from '../../../core/faces/likes.ts';
import { putBefore } from '../../../core/faces/levels.ts';
import { USUAL_ORDER } from '../../../core/faces/assign.ts';
import { sayLikes } from '../../../core/faces/sayLikes.ts';
import { likes } from './told.ts';

const check = (likings: readonly Liking[], before = NO_LIKES, showing = 2): string => {
  const checked = checkLikings(before, likings, showing);
  return checked.ok ? '' : checked.fault;
};

describe('telling of faces', () => {
  it('a newer wish takes the place of an older, and there is one face side', () => {
    expect(facesLiked(withLiking(likes('show A B'), { faces: ['A'], as: 'hide' }), 'show')).toEqual(['B']);
    const moved = withLiking(likes('face side A'), { faces: ['C'], as: 'face side' });
    expect(facesLiked(moved, 'face side')).toEqual(['C']);
    expect(withLiking(likes('best A; straight A'), { faces: ['A'], as: 'plain' })).toEqual({ faces: {} });
  });

  it('what cannot be is said in plain words', () => {
    expect(check([{ faces: ['A', 'B', 'C', 'D'], as: 'show' }])).toMatch(/^only two faces, side by side, show; faces A, B, C and D would have to/);
    expect(check([{ faces: ['A', 'B', 'C'], as: 'hide' }])).toMatch(/cannot all be hidden: two faces show/);
    expect(check([{ faces: ['A'], as: 'show' }, { faces: ['A'], as: 'hide' }])).toMatch(/^face A is told twice/);
    expect(check([{ faces: ['A', 'B'], as: 'face side' }])).toMatch(/^there is one face side/);
    expect(check([{ faces: ['C'], as: 'face edge' }], likes('face side A'))).toMatch(/lies opposite the face side/);
    expect(check([{ faces: ['A', 'C'], as: 'show' }], NO_LIKES, 1)).toMatch(/only one side shows/);
    expect(check([{ faces: ['A', 'B'], as: 'show' }, { faces: ['C'], as: 'hide' }])).toBe('');
  });

  it('what lies back to back is told, and written down all the same', () => {
    expect(warnOf(likes('show A C'))).toBe('A and C lie back to back: only one of them can show');
    expect(warnOf(likes('hide B D'))).toBe('B and D lie back to back: one of them shows in a corner');
    expect(warnOf(likes('show A B; hide C'))).toBe('');
  });

  it('is said again in one order', () => {
    expect(sayLikes(likes('hide C; show A B; glue lines B D; arch numbered; up other'))).toEqual(['show A and B', 'hide C', 'glue lines on B and D', 'the other end up', 'arches to the numbered end']);
  });

  it('what counts first can be changed, one before another', () => {
    expect(putBefore(USUAL_ORDER, 'pairs', undefined)[0]).toBe('pairs');
    expect(putBefore(USUAL_ORDER, 'arches', 'best').slice(0, 3)).toEqual(['hidden', 'arches', 'best']);
    expect([...putBefore(USUAL_ORDER, 'hidden', 'pairs')].sort()).toEqual([...USUAL_ORDER].sort());
  });
});
