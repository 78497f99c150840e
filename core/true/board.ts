import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { firstFace, mostThickness, thicknessLeft, type TrueFace } from './plane.ts';
import { planingPlan, type PlaningPlan } from './planing.ts';
import type { Surface } from './surface.ts';

/** A board as it will be: the first face and what to plane off it, and what thickness that leaves. */
export interface TruedBoard {
  readonly first: TrueFace;
  readonly plan: PlaningPlan;
  /** Where thicknesses were read. */
  readonly thickness?: {
    /** With the first face cut as little as can be, the second one parallel to it. */
    readonly afterLeastCut: Length;
    /** However the two faces are laid. */
    readonly most: Length;
  };
  /** The first face was laid otherwise than with the least cut, so that the planned thickness is left. */
  readonly laidForThickness: boolean;
}

/** `thicknesses`: one a station, taken as the same across. A planned thickness that cannot be had is left out of account; `thickness.most` says so. */
export function trueBoard(surface: Surface, shaving: Length, thicknesses?: readonly Length[], planned?: Length): TruedBoard {
  const least = leastCut(surface);
  if (!thicknesses) return { first: least, plan: planingPlan(surface, least.depths, shaving), laidForThickness: false };
  const atPoints = surface.points.map(({ station }) => thicknesses[station] ?? ZERO_LENGTH);
  const thickness = { afterLeastCut: thicknessLeft(least, atPoints), most: mostThickness(surface, atPoints) };
  const wanting = planned !== undefined && thickness.afterLeastCut < planned && planned <= thickness.most;
  const kept = wanting ? firstFace(surface, { thickness: planned, thicknesses: atPoints }) : undefined;
  const first = kept?.ok ? kept.value : least;
  return { first, plan: planingPlan(surface, first.depths, shaving), thickness, laidForThickness: kept?.ok === true };
}

function leastCut(surface: Surface): TrueFace {
  const found = firstFace(surface);
  if (!found.ok) throw new Error('a face can always be planed true when no thickness is asked for');
  return found.value;
}
