import { cutPlate } from '../../../core/stock/guillotine/cutPlate.ts';
import type { Instance } from '../../../core/stock/instances.ts';
import { pack } from '../../../core/stock/packing/pack.ts';

export interface Answer {
  readonly value: number;
  readonly bound: number;
  readonly proven: boolean;
}

/** One published instance, within so many seconds. */
export function solveInstance(instance: Instance, seconds: number): Answer {
  const end = performance.now() + 1000 * seconds;
  const goOn = (): boolean => performance.now() < end;
  if (instance.kind === 'guillotine') {
    const { value, bound, proven } = cutPlate(instance.problem, goOn);
    return { value, bound, proven };
  }
  const { bars, bound, proven } = pack(instance.problem, { goOn });
  return { value: bars.length, bound, proven };
}
