import type { Moment } from '../clock/moment.ts';
import type { State } from '../journal/state.ts';
import { mayDo } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import { titleOf } from '../work/wording.ts';
import { sentence } from './saying.ts';
import { stepsOf } from './views.ts';

/** Why the wood does not allow the step now; undefined when it does. */
export function notYet(state: State, step: Step, now: Moment): string | undefined {
  const allowed = mayDo(step, state, stepsOf(state), { timers: state.timers, now });
  if (allowed.ok) return undefined;
  const { because, first, how } = allowed.fault;
  const what = how === 'clock' ? 'Its clock still runs' : 'First';
  return `Not yet. ${sentence(because)} ${what}: ${titleOf(first, state.places)}.`;
}
