import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestPlacing, USUAL_ORDER, type Placing } from '../../../core/faces/assign.ts';
import { FACES, type Face, type Turn } from '../../../core/faces/face.ts';
import type { Level } from '../../../core/faces/levels.ts';
import { NO_LIKES, type CopyLikes } from '../../../core/faces/likes.ts';
import type { Stand } from '../../../core/faces/stand.ts';
import { anyLikes, anyOrder, legsIn, likes } from './told.ts';

/** The section seen from above, by hand: what looks to front, left, back and right, for the face that looks to the front. */
const NUMBERED_UP: Readonly<Record<Face, string>> = { A: 'ABCD', B: 'BCDA', C: 'CDAB', D: 'DABC' };
const OTHER_UP: Readonly<Record<Face, string>> = { A: 'ADCB', B: 'BADC', C: 'CBAD', D: 'DCBA' };
const SIDES = ['front', 'left', 'back', 'right'];
const towards = ({ front, up }: Turn, side: string): Face => (up === 'numbered' ? NUMBERED_UP : OTHER_UP)[front][SIDES.indexOf(side)] as Face;

interface Leg { readonly copy: number; readonly place: string; readonly turn: Turn }

/** The score once more, straight from what each level says; the most front pairs and the most best faces in front count as whole numbers before the rest. */
function scoreByHand(legs: readonly Leg[], all: readonly CopyLikes[]): Readonly<Record<Level, readonly number[]>> {
  const seen = legs.flatMap(({ copy, place, turn }) => place.split(' ').map((side) => ({ side, told: all[copy - 1]?.faces[towards(turn, side)] ?? {} })));
  const count = (test: (one: (typeof seen)[number]) => boolean): number => seen.filter(test).length;
  const pairs = legs.map((leg, index) => {
    const next = legs[(index + 1) % legs.length];
    if (next === undefined || next === leg) return '';
    const side = leg.place.split(' ').find((one) => next.place.split(' ').includes(one));
    if (side === undefined || (index === legs.length - 1 && legs.every(({ place }) => place.split(' ').includes(side)))) return '';
    const figure = ({ copy, turn }: Leg): string => all[copy - 1]?.faces[towards(turn, side)]?.figure ?? '';
    return figure(leg) !== '' && figure(leg) === figure(next) ? side : '';
  });
  return {
    hidden: [-count(({ told }) => told.wish === 'hide')],
    best: [count(({ side, told }) => side === 'front' && told.wish === 'best'), count(({ told }) => told.wish === 'best')],
    shown: [count(({ told }) => told.wish === 'show')],
    'glue lines': [-count(({ side, told }) => side === 'front' && told.glueLines === true)],
    pairs: [pairs.filter((side) => side === 'front').length, pairs.filter((side) => side !== '' && side !== 'front').length],
    arches: [legs.filter(({ copy, turn }) => all[copy - 1]?.arch === turn.up).length],
    'face marks': [marksOutside(legs, all)],
  };
}

function marksOutside(legs: readonly Leg[], all: readonly CopyLikes[]): number {
  return legs.map(({ copy, place, turn }) => {
    const side = FACES.find((face) => all[copy - 1]?.faces[face]?.mark === 'face side');
    return side !== undefined && place.split(' ').some((one) => towards(turn, one) === side) ? 1 : 0;
  }).reduce<number>((sum, one) => sum + one, 0);
}

/** Every placing with its score, the best first. */
function exhaustively(stand: Stand, all: readonly CopyLikes[], order: readonly Level[]): readonly { readonly legs: readonly Leg[]; readonly score: readonly number[] }[] {
  const found: { legs: readonly Leg[]; score: readonly number[] }[] = [];
  const go = (legs: readonly Leg[]): void => {
    const place = stand.places[legs.length];
    if (place === undefined) {
      const score = scoreByHand(legs, all);
      found.push({ legs, score: order.flatMap((level) => score[level]) });
      return;
    }
    for (let copy = 1; copy <= all.length; copy++) {
      if (legs.some((leg) => leg.copy === copy)) continue;
      for (const turn of stand.turns) if ((all[copy - 1]?.up ?? turn.up) === turn.up) go([...legs, { copy, place: place.name, turn }]);
    }
  };
  go([]);
  return found.sort((one, other) => compare(other.score, one.score));
}

function compare(one: readonly number[], other: readonly number[]): number {
  const at = one.findIndex((digit, index) => digit !== other[index]);
  return at < 0 ? 0 : (one[at] ?? 0) - (other[at] ?? 0);
}

function byHand(legs: readonly { readonly copy: number; readonly place: { readonly name: string }; readonly turn: Turn }[], all: readonly CopyLikes[], order: readonly Level[]): readonly number[] {
  const score = scoreByHand(legs.map(({ copy, place, turn }) => ({ copy, place: place.name, turn })), all);
  return order.flatMap((level) => score[level]);
}

function holdsUp(stand: Stand, all: readonly CopyLikes[], order: readonly Level[]): void {
  const every = exhaustively(stand, all, order);
  const top = every[0]?.score ?? [];
  const best = every.filter(({ score }) => compare(score, top) === 0);
  const worse = every.find(({ score }) => compare(score, top) < 0);
  const found = bestPlacing({ stand, likes: all, order });
  expect(byHand(found.best.legs, all, order)).toEqual(top);
  expect(found.ways).toBe(best.length);
  expect(found.second === undefined).toBe(worse === undefined);
  if (found.second && worse) expect(byHand(found.second.legs, all, order)).toEqual(worse.score);
  const placesOf = (legs: readonly Leg[]): string => legs.map(({ copy }) => copy).join();
  expect(found.asGood !== undefined).toBe(best.some(({ legs }) => placesOf(legs) !== placesOf(found.best.legs.map((leg) => ({ ...leg, place: leg.place.name })))));
  if (found.asGood) expect(byHand(found.asGood.legs, all, order)).toEqual(top);
}

describe('the best placing of legs by their faces', { timeout: 120_000 }, () => {
  it('is as good as the best of every placing and every turn, tried one by one; its ties and its runner-up too', () => {
    for (const places of [['front left', 'front right'], ['front left', 'front middle', 'front right'], ['front left', 'front right', 'back left']]) {
      fc.assert(fc.property(fc.array(anyLikes, { minLength: places.length, maxLength: places.length }), anyOrder, (all, order) => { holdsUp(legsIn(places), all, order); }), { numRuns: 25 });
    }
  });

  it('holds for four legs in four corners as well: all 98,304 ways', () => {
    fc.assert(fc.property(fc.array(anyLikes, { minLength: 4, maxLength: 4 }), (all) => { holdsUp(legsIn(), all, USUAL_ORDER); }), { numRuns: 3 });
  });

  it('is worth the same whatever numbers the legs have', () => {
    fc.assert(fc.property(fc.array(anyLikes, { minLength: 4, maxLength: 4 }), fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }), anyOrder, (all, shuffled, order) => {
      const problem: Placing = { stand: legsIn(), likes: all, order };
      const renumbered = bestPlacing({ ...problem, likes: shuffled.flatMap((index) => all[index] ?? []) });
      const found = bestPlacing(problem);
      expect([renumbered.best.value, renumbered.ways, renumbered.second?.value]).toEqual([found.best.value, found.ways, found.second?.value]);
    }), { numRuns: 60 });
  });

  it('of equally good placings keeps the one in which the legs stand', () => {
    fc.assert(fc.property(fc.array(anyLikes, { minLength: 4, maxLength: 4 }), (all) => {
      const problem: Placing = { stand: legsIn(), likes: all, order: USUAL_ORDER };
      const now = bestPlacing(problem).asGood?.legs;
      if (now === undefined) return;
      expect(bestPlacing({ ...problem, now }).best.legs).toEqual(now);
    }), { numRuns: 60 });
  });
});

describe('what is told of the faces', { timeout: 120_000 }, () => {
  const four = (...texts: readonly string[]): readonly CopyLikes[] => texts.map(likes);
  const placed = (all: readonly CopyLikes[], order = USUAL_ORDER): ReturnType<typeof bestPlacing> => bestPlacing({ stand: legsIn(), likes: all, order });

  it('nothing told: every way is as good, and there is no second best', () => {
    const found = placed([NO_LIKES, NO_LIKES, NO_LIKES, NO_LIKES]);
    expect(found.ways).toBe(24 * 8 ** 4);
    expect(found.second).toBeUndefined();
    expect(found.mayTurn).toEqual([1, 2, 3, 4]);
    expect(found.best.legs.map(({ copy }) => copy)).toEqual([1, 2, 3, 4]);
  });

  it('the best faces come to the front, the fewest are moved for it, and what is to be hidden goes inside', () => {
    const { best } = placed(four('', 'hide C; best A', 'hide B', 'best D; hide B'));
    expect(best.score).toMatchObject({ hidden: 0, best: 2 * 9 + 2 });
    expect(best.legs.filter(({ place }) => place.sides.includes('front')).map(({ copy, turn }) => [copy, turn.front]).sort()).toEqual([[2, 'A'], [4, 'D']]);
  });

  it('hiding counts before the best face, until the maker says otherwise', () => {
    // Both cannot be: the best face of a leg lies between two that are to be hidden.
    const all = four('best A; hide B D', 'best A; hide B D', 'best A; hide B D', 'best A; hide B D');
    expect(placed(all).best.score).toMatchObject({ hidden: -4 });
    expect(placed(four('best A; hide A', '', '', '')).best.score.hidden).toBe(0);
    const others = four('best A; glue lines A', '', '', '');
    expect(placed(others).best.score).toMatchObject({ best: 9 + 1, 'glue lines': -1 });
    expect(placed(others, ['glue lines', ...USUAL_ORDER.filter((level) => level !== 'glue lines')]).best.score).toMatchObject({ best: 1, 'glue lines': 0 });
  });

  it('with the grain end told, that end is up come what may', () => {
    const { best } = placed(four('up other; arch numbered', 'up numbered', 'arch other', ''));
    expect(best.legs.find(({ copy }) => copy === 1)?.turn.up).toBe('other');
    expect(best.legs.find(({ copy }) => copy === 2)?.turn.up).toBe('numbered');
    expect(best.legs.find(({ copy }) => copy === 3)?.turn.up).toBe('other');
  });

  it('pairs that match stand side by side, across the front first', () => {
    const { best } = placed(four('straight A C', 'flat A C', 'straight B D', 'flat B D'));
    // Of the four sides each corner gives two faces, of which one was told: one match in front, one behind or at the sides.
    expect(best.score.pairs).toBeGreaterThanOrEqual(9);
    const [left, right] = ['front left', 'front right'].map((name) => best.legs.find(({ place }) => place.name === name)?.copy);
    expect([[1, 3], [3, 1], [2, 4], [4, 2]]).toContainEqual([left, right]);
  });

  it('twelve legs are weighed too', () => {
    const places = ['front left', ...['a', 'b', 'c', 'd'].map((name) => `front ${name}`), 'front right', 'back right', ...['d', 'c', 'b', 'a'].map((name) => `back ${name}`), 'back left'];
    const all = places.map((_, index) => likes(index % 3 === 0 ? 'best A; hide C' : index % 3 === 1 ? 'straight B; best B' : ''));
    const { best } = bestPlacing({ stand: legsIn(places), likes: all, order: USUAL_ORDER });
    // Eight legs have a best face and six stand in front: two are at the back corners' sides or behind, and show all the same.
    expect(best.score).toMatchObject({ hidden: 0, best: 6 * 25 + 8, pairs: 3 * 25 });
  });
});
