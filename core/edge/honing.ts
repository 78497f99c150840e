import { nanometres, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';

/** A guide whose roller rides on the stone with the blade: its roller's radius, and how far the roller's axis lies under the back of the blade. */
export interface RollerGuide {
  readonly radius: Length;
  readonly axisBelowBack: Length;
}

const DEGREES = Math.PI / 180;
/** Between these an edge is an edge; the formulas have no meaning much beyond. */
export const LEAST_DEGREES = 5;
export const MOST_DEGREES = 60;

/**
 * How far the blade stands out of the guide for an angle: p = (R + e · cos θ) / sin θ, from the edge to the foot of the perpendicular from the roller's axis
 * on the back of the blade. Plane trigonometry.
 */
export function projectionFor(angleDegrees: number, { radius, axisBelowBack }: RollerGuide): Length {
  const angle = angleDegrees * DEGREES;
  return nanometres(Math.round((radius + axisBelowBack * Math.cos(angle)) / Math.sin(angle)));
}

/**
 * The angle that a projection gives: p · sin θ − e · cos θ = R, so θ = asin(R / √(p² + e²)) + atan(e / p).
 * Fault: a projection so short that the roller would lift the blade past 90 degrees.
 */
export function angleFor(projection: Length, { radius, axisBelowBack }: RollerGuide): Result<number, InputFault> {
  const reach = Math.hypot(projection, axisBelowBack);
  if (projection <= 0 || reach <= radius) return failure({ key: 'projection', message: telling`A blade that stands ${projection} out of this guide does not reach the stone. Let it stand out further.` });
  return success((Math.asin(radius / reach) + Math.atan2(axisBelowBack, projection)) / DEGREES);
}

/** A jig that holds the blade's back at a fixed height over the stone, where it pivots: p = h / sin θ. */
export function projectionAtHeight(angleDegrees: number, height: Length): Length {
  return nanometres(Math.round(height / Math.sin(angleDegrees * DEGREES)));
}

/** Along the bevel, from edge to heel: t / sin θ. */
export function bevelLength(thickness: Length, angleDegrees: number): Length {
  return nanometres(Math.round(thickness / Math.sin(angleDegrees * DEGREES)));
}

/** What a shim under the far end changes, over the distance from edge to shim: asin(s / d). Of a thin rule under the back of a plane iron, the back bevel. */
export function shimAngle(shim: Length, distance: Length): Result<number, InputFault> {
  if (distance <= 0 || shim >= distance) return failure({ key: 'distance', message: telling`A shim of ${shim} wants more distance from the edge than ${distance}.` });
  return success(Math.asin(shim / distance) / DEGREES);
}

/** The shim for a change of angle over that distance: d · sin Δθ. */
export function shimFor(changeDegrees: number, distance: Length): Length {
  return nanometres(Math.round(distance * Math.sin(changeDegrees * DEGREES)));
}
