import { nanometres, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import { failure, success, type Result } from '../result.ts';
import { solveLinearProgram, type LinearProgram, type Requirement } from './linearProgram.ts';
import type { Surface, SurfacePoint } from './surface.ts';

/** A true face to plane down to, and what that takes off at each point of the surface, never less than nothing. */
export interface TrueFace {
  readonly depths: readonly Length[];
  readonly greatest: Length;
  /** What is taken off on average. */
  readonly mean: Length;
}

/** How much the mean counts beside the greatest depth: only among planes that are equally good. */
const MEAN_WEIGHT = 1e-6;

/**
 * The plane that leaves no low spot and whose greatest depth to be taken off is the least there is; among equals the one that takes the least wood. It is the
 * minimum zone of the readings (as ISO 1101 defines flatness), by linear programming; exact but for floating point, and then lowered so that it is nowhere above the wood.
 * With `keep`, at least that thickness is left above the far face, of which `thicknesses` are read at the same points.
 * Fails only where that cannot be had.
 */
export function firstFace(surface: Surface, keep?: { readonly thickness: Length; readonly thicknesses: readonly Length[] }): Result<TrueFace, 'too thin'> {
  const spots = surface.points.map((point) => spotOf(surface, point));
  const solved = solveLinearProgram(leastDepth(spots, keep === undefined ? []
    : spots.map(({ row, height }, index) => ({ coefficients: [...row, 0], bound: height - inMm((keep.thicknesses[index] ?? 0) - keep.thickness) }))));
  return solved.ok ? success(cutTo(spots, solved.value)) : failure('too thin');
}

/** The same for an edge, which must come out square to the face: straight along, level across. */
export function squareFace(surface: Surface): TrueFace {
  const spots = surface.points.map((point) => spotOf(surface, point)).map(({ row, height }) => ({ row: row.slice(0, 2), height }));
  const solved = solveLinearProgram(leastDepth(spots, []));
  if (!solved.ok) throw new Error(`an edge can always be planed square (${solved.fault})`);
  return cutTo(spots, solved.value);
}

/**
 * The most thickness that can be left when both faces are true and parallel, wherever the first one is laid: the greatest T for which a plane under every point of the
 * first face is T above every point of the second one.
 */
export function mostThickness(surface: Surface, thicknesses: readonly Length[]): Length {
  const spots = surface.points.map((point) => spotOf(surface, point));
  const solved = solveLinearProgram({ minimise: [0, 0, 0, -1], atLeast: spots.flatMap(({ row, height }, index) => [
    { coefficients: [...row.map((value) => -value), 0], bound: -height },
    { coefficients: [...row, -1], bound: height - inMm(thicknesses[index] ?? 0) },
  ]) });
  if (!solved.ok) throw new Error(`two faces always leave some thickness, were it less than nothing (${solved.fault})`);
  return nanometres(Math.floor((solved.value[3] ?? 0) * NANOMETRES_PER_MILLIMETRE + 0.5));
}

/** What is left above the second face once the first one is at its plane: parallel to it, at its lowest point. */
export function thicknessLeft(first: TrueFace, thicknesses: readonly Length[]): Length {
  return nanometres(Math.min(...first.depths.map((depth, index) => (thicknesses[index] ?? 0) - depth)));
}

/** The second face, parallel to the first at that thickness: what it takes off at each point; less than nothing where the wood does not reach. */
export function secondFace(first: TrueFace, thicknesses: readonly Length[], thickness: Length): readonly Length[] {
  return first.depths.map((depth, index) => nanometres((thicknesses[index] ?? 0) - depth - thickness));
}

/** The plane nowhere above a spot, with the least greatest depth over it and, far less, the least mean depth. */
function leastDepth(spots: readonly Spot[], more: readonly Requirement[]): LinearProgram {
  const variables = spots[0]?.row.map(() => 0) ?? [];
  const sum = spots.reduce((all, { row }) => all.map((value, index) => value + (row[index] ?? 0)), variables);
  const share = MEAN_WEIGHT / spots.length;
  const around = spots.flatMap(({ row, height }): Requirement[] => [
    { coefficients: [...row.map((value) => -value), 0], bound: -height },
    { coefficients: [...row, 1], bound: height },
  ]);
  return { minimise: [...sum.map((value) => -share * value), 1], atLeast: [...around, ...more] };
}

interface Spot {
  /** One, and the place along and across as parts of the whole, so that all are of the order of one. */
  readonly row: readonly number[];
  readonly height: number;
}

function spotOf({ length, width }: Surface, { fromEnd, fromLeft, height }: SurfacePoint): Spot {
  return { row: [1, fromEnd / length, fromLeft / width], height: inMm(height) };
}

function inMm(length: number): number {
  return length / NANOMETRES_PER_MILLIMETRE;
}

function cutTo(spots: readonly Spot[], plane: readonly number[]): TrueFace {
  const over = spots.map(({ row, height }) => height - row.reduce((sum, value, index) => sum + value * (plane[index] ?? 0), 0));
  const lowest = Math.min(...over);
  const depths = over.map((depth) => nanometres(Math.max(0, Math.round((depth - lowest) * NANOMETRES_PER_MILLIMETRE))));
  return { depths, greatest: nanometres(Math.max(...depths)), mean: nanometres(Math.round(depths.reduce((sum, depth) => sum + depth, 0) / depths.length)) };
}
