import { nanometres, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';

/** Two edges that are to be glued, each board bent edgewise by the clamps until they meet. */
export interface SpringJoint {
  readonly length: Length;
  /** Of the two boards, in the plane of the panel: what has to bend. */
  readonly boardWidths: readonly [Length, Length];
  readonly thickness: Length;
  /** In the middle of the pair of edges, ends touching. */
  readonly gap: Length;
  /** Stiffness of the wood in bending. */
  readonly elasticityMpa: number;
}

export interface SpringJointForce {
  /** Along the whole length, in newtons, to close it. */
  readonly forceN: number;
  /** The same as pressure on the glue line. */
  readonly pressureMpa: number;
}

/**
 * A beam on two supports under an even load W sags w = 5 W L³ / (384 E I) (Wood Handbook, chapter 9, uniform load); both boards bend under the same load, so that
 * gap = 5 W L³ / (384 E) · (1/I₁ + 1/I₂) with I = thickness · width³ / 12.
 */
export function forceToClose({ length, boardWidths, thickness, gap, elasticityMpa }: SpringJoint): Result<SpringJointForce, InputFault> {
  if (length <= 0 || thickness <= 0 || boardWidths.some((width) => width <= 0)) return failure({ message: 'Give length, width and thickness of the boards, each more than nothing.' });
  if (gap < 0) return failure({ key: 'gap', message: 'The gap of a spring joint is in the middle, nothing or more. Edges that touch in the middle open at the ends: plane the middle.' });
  const [lengthMm, thicknessMm, gapMm] = [inMm(length), inMm(thickness), inMm(gap)];
  const yielding = boardWidths.reduce((sum, width) => sum + 12 / (thicknessMm * inMm(width) ** 3), 0);
  const forceN = (384 * elasticityMpa * gapMm) / (5 * lengthMm ** 3 * yielding);
  return success({ forceN, pressureMpa: forceN / (lengthMm * thicknessMm) });
}

function inMm(length: Length): number {
  return length / NANOMETRES_PER_MILLIMETRE;
}

/** Common practice, no source: one thirty-second of an inch in a board four feet long, and in proportion. */
export function usualSpring(length: Length): Length {
  return nanometres(Math.round((length * 793_750) / 1_219_200_000));
}
