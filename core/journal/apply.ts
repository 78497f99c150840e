import { assertNever } from '../result.ts';
import { acknowledgeTimer, addTime, doubtWall, holdTimer, resumeTimer, seeClock, startTimer } from '../clock/change.ts';
import { clockFault } from '../clock/jump.ts';
import type { Moment } from '../clock/moment.ts';
import type { Timer } from '../clock/timer.ts';
import type { Measurement } from '../piece/measurement.ts';
import { applyEdge } from './edges.ts';
import { applyCraft } from './craft.ts';
import { applyCutting } from './cutting.ts';
import type { JournalRecord } from './entry.ts';
import { applyFaces } from './applyFaces.ts';
import { ownMap, ownNotes, ownSet, type Draft } from './draft.ts';
import { putOnBench, type ReadPiece } from './putOnBench.ts';

/** Writes one record into the draft of a state. Names that nothing is called (a timer long stopped) change nothing. */
export function applyRecord(draft: Draft, { number, at, entry }: JournalRecord, readPiece: ReadPiece): void {
  const { state } = draft;
  switch (entry.kind) {
    case 'piece loaded':
      putOnBench(draft, entry, readPiece);
      return;
    case 'measured':
      state.measurements = [...without(state.measurements, entry.measurement), entry.measurement];
      return;
    case 'measurement withdrawn':
      state.measurements = without(state.measurements, entry);
      return;
    case 'step done':
      setStep(draft, entry.step, 'done');
      return;
    case 'step skipped':
      setStep(draft, entry.step, 'skipped');
      return;
    case 'step reopened':
      setStep(draft, entry.step, 'open');
      return;
    case 'went to step':
      state.currentStep = entry.step;
      return;
    case 'faces liked':
    case 'end liked':
    case 'faces ordered':
    case 'board liked':
    case 'legs assigned':
      applyFaces(draft, entry);
      return;
    case 'timer started':
      state.timers = [...state.timers, startTimer(entry.timer, number, at, state.timers)];
      return;
    case 'timer changed':
      changeTimer(draft, entry.timer, (timer) => addTime(timer, entry.addMs, at));
      return;
    case 'timer held':
      changeTimer(draft, entry.timer, (timer) => holdTimer(timer, at));
      return;
    case 'timer resumed':
      changeTimer(draft, entry.timer, (timer) => resumeTimer(timer, at));
      return;
    case 'timer acknowledged':
      changeTimer(draft, entry.timer, (timer) => acknowledgeTimer(timer, at));
      return;
    case 'timer stopped':
      state.timers = state.timers.filter(({ id }) => id !== entry.timer);
      return;
    case 'cutting begun': case 'cutting ended': case 'edge cared for':
      Object.assign(state, applyEdge(state, entry, at));
      return;
    case 'setting changed':
      state.settings = { ...state.settings, ...entry.setting };
      return;
    case 'noted':
      ownNotes(draft).push({ number, at, text: entry.text });
      return;
    case 'air told': case 'moisture told': case 'label told': case 'rest seen': case 'surface read': case 'surface planed':
    case 'gluing begun': case 'gluing move done': case 'gluing ended': case 'gluing divided':
      Object.assign(state, applyCraft(state, entry, at, state.pieceName ?? ''));
      return;
    case 'board put': case 'board gone': case 'plan taken': case 'cut made': case 'sawing set': case 'part rough':
      Object.assign(state, applyCutting(state, entry, state.pieceName ?? ''));
      return;
    case 'caution said':
      ownMap(draft, 'cautionsSaid').set(entry.caution, at);
      return;
    // What the clocks said is taken in by seeRecord; what is taken back was left out before.
    case 'clock seen':
    case 'scratched':
    case 'put back':
      return;
    default:
      return assertNever(entry);
  }
}

/**
 * Every record is a reading of the clocks too, also one that is taken back: timers are counted up to the last reading
 * before a restart, and those that stand on a wall clock that was trusted and jumped stand on it no more. (One that was
 * not trusted and jumps is set right, and may tell what was not known.)
 */
export function seeRecord(draft: Draft, { at, entry }: JournalRecord): void {
  const { state } = draft;
  const before = state.clock;
  if (before && before.bootId !== at.bootId) {
    state.timers = state.timers.map((timer) => seeClock(seeClock(timer, before), at));
  } else if (before?.wallTrusted && jumped(before, at)) {
    state.timers = state.timers.map((timer) => doubtWall(timer, at));
  }
  if (entry.kind === 'clock seen') state.timers = state.timers.map((timer) => seeClock(timer, at));
  const older = before?.bootId === at.bootId && before.monotonicMs > at.monotonicMs;
  if (!older) state.clock = at;
}

function jumped(before: Moment, at: Moment): boolean {
  const fault = clockFault(before, at);
  return fault?.kind === 'backwards' || fault?.kind === 'jumped forward';
}

/** Without a copy, what was said of single copies goes too. */
function without(measurements: readonly Measurement[], { size, copy }: Pick<Measurement, 'size' | 'copy'>): readonly Measurement[] {
  return measurements.filter((measurement) => measurement.size !== size || (copy !== undefined && measurement.copy !== copy));
}

function setStep(draft: Draft, step: string, what: 'done' | 'skipped' | 'open'): void {
  ownSet(draft, 'done')[what === 'done' ? 'add' : 'delete'](step);
  ownSet(draft, 'skipped')[what === 'skipped' ? 'add' : 'delete'](step);
}

function changeTimer(draft: Draft, id: number, change: (timer: Timer) => Timer): void {
  draft.state.timers = draft.state.timers.map((timer) => (timer.id === id ? change(timer) : timer));
}
