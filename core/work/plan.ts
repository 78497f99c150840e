import { sizeNames } from '../piece/describe.ts';
import { evaluate, sizeOf } from '../piece/evaluate.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { groundOf } from './ground.ts';
import { layoutOrder } from './layoutOrder.ts';
import { planWork } from './order.ts';
import type { Step } from './step.ts';

const PLANS = new WeakMap<LoadedPiece, readonly Step[]>();

/**
 * Every step from rough boards to the finished piece, in an order that makes sense at a bench; a function of the piece alone.
 * The same list for the same piece object, so that what is worked out from the list can be kept with it.
 */
export function stepsFor(piece: LoadedPiece): readonly Step[] {
  const known = PLANS.get(piece);
  if (known !== undefined) return known;
  const planned = evaluate(piece, []);
  const steps = planWork(groundOf(piece.file, sizeNames(piece), (name) => sizeOf(planned, name)?.planned, layoutOrder(piece.file, planned)));
  PLANS.set(piece, steps);
  return steps;
}
