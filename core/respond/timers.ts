import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { TimerRequests } from '../bench/request.ts';
import type { Moment } from '../clock/moment.ts';
import { readTimer, runAt } from '../clock/reading.ts';
import { isTimerDuration, LONGEST_TIMER_MS, sayDuration } from '../clock/sayDuration.ts';
import type { Timer, TimerKind, TimerRequest } from '../clock/timer.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { currentStep } from '../work/progress.ts';
import { timersStarting } from '../work/step.ts';
import { finishTimer, tellCoats } from './finishClocks.ts';
import { tellGlueTime } from './glueTime.ts';
import { defaultTimer } from './defaultTimer.ts';
import { refuse, tell, write } from './plain.ts';
import { sayList, sentence } from './saying.ts';
import { sayRun, sayTimeLeft } from './timeLeft.ts';
import { timerTonight } from './stretched.ts';
import { toSay } from './toSay.ts';
import { tellTime } from './timeOfDay.ts';
import { stepsOf } from './views.ts';

const CLOCKS = { name: 'clocks' } as const;

/** Starting, asking, changing and acknowledging the clocks. */
export function respondToTimer(bench: Bench, request: TimerRequests, now: Moment): Response {
  const { state } = bench;
  switch (request.kind) {
    case 'start timer':
      return startNamed(state, request, now);
    case 'start step timer': {
      const timer = stepTimer(state, now);
      return timer ? start(timer) : refuse(`This step has no clock of its own. ${toSay('Tell me for how long to set one.', 'Say how long, for one: start a twenty minute timer.')}`);
    }
    case 'finish clock': {
      const timer = finishTimer(state, request, now);
      return typeof timer === 'string' ? refuse(timer) : start({ kind: 'rest', ...timer });
    }
    case 'coats':
      return tellCoats(bench, now);
    case 'time left':
      return timeLeft(state, request, now);
    case 'what time':
      return tellTime(state, now);
    case 'change timer':
      return withTimer(state, request, (timer) => change(timer, request.addMs, now));
    case 'hold timer':
      return withTimer(state, request, (timer) => timer.heldLeftMs === undefined
        ? write([{ kind: 'timer held', timer: timer.id }], { say: sentence(`${timer.name} stands still.`), screen: CLOCKS })
        : refuse(sentence(`${timer.name} stands still already`)));
    case 'resume timer':
      return withTimer(state, request, (timer) => timer.heldLeftMs === undefined
        ? refuse(sentence(`${timer.name} is running already`))
        : write([{ kind: 'timer resumed', timer: timer.id }], { say: sentence(`${timer.name} runs on.`), screen: CLOCKS }));
    case 'stop timer':
      return withTimer(state, request, (timer) =>
        write([{ kind: 'timer stopped', timer: timer.id }], { say: sentence(`${timer.name} is stopped.`), ...clocksUnlessDue(timer, now), signal: 'done' }));
    case 'acknowledge':
      return acknowledge(state, request, now);
    default:
      return assertNever(request);
  }
}

/** Two assemblies are hardly in their clamps within less than this. */
const NEW_MS = 5 * 60_000;

function startNamed(state: State, request: Extract<TimerRequests, { kind: 'start timer' }>, now: Moment): Response {
  const running = request.unlessNew ? state.timers.find((timer) => timer.kind === request.timer && runAt(timer, now).elapsedMs < NEW_MS) : undefined;
  if (running) return tell({ say: `${sentence(sayTimeLeft(running, now))} ${toSay('For others tell me to start one more clock.', `For others: start a ${request.timer} timer.`)}`, screen: CLOCKS });
  const usual = defaultTimer(state, request.timer, now);
  const durationMs = request.durationMs ?? usual.durationMs;
  if (durationMs === undefined) return refuse(`For how long? ${toSay('Say its minutes with it.', 'Say, for one: start a twenty minute timer.')}`);
  if (!isTimerDuration(durationMs)) return refuse(`A clock runs from one second to ${sayDuration(LONGEST_TIMER_MS)}.`);
  const basis = request.durationMs === undefined ? usual.basis : 'as you said';
  return start({ kind: request.timer, name: request.name ?? nameFor(request.timer), durationMs, basis });
}

/** The clock of the current step that is not running yet: a glue-up has one for the open time and one for the clamps. */
function stepTimer(state: State, now: Moment): TimerRequest | undefined {
  const step = currentStep(stepsOf(state), state);
  const timers = step ? timersStarting(step, 'when asked').map((timer) => timerTonight(state, step, timer, now)) : [];
  const timer = timers.find(({ name }) => !state.timers.some((running) => running.name === name)) ?? timers[0];
  return timer?.kind === 'break' ? { ...timer, ...defaultTimer(state, 'break', now) } : timer;
}

/** The entry that starts a clock. */
export function timerStarted({ kind, name, durationMs, basis }: TimerRequest): Entry {
  return { kind: 'timer started', timer: { kind, name, durationMs, basis } };
}

function nameFor(kind: TimerKind): string {
  return kind === 'plain' ? 'timer' : kind;
}

function start(timer: TimerRequest): Response {
  const { name, durationMs, basis } = timer;
  return write([timerStarted(timer)], {
    say: sentence(`${name}, ${sayDuration(durationMs)}, running${basis === 'as you said' ? '' : `; ${basis}`}`),
    signal: 'done', screen: CLOCKS,
  });
}

/** A clock that is due called over whatever the maker was at, and answering it leads back there. */
function clocksUnlessDue(timer: Timer, now: Moment): { readonly screen?: typeof CLOCKS } {
  return timer.acknowledgedAt === undefined && readTimer(timer, now).due ? {} : { screen: CLOCKS };
}

function timeLeft(state: State, { timer: id, run }: Extract<TimerRequests, { kind: 'time left' }>, now: Moment): Response {
  const asked = id === undefined ? state.timers : state.timers.filter((timer) => timer.id === id);
  if (asked.length === 0) return noClock(state, run ?? false, now);
  return tell({ say: asked.map((timer) => `${sentence(sayTimeLeft(timer, now))}${run === true ? ` ${sentence(sayRun(timer, now))}` : ''}`).join(' '), screen: CLOCKS });
}

/** Where the step glues, time is what the glue gives, whether or not its clock runs yet. */
function noClock(state: State, run: boolean, now: Moment): Response {
  const step = currentStep(stepsOf(state), state);
  if (run || step?.timer?.kind !== 'open time') return refuse('No clock is running.', { screen: CLOCKS });
  const { reply } = tellGlueTime(state, 'open time', now);
  return tell({ ...reply, say: `No clock is running. ${reply.say}` });
}

function change(timer: Timer, addMs: number, now: Moment): Response {
  const { leftMs } = readTimer(timer, now);
  const after = leftMs + addMs;
  if (after <= 0) return refuse(`The clock ${timer.name} has ${sayDuration(leftMs)} left; that cannot be taken off it.`);
  if (after > LONGEST_TIMER_MS) return refuse(`A clock runs for ${sayDuration(LONGEST_TIMER_MS)} at most.`);
  const done = addMs < 0 ? `${sayDuration(-addMs)} taken off` : `${sayDuration(addMs)} added to`;
  return write([{ kind: 'timer changed', timer: timer.id, addMs }], {
    say: sentence(`${done} ${timer.name}: ${sayDuration(after)} left`), ...clocksUnlessDue(timer, now), signal: 'done',
  });
}

/** Silence for what is due; one word is enough when several are. */
function acknowledge(state: State, request: Extract<TimerRequests, { kind: 'acknowledge' }>, now: Moment): Response {
  const due = state.timers.filter((timer) => timer.acknowledgedAt === undefined && readTimer(timer, now).due && (request.timer === undefined || timer.id === request.timer));
  if (due.length === 0) return refuse('Nothing is due.');
  return write(due.map((timer) => ({ kind: 'timer acknowledged' as const, timer: timer.id })), {
    say: sentence(`${sayList(due.map(({ name }) => name))}, heard`), signal: 'done', hush: true,
  });
}

/** The timer meant: the one named, the only one there is, or the one chosen when asked. */
function withTimer(state: State, request: Extract<TimerRequests, { timer?: number }>, act: (timer: Timer) => Response): Response {
  const running = state.timers.filter((timer) => timer.acknowledgedAt === undefined || timer.kind === 'break');
  const named = request.timer === undefined ? undefined : state.timers.find(({ id }) => id === request.timer);
  if (named) return act(named);
  const [only, another] = running;
  if (!only || request.timer !== undefined) return refuse('No such clock is running.', { screen: CLOCKS });
  if (!another) return act(only);
  const choices = running.map((timer) => ({ say: timer.name, request: { ...request, timer: timer.id } }));
  return tell({ say: `Which clock: ${sayList(choices.map(({ say }) => say), 'or')}?`, screen: CLOCKS, question: { kind: 'which', choices } });
}
