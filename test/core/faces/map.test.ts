import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TURNS, type Side } from '../../../core/faces/face.ts';
import { legMap, likeness, railMap, type LegMap } from '../../../core/faces/map.ts';
import { mortisedSides, sidesIn, standOf } from '../../../core/faces/stand.ts';
import type { Part } from '../../../core/piece/file.ts';
import { bakersTable } from '../work/pieces.ts';

const { file } = bakersTable();
const leg = file.parts.find(({ id }) => id === 'leg') as Part;
const PLACES = leg.places ?? [];
const turn = fc.constantFrom(...TURNS);
const MIRROR: Readonly<Record<Side, Side>> = { front: 'front', back: 'back', left: 'right', right: 'left' };
const mirrored = (place: string): string => (place.includes('left') ? place.replace('left', 'right') : place.replace('right', 'left'));
/** Which side each joint opens to, and from which side it is gauged. */
const sidesOf = ({ mortises, towards }: LegMap, side: (one: Side) => Side = (one) => one): readonly string[] => mortises.map(({ joint, side: opens, gaugeFrom }) => {
  const from = (Object.keys(towards) as Side[]).find((one) => towards[one] === gaugeFrom) ?? 'front';
  return `${joint} ${side(opens)} from ${side(from)}`;
}).sort();

describe('the map of a leg', () => {
  it('of one front leg is the mirror image of the other', () => {
    fc.assert(fc.property(fc.constantFrom(...PLACES), turn, turn, (place, one, other) => {
      expect(sidesOf(legMap(file, leg, mirrored(place), other))).toEqual(sidesOf(legMap(file, leg, place, one), (side) => MIRROR[side]));
    }));
  });

  it('shows two faces side by side, and takes its mortises in the other two, at the inside corner', () => {
    fc.assert(fc.property(fc.constantFrom(...PLACES), turn, (place, one) => {
      const { shows, mortised, insideCorner, mortises } = legMap(file, leg, place, one);
      expect(shows).toHaveLength(2);
      expect(Math.abs('ABCD'.indexOf(shows[0] ?? '') - 'ABCD'.indexOf(shows[1] ?? '')) % 2).toBe(1);
      expect(mortised).toEqual(insideCorner);
      expect([...mortised, ...shows].sort()).toEqual(['A', 'B', 'C', 'D']);
      for (const { gaugeFrom } of mortises) expect(shows).toContain(gaugeFrom);
    }));
  });

  it('by hand: front left with A to the front has B to the left, the long rail in D and the short rail in C', () => {
    const map = legMap(file, leg, 'front left', { front: 'A', up: 'numbered' });
    expect(map.towards).toEqual({ front: 'A', left: 'B', back: 'C', right: 'D' });
    expect(map.mortises.map(({ joint, face, gaugeFrom }) => [joint, face, gaugeFrom])).toEqual([['longRailTenon', 'D', 'A'], ['shortRailTenon', 'C', 'B'], ['sideStretcherTenon', 'C', 'B']]);
    // The back legs take the back stretcher as well.
    expect(legMap(file, leg, 'back left', { front: 'A', up: 'numbered' }).mortises.map(({ joint }) => joint)).toContain('backStretcherTenon');
    expect(legMap(file, leg, 'front left', { front: 'A', up: 'other' }).towards).toEqual({ front: 'A', right: 'B', back: 'C', left: 'D' });
  });

  it('tells the other hand from another turn, and both from the same map', () => {
    const map = (place: string, front: 'A' | 'B' | 'C' | 'D' = 'A'): LegMap => legMap(file, leg, place, { front, up: 'numbered' });
    expect(likeness(map('front left'), map('front left'))).toBe('the same');
    expect(likeness(map('front left'), map('front left', 'B'))).toBe('another turn');
    expect(likeness(map('front left'), map('front right'))).toBe('the other hand');
    expect(likeness(map('front left'), map('back right', 'C'))).toBe('another turn');
  });
});

describe('where parts stand', () => {
  it('is read from the names of their places, round the piece', () => {
    const stand = standOf(file, leg, true);
    expect(stand.ok && [stand.value.kind, stand.value.places.map(({ name }) => name), stand.value.turns.length]).toEqual(['upright', ['front left', 'front right', 'back right', 'back left'], 8]);
    const oblong = standOf(file, leg, false);
    expect(oblong.ok && oblong.value.turns.map(({ front }) => front)).toEqual(['A', 'C', 'A', 'C']);
  });

  it('is told, where a part cannot be placed by its faces', () => {
    const of = (change: Partial<Part>): unknown => standOf(file, { ...leg, ...change }, true);
    const placeless = Object.fromEntries(Object.entries(leg).filter(([key]) => key !== 'places')) as unknown as Part;
    expect(standOf(file, placeless, true)).toMatchObject({ ok: false, fault: expect.stringMatching(/names no places for the leg/) as unknown });
    expect(of({ places: ['one', 'two', 'three', 'four'] })).toMatchObject({ ok: false, fault: expect.stringMatching(/place one of the leg does not say which sides/) as unknown });
    expect(of({ count: 13, places: Array.from({ length: 13 }, (_one, index) => `front ${index}`) })).toMatchObject({ ok: false, fault: expect.stringMatching(/13 copies; up to 12/) as unknown });
  });

  it('a leg in the middle of the front shows one face and takes long rails in both beside it', () => {
    const joint = file.joints.find(({ id }) => id === 'longRailTenon');
    if (joint?.kind !== 'mortise and tenon') throw new Error('the long rail is not tenoned');
    expect(mortisedSides(joint, { name: 'front middle', sides: sidesIn('front middle') })).toEqual(['left', 'right']);
  });

  it('a rail with its numbered end to the left has B below; turned end for end, B above', () => {
    expect(railMap({ front: 'A', up: 'numbered' })).toEqual({ outside: 'A', bottom: 'B', inside: 'C', top: 'D', numberedEnd: 'left' });
    expect(railMap({ front: 'A', up: 'other' })).toMatchObject({ top: 'B', bottom: 'D', numberedEnd: 'right' });
  });
});
