import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';
import type { Density } from '../wood/species.ts';

/** 1 lbf = 4.448222 N; 1 psi = 6.894757 kPa (NIST SP 811, B.8). */
export const NEWTONS_PER_LBF = 4.448222;
export const MPA_PER_PSI = 0.006894757;

/** Pounds to the square inch on the glue line: low and high from a trade source, medium from memory (Wood Handbook, chapter 10: 100 to 250 over all). */
export const PRESSURE_PSI: Readonly<Record<Density, readonly [number, number]>> = { low: [100, 150], medium: [125, 175], high: [175, 250] };
export const PRESSURE_SOURCE = 'clamping pressure by density of the wood: a trade article for low and high, from memory for medium; USDA Wood Handbook, chapter 10';

/** Pounds-force that one clamp gives when it is tightened by hand. Common practice, no source: yours may differ, and the piece file can say so. */
const USUAL_LBF: readonly (readonly [RegExp, number])[] = [
  [/spring|peg/i, 40], [/one.?hand|trigger|quick/i, 300], [/cam|luthier/i, 150], [/pipe|parallel/i, 1_000], [/bar|sash/i, 1_000], [/\b[cg].?clamp|deep/i, 800], [/\bf.?clamp|screw/i, 500],
];
const PLAIN_LBF = 500;

export function usualForce(kind: string): number {
  return USUAL_LBF.find(([called]) => called.test(kind))?.[1] ?? PLAIN_LBF;
}

/** Force over a glue line: pressure × area. Any area; pressure in psi. */
export function totalForceLbf(areaSquareInches: number, pressurePsi: number): number {
  return areaSquareInches * pressurePsi;
}

export function squareInches(length: Length, width: Length): number {
  return (length / NANOMETRES_PER_INCH) * (width / NANOMETRES_PER_INCH);
}

export interface ClampsWanted {
  /** To reach the low end of the pressure. */
  readonly forForce: number;
  /** So that the pressure, spreading at 45 degrees, reaches all of the glue line. */
  readonly forSpread: number;
  readonly wanted: number;
  /** From one to the next, the first half of it from the end. */
  readonly spacing: Length;
  readonly totalLbf: number;
  /** What each clamp then presses. */
  readonly eachLbf: number;
  readonly pressurePsi: readonly [number, number];
}

/** A glue line and what presses it: `behind` is the wood (and caul) between the clamp's pad and the line, across which the pressure spreads. */
export interface GlueLine {
  readonly length: Length;
  readonly width: Length;
  readonly behind: Length;
}

/**
 * How many clamps a glue line wants. Number by force: pressure × area over what one clamp gives. By spread: pressure reaches out at 45 degrees, so the spacing
 * is twice the wood behind (from memory, an assumption of the trade). Faults: sizes of nothing, a clamp that presses nothing.
 */
export function clampsFor({ length, width, behind }: GlueLine, pressurePsi: readonly [number, number], clampLbf: number): Result<ClampsWanted, InputFault> {
  if (length <= 0 || width <= 0) return failure({ key: length <= 0 ? 'length' : 'width', message: 'A glue line has some length and width: more than nothing.' });
  if (behind <= 0) return failure({ key: 'behind', message: 'There is some wood or a caul between the clamp and the glue line: more than nothing.' });
  if (!(clampLbf > 0)) return failure({ key: 'force', message: 'A clamp presses with more than nothing.' });
  const totalLbf = totalForceLbf(squareInches(length, width), pressurePsi[0]);
  const forForce = Math.ceil(totalLbf / clampLbf - 1e-9);
  const forSpread = Math.ceil(length / (2 * behind));
  const wanted = Math.max(forForce, forSpread, 1);
  return success({ forForce, forSpread, wanted, spacing: roundedSpacing(length, wanted), totalLbf, eachLbf: totalLbf / wanted, pressurePsi });
}

function roundedSpacing(length: Length, count: number): Length {
  return Math.round(length / count) as Length;
}

/** Grams of glue for an area, from and to, by the spread of the class; what stays in brush and pot is on top. */
export function gramsFor(areaSquareInches: number, [from, to]: readonly [number, number]): readonly [number, number] {
  const squareMetres = areaSquareInches * (NANOMETRES_PER_INCH / NANOMETRES_PER_MILLIMETRE / 1000) ** 2;
  return [squareMetres * from, squareMetres * to];
}

/** 1 lb to 1000 square feet in grams to the square metre. */
export const GM2_PER_LB_PER_1000_SQUARE_FEET = 453.59237 / (1000 * 0.3048 ** 2);
