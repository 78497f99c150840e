import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { FACES } from '../../../core/faces/face.ts';
import { QUALITIES } from '../../../core/faces/likes.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { actsOf, EMPTY_SNAPSHOT, foldFrom, foldJournal, foldRecords, type Snapshot } from '../../../core/journal/fold.ts';
import type { State } from '../../../core/journal/state.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import { nanometres } from '../../../core/length/length.ts';
import { at, MINUTE, rebooted, SECOND } from '../clock/clocks.ts';
import { stool } from './journals.ts';

// Many random cases, on a machine that may be busy with others.
vi.setConfig({ testTimeout: 60_000 });

/** What a maker and the bench write, at random; undo as respond does it, from what stands. */
type Deed = readonly Entry[] | 'scratch' | 'put back' | 'snapshot' | 'restart';

const step = fc.constantFrom('rip/leg/1', 'face/leg/1', 'face/leg/2');
const timer = fc.integer({ min: 1, max: 40 });
const entry: fc.Arbitrary<Entry> = fc.oneof(
  fc.constantFrom('sawing stool', 'shooting board').map((name): Entry => ({ kind: 'piece loaded', text: stool({ name }), from: 'file' })),
  fc.record({ kind: fc.constant('measured' as const), measurement: fc.record({ size: fc.constantFrom('leg.length', 'top.width'), length: fc.integer({ min: 1, max: 9 }).map(nanometres), copy: fc.integer({ min: 1, max: 4 }) }) }),
  step.map((id): Entry => ({ kind: 'step done', step: id })),
  step.map((id): Entry => ({ kind: 'step reopened', step: id })),
  step.map((id): Entry => ({ kind: 'went to step', step: id })),
  fc.record({ kind: fc.constant('legs assigned' as const), part: fc.constant('leg'), legs: fc.array(fc.record({ copy: fc.integer({ min: 1, max: 4 }), place: fc.constantFrom('front left', 'front right') }), { minLength: 1, maxLength: 1 }) }),
  fc.record({ kind: fc.constant('faces liked' as const), part: fc.constant('leg'), copy: fc.integer({ min: 1, max: 5 }), faces: fc.subarray([...FACES]), as: fc.constantFrom(...QUALITIES) }),
  fc.record({ kind: fc.constant('end liked' as const), part: fc.constant('leg'), copy: fc.integer({ min: 1, max: 5 }), what: fc.constantFrom('up' as const, 'arch' as const), end: fc.constantFrom('numbered' as const, 'other' as const, 'either' as const) }),
  fc.constantFrom('clamp' as const, 'break' as const).map((kind): Entry => ({ kind: 'timer started', timer: { kind, name: 'clock', durationMs: 10 * MINUTE, basis: '' } })),
  timer.map((id): Entry => ({ kind: 'timer held', timer: id })),
  timer.map((id): Entry => ({ kind: 'timer resumed', timer: id })),
  timer.map((id): Entry => ({ kind: 'timer stopped', timer: id })),
  timer.map((id): Entry => ({ kind: 'timer acknowledged', timer: id })),
  timer.map((id): Entry => ({ kind: 'timer changed', timer: id, addMs: MINUTE })),
  fc.integer({ min: 0, max: 10 }).map((volume): Entry => ({ kind: 'setting changed', setting: { volume } })),
  fc.constant<Entry>({ kind: 'clock seen', note: 'heartbeat' }),
  fc.constant<Entry>({ kind: 'caution said', caution: 'chisel' }),
  fc.constant<Entry>({ kind: 'noted', text: 'knot' }),
);
const deed: fc.Arbitrary<Deed> = fc.oneof(
  { weight: 6, arbitrary: fc.array(entry, { minLength: 1, maxLength: 3 }) },
  { weight: 3, arbitrary: fc.constantFrom<Deed[]>('scratch', 'put back', 'snapshot') },
  { weight: 1, arbitrary: fc.constant<Deed>('restart') },
);

/** Writes the deeds down; `look` is called after each. */
function writeDown(deeds: readonly Deed[], look: (records: readonly JournalRecord[], deed: Deed) => void): JournalRecord[] {
  const records: JournalRecord[] = [];
  let restarts = 0;
  for (const [index, what] of deeds.entries()) {
    const acts = actsOf(records);
    const [standing, scratched] = [acts.standing.at(-1), acts.scratched.at(-1)];
    if (what === 'restart') restarts++;
    const now = restarts === 0 ? at(index * 50 * SECOND) : rebooted(index * 50 * SECOND, index * SECOND, { bootId: `boot ${restarts}`, wallTrusted: restarts % 2 === 0 });
    const entries: readonly Entry[] = what === 'scratch' ? (standing === undefined ? [] : [{ kind: 'scratched', act: standing }])
      : what === 'put back' ? (scratched === undefined ? [] : [{ kind: 'put back', act: scratched }])
        : what === 'restart' ? [{ kind: 'clock seen', note: 'restarted' }]
          : what === 'snapshot' ? [] : what;
    records.push(...makeRecords(entries, records.at(-1) ?? null, now));
    look(records, what);
  }
  return records;
}

describe('whatever is written, taken back and put back', () => {
  it('folds on a snapshot, and act by act, to what the whole journal folds to', () => {
    fc.assert(fc.property(fc.array(deed, { maxLength: 40 }), (deeds) => {
      let snapshot: Snapshot = EMPTY_SNAPSHOT;
      let actByAct = EMPTY_SNAPSHOT;
      const records = writeDown(deeds, (sofar, what) => {
        if (what === 'snapshot') snapshot = foldJournal(sofar);
        actByAct = foldJournal(sofar, actByAct);
      });
      const whole = foldFrom(EMPTY_SNAPSHOT, records);
      expect(foldJournal(records, snapshot)).toEqual(whole);
      expect(actByAct).toEqual(whole);
    }), { numRuns: 150 });
  });

  it('is as it was before once it is taken back, and as it was after once it is put back', () => {
    // What was seen and said meanwhile stays seen and said.
    const lasting = (state: State) => ({
      ...state, clock: null, lastNumber: 0, cautionsSaid: null,
      timers: state.timers.map(({ id, name, durationMs, startedAt }) => ({ id, name, durationMs, startedAt })),
    });
    fc.assert(fc.property(fc.array(deed, { maxLength: 20 }), fc.array(entry, { minLength: 1, maxLength: 3 }), (deeds, last) => {
      const before = writeDown(deeds, () => undefined);
      const after = [...before, ...makeRecords(last, before.at(-1) ?? null, at(3_000 * SECOND))];
      const act = before.length + 1;
      if (actsOf(after).standing.at(-1) !== act) return;
      const scratched = [...after, ...makeRecords([{ kind: 'scratched', act }], after.at(-1) ?? null, at(3_001 * SECOND))];
      expect(lasting(foldRecords(scratched))).toEqual(lasting(foldRecords(before)));
      const back = [...scratched, ...makeRecords([{ kind: 'put back', act }], scratched.at(-1) ?? null, at(3_002 * SECOND))];
      expect(lasting(foldRecords(back))).toEqual(lasting(foldRecords(after)));
      expect(actsOf(back).standing).toEqual(actsOf(after).standing);
    }), { numRuns: 150 });
  });

  it('folds to the same over weeks of acts and undoing, act by act and all at once', () => {
    let actByAct = EMPTY_SNAPSHOT;
    const deeds = fc.sample(deed, { numRuns: 800, seed: 7 });
    const records = writeDown(deeds, (sofar) => { actByAct = foldJournal(sofar, actByAct); });
    const whole = foldFrom(EMPTY_SNAPSHOT, records);
    expect(records.length).toBeGreaterThan(600);
    expect(actByAct).toEqual(whole);
    expect(foldJournal(records)).toEqual(whole);
  });

  it('folds to the same when everything is taken back, one by one, and put back again', () => {
    const evening = writeDown(fc.sample(fc.array(entry, { minLength: 1, maxLength: 3 }), { numRuns: 200, seed: 11 }), () => undefined);
    const records = [...evening];
    let fold = foldJournal(records);
    const write = (undo: Entry) => {
      records.push(...makeRecords([undo], records.at(-1) ?? null, at(100_000 * SECOND)));
      fold = foldJournal(records, fold);
    };
    while (fold.acts.standing.length > 0) write({ kind: 'scratched', act: fold.acts.standing.at(-1) ?? 0 });
    expect(fold).toEqual(foldFrom(EMPTY_SNAPSHOT, records));
    expect(fold.state).toMatchObject({ piece: null, notes: [], timers: [] });
    while (fold.acts.scratched.length > 0) write({ kind: 'put back', act: fold.acts.scratched.at(-1) ?? 0 });
    expect(fold).toEqual(foldFrom(EMPTY_SNAPSHOT, records));
    expect(fold.state.notes).toEqual(foldRecords(evening).notes);
  });
});
