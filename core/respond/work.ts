import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { WorkRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import type { Entry } from '../journal/entry.ts';
import { currentStep, mayDo, nextOpen, previousStep, nextStep, remaining } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import { titleOf } from '../work/titles.ts';
import { announceStep, cautionsToSay, stepPlace } from './announceStep.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { firstToRecord, askFor } from './recordQuestions.ts';
import { sayCount, sayList, sentence } from './saying.ts';
import { tellOfStep } from './tellStep.ts';
import { placeCopy } from './place.ts';
import { stepOf, stepsOf } from './views.ts';

/** Walking through the work. */
export function respondToWork(bench: Bench, request: WorkRequest, now: Moment): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  const steps = stepsOf(state);
  const current = currentStep(steps, state);
  switch (request.kind) {
    case 'where am I':
      return current ? announce(bench, current, now, stepPlace(state, steps, current)) : finished();
    case 'next step':
      return moveTo(bench, current && nextStep(steps, current), now, 'That was the last step.');
    case 'step back':
      return moveTo(bench, current ? previousStep(steps, current) : steps.at(-1), now, 'This is the first step.');
    case 'go to step': {
      const step = stepOf(state, request.step);
      return moveTo(bench, step, now, 'This piece has no such step.');
    }
    case 'step done':
      return current ? finish(bench, current, now) : finished();
    case 'skip step':
      return current ? skip(bench, current, now) : finished();
    case 'reopen step':
      return current ? reopen(bench, current) : finished();
    case 'what is left':
      return whatIsLeft(bench);
    case 'tell the step':
      return current ? tellOfStep(bench, current, request.what) : finished();
    case 'place':
      return placeCopy(bench, request.part, request.copy, request.place);
    default:
      return assertNever(request);
  }
}

function finished(): Response {
  return tell({ say: 'Every step is done. The piece is finished.', note: 'Every step is done.', screen: { name: 'steps' } });
}

/** Goes to a step and reads it; the move is written down so that a power cut does not lose the place. */
function moveTo(bench: Bench, step: Step | undefined, now: Moment, otherwise: string): Response {
  if (!step) return refuse(otherwise);
  return announce(bench, step, now, '', [{ kind: 'went to step', step: step.id }]);
}

/** Reads a step aloud, with the cautions not yet said today. */
function announce(bench: Bench, step: Step, now: Moment, before: string, entries: readonly Entry[] = []): Response {
  const cautions = cautionsToSay(bench.state, step, now);
  const say = [before, announceStep(bench.state, step, cautions)].filter(Boolean).join(' ');
  const cautionEntries = cautions.map((caution): Entry => ({ kind: 'caution said', caution: caution.id }));
  return write([...entries, ...cautionEntries], { say, screen: { name: 'step', step: step.id } });
}

function finish(bench: Bench, step: Step, now: Moment): Response {
  const { state } = bench;
  const allowed = mayDo(step, stepsOf(state), state);
  if (!allowed.ok) {
    return refuse(`Not yet. ${sentence(allowed.fault.because)} First: ${titleOf(allowed.fault.first, state.places)}.`);
  }
  const entries: Entry[] = [{ kind: 'step done', step: step.id }];
  const timer = step.timer?.starts === 'when done' ? step.timer : undefined;
  if (timer) {
    const { kind, name, durationMs, basis } = timer;
    entries.push({ kind: 'timer started', timer: { kind, name, durationMs, basis } });
  }
  const done = timer ? `Done. The ${timer.name} clock is running.` : 'Done.';
  const wanted = firstToRecord(state, step);
  if (wanted) {
    const asked = askFor(state, wanted);
    return write(entries, { ...asked, say: `${done} ${asked.say}`, signal: 'done' });
  }
  return onTo(bench, step, now, done, entries);
}

/** The step after one just done or skipped, read out. */
function onTo(bench: Bench, step: Step, now: Moment, before: string, entries: readonly Entry[]): Response {
  const { state } = bench;
  const progress = { ...state, done: new Set([...state.done, step.id]) };
  const next = nextOpen(stepsOf(state), progress, step);
  if (!next) return write(entries, { say: `${before} That was the last open step.`, screen: { name: 'steps' }, signal: 'done' });
  const response = announce(bench, next, now, before, [...entries, { kind: 'went to step', step: next.id }]);
  return { ...response, reply: { ...response.reply, signal: 'done' } };
}

function skip(bench: Bench, step: Step, now: Moment): Response {
  return onTo(bench, step, now, 'Skipped.', [{ kind: 'step skipped', step: step.id }]);
}

function reopen(bench: Bench, step: Step): Response {
  const { state } = bench;
  if (!state.done.has(step.id) && !state.skipped.has(step.id)) return refuse('This step is open already.');
  return write([{ kind: 'step reopened', step: step.id }], { say: `Open again: ${titleOf(step, state.places)}.`, screen: { name: 'step', step: step.id } });
}

function whatIsLeft(bench: Bench): Response {
  const { state } = bench;
  const left = remaining(stepsOf(state), state);
  if (left.steps.length === 0) return finished();
  const parts = left.byOperation.slice(0, 3).map(({ operation, count }) => `${operation}, ${sayCount(count, 'step', 'steps')}`);
  const more = left.byOperation.length > 3 ? ', and more after' : '';
  return tell({ say: `${sayCount(left.steps.length, 'step is', 'steps are')} left. First ${sayList(parts)}${more}.`, screen: { name: 'steps' } });
}

