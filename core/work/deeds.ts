import type { Operation } from './step.ts';

/** What a maker tells that was done to one part, and the steps that are done by it. Common practice, no source. */
export const DEEDS = {
  squared: ['edge', 'true again', 'ends'],
  trued: ['face', 'edge', 'true again'],
  flattened: ['face', 'true again'],
  chopped: ['chop mortises'],
  sawed: ['saw tenons'],
  fitted: ['fit'],
  marked: ['orient and mark', 'joint layout'],
  eased: ['ease edges'],
} as const satisfies Readonly<Record<string, readonly Operation[]>>;
export type Deed = keyof typeof DEEDS;

/** Whether a step of that operation is done by it. */
export function isDoneBy(operation: Operation, deed: Deed): boolean {
  const operations: readonly Operation[] = DEEDS[deed];
  return operations.includes(operation);
}
