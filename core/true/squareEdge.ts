import { absolute, fractionOf, negate, subtract } from '../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';

/** A try square along an edge: stock against the reference face, light under the blade. */
export interface EdgeReadings {
  /** Across the edge: the thickness of the board there. */
  readonly thickness: Length;
  readonly stations: readonly Length[];
  /** The gap at the blade's far side (the reference face's arris is high: more than nothing) or at the reference face (the other arris is high: less). */
  readonly gaps: readonly Length[];
}

export interface EdgeSquareness {
  readonly worst: { readonly gap: Length; readonly at: Length; readonly degrees: number };
  /** What comes off each arris at each station for an edge that is square all along, and straight when it was. */
  readonly offReferenceArris: readonly Length[];
  readonly offOtherArris: readonly Length[];
  /** How far the edge is in wind from the first station to the last, over its thickness. */
  readonly wind: Length;
}

/** Plane geometry: the high arris stands the gap over the low one; taken off it leaves the low one as it is. */
export function squarenessOf({ thickness, stations, gaps }: EdgeReadings): Result<EdgeSquareness, InputFault> {
  if (thickness <= 0) return failure({ key: 'thickness', message: 'An edge is as wide as the board is thick: give the thickness.' });
  if (stations.length === 0 || gaps.length !== stations.length) return failure({ key: 'gaps', message: `There are ${stations.length} places and ${gaps.length} gaps. Give one gap for each place; 0 where no light shows.` });
  const wide = gaps.find((gap) => Math.abs(gap) >= thickness);
  if (wide !== undefined) return failure({ key: 'gaps', message: telling`A gap of ${absolute(wide)} under the square on an edge of ${thickness} is no edge any more. Measure again.` });
  const worst = gaps.reduce((best, gap, index) => (Math.abs(gap) > Math.abs(gaps[best] ?? 0) ? index : best), 0);
  const gap = gaps[worst] ?? ZERO_LENGTH;
  return success({
    worst: { gap, at: stations[worst] ?? ZERO_LENGTH, degrees: (Math.atan2(Math.abs(gap), thickness) * 180) / Math.PI },
    offReferenceArris: gaps.map((each) => nanometres(Math.max(0, each))),
    offOtherArris: gaps.map((each) => nanometres(Math.max(0, negate(each)))),
    wind: absolute(subtract(gaps.at(-1) ?? ZERO_LENGTH, gaps[0] ?? ZERO_LENGTH)),
  });
}

/** How far a corner that is out of square stands off over another length: the same angle, by similar triangles. */
export function outOfSquareOver(gap: Length, thickness: Length, over: Length): Length {
  return fractionOf(gap, over, thickness);
}
