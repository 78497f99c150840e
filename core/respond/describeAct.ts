import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import { sayDuration } from '../clock/sayDuration.ts';
import type { Entry } from '../journal/entry.ts';
import { titleOf } from '../work/wording.ts';
import { describeCraft } from './describeCraft.ts';
import { describeCutting } from './describeCutting.ts';
import { sayList, saySubject, spoken } from './saying.ts';
import { stepCalled } from '../work/progress.ts';
import { describeFaces } from './describeFaces.ts';
import { stepsOf } from './views.ts';

/** What one request wrote down, in words: 'leg two, width, three, and one sixteenth inches'. */
export function describeAct(bench: Bench, act: number): string {
  const entries = bench.records.filter((record) => record.act === act).map(({ entry }) => entry);
  const told = entries.map((entry) => describeEntry(bench, entry)).filter((text) => text !== '');
  return told.length > 0 ? sayList(told) : 'the last entry';
}

/** One entry in words; empty for those that only keep the bench's own books. */
export function describeEntry(bench: Bench, entry: Entry): string {
  const { state } = bench;
  const title = (id: string) => {
    const step = stepCalled(id, stepsOf(state));
    return step ? titleOf(step, state.places) : id;
  };
  const timer = (id: number) => bench.records.find(({ number, entry: started }) => number === id && started.kind === 'timer started')?.entry;
  const timerName = (id: number) => {
    const started = timer(id);
    return started?.kind === 'timer started' ? started.timer.name : 'a clock';
  };
  switch (entry.kind) {
    case 'piece loaded':
      return `a piece loaded from ${entry.from}`;
    case 'measured':
      return `${saySubject(state, entry.measurement.size, entry.measurement.copy)}, ${spoken(state, entry.measurement.length)}`;
    case 'measurement withdrawn':
      return `${saySubject(state, entry.size, entry.copy)}, withdrawn`;
    case 'step done':
      return `${title(entry.step)} as done`;
    case 'step skipped':
      return `${title(entry.step)}, skipped`;
    case 'step reopened':
      return `${title(entry.step)}, opened again`;
    case 'went to step':
      return '';
    case 'faces liked': case 'end liked': case 'faces ordered': case 'board liked': case 'legs assigned':
      return describeFaces(state, entry);
    case 'timer started':
      return `${entry.timer.name}, ${sayDuration(entry.timer.durationMs)}, started`;
    case 'timer changed':
      return `${timerName(entry.timer)}, ${sayDuration(Math.abs(entry.addMs))} ${entry.addMs < 0 ? 'taken off' : 'added'}`;
    case 'timer held':
      return `${timerName(entry.timer)}, held`;
    case 'timer resumed':
      return `${timerName(entry.timer)}, running on`;
    case 'timer acknowledged':
      return `${timerName(entry.timer)}, heard`;
    case 'timer stopped':
      return `${timerName(entry.timer)}, stopped`;
    case 'cutting begun':
      return `the ${entry.edge} began to cut`;
    case 'cutting ended':
      return 'cutting stopped';
    case 'edge cared for':
      return `the ${entry.edge}, ${entry.care}`;
    case 'clock seen':
      return entry.note === 'heartbeat' ? '' : `the clock ${entry.note}`;
    case 'setting changed':
      return 'a setting';
    case 'noted':
      return `the note: ${entry.text}`;
    case 'caution said': case 'gluing move done':
      return '';
    case 'air told': case 'moisture told': case 'label told': case 'rest seen': case 'surface read': case 'surface planed': case 'gluing begun': case 'gluing ended': case 'gluing divided':
      return describeCraft(state, entry);
    case 'board put': case 'board gone': case 'plan taken': case 'cut made': case 'sawing set': case 'part rough':
      return describeCutting(state, entry);
    case 'scratched':
      return 'scratch that';
    case 'put back':
      return 'a put back';
    default:
      return assertNever(entry);
  }
}
