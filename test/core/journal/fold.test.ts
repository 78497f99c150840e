import { describe, expect, it } from 'vitest';
import { readTimer } from '../../../core/clock/reading.ts';
import type { Entry } from '../../../core/journal/entry.ts';
import { actsOf, EMPTY_STATE, foldJournal, foldRecords } from '../../../core/journal/fold.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import { nanometres, NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import { at, HOUR, MINUTE, rebooted, SECOND } from '../clock/clocks.ts';
import { journal, part, stool, type GivenAct } from './journals.ts';

const inches = (count: number) => nanometres(count * NANOMETRES_PER_INCH);
const loaded = (text = stool()): Entry => ({ kind: 'piece loaded', text, from: 'stool.json' });
const measured = (size: string, count: number, copy?: number): Entry =>
  ({ kind: 'measured', measurement: { size, length: inches(count), ...(copy === undefined ? {} : { copy }) } });
const note = (text: string): Entry => ({ kind: 'noted', text });
const clamps: Entry = { kind: 'timer started', timer: { kind: 'clamp', name: 'leg clamps', durationMs: 30 * MINUTE, basis: 'common practice' } };
const scratch = (act: number): Entry => ({ kind: 'scratched', act });
const putBack = (act: number): Entry => ({ kind: 'put back', act });
const notes = (...acts: readonly GivenAct[]) => foldRecords(journal(...acts)).notes.map(({ text }) => text);

describe('what the journal comes to', () => {
  it('is an empty bench with the usual settings when nothing was written', () => {
    expect(foldRecords([])).toBe(EMPTY_STATE);
  });

  it('keeps the last measurement of each copy, and one said of all copies over those of single ones', () => {
    const state = foldRecords(journal(loaded(), measured('leg.length', 16, 1), measured('leg.length', 15, 1), measured('leg.length', 14, 2), measured('leg.width', 2, 1), measured('leg.width', 3)));
    expect(state.measurements).toEqual([
      { size: 'leg.length', length: inches(15), copy: 1 }, { size: 'leg.length', length: inches(14), copy: 2 }, { size: 'leg.width', length: inches(3) },
    ]);
    const withdrawn = foldRecords(journal(loaded(), measured('leg.length', 16, 1), measured('leg.length', 14, 2), { kind: 'measurement withdrawn', size: 'leg.length', copy: 1 }));
    expect(withdrawn.measurements).toEqual([{ size: 'leg.length', length: inches(14), copy: 2 }]);
  });

  it('knows steps as done, skipped or open again', () => {
    const state = foldRecords(journal(
      { kind: 'step done', step: 'face/leg/1' }, { kind: 'step skipped', step: 'rip/leg/1' }, { kind: 'step done', step: 'rip/leg/1' },
      { kind: 'step done', step: 'edge/leg/1' }, { kind: 'step reopened', step: 'edge/leg/1' }, { kind: 'went to step', step: 'edge/leg/1' }));
    expect([[...state.done], [...state.skipped], state.currentStep]).toEqual([['face/leg/1', 'rip/leg/1'], [], 'edge/leg/1']);
  });

  it('never stands two legs in one place', () => {
    const place = (copy: number, where: string): Entry => ({ kind: 'legs assigned', part: 'leg', legs: [{ copy, place: where }] });
    const state = foldRecords(journal(place(1, 'front left'), place(2, 'front right'), place(3, 'front left'), { kind: 'legs assigned', part: 'rail', legs: [{ copy: 1, place: 'front left' }] }));
    expect([...state.places]).toEqual([['leg/2', 'front right'], ['leg/3', 'front left'], ['rail/1', 'front left']]);
  });

  it('leaves the settings that a change does not name', () => {
    expect(foldRecords(journal({ kind: 'setting changed', setting: { volume: 3 } }, { kind: 'setting changed', setting: { theme: 'dark' } })).settings)
      .toEqual({ ...EMPTY_STATE.settings, volume: 3, theme: 'dark' });
  });

  it('keeps the collections that did not change, so that what is worked out from them can be kept too', () => {
    const before = foldJournal(journal(loaded(), measured('leg.length', 16, 1)));
    const after = foldJournal(journal(loaded(), measured('leg.length', 16, 1), note('knot')), before);
    expect(after.state.measurements).toBe(before.state.measurements);
    expect(after.state.piece).toBe(before.state.piece);
    expect(after.state.notes).toHaveLength(1);
    expect(before.state.notes).toHaveLength(0);
  });
});

describe('scratch that', () => {
  it('takes back the whole of an act', () => {
    const records = journal(loaded(), [measured('leg.length', 16, 1), { kind: 'step done', step: 'ends/leg/1' }], scratch(2));
    expect(foldRecords(records)).toMatchObject({ measurements: [], done: new Set() });
    expect(actsOf(records)).toMatchObject({ standing: [1], scratched: [2] });
  });

  it('said again goes further back, and put back returns the last one first', () => {
    const acts = [note('one'), note('two'), note('three'), scratch(3), scratch(2)] as const;
    expect(notes(...acts)).toEqual(['one']);
    expect(actsOf(journal(...acts))).toMatchObject({ standing: [1], scratched: [3, 2] });
    expect(notes(...acts, putBack(2))).toEqual(['one', 'two']);
    expect(notes(...acts, putBack(2), putBack(3))).toEqual(['one', 'two', 'three']);
    expect(notes(...acts, putBack(2), scratch(2))).toEqual(['one']);
  });

  it('after something new, what was scratched before cannot be put back', () => {
    const acts = [note('one'), note('two'), scratch(2), note('new'), putBack(2)] as const;
    expect(notes(...acts)).toEqual(['one', 'new']);
    expect(actsOf(journal(...acts))).toMatchObject({ standing: [1, 4], scratched: [] });
  });

  it('passes over heartbeats, cautions and moving about, which are nothing to take back', () => {
    const acts = [note('one'), { kind: 'clock seen', note: 'heartbeat' }, { kind: 'caution said', caution: 'chisel' }, { kind: 'went to step', step: 'rip/leg/1' }] as const;
    expect(actsOf(journal(...acts)).standing).toEqual([1]);
    expect(actsOf(journal(...acts, scratch(1), { kind: 'went to step', step: 'rip/leg/2' })).scratched).toEqual([1]);
  });

  it('of what does not stand, or was never written, does nothing', () => {
    expect(notes(note('one'), scratch(7), putBack(1), scratch(2))).toEqual(['one']);
  });

  it('does not unsay a caution that was said', () => {
    const state = foldRecords(journal([{ kind: 'step done', step: 'rip/leg/1' }, { kind: 'caution said', caution: 'saw' }], scratch(1)));
    expect([state.done.size, [...state.cautionsSaid.keys()]]).toEqual([0, ['saw']]);
  });

  it('of a started clock removes it; of a stop brings it back running from its first start', () => {
    expect(foldRecords(journal(clamps, scratch(1))).timers).toEqual([]);
    const [timer] = foldRecords(journal(clamps, { kind: 'timer stopped', timer: 1 }, scratch(2))).timers;
    expect(timer && readTimer(timer, at(12 * MINUTE))).toMatchObject({ leftMs: 18 * MINUTE, certainty: 'exact' });
  });

  it('of a held, lengthened or acknowledged clock gives it back as it was', () => {
    for (const change of [{ kind: 'timer held', timer: 1 }, { kind: 'timer changed', timer: 1, addMs: HOUR }] as const) {
      const [timer] = foldRecords(journal(clamps, change, scratch(2))).timers;
      expect(timer && readTimer(timer, at(12 * MINUTE)).leftMs).toBe(18 * MINUTE);
    }
    const late = { moment: at(31 * MINUTE), entries: [{ kind: 'timer acknowledged', timer: 1 }] as const };
    expect(foldRecords(journal(clamps, late)).timers[0]?.acknowledgedAt).toEqual(at(31 * MINUTE));
    expect(foldRecords(journal(clamps, late, { moment: at(32 * MINUTE), entries: [scratch(2)] })).timers[0]?.acknowledgedAt).toBeUndefined();
  });

  it('of a loaded piece brings back the one before with its measurements', () => {
    const other = stool({ name: 'shooting board' });
    const state = foldRecords(journal(loaded(), measured('leg.length', 16, 1), loaded(other), scratch(3)));
    expect([state.pieceName, state.measurements.length]).toEqual(['sawing stool', 1]);
    expect(foldRecords(journal(loaded(), scratch(1)))).toMatchObject({ piece: null, pieceText: null });
  });
});

describe('loading a piece', () => {
  it('edited under the same name keeps what was measured and done where it still exists', () => {
    const legsOnly = stool({ parts: [part('leg', 'leg', 3, 'height', '2 in')], parameters: { height: '20 in' } });
    const before = [loaded(), measured('leg.length', 16, 1), measured('leg.length', 16, 4), measured('top.width', 8), { kind: 'legs assigned', part: 'leg', legs: [{ copy: 4, place: 'back right' }] }] as const;
    const edited = foldRecords(journal(...before, loaded(legsOnly)));
    expect(edited.measurements).toEqual([{ size: 'leg.length', length: inches(16), copy: 1 }]);
    expect(edited.places.size).toBe(0);
    const again = foldRecords(journal(...before, loaded(legsOnly), loaded()));
    expect(again.measurements).toHaveLength(3);
    expect(again.places.get('leg/4')).toBe('back right');
  });

  it('edited so that a leg is gone keeps the steps of the others', () => {
    const done = ['face/leg/1', 'face/leg/4', 'ends/top/1'].map((step): Entry => ({ kind: 'step done', step }));
    const at4: Entry = { kind: 'went to step', step: 'edge/leg/4' };
    const three = stool({ parts: [part('top', 'top', 1, 'over', '8 in'), part('leg', 'leg', 3, 'height - top.thickness', '2 in')] });
    const edited = foldRecords(journal(loaded(), ...done, at4, loaded(three)));
    expect([[...edited.done], edited.currentStep]).toEqual([['face/leg/1', 'ends/top/1'], null]);
    const again = foldRecords(journal(loaded(), ...done, at4, loaded(three), loaded()));
    expect([again.done.size, again.currentStep]).toEqual([3, 'edge/leg/4']);
  });

  it('of another name starts clean, and the first piece keeps its progress for when it comes back', () => {
    const other = stool({ name: 'shooting board' });
    const away = foldRecords(journal(loaded(), measured('leg.length', 16, 1), loaded(other)));
    expect(away).toMatchObject({ pieceName: 'shooting board', measurements: [] });
    const back = foldRecords(journal(loaded(), measured('leg.length', 16, 1), loaded(other), measured('top.width', 7), loaded()));
    expect(back.measurements).toEqual([{ size: 'leg.length', length: inches(16), copy: 1 }]);
  });

  it('afresh, for a second stool of the same name, forgets the progress of the first', () => {
    const state = foldRecords(journal(loaded(), measured('leg.length', 16, 1), { kind: 'piece loaded', text: stool(), from: 'again', afresh: true }));
    expect(state.measurements).toEqual([]);
  });

  it('whose text is no piece any more says why, and keeps the progress for when it is mended', () => {
    const broken = stool().replace('"height - top.thickness"', '"height - tpo.thickness"');
    const state = foldRecords(journal(loaded(), measured('leg.length', 16, 1), loaded(broken)));
    expect(state).toMatchObject({ piece: null, pieceText: broken });
    expect(state.pieceFaults[0]?.path).toMatch(/length/);
    expect(foldRecords(journal(loaded(), measured('leg.length', 16, 1), loaded(broken), loaded())).measurements).toHaveLength(1);
    expect(foldRecords(journal(loaded(), loaded('{ not even JSON'))).pieceFaults).not.toHaveLength(0);
  });
});

describe('clocks in the journal', () => {
  it('are counted up to the last record before a power cut, whatever it was about', () => {
    const off = { wallTrusted: false };
    const state = foldRecords(journal(
      { moment: at(0, off), entries: [clamps] }, { moment: at(14 * MINUTE, off), entries: [note('knot in leg two')] },
      { moment: rebooted(0, 40 * SECOND, off), entries: [{ kind: 'clock seen', note: 'restarted' }] }));
    const [timer] = state.timers;
    expect(timer && readTimer(timer, rebooted(0, 60 * SECOND, off))).toMatchObject({ certainty: 'unknown', atLeastElapsedMs: 14 * MINUTE + 20 * SECOND });
    expect(timer).toMatchObject({ lastSeenAt: at(14 * MINUTE, off), lastSeenMs: 14 * MINUTE });
  });

  it('stay counted when the note that counted them is scratched', () => {
    const off = { wallTrusted: false };
    const acts = [{ moment: at(0, off), entries: [clamps] }, { moment: at(14 * MINUTE, off), entries: [note('x')] }, { moment: at(15 * MINUTE, off), entries: [scratch(2)] }];
    const [timer] = foldRecords(journal(...acts, { moment: rebooted(0, 0, off), entries: [note('y')] })).timers;
    expect(timer && readTimer(timer, rebooted(0, 0, off)).atLeastElapsedMs).toBe(15 * MINUTE);
  });

  it('that stood on a wall clock which then jumped say that they do not know', () => {
    const jumped = { ...rebooted(HOUR, 2 * MINUTE), monotonicMs: 2 * MINUTE };
    const state = foldRecords(journal(
      { moment: at(0), entries: [clamps] }, { moment: at(10 * MINUTE), entries: [note('x')] },
      { moment: rebooted(20 * MINUTE, MINUTE), entries: [{ kind: 'clock seen', note: 'restarted' }] },
      { moment: { ...jumped, wallTrusted: false }, entries: [{ kind: 'clock seen', note: 'jumped' }] }));
    const [timer] = state.timers;
    expect(timer && readTimer(timer, jumped)).toMatchObject({ certainty: 'unknown', atLeastElapsedMs: 11 * MINUTE });
  });

  it('that are unknown know again when an untrusted wall clock is set right, however far it jumps for that', () => {
    const wrong = { wallMs: 0, wallTrusted: false };
    const [timer] = foldRecords(journal(
      { moment: at(0), entries: [clamps] }, { moment: at(10 * MINUTE), entries: [note('x')] },
      { moment: rebooted(20 * MINUTE, MINUTE, wrong), entries: [{ kind: 'clock seen', note: 'restarted' }] },
      { moment: rebooted(22 * MINUTE, 3 * MINUTE), entries: [{ kind: 'clock seen', note: 'jumped' }] })).timers;
    expect(timer && readTimer(timer, rebooted(25 * MINUTE, 6 * MINUTE))).toMatchObject({ certainty: 'wall clock', leftMs: 5 * MINUTE });
  });

  it('of one name are told apart', () => {
    expect(foldRecords(journal(clamps, clamps)).timers.map(({ name }) => name)).toEqual(['leg clamps', 'leg clamps two']);
  });
});

describe('a snapshot', () => {
  it('gives the same as the whole journal, also when something before it is taken back later', () => {
    const acts = [loaded(), note('one'), clamps, note('two')] as const;
    const snapshot = foldJournal(journal(...acts));
    for (const more of [[note('three')], [note('three'), scratch(5)], [scratch(4)], [scratch(4), scratch(3)], [scratch(4), putBack(4)]]) {
      const records = journal(...acts, ...more);
      expect(foldJournal(records, snapshot)).toEqual(foldJournal(records));
    }
  });

  it('is given back as it is when nothing was added', () => {
    const records = journal(loaded());
    const snapshot = foldJournal(records);
    expect(foldJournal(records, snapshot)).toBe(snapshot);
    expect(makeRecords([], records.at(-1) ?? null, at(0))).toEqual([]);
  });
});
