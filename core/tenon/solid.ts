import { add, subtract } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';

/** Where a tenon stands in the leg, before its length is known. Two that meet in one leg see each other across its outer corner. */
export interface TenonPlace {
  /** Size of the leg in the direction of the tenon, from the inside face to the outer face. */
  readonly into: Length;
  /** From the outer face that the rail runs along to the near cheek, which is the outer one. */
  readonly near: Length;
  readonly thickness: Length;
  /** From the top end of the leg. */
  readonly top: Length;
  readonly bottom: Length;
}

/** A height of a tenon over which its end is alike: square when both cheeks are as long, else mitred. */
export interface TenonStep {
  readonly top: Length;
  readonly bottom: Length;
  /** From the shoulder along the cheek. */
  readonly outerCheek: Length;
  readonly innerCheek: Length;
}

export type TenonSteps = readonly TenonStep[];

export function squareTenon({ top, bottom }: TenonPlace, length: Length): TenonSteps {
  return [{ top, bottom, outerCheek: length, innerCheek: length }];
}

/** From the outer face that the tenon's rail runs along to its far cheek. */
export function farCheek({ near, thickness }: TenonPlace): Length {
  return add(near, thickness);
}

export function longest(steps: TenonSteps): Length {
  return nanometres(Math.max(0, ...steps.map(({ outerCheek, innerCheek }) => Math.max(outerCheek, innerCheek))));
}

export function shortest(steps: TenonSteps): Length {
  return nanometres(Math.min(...steps.map(({ outerCheek, innerCheek }) => Math.min(outerCheek, innerCheek))));
}

/** Glue surface of both cheeks together, in square millimetres. */
export function cheekAreaMm2(steps: TenonSteps): number {
  return steps.reduce((area, { top, bottom, outerCheek, innerCheek }) => area + (subtract(bottom, top) / 1e6) * ((outerCheek + innerCheek) / 1e6), 0);
}
