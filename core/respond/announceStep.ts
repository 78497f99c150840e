import type { State } from '../journal/state.ts';
import type { Moment } from '../clock/moment.ts';
import { remaining } from '../work/progress.ts';
import type { Caution, Step } from '../work/step.ts';
import { placeOf, titleOf } from '../work/wording.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { sayWording, sentence } from './saying.ts';
import { boardsAtStep } from './stepBoards.ts';
import { facesAtStep } from './stepFaces.ts';

const TWELVE_HOURS_MS = 12 * 60 * 60 * 1000;

/** The title, the one sentence, and the cautions given. */
export function announceStep(state: State, step: Step, cautions: readonly Caution[]): string {
  const parts = [headOf(state, step), sentence(sayWording(state, step.say)), facesAtStep(state, step), boardsAtStep(state, step)];
  return [...parts, ...cautions.map((caution) => sentence(caution.say))].filter(Boolean).join(' ');
}

/** The title; where the sentence says all of it again, as at a mortise, only where the copy stands. */
function headOf({ places }: State, step: Step): string {
  if (step.operation !== 'chop mortises') return `${titleOf(step, places)}.`;
  const place = placeOf(step, places);
  return place === undefined ? '' : sentence(place);
}

/** 'Step twelve of one hundred and forty.' */
export function stepPlace(state: State, steps: readonly Step[], step: Step): string {
  const { left } = remaining(steps, state);
  return `Step ${sayNumber(steps.indexOf(step) + 1)} of ${sayNumber(steps.length)}, ${sayNumber(left)} open.`;
}

/** Cautions of a step that were not said in the last twelve hours: said the first time in a day, shown always. */
export function cautionsToSay(state: State, step: Step, now: Moment): readonly Caution[] {
  return step.cautions.filter((caution) => {
    const said = state.cautionsSaid.get(caution.id);
    return !said || !withinHalfADay(said, now);
  });
}

/** Only what the clocks can vouch for counts as 'today'; when they cannot, the caution is said again. */
function withinHalfADay(said: Moment, now: Moment): boolean {
  if (said.bootId === now.bootId) return now.monotonicMs - said.monotonicMs < TWELVE_HOURS_MS;
  const elapsedMs = now.wallMs - said.wallMs;
  return said.wallTrusted && now.wallTrusted && elapsedMs >= 0 && elapsedMs < TWELVE_HOURS_MS;
}
