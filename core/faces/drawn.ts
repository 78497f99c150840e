import { faceTowards, oppositeSide, RING, type Face, type Side, type Turn } from './face.ts';
import { handOf } from './map.ts';
import { sidesIn, type Place } from './stand.ts';

/** Where a copy of an upright part stands, and which way it is turned once somebody said so. */
export interface Standing {
  readonly place: Place;
  readonly turn?: Turn;
}

/** A face of an upright part as it is drawn, and as the drawing is laid on the wood: seen from outside, the top end to the left. */
export interface DrawnFace {
  readonly side: Side;
  readonly face?: Face;
  /** The faces beyond its two long edges. */
  readonly upper: DrawnEdge;
  readonly lower: DrawnEdge;
  /** Along which of them the gauge's stock runs: the outer one. */
  readonly gaugeFrom: 'upper' | 'lower';
}

export interface DrawnEdge {
  readonly side: Side;
  readonly face?: Face;
  readonly outer: boolean;
}

export function standingAt(placeName: string, turn?: Turn): Standing {
  return { place: { name: placeName, sides: sidesIn(placeName) }, ...(turn === undefined ? {} : { turn }) };
}

/** A leg that stands, its face towards the eye, is laid over to the left: what was on the right comes up. */
export function drawnFace(standing: Standing, side: Side): DrawnFace {
  const { place, turn } = standing;
  // The ring runs clockwise seen from above: before a side comes what is on the right of who looks at it.
  const right = RING[(RING.indexOf(side) + RING.length - 1) % RING.length] ?? side;
  const edge = (towards: Side): DrawnEdge => ({ side: towards, outer: place.sides.includes(towards), ...letter(turn, towards) });
  const [upper, lower] = [edge(right), edge(oppositeSide(right))];
  return { side, ...letter(turn, side), upper, lower, gaugeFrom: lower.outer && !upper.outer ? 'lower' : 'upper' };
}

function letter(turn: Turn | undefined, side: Side): { readonly face?: Face } {
  return turn === undefined ? {} : { face: faceTowards(turn, side) };
}

/** The other copies that stand at a corner: those of the same hand as this one, and those that are its mirror image. */
export interface Hands {
  readonly alike: readonly number[];
  readonly mirrored: readonly number[];
}

/** `placeOf` is undefined for a copy that nobody has put anywhere. Both lists are empty when this copy is at no corner. */
export function handsBeside(copy: number, count: number, placeOf: (copy: number) => string | undefined): Hands {
  const hand = (one: number): number => { const place = placeOf(one); return place === undefined ? 0 : handOf(standingAt(place)); };
  const own = hand(copy);
  const others = Array.from({ length: count }, (_, index) => index + 1).filter((one) => one !== copy && own !== 0);
  return { alike: others.filter((one) => hand(one) === own), mirrored: others.filter((one) => hand(one) === -own) };
}
