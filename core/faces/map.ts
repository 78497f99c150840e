import type { MortiseAndTenon, Part, PieceFile } from '../piece/file.ts';
import { faceLying, faceTowards, oppositeSide, RING, type Face, type LyingSide, type Side, type Turn } from './face.ts';
import { mortisedSides, sidesIn, type Place } from './stand.ts';

/** Where a joint's mortise is on one copy, and from which face its gauge runs. */
export interface MortiseOn {
  readonly joint: string;
  readonly face: Face;
  readonly side: Side;
  /** The outer face that the mortise is gauged from; absent where neither neighbour of its face looks outwards. */
  readonly gaugeFrom?: Face;
}

/** The map of one upright copy, where it stands and as it is turned. */
export interface LegMap {
  readonly place: Place;
  readonly turn: Turn;
  readonly towards: Readonly<Record<Side, Face>>;
  /** The faces that show: outwards, in the order of the place's name. */
  readonly shows: readonly Face[];
  /** The faces that take mortises, each once. */
  readonly mortised: readonly Face[];
  readonly mortises: readonly MortiseOn[];
  /** The two faces at the corner inside the piece; empty for a part that stands at no corner. */
  readonly insideCorner: readonly Face[];
}

/** The map of a copy of an upright part. */
export function legMap({ joints }: PieceFile, part: Part, placeName: string, turn: Turn): LegMap {
  const place: Place = { name: placeName, sides: sidesIn(placeName) };
  const mortises = joints.flatMap((joint) => (joint.kind === 'mortise and tenon' && joint.mortiseIn === part.id ? mortisesOf(joint, place, turn) : []));
  return {
    place, turn, mortises,
    towards: Object.fromEntries(RING.map((side) => [side, faceTowards(turn, side)])) as Record<Side, Face>,
    shows: place.sides.map((side) => faceTowards(turn, side)),
    mortised: [...new Set(mortises.map(({ face }) => face))].sort(),
    insideCorner: place.sides.length === 2 ? place.sides.map((side) => faceTowards(turn, oppositeSide(side))).sort() : [],
  };
}

function mortisesOf(joint: MortiseAndTenon, place: Place, turn: Turn): readonly MortiseOn[] {
  return mortisedSides(joint, place).map((side) => {
    // The gauge's stock runs on the outer face beside the one that is mortised.
    const outer = place.sides.find((one) => one !== side && one !== oppositeSide(side));
    return { joint: joint.id, side, face: faceTowards(turn, side), ...(outer === undefined ? {} : { gaugeFrom: faceTowards(turn, outer) }) };
  });
}

/** How two copies of one part compare. */
export type Likeness = 'the same' | 'another turn' | 'the other hand';

/** Whether a mark on one is a mark on the other: the same letters, the same end up. Else turned, or left and right. */
export function likeness(one: LegMap, other: LegMap): Likeness {
  const key = ({ turn, mortises }: LegMap): string => JSON.stringify([turn.up, mortises.map(({ joint, face, gaugeFrom }) => [joint, face, gaugeFrom])]);
  if (key(one) === key(other)) return 'the same';
  return handOf(one) === handOf(other) ? 'another turn' : 'the other hand';
}

/** Of two that differ in its sign, each is the mirror image of the other; 0 at no corner. Front left and back right are of one hand, front right and back left of the other: going round, which kind of joint comes first. */
export function handOf({ place }: Pick<LegMap, 'place'>): number {
  const across = place.sides.includes('left') ? 1 : place.sides.includes('right') ? -1 : 0;
  const along = place.sides.includes('front') ? 1 : place.sides.includes('back') ? -1 : 0;
  return across * along;
}

/** Where the faces of a rail look, as it lies. */
export interface RailMap {
  readonly outside: Face;
  readonly inside: Face;
  readonly top: Face;
  readonly bottom: Face;
  /** The end with the number, seen from outside. */
  readonly numberedEnd: 'left' | 'right';
}

export function railMap(turn: Turn): RailMap {
  const at = (side: LyingSide): Face => faceLying(turn, side);
  return { outside: at('outside'), inside: at('inside'), top: at('top'), bottom: at('bottom'), numberedEnd: turn.up === 'numbered' ? 'left' : 'right' };
}
