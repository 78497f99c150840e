import type { State } from '../journal/state.ts';
import type { Measurement } from '../piece/measurement.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { evaluate, type Sizes } from '../piece/evaluate.ts';
import { stepsFor } from '../work/plan.ts';
import type { Step } from '../work/step.ts';

/** What is reckoned from the state and kept for as long as what it stands on stays the same. */
const sizesByMeasurements = new WeakMap<readonly Measurement[], { piece: LoadedPiece; sizes: Sizes }>();
const stepsByPiece = new WeakMap<LoadedPiece, readonly Step[]>();

/** All sizes of the piece with what was measured; null without a piece. */
export function sizesOf(state: State): Sizes | null {
  if (!state.piece) return null;
  const kept = sizesByMeasurements.get(state.measurements);
  if (kept?.piece === state.piece) return kept.sizes;
  const sizes = evaluate(state.piece, state.measurements);
  sizesByMeasurements.set(state.measurements, { piece: state.piece, sizes });
  return sizes;
}

/** All steps of the work in their order; empty without a piece. */
export function stepsOf(state: State): readonly Step[] {
  if (!state.piece) return [];
  const kept = stepsByPiece.get(state.piece);
  if (kept) return kept;
  const steps = stepsFor(state.piece);
  stepsByPiece.set(state.piece, steps);
  return steps;
}
