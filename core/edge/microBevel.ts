import { nanometres, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';
import { bevelLength } from './honing.ts';

/** An edge ground at one angle and honed at a steeper one. */
export interface GroundEdge {
  readonly groundDegrees: number;
  readonly honedDegrees: number;
  readonly thickness: Length;
}

export interface MicroBevelGrowth {
  /** From edge to heel on the ground bevel, before there is any other. */
  readonly bevelLength: Length;
  /** What the micro-bevel grows along itself with each honing. */
  readonly growthEach: Length;
  /** Honings until it is as long as `grindAt`: then grinding saves time. */
  readonly honingsToGrinding: number;
}

const DEGREES = Math.PI / 180;

/**
 * Each honing sets the edge back along the blade by `setBack`. In the triangle of old edge, new edge and heel of the micro-bevel the law of sines gives its length:
 * m = x · sin α / sin(β − α), with x all that was set back since the grinding.
 */
export function microBevelGrowth({ groundDegrees, honedDegrees, thickness }: GroundEdge, setBack: Length, grindAt: Length): Result<MicroBevelGrowth, InputFault> {
  if (honedDegrees <= groundDegrees) return failure({ key: 'honed', message: `Honed at ${honedDegrees} degrees on a bevel ground at ${groundDegrees} there is no micro-bevel: hone a few degrees steeper than it is ground.` });
  if (setBack <= 0) return failure({ key: 'setBack', message: 'Each honing takes the edge back by something: a few thousandths of an inch are usual.' });
  const factor = Math.sin(groundDegrees * DEGREES) / Math.sin((honedDegrees - groundDegrees) * DEGREES);
  const growthEach = setBack * factor;
  return success({
    bevelLength: bevelLength(thickness, groundDegrees),
    growthEach: nanometres(Math.round(growthEach)),
    honingsToGrinding: Math.max(1, Math.floor(grindAt / growthEach + 1e-9)),
  });
}
