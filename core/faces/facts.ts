import { faceLying, faceTowards, type Face, type Side, type Turn } from './face.ts';
import { frontWeight, LEVELS, type Level, type Score } from './levels.ts';
import { facesLiked, told, type CopyLikes, type Figure } from './likes.ts';
import { sharedSide, type Place, type Stand } from './stand.ts';

/** One copy in its place. */
export interface Placed {
  readonly copy: number;
  readonly place: Place;
  readonly turn: Turn;
}

/** One thing that speaks for a placing, or with a worth below nothing against it. */
export interface Fact {
  readonly level: Level;
  readonly worth: number;
  readonly copies: readonly number[];
  readonly face?: Face;
  readonly what: 'shows though hidden' | 'best to the front' | 'best shows' | 'shown' | 'glue lines to the front' | 'match' | 'arch up' | 'face mark outside';
  readonly side?: Side;
}

/** The faces that are seen of a copy, with the side that each looks to. */
export function seen({ kind }: Stand, { place, turn }: Omit<Placed, 'copy'>): readonly { readonly face: Face; readonly side: Side }[] {
  if (kind === 'upright') return place.sides.map((side) => ({ side, face: faceTowards(turn, side) }));
  return place.sides.slice(0, 1).map((side) => ({ side, face: faceLying(turn, 'outside') }));
}

/** All that can be said of one copy where it stands, by what was told of it. */
export function factsOfOne(stand: Stand, placed: Placed, likes: CopyLikes, copies: number): readonly Fact[] {
  const { copy, turn } = placed;
  const fact = (level: Level, worth: number, what: Fact['what'], face?: Face): Fact => ({ level, worth, what, copies: [copy], ...(face === undefined ? {} : { face }) });
  const outside = seen(stand, placed).flatMap(({ face, side }) => {
    const { wish, glueLines } = told(likes, face);
    return [
      ...(wish === 'hide' ? [fact('hidden', -1, 'shows though hidden', face)] : []),
      ...(wish === 'best' ? [fact('best', 1, 'best shows', face), ...(side === 'front' ? [fact('best', frontWeight(copies), 'best to the front', face)] : [])] : []),
      ...(wish === 'show' ? [fact('shown', 1, 'shown', face)] : []),
      ...(glueLines && side === 'front' ? [fact('glue lines', -1, 'glue lines to the front', face)] : []),
    ];
  });
  const arch = stand.kind === 'upright' && likes.arch !== undefined && likes.arch === turn.up ? [fact('arches', 1, 'arch up')] : [];
  return [...outside, ...arch, ...marksOutside(stand, placed, likes).map((face) => fact('face marks', 1, 'face mark outside', face))];
}

/** Of a leg both marks belong outside, where the gauge runs; of a rail the face side outside and the face edge on top. */
function marksOutside(stand: Stand, placed: Placed, likes: CopyLikes): readonly Face[] {
  const [side, edge] = [facesLiked(likes, 'face side')[0], facesLiked(likes, 'face edge')[0]];
  const outside = seen(stand, placed).map(({ face }) => face);
  if (stand.kind === 'upright') return [side, edge].filter((face) => face !== undefined && outside.includes(face)) as readonly Face[];
  return [...(side !== undefined && outside.includes(side) ? [side] : []), ...(edge !== undefined && edge === faceLying(placed.turn, 'top') ? [edge] : [])];
}

/** The figure of the face that looks to that side; what was not told matches nothing. */
export function figureTowards(stand: Stand, placed: Omit<Placed, 'copy'>, likes: CopyLikes, side: Side | undefined): Figure | undefined {
  const face = seen(stand, placed).find((one) => one.side === side)?.face;
  return face === undefined ? undefined : told(likes, face).figure;
}

/** Neighbours round the piece, each pair once, with the side that they look to together. In one row the two ends are no neighbours. */
export function neighbours(places: readonly Place[]): readonly { readonly first: number; readonly second: number; readonly side: Side }[] {
  return places.flatMap((place, first) => {
    const second = (first + 1) % places.length;
    const next = places[second];
    const side = next && next !== place ? sharedSide(place, next) : undefined;
    const inOneRow = side !== undefined && second === 0 && places.every(({ sides }) => sides.includes(side));
    return side === undefined || inOneRow ? [] : [{ first, second, side }];
  });
}

/** All that can be said of a whole placing; the copies in the order of the places round the piece. */
export function factsOf(stand: Stand, all: readonly Placed[], likesOf: (copy: number) => CopyLikes): readonly Fact[] {
  const pairs = neighbours(all.map(({ place }) => place)).flatMap(({ first, second, side }): Fact[] => {
    const [one, other] = [all[first], all[second]];
    if (one === undefined || other === undefined) return [];
    const figure = figureTowards(stand, one, likesOf(one.copy), side);
    return figure !== undefined && figure === figureTowards(stand, other, likesOf(other.copy), side)
      ? [{ level: 'pairs', worth: pairWorth(side, all.length), what: 'match', copies: [one.copy, other.copy].sort((a, b) => a - b), side }] : [];
  });
  return [...all.flatMap((placed) => factsOfOne(stand, placed, likesOf(placed.copy), all.length)), ...pairs];
}

/** A pair across the front is worth more than all pairs elsewhere. */
export function pairWorth(side: Side, copies: number): number {
  return side === 'front' ? frontWeight(copies) : 1;
}

export function scoreOf(facts: readonly Fact[]): Score {
  const of = (level: Level): number => facts.filter((fact) => fact.level === level).reduce((sum, { worth }) => sum + worth, 0);
  return Object.fromEntries(LEVELS.map((level) => [level, of(level)])) as Record<Level, number>;
}
