import type { Response } from '../bench/reply.ts';
import type { WorkRequest } from '../bench/request.ts';
import type { State } from '../journal/state.ts';
import { isDoneBy } from '../work/deeds.ts';
import type { Step } from '../work/step.ts';
import { refuse } from './plain.ts';
import { sentence } from './saying.ts';

type Made = Extract<WorkRequest, { kind: 'made' }>;

/** Why the step is not done by what was made; undefined when it is about just that. A step that is about all copies is done with the last of them. */
export function notMade(state: State, step: Step | undefined, made: Made): Response | undefined {
  const named = [...(state.piece?.file.parts ?? []), ...(state.piece?.file.joints ?? [])].find(({ id }) => id === made.owner);
  const because = whyNot(state, step, made, named?.name ?? made.owner, named && 'count' in named ? named.count : undefined);
  return because === undefined ? undefined : refuse(sentence(because));
}

function whyNot({ gluing }: State, step: Step | undefined, { owner, copy, all, by }: Made, name: string, count: number | undefined): string | undefined {
  if (gluing) return 'a glue-up is going on; its moves are told one by one';
  if (step === undefined || (step.joint !== owner && step.part !== owner)) return `this step is not about the ${name}; it stays open`;
  if (by !== undefined && !isDoneBy(step.operation, by)) return `this step is ${step.operation}: a ${name} that is ${by} does not close it`;
  if (all === true) return step.copy === undefined ? undefined : `this step is about one ${name} only; it stays open`;
  if (step.copy === undefined) return count === 1 ? undefined : `this step is about every ${name}; it is done when all of them are`;
  return copy === undefined || copy === step.copy ? undefined : `this step is about another ${name}; it stays open`;
}
