import type { MortiseAndTenon, Part, PieceFile } from '../piece/file.ts';
import { failure, success, type Result } from '../result.ts';
import { RING, TURNS, type Side, type Turn } from './face.ts';

/** How the copies of a part stand in the piece, and so which of their faces are seen. */
export interface Stand {
  /** Upright: a leg, mortised. Lying: a rail, tenoned. */
  readonly kind: 'upright' | 'lying';
  /** Round the piece, clockwise seen from above, from the front left. */
  readonly places: readonly Place[];
  /** The turns in which it has its width and its thickness where the piece wants them. */
  readonly turns: readonly Turn[];
}

export interface Place {
  readonly name: string;
  /** The sides of the piece that it stands on: two at a corner. Of a part that lies there is one. */
  readonly sides: readonly Side[];
}

/** The search looks at every placing; beyond this many copies it would take longer than a moment. */
export const MOST_COPIES = 12;

/** In the name of a place, 'front left': the sides that it is on. */
export function sidesIn(place: string): readonly Side[] {
  const words = place.toLowerCase().split(/[\s-]+/);
  return RING.filter((side) => words.includes(side));
}

/**
 * How a part stands, from its places and its joints; a sentence why it cannot be placed by its faces, else. `square`: width and
 * thickness are one size, so that a quarter turn changes nothing.
 */
export function standOf({ joints }: PieceFile, part: Part, square: boolean): Result<Stand, string> {
  const tenoned = joints.some((joint) => joint.kind === 'mortise and tenon' && joint.tenonOn === part.id);
  const mortised = joints.some((joint) => joint.kind === 'mortise and tenon' && joint.mortiseIn === part.id);
  const kind = tenoned || !mortised ? 'lying' : 'upright';
  if (part.places === undefined) return failure(`The piece file names no places for the ${part.name}. Give it some, such as front left, and load it again`);
  const places = part.places.map((name) => ({ name, sides: sidesIn(name) }));
  const lost = places.find(({ sides }) => sides.length === 0 || (sides.length > 1 && !isCorner(sides)) || (kind === 'lying' && sides.length > 1));
  if (lost) return failure(`The place ${lost.name} of the ${part.name} does not say which sides it shows. Name it by them: ${kind === 'upright' ? 'front left' : 'front'}`);
  if (part.count > MOST_COPIES) return failure(`That is ${part.count} copies; up to ${MOST_COPIES} can be weighed against each other. Place them one by one`);
  return success({ kind, places: roundThePiece(places), turns: TURNS.filter(({ front }) => square || front === 'A' || front === 'C') });
}

function isCorner(sides: readonly Side[]): boolean {
  return sides.length === 2 && sides.filter((side) => side === 'front' || side === 'back').length === 1;
}

/** Along the front from the left, up the right side, back along the back, down the left side: neighbours share a side. */
function roundThePiece(places: readonly Place[]): readonly Place[] {
  const at = ({ sides }: Place): number => {
    const has = (side: Side): boolean => sides.includes(side);
    if (sides.length === 2) return has('front') ? (has('left') ? 0 : 2) : has('right') ? 4 : 6;
    return has('front') ? 1 : has('right') ? 3 : has('back') ? 5 : 7;
  };
  const inOrder = places.map((place, index) => ({ place, index, at: at(place) }));
  // Along the back and the left side the walk goes against the order in which the places are read.
  return inOrder.sort((one, other) => one.at - other.at || (one.at === 5 || one.at === 7 ? other.index - one.index : one.index - other.index)).map(({ place }) => place);
}

/** The side that two neighbours look to together; undefined when they do not stand side by side. */
export function sharedSide(one: Place, other: Place): Side | undefined {
  return one.sides.find((side) => other.sides.includes(side));
}

/** Which sides of an upright part a joint's mortises open to at that place: from there the rail comes. */
export function mortisedSides(joint: MortiseAndTenon, place: Place): readonly Side[] {
  if (joint.places !== undefined && !joint.places.includes(place.name)) return [];
  const along: readonly Side[] = (joint.mortiseInto ?? 'width') === 'width' ? ['left', 'right'] : ['front', 'back'];
  const outside = along.filter((side) => place.sides.includes(side));
  return along.filter((side) => outside.length === 0 || !outside.includes(side));
}
