import { wasCalled } from '../clock/change.ts';
import { readTimer } from '../clock/reading.ts';
import type { Moment } from '../clock/moment.ts';
import type { Timer } from '../clock/timer.ts';
import { failure, success, type Result } from '../result.ts';
import { timersStarting, type Before, type Operation, type Step, type StepId } from './step.ts';

/** What the journal knows of the work. */
export interface Progress {
  readonly done: ReadonlySet<StepId>;
  readonly skipped: ReadonlySet<StepId>;
  /** Where the maker is; null means the first open step. */
  readonly currentStep: StepId | null;
}

/** The running clocks and the time, for steps that wait for clamps, cure or rest. Without them nothing waits. */
export interface Clocks {
  readonly timers: readonly Timer[];
  readonly now: Moment;
}

/** Why a step may not be done now. */
export interface InTheWay {
  /** A whole sentence, or two. */
  readonly because: string;
  /** The step in the way: the first in the order of work. */
  readonly first: Step;
  /** `skipped`: it was skipped, and may not be. `clock`: it is done, and its clock still runs. */
  readonly how: 'open' | 'skipped' | 'clock';
}

export function isOpen(step: Step, { done, skipped }: Progress): boolean {
  return !done.has(step.id) && !skipped.has(step.id);
}

/** Where the maker is: the step they went to, or the first open one. Undefined when all is done. */
export function currentStep(steps: readonly Step[], progress: Progress): Step | undefined {
  const chosen = progress.currentStep === null ? undefined : placesOf(steps).get(progress.currentStep);
  return (chosen === undefined ? undefined : steps[chosen]) ?? steps.find((step) => isOpen(step, progress));
}

/** The next thing to do after the step where the maker is; see nextAfter. */
export function nextOpen(steps: readonly Step[], progress: Progress, clocks?: Clocks): Step | undefined {
  return nextAfter(currentStep(steps, progress), steps, progress, clocks);
}

/**
 * The first open step after that one that may be done now, else the first before it. When nothing may be done: what holds everything up,
 * a skipped gate or a step that waits for its clock. Undefined when all is done. Having just done a step, ask from that step, with it among the done.
 */
export function nextAfter(from: Step | undefined, steps: readonly Step[], progress: Progress, clocks?: Clocks): Step | undefined {
  const at = placeIn(steps, from);
  const open = [...steps.slice(at + 1), ...steps.slice(0, at + 1)].filter((step) => isOpen(step, progress));
  return open.find((step) => mayDo(step, progress, steps, clocks).ok) ?? (open[0] === undefined ? undefined : rootOf(open[0], steps, progress, clocks));
}

/** Follows what is in the way back to a step with nothing in its way but a clock. Ends, for every step stands on earlier ones only. */
function rootOf(step: Step, steps: readonly Step[], progress: Progress, clocks: Clocks | undefined): Step {
  const may = mayDo(step, progress, steps, clocks);
  return may.ok || may.fault.how === 'clock' ? step : rootOf(may.fault.first, steps, progress, clocks);
}

/** The step before the current one in the order, done or not, for looking back. Undefined at the first. */
export function previous(steps: readonly Step[], progress: Progress): Step | undefined {
  const current = currentStep(steps, progress);
  return current === undefined ? steps.at(-1) : steps[placeIn(steps, current) - 1];
}

/**
 * Whether the wood allows the step now; else the reason and the step in the way. A skipped step counts as passed (the maker has done it
 * elsewhere, or knows why not), but not at a gate: what follows a gate is glue, and cannot be undone.
 * A done step may be done again.
 */
export function mayDo(step: Step, progress: Progress, steps: readonly Step[], clocks?: Clocks): Result<true, InTheWay> {
  const index = placesOf(steps);
  const undone = step.after.flatMap((one) => blockedBy(one, progress));
  const blocking = undone.length > 0 || clocks === undefined ? undone : step.waits.flatMap((one) => waitingFor(one, steps, clocks));
  const first = blocking
    .map(({ one, how }) => ({ one, how, at: index.get(one.step) ?? -1 }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)[0];
  const inTheWay = first === undefined ? undefined : steps[first.at];
  if (first === undefined || inTheWay === undefined) return success(true);
  return failure({ because: first.how === 'skipped' ? `${first.one.because} It was skipped, and this cannot be undone: do it first.` : first.one.because, first: inTheWay, how: first.how });
}

type Blocking = { readonly one: Before; readonly how: InTheWay['how'] };

function blockedBy(one: Before, { done, skipped }: Progress): readonly Blocking[] {
  if (done.has(one.step)) return [];
  if (!skipped.has(one.step)) return [{ one, how: 'open' }];
  return one.gate === true ? [{ one, how: 'skipped' }] : [];
}

/** A clock is out of the way once it is due, acknowledged or stopped: stopping it is the maker's word that it is time. */
function waitingFor(one: Before, steps: readonly Step[], { timers, now }: Clocks): readonly Blocking[] {
  const waited = steps[placesOf(steps).get(one.step) ?? -1];
  const names = waited === undefined ? [] : timersStarting(waited, 'when done').map(({ name }) => name);
  const running = timers.some((timer) => names.some((name) => wasCalled(timer, name)) && timer.acknowledgedAt === undefined && !readTimer(timer, now).due);
  return running ? [{ one, how: 'clock' }] : [];
}

export interface Count {
  readonly left: number;
  readonly of: number;
}

export interface Remaining extends Count {
  readonly done: number;
  readonly skipped: number;
  readonly byOperation: readonly (Count & { readonly operation: Operation })[];
  readonly byPart: readonly (Count & { readonly part: string })[];
}

/** How many steps are open, in all, by operation and by part, in the order of the work. */
export function remaining(steps: readonly Step[], progress: Progress): Remaining {
  const byOperation = new Map<Operation, Step[]>();
  const byPart = new Map<string, Step[]>();
  for (const step of steps) {
    addTo(byOperation, step.operation, step);
    for (const part of new Set(step.covers.map((cover) => cover.part))) addTo(byPart, part, step);
  }
  const count = (some: readonly Step[]): Count => ({ left: some.filter((step) => isOpen(step, progress)).length, of: some.length });
  return {
    ...count(steps),
    done: steps.filter(({ id }) => progress.done.has(id)).length,
    skipped: steps.filter(({ id }) => progress.skipped.has(id) && !progress.done.has(id)).length,
    byOperation: [...byOperation].map(([operation, some]) => ({ operation, ...count(some) })),
    byPart: [...byPart].map(([part, some]) => ({ part, ...count(some) })),
  };
}

function addTo<Key>(lists: Map<Key, Step[]>, key: Key, step: Step): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [step]);
  else list.push(step);
}

export interface CopyProgress extends Count {
  readonly copy: number;
  /** The first open step that works on it; absent when it is finished. */
  readonly next?: Step;
}

/** How far each copy of a part has come, copy 1 first. Empty for a part that no step works on. */
export function progressOf(part: string, steps: readonly Step[], progress: Progress): readonly CopyProgress[] {
  const byCopy = new Map<number, Step[]>();
  for (const step of steps) for (const cover of step.covers) if (cover.part === part) addTo(byCopy, cover.copy, step);
  return [...byCopy].sort(([one], [other]) => one - other).map(([copy, some]) => {
    const open = some.filter((step) => isOpen(step, progress));
    const [next] = open;
    return { copy, left: open.length, of: some.length, ...(next === undefined ? {} : { next }) };
  });
}

const PLACES = new WeakMap<readonly Step[], ReadonlyMap<StepId, number>>();

/** Where each step stands in the list; kept for as long as the list is. */
function placesOf(steps: readonly Step[]): ReadonlyMap<StepId, number> {
  const known = PLACES.get(steps) ?? new Map(steps.map(({ id }, index) => [id, index]));
  PLACES.set(steps, known);
  return known;
}

/** Before the first when there is no current step. */
function placeIn(steps: readonly Step[], step: Step | undefined): number {
  return step === undefined ? -1 : placesOf(steps).get(step.id) ?? -1;
}

/** The step with that id, if the piece has it. */
export function stepCalled(id: StepId, steps: readonly Step[]): Step | undefined {
  return steps[placesOf(steps).get(id) ?? -1];
}
