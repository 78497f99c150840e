import { add, subtract } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import { cheekAreaMm2, farCheek, squareTenon, type TenonPlace, type TenonSteps } from './solid.ts';

/** A tenon that comes into a leg, with the longest that the leg alone allows it. */
export interface Comer extends TenonPlace {
  readonly most: Length;
}

export interface MeetingLimits {
  /** End of a tenon to the bottom of its mortise. */
  readonly clearance: Length;
  /** Wood between two mortises that do not open into each other. */
  readonly web: Length;
}

export type MeetingWay = 'clear of each other' | 'first runs past' | 'second runs past' | 'mitred' | 'stepped';

/** One way for two tenons to share a leg: each as long as it can be without hitting the other. */
export interface Meeting {
  readonly way: MeetingWay;
  readonly first: TenonSteps;
  readonly second: TenonSteps;
  /** Only of the mitred way: between the cheek and the mitre. 45 for tenons of one thickness. */
  readonly mitreDegrees?: readonly [first: number, second: number];
}

/**
 * The longest square-ended tenon beside a neighbour whose own length is settled. Seen from the end of the leg, with the outer corner as the
 * origin, the tenons run along the two axes: they can only meet where each has passed the other's inner cheek.
 */
export function longestBeside(self: Comer, other: TenonPlace, otherLength: Length, limits: MeetingLimits): Length {
  const otherPasses = otherLength > stopShort(other, self, limits);
  return apartInHeight(self, other, limits) || !otherPasses ? self.most : shorter(self.most, stopShort(self, other, limits));
}

/** Every way to let two tenons share a leg; when they do not reach each other there is only one. */
export function waysToMeet(first: Comer, second: Comer, limits: MeetingLimits): readonly Meeting[] {
  const stops = [stopShort(first, second, limits), stopShort(second, first, limits)] as const;
  if (apartInHeight(first, second, limits) || first.most <= stops[0] || second.most <= stops[1]) {
    return [{ way: 'clear of each other', first: squareTenon(first, first.most), second: squareTenon(second, second.most) }];
  }
  const ways: readonly Meeting[] = [
    { way: 'mitred', first: mitredTenon(first, second, limits), second: mitredTenon(second, first, limits), mitreDegrees: mitreOf(first, second) },
    { way: 'first runs past', first: squareTenon(first, first.most), second: squareTenon(second, stops[1]) },
    { way: 'second runs past', first: squareTenon(first, stops[0]), second: squareTenon(second, second.most) },
    stepped(first, second, stops, limits),
  ];
  return ways.filter((way) => [...way.first, ...way.second].every(({ top, bottom, outerCheek, innerCheek }) => top < bottom && outerCheek > 0 && innerCheek > 0));
}

/** Which way to take: mitred or square by what gives the weaker of the two more glue; a stepped pair is twice the work and only taken when asked for. */
export function chooseWay(ways: readonly Meeting[], ends: 'best' | 'square' | 'mitred' | 'stepped'): Meeting | undefined {
  const allowed = ways.filter(({ way }) => way === 'clear of each other' || (ends === 'best' ? way !== 'stepped' : ends === 'square' ? way.endsWith('past') : way === ends));
  const weaker = ({ first, second }: Meeting): number => Math.min(cheekAreaMm2(first), cheekAreaMm2(second));
  return [...allowed].sort((one, other) => weaker(other) - weaker(one))[0];
}

/** The length at which a tenon stops with a web of wood before the other's mortise; less than nothing when there is no room for one at all. */
function stopShort(self: TenonPlace, other: TenonPlace, { clearance, web }: MeetingLimits): Length {
  return subtract(self.into, add(farCheek(other), web, clearance));
}

function apartInHeight(one: TenonPlace, other: TenonPlace, { web }: MeetingLimits): boolean {
  return Math.max(other.top - one.bottom, one.top - other.bottom) >= web;
}

/**
 * The mitre runs from the corner where the inner cheeks cross to the one where the outer cheeks do; each end is drawn back along its own
 * tenon by the clearance, so that the gap between the two is at least that.
 */
function mitredTenon(self: Comer, other: TenonPlace, { clearance }: MeetingLimits): TenonSteps {
  const toOuter = subtract(self.into, add(other.near, clearance));
  const toInner = subtract(self.into, add(farCheek(other), clearance));
  return [{ top: self.top, bottom: self.bottom, outerCheek: shorter(self.most, toOuter), innerCheek: shorter(self.most, toInner) }];
}

function mitreOf(first: TenonPlace, second: TenonPlace): readonly [number, number] {
  const ofFirst = (Math.atan2(first.thickness, second.thickness) * 180) / Math.PI;
  return [ofFirst, 90 - ofFirst];
}

/**
 * Each is long where the other is short: the one that starts higher is long in the upper half of the height that they share, the other in the
 * lower half, with the clearance between the two long parts.
 */
function stepped(first: Comer, second: Comer, stops: readonly [Length, Length], { clearance }: MeetingLimits): Meeting {
  const [from, to] = [Math.max(first.top, second.top), Math.min(first.bottom, second.bottom)];
  const upperEnds = nanometres(from + Math.floor((to - from - clearance) / 2));
  const lowerStarts = add(upperEnds, clearance);
  const firstIsUpper = first.top <= second.top;
  const upper = (self: Comer, stop: Length): TenonSteps => [step(self.top, upperEnds, self.most), step(upperEnds, self.bottom, stop)];
  const lower = (self: Comer, stop: Length): TenonSteps => [step(self.top, lowerStarts, stop), step(lowerStarts, self.bottom, self.most)];
  return {
    way: 'stepped',
    first: firstIsUpper ? upper(first, stops[0]) : lower(first, stops[0]),
    second: firstIsUpper ? lower(second, stops[1]) : upper(second, stops[1]),
  };
}

function step(top: Length, bottom: Length, length: Length): TenonSteps[number] {
  return { top, bottom, outerCheek: length, innerCheek: length };
}

function shorter(one: Length, other: Length): Length {
  return nanometres(Math.min(one, other));
}
