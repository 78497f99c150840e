import type { Bench } from '../bench/bench.ts';
import type { Request } from '../bench/request.ts';
import { stepsFor } from '../work/plan.ts';
import { isOpen } from '../work/progress.ts';
import type { Operation } from '../work/step.ts';
import type { OwnerMention } from './names.ts';

const SAWN_ROUGH: ReadonlySet<Operation> = new Set(['rough crosscut', 'rip']);

/** While a part is still to be cut in the rough, the size that it is sawn to there; undefined once that is done, or for what is not sawn. */
export function sawnTo({ owner, copy }: OwnerMention, [dimension = '']: readonly string[], { state }: Bench): Request | undefined {
  if (!state.piece || owner.kind !== 'part' || dimension === '') return undefined;
  const steps = stepsFor(state.piece).filter((step) => step.part === owner.id && SAWN_ROUGH.has(step.operation) && isOpen(step, state));
  const size = steps.flatMap(({ sizes }) => sizes).find((one) => one.size.toLowerCase().endsWith(dimension))?.size;
  return size === undefined ? undefined : { kind: 'size', size, ...(copy === undefined ? {} : { copy }) };
}
