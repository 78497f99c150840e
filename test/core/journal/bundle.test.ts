import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { compareBundle, exportBundle, importBundle, LARGEST_BUNDLE_BYTES } from '../../../core/journal/bundle.ts';
import { foldRecords } from '../../../core/journal/fold.ts';
import { nanometres } from '../../../core/length/length.ts';
import { at, MINUTE, NOON } from '../clock/clocks.ts';
import { journal, stool } from './journals.ts';

// Many random cases, on a machine that may be busy with others.
vi.setConfig({ testTimeout: 60_000 });

const records = journal(
  { kind: 'piece loaded', text: stool(), from: 'stool.json' },
  { kind: 'measured', measurement: { size: 'leg.length', copy: 1, length: nanometres(412_750_000) } },
  { kind: 'setting changed', setting: { volume: 4 } },
  { kind: 'timer started', timer: { kind: 'clamp', name: 'leg clamps', durationMs: 30 * MINUTE, basis: 'common practice' } },
  { kind: 'noted', text: 'knot near the top' },
);
const state = foldRecords(records);
const file = exportBundle(records, state, at(0));

/** The file with one field changed. */
function changed(change: (value: Record<string, unknown>) => void): string {
  const value = JSON.parse(file) as Record<string, unknown>;
  change(value);
  return JSON.stringify(value);
}

describe('everything in one file', () => {
  it('comes back as it was: piece, journal, settings', () => {
    const read = importBundle(file);
    expect(read).toEqual({ ok: true, value: { records, state, madeAt: NOON } });
  });

  it('of an empty bench is a file too', () => {
    expect(importBundle(exportBundle([], foldRecords([]), at(0)))).toMatchObject({ ok: true, value: { records: [] } });
  });

  it.each<[string, string, string, RegExp]>([
    ['no JSON, as when it was cut off while being copied', file.slice(0, 500), '', /cut off.*copy it again/],
    ['another kind of file', stool(), 'format', /not a backup/],
    ['nothing at all', 'null', 'format', /not a backup/],
    ['a newer form', changed((value) => { value['version'] = 99; }), 'version', /newer bench/],
    ['a field too many', changed((value) => { value['extra'] = 1; }), 'extra', /damaged/],
    ['a note changed by hand', file.replace('knot near', 'knot far from'), 'records.4.checksum', /entry 5 of 5 cannot be believed/],
    ['a record missing', changed((value) => { (value['records'] as unknown[]).splice(1, 1); }), 'records.1', /entry 2 of 4/],
    ['a record that is none', changed((value) => { (value['records'] as unknown[])[2] = { number: 'three' }; }), 'records.2.number', /entry 3 of 5/],
    ['another piece put in', changed((value) => { value['piece'] = stool({ name: 'shooting board' }); }), 'piece', /piece.*changed by hand/],
    ['a setting changed', changed((value) => { (value['settings'] as Record<string, unknown>)['volume'] = 9; }), 'settings', /settings.*changed by hand/],
    ['a setting out of range', changed((value) => { (value['settings'] as Record<string, unknown>)['volume'] = 900; }), 'settings.volume', /damaged/],
  ])('with %s is refused whole, and says where and what to do', (_what, text, path, message) => {
    const read = importBundle(text);
    expect(read.ok ? null : [read.fault.path, message.test(read.fault.message) || read.fault.message]).toEqual([path, true]);
  });

  it('larger than any backup is refused before it is read', () => {
    const read = importBundle(' '.repeat(LARGEST_BUNDLE_BYTES + 1));
    expect(read.ok ? null : read.fault.message).toMatch(/too large/);
  });

  it('with any character changed is refused or the same, and never throws', () => {
    fc.assert(fc.property(fc.nat(file.length - 1), fc.string({ unit: 'binary-ascii', minLength: 0, maxLength: 3 }), (place, put) => {
      const read = importBundle(file.slice(0, place) + put + file.slice(place + 1));
      if (read.ok) expect(read.value.records).toEqual(records);
      else expect(read.fault.message.length).toBeGreaterThan(20);
    }), { numRuns: 1_000 });
  });
});

describe('before a backup takes the place of the journal, it is told', () => {
  const bundle = { records, state, madeAt: NOON };
  it('that nothing would change', () => {
    expect(compareBundle(bundle, records, state)).toMatchObject({ loses: 0, gains: 0 });
  });

  it('what comes when the bench is empty or behind', () => {
    expect(compareBundle(bundle, [], foldRecords([])))
      .toEqual({ loses: 0, gains: 5, say: 'The backup holds 5 entries, sawing stool, 1 measurement, 0 steps done, 1 clock. Nothing on the bench would be lost.' });
  });

  it('what would be lost of what was written since, or otherwise', () => {
    const since = journal({ kind: 'piece loaded', text: stool(), from: 'stool.json' }, { kind: 'noted', text: 'other' }, { kind: 'noted', text: 'more' });
    expect(compareBundle(bundle, since, foldRecords(since))).toMatchObject({ loses: 2, gains: 4 });
    expect(compareBundle(bundle, since, foldRecords(since)).say).toMatch(/2 entries on the bench are not in it and would be replaced/);
  });
});
