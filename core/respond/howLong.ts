import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import { readTimer } from '../clock/reading.ts';
import type { Moment } from '../clock/moment.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import { CURE_CLOCK } from '../work/finishing.ts';
import { isOpen, remaining } from '../work/progress.ts';
import { timersStarting, type Operation, type Step, type StepTimer } from '../work/step.ts';
import { sayCount, sentence } from './saying.ts';
import { tell } from './plain.ts';
import { timerTonight } from './stretched.ts';
import { sayTimeLeft } from './timeLeft.ts';
import { stepsOf } from './views.ts';

/** What the waits of an operation are called, one and several; the clamps of every glue-up are one kind of wait. */
const WAITS: Partial<Readonly<Record<Operation, readonly [string, string]>>> = {
  'rest': ['rest of the wood', 'rests of the wood'], 'scrape squeeze-out': ['glue-up until it has cured', 'glue-ups until they have cured'], 'finish': ['coat until the next', 'coats until the next'],
};
const CLAMPS = ['time in the clamps', 'times in the clamps'] as const;
const CURE = ['finish until it has cured', 'finishes until they have cured'] as const;

/** How long the rest takes, as far as it is known: steps, clocks that run, and the times of wood, glue and finish that nobody can hurry. Hours of work are not guessed. */
export function tellHowLong({ state }: Bench, now: Moment): Response {
  const steps = stepsOf(state);
  const { left } = remaining(steps, state);
  const running = state.timers.filter((timer) => (timer.kind === 'clamp' || timer.kind === 'rest') && timer.acknowledgedAt === undefined && !readTimer(timer, now).due);
  const waits = waitsOf(steps.filter((step) => isOpen(step, state)).flatMap((step) => waitingIn(step).map((timer) => ({ step, timer: timerTonight(state, step, timer, now) }))));
  const say = [
    sentence(`${sayCount(left, 'step is', 'steps are')} left; how many hours of work that is I cannot know`),
    ...running.map((timer) => sentence(sayTimeLeft(timer, now))),
    waits.length === 0 ? '' : sentence(`to wait for: ${waits.join('; ')}${waits.length > 1 ? '; some of it side by side' : ''}`),
  ];
  return tell({ say: say.filter(Boolean).join(' '), screen: { name: 'steps' } });
}

function waitingIn(step: Step): readonly StepTimer[] {
  return [...timersStarting(step, 'when asked'), ...timersStarting(step, 'when done')].filter(({ kind }) => kind === 'clamp' || kind === 'rest');
}

/** 'Eight times in the clamps, one hour each': alike ones together, in the order of the work. */
function waitsOf(timers: readonly { readonly step: Step; readonly timer: StepTimer }[]): readonly string[] {
  const alike = new Map<string, { count: number; readonly names: readonly [string, string]; readonly durationMs: number }>();
  for (const { step, timer } of timers) {
    const names = timer.kind === 'clamp' ? CLAMPS : timer.name === CURE_CLOCK ? CURE : WAITS[step.operation] ?? CLAMPS;
    const key = `${names[0]} ${timer.durationMs}`;
    const known = alike.get(key) ?? { count: 0, names, durationMs: timer.durationMs };
    known.count += 1;
    alike.set(key, known);
  }
  return [...alike.values()].map(({ count, names: [one, many], durationMs }) => `${sayCount(count, one, many)}, ${sayDuration(durationMs)}${count === 1 ? '' : ' each'}`);
}
