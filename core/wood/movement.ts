import { nanometres, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';
import type { Across, Species } from './speciesFigures.ts';

/** Above this, in percent, the cell walls are full and wood does not change its size. */
export const FIBRE_SATURATION = 30;
/** Where the coefficients hold (Wood Handbook, chapter 13). */
export const COEFFICIENT_RANGE = { from: 6, to: 14 } as const;

export const MOVEMENT_SOURCE = 'USDA Forest Products Laboratory, Wood Handbook (GTR-190), chapter 13, equations 13-2 and 13-3';

/** How the growth rings stand to the face: flat-sawn along it, quarter-sawn upright; a mixed lot lies between. */
export type Grain = 'flat-sawn' | 'quarter-sawn' | 'mixed';
export const GRAINS = ['flat-sawn', 'quarter-sawn', 'mixed'] as const satisfies readonly Grain[];

/** Degrees between the growth rings and the face: 0 is flat-sawn, 90 quarter-sawn, and 45 stands for a mixed lot. */
export const RING_DEGREES: Readonly<Record<Grain, number>> = { 'flat-sawn': 0, mixed: 45, 'quarter-sawn': 90 };

/** C = 1 / (3000 / S − 20): equation 13-3 at 10 percent. `shrinkagePercent` from green to oven-dry, more than 0 and under 30. */
export function coefficientFromShrinkage(shrinkagePercent: number): number {
  return 1 / (3000 / shrinkagePercent - 20);
}

export interface Coefficient extends Across {
  /** Printed in the table, or computed from the shrinkage. */
  readonly by: 'table' | 'shrinkage';
}

/** The coefficients of a wood; undefined when neither they nor a shrinkage are known. */
export function coefficientsOf({ coefficient, shrinkage }: Pick<Species, 'coefficient' | 'shrinkage'>): Coefficient | undefined {
  if (coefficient) return { radial: coefficient.radial, tangential: coefficient.tangential, by: 'table' };
  return shrinkage && { radial: coefficientFromShrinkage(shrinkage.radial), tangential: coefficientFromShrinkage(shrinkage.tangential), by: 'shrinkage' };
}

/**
 * Across the width of a board whose growth rings lie at an angle to its face: tangential · cos² + radial · sin² (strain turned to the axes of the board).
 * Works for coefficients and for shrinkages alike.
 */
export function atRingAngle({ radial, tangential }: Across, ringDegrees: number): number {
  const cosine = Math.cos((ringDegrees * Math.PI) / 180);
  return radial + (tangential - radial) * cosine ** 2;
}

/**
 * How much a size changes: D · C · (to − from), negative when it shrinks. Moistures in percent, 0 to 30; the coefficient is good from 6 to 14 and said to be
 * rough outside. Fault outside 0 to 30.
 */
export function movement(size: Length, coefficient: number, from: number, to: number): Result<Length, InputFault> {
  const fault = moistureFault(from, 'from') ?? moistureFault(to, 'to');
  return fault ? failure(fault) : success(nanometres(Math.round(size * coefficient * (to - from))));
}

/** By the shrinkage from green: D (to − from) / (3000 / S − 30 + from). Within about five percent, for shrinkage is not quite even (Wood Handbook). */
export function movementFromGreen(size: Length, shrinkagePercent: number, from: number, to: number): Result<Length, InputFault> {
  const fault = moistureFault(from, 'from') ?? moistureFault(to, 'to');
  return fault ? failure(fault) : success(nanometres(Math.round((size * (to - from)) / (3000 / shrinkagePercent - FIBRE_SATURATION + from))));
}

export function moistureFault(percent: number, key: string): InputFault | undefined {
  if (percent >= 0 && percent <= FIBRE_SATURATION) return undefined;
  return { key, message: `A moisture of ${percent} percent is outside what is reckoned here. Expected 0 to ${FIBRE_SATURATION}: above that wood no longer changes its size.` };
}

/** Whether the coefficients hold between these moistures. */
export function inCoefficientRange(...percents: readonly number[]): boolean {
  return percents.every((percent) => percent >= COEFFICIENT_RANGE.from && percent <= COEFFICIENT_RANGE.to);
}
