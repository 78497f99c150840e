import { describe, expect, it } from 'vitest';
import { checksumOf } from '../../../core/journal/checksum.ts';
import type { Entry } from '../../../core/journal/entry.ts';
import { checkMigrations, JOURNAL_VERSION, MIGRATIONS, openJournal, type Migration } from '../../../core/journal/migrate.ts';
import { validPrefix } from '../../../core/journal/chain.ts';
import { at } from '../clock/clocks.ts';
import { journal } from './journals.ts';

/** A made-up past: form 1 said 'remark', form 2 'note' with 'words', form 3 is today's. */
const PAST: readonly Migration[] = [
  { to: 2, why: 'a remark is called a note', entry: (old) => (old['kind'] === 'remark' ? { kind: 'note', words: old['words'] } : old) },
  { to: 3, why: 'notes are called noted', entry: (old) => (old['kind'] === 'note' ? { kind: 'noted', text: old['words'] } : old) },
];

function oldJournal(...entries: readonly Record<string, unknown>[]): unknown[] {
  let before = '';
  return entries.map((entry, index) => {
    const open = { number: index + 1, act: index + 1, at: at(0), entry: entry as unknown as Entry, before };
    before = checksumOf(open);
    return { ...open, checksum: before };
  });
}

describe('a journal in an older form', () => {
  it('is brought up step by step, each record keeping its number, act and time', () => {
    const opened = openJournal(1, oldJournal({ kind: 'remark', words: 'knot' }, { kind: 'step done', step: 'rip/leg/1' }), PAST, 3);
    expect(opened).toMatchObject({ how: 'writing', migratedFrom: 1, records: [{ number: 1, act: 1, at: at(0), entry: { kind: 'noted', text: 'knot' } }, { number: 2, entry: { kind: 'step done' } }] });
    if (opened.how === 'writing') expect(validPrefix(opened.records).records).toEqual(opened.records);
    expect(openJournal(2, oldJournal({ kind: 'note', words: 'knot' }), PAST, 3)).toMatchObject({ records: [{ entry: { kind: 'noted', text: 'knot' } }] });
  });

  it('is believed no further than its checksums go', () => {
    const values = oldJournal({ kind: 'remark', words: 'one' }, { kind: 'remark', words: 'two' }) as { entry: unknown }[];
    const spoilt = [values[0], { ...values[1], entry: { kind: 'remark', words: 'too' } }];
    expect(openJournal(1, spoilt, PAST, 3)).toMatchObject({ records: { length: 1 } });
  });

  it('that cannot be brought up is refused whole, with the entry and what to do', () => {
    const opened = openJournal(1, oldJournal({ kind: 'remark' }), PAST, 3);
    expect(opened).toMatchObject({ how: 'refused' });
    expect(opened.how === 'refused' && opened.say).toMatch(/^Entry 1 could not be brought from form 1 to form 3: .*Nothing was changed/);
  });

  it('nested deeper than any entry ever was is not walked into', () => {
    let deep: Record<string, unknown> = {};
    for (let depth = 0; depth < 50_000; depth++) deep = { deep };
    expect(openJournal(1, [{ number: 1, act: 1, at: at(0), entry: deep, before: '', checksum: '00000000' }], PAST, 3)).toMatchObject({ records: { length: 0 } });
  });
});

describe('a journal of', () => {
  it('a newer form is read and not written, in words that say what to do', () => {
    const records = journal({ kind: 'noted', text: 'x' });
    const opened = openJournal(JOURNAL_VERSION + 1, records);
    expect(opened).toMatchObject({ how: 'read-only', records });
    expect(opened.how === 'read-only' && opened.say).toMatch(/newer bench.*Bring this bench up to date/);
  });

  it.each([undefined, null, 'one', 0, 1.5, NaN, {}])('no known form (%s) is left as it is', (version) => {
    expect(openJournal(version, [])).toMatchObject({ how: 'refused' });
  });

  it('the present form is taken as it is', () => {
    const records = journal({ kind: 'noted', text: 'x' });
    expect(openJournal(JOURNAL_VERSION, records)).toEqual({ how: 'writing', records });
  });
});

describe('the migrations', () => {
  it('put a copy that was placed alone into the legs assigned, and touch nothing else', () => {
    const opened = openJournal(1, oldJournal({ kind: 'placed', part: 'leg', copy: 3, place: 'back left' }, { kind: 'noted', text: 'knot' }));
    expect(opened).toMatchObject({ how: 'writing', migratedFrom: 1, records: [{ entry: { kind: 'legs assigned', part: 'leg', legs: [{ copy: 3, place: 'back left' }] } }, { entry: { kind: 'noted', text: 'knot' } }] });
  });

  it('lead to the present form one by one', () => {
    expect(() => checkMigrations(MIGRATIONS, JOURNAL_VERSION)).not.toThrow();
    expect(() => checkMigrations(PAST, 3)).not.toThrow();
  });

  it.each([
    ['with a hole', [PAST[1]], 3, 'migration to form 2 was expected at place 0, found was one to form 3'],
    ['out of order', [...PAST].reverse(), 3, 'migration to form 2 was expected at place 0, found was one to form 3'],
    ['too few', [PAST[0]], 3, 'migration to form 3 was expected at place 1, found was none'],
    ['too many', PAST, 2, 'the last migration leads to form 3, but the present form is 2'],
  ])('%s are a bug that is named', (_what, migrations, present, message) => {
    expect(() => checkMigrations(migrations as Migration[], present)).toThrow(message);
  });
});
