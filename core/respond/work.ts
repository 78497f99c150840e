import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { WorkRequest } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { wasCalled } from '../clock/change.ts';
import { readTimer } from '../clock/reading.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import type { Entry } from '../journal/entry.ts';
import { currentStep, isOpen, nextAfter, previous, remaining, stepCalled } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import { timersStarting } from '../work/step.ts';
import { titleOf } from '../work/wording.ts';
import { announceStep, cautionsToSay, stepPlace } from './announceStep.ts';
import { tellHowLong } from './howLong.ts';
import { gaugeWarning } from './layoutGauges.ts';
import { notYet } from './notYet.ts';
import { noPiece, refuse, tell, write } from './plain.ts';
import { coldFinish, timerTonight } from './stretched.ts';
import { firstToRecord, askFor } from './recordQuestions.ts';
import { sayCount, sentence } from './saying.ts';
import { timerStarted } from './timers.ts';
import { tellOfStep } from './tellStep.ts';
import { notMade } from './made.ts';
import { placeCopy } from './place.ts';
import { stepsOf } from './views.ts';

/** Walking through the work. */
export function respondToWork(bench: Bench, request: WorkRequest, now: Moment): Response {
  const { state } = bench;
  if (!state.piece) return noPiece();
  const steps = stepsOf(state);
  const current = currentStep(steps, state);
  switch (request.kind) {
    case 'where am I':
      return current && steps.some((step) => isOpen(step, state)) ? announce(bench, current, now, stepPlace(state, steps, current)) : finished();
    case 'next step':
      return moveTo(bench, current && steps[steps.indexOf(current) + 1], now, 'That was the last step.');
    case 'step back':
      return moveTo(bench, previous(steps, state), now, 'This is the first step.');
    case 'go to step':
      return moveTo(bench, stepCalled(request.step, steps), now, 'This piece has no such step.');
    case 'step done':
      return current ? finish(bench, current, now) : finished();
    case 'made':
      return notMade(state, current, request) ?? (current ? finish(bench, current, now) : finished());
    case 'skip step':
      return current ? skip(bench, current, now) : finished();
    case 'reopen step':
      return current ? reopen(bench, current) : finished();
    case 'what is left':
      return request.time === true && remaining(steps, state).left > 0 ? tellHowLong(bench, now) : whatIsLeft(bench);
    case 'coat on':
      return coatOn(bench, request.coat, now);
    case 'tell the step':
      return current ? tellOfStep(bench, current, request) : finished();
    case 'place':
      return placeCopy(bench, request);
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
  const inTheWay = isOpen(step, bench.state) ? notYet(bench.state, step, now) : undefined;
  if (inTheWay) return write([{ kind: 'went to step', step: step.id }], { say: `${titleOf(step, bench.state.places)}. ${inTheWay}`, screen: { name: 'step', step: step.id }, note: inTheWay });
  return announce(bench, step, now, '', [{ kind: 'went to step', step: step.id }]);
}

/** Reads a step aloud, with the cautions not yet said today. */
function announce(bench: Bench, step: Step, now: Moment, before: string, entries: readonly Entry[] = []): Response {
  const cautions = cautionsToSay(bench.state, step, now);
  const warning = gaugeWarning(bench, step);
  const say = [before, announceStep(bench.state, step, cautions), warning].filter(Boolean).join(' ');
  const cautionEntries = cautions.map((caution): Entry => ({ kind: 'caution said', caution: caution.id }));
  return write([...entries, ...cautionEntries], { say, screen: { name: 'step', step: step.id }, ...(warning === '' ? {} : { note: warning }) });
}

function finish(bench: Bench, step: Step, now: Moment): Response {
  const { state } = bench;
  const inTheWay = notYet(state, step, now);
  if (inTheWay) return refuse(inTheWay);
  const entries: Entry[] = [{ kind: 'step done', step: step.id }];
  // A clock that the maker has started already runs on.
  const timers = timersStarting(step, 'when done').filter(({ name }) => !isRunning(state, name, now)).map((timer) => timerTonight(state, step, timer, now));
  entries.push(...timers.map(timerStarted));
  const cold = step.operation === 'finish' ? coldFinish(state, now) : '';
  const done = ['Ticked off.', ...timers.map(({ name, durationMs }) => sentence(`${name}, ${sayDuration(durationMs)}, running${cold === '' ? '' : `; ${cold}`}`))].join(' ');
  const wanted = firstToRecord(state, step);
  if (wanted) {
    const asked = askFor(state, wanted);
    return write(entries, { ...asked, say: `${done} ${asked.say}`, signal: 'done' });
  }
  return onTo(bench, step, now, done, entries);
}

/** A coat by its number ticks off its own step wherever the work is; without one it is the step's. What comes before it is asked for as at any step. */
function coatOn(bench: Bench, coat: number | undefined, now: Moment): Response {
  const { state } = bench;
  const steps = stepsOf(state);
  const coats = steps.filter(({ operation }) => operation === 'finish');
  const step = coat === undefined ? coats.find(({ id }) => id === currentStep(steps, state)?.id) : coats[coat - 1];
  if (!step) return refuse(coat === undefined ? 'This step is not about a coat.' : `The piece gets ${sayCount(coats.length, 'coat', 'coats')}.`);
  return state.done.has(step.id) ? refuse('That coat is ticked off already.') : finish(bench, step, now);
}

function isRunning({ timers }: Bench['state'], name: string, now: Moment): boolean {
  return timers.some((timer) => wasCalled(timer, name) && timer.acknowledgedAt === undefined && !readTimer(timer, now).due);
}

/** The step after one just done or skipped, read out. */
function onTo(bench: Bench, step: Step, now: Moment, before: string, entries: readonly Entry[]): Response {
  const { state } = bench;
  const as = entries.some(({ kind }) => kind === 'step skipped') ? 'skipped' : 'done';
  const passed = { ...state, [as]: new Set([...state[as], step.id]) };
  const next = nextAfter(step, stepsOf(state), passed, { timers: state.timers, now });
  if (!next) return write(entries, { say: `${before} That was the last open step.`, screen: { name: 'steps' }, signal: 'done' });
  const response = announce({ ...bench, state: passed }, next, now, before, [...entries, { kind: 'went to step', step: next.id }]);
  return { ...response, reply: { ...response.reply, signal: 'done' } };
}

function skip(bench: Bench, step: Step, now: Moment): Response {
  return onTo(bench, step, now, 'Skipped.', [{ kind: 'step skipped', step: step.id }]);
}

function reopen(bench: Bench, step: Step): Response {
  const { state } = bench;
  if (isOpen(step, state)) return refuse('This step is open already.');
  return write([{ kind: 'step reopened', step: step.id }], { say: `Open again: ${titleOf(step, state.places)}.`, screen: { name: 'step', step: step.id } });
}

function whatIsLeft(bench: Bench): Response {
  const { state } = bench;
  const left = remaining(stepsOf(state), state);
  if (left.left === 0) return finished();
  const open = left.byOperation.filter((operation) => operation.left > 0);
  const parts = open.slice(0, 3).map((operation) => `${operation.operation}, ${sayCount(operation.left, 'step', 'steps')}`);
  const more = open.length > 3 ? ', and more after' : '';
  return tell({ say: sentence(`${sayCount(left.left, 'step is', 'steps are')} left. First ${parts.join('; ')}${more}`), screen: { name: 'steps' } });
}

