import type { Bench } from '../bench/bench.ts';
import type { Request } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { currentStep } from '../work/progress.ts';
import { respond } from './respond.ts';
import { stepsOf } from './views.ts';

/** What will probably be said next, likeliest first, so that the voice can make it ready: the sizes of the step, its check, its tools. */
export function likelyReplies(bench: Bench, now: Moment): readonly string[] {
  const step = currentStep(stepsOf(bench.state), bench.state);
  if (!step) return [];
  const requests: readonly Request[] = [
    ...step.sizes.map(({ size, copy }): Request => ({ kind: 'size', size, ...(copy === undefined ? {} : { copy }) })),
    { kind: 'tell the step', what: 'check' },
    { kind: 'tell the step', what: 'tools' },
  ];
  return requests.map((request) => respond(bench, request, now).reply.say);
}
