import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { validPrefix } from '../../../core/journal/chain.ts';
import type { Entry, JournalRecord } from '../../../core/journal/entry.ts';
import { mergeCopies } from '../../../core/journal/merge.ts';
import { makeRecords } from '../../../core/journal/record.ts';
import { at } from '../clock/clocks.ts';
import { journal } from './journals.ts';

// Many random cases, on a machine that may be busy with others.
vi.setConfig({ testTimeout: 60_000 });

const notes = (count: number, of = 'note'): Entry[] => Array.from({ length: count }, (_unused, index) => ({ kind: 'noted', text: `${of} ${index}` }));
const long = journal(...notes(20));

/** The same journal up to a record, and another story from there. */
function partingAfter(records: readonly JournalRecord[], after: number, more: number, of: string): JournalRecord[] {
  const story = records.slice(0, after);
  for (const entry of notes(more, of)) story.push(...makeRecords([entry], story.at(-1) ?? null, at(0)));
  return story;
}

describe('two copies of a journal', () => {
  it('that are whole and the same need no word', () => {
    expect(mergeCopies(long, long)).toMatchObject({ records: long, from: 'both', setAside: [], told: null });
    expect(mergeCopies([], [])).toMatchObject({ records: [], told: null });
  });

  it('of which one was cut short go on from the longer', () => {
    expect(mergeCopies(long.slice(0, 17), long)).toMatchObject({ records: long, from: 'second', told: 'The browser\'s copy of the journal lacked 3 entries; they come from the keeper\'s copy.' });
    expect(mergeCopies(long, long.slice(0, 19))).toMatchObject({ records: long, from: 'first', told: 'The keeper\'s copy of the journal lacked one entry; they come from the browser\'s copy.' });
  });

  it('of which one is gone are restored from the other: an empty copy is a loss, never a new beginning', () => {
    expect(mergeCopies([], long)).toMatchObject({ records: long, from: 'second', told: 'The browser\'s copy of the journal is gone; all 20 entries come from the keeper\'s copy.' });
  });

  it('that are damaged in different places make one whole journal', () => {
    const spoilt = (at: number) => long.map((record) => (record.number === at ? { ...record, act: 1 } : record));
    const merged = mergeCopies(spoilt(7), spoilt(15));
    expect(merged).toMatchObject({ records: long, from: 'both', setAside: [] });
    expect(merged.told).toBe('The browser\'s copy of the journal lacked one entry; they come from the keeper\'s copy. In the browser\'s copy one entry could not be read. '
      + 'The keeper\'s copy of the journal lacked one entry; they come from the browser\'s copy. In the keeper\'s copy one entry could not be read.');
  });

  it('that tell different stories go on with the longer, and the other is set aside and told', () => {
    const [one, other] = [partingAfter(long, 10, 3, 'Saturday'), partingAfter(long, 10, 5, 'Sunday')];
    const merged = mergeCopies(one, other);
    expect(merged).toMatchObject({ records: other, from: 'second' });
    expect(merged.setAside).toEqual(one.slice(10));
    expect(merged.told).toBe('After entry 10 the two copies differ; the keeper\'s copy, the longer, goes on. 3 entries that could not be joined on are set aside.');
  });

  it('with a hole in both stop before it, and what comes after is set aside', () => {
    const holed = long.filter(({ number }) => number !== 12);
    const merged = mergeCopies(holed, holed);
    expect(merged.records).toEqual(long.slice(0, 11));
    expect(merged.setAside).toEqual(long.slice(12));
  });

  it('never lose a record of either valid prefix, whatever was cut, lost, doubled, spoilt or told otherwise', () => {
    const damage = fc.record({
      cut: fc.nat(25), drop: fc.option(fc.nat(19)), spoil: fc.option(fc.nat(19)), double: fc.option(fc.nat(19)),
      parts: fc.option(fc.record({ after: fc.nat(20), more: fc.nat(6), of: fc.constantFrom('one', 'two') })),
    });
    const damaged = ({ cut, drop, spoil, double, parts }: { cut: number; drop: number | null; spoil: number | null; double: number | null; parts: { after: number; more: number; of: string } | null }): unknown[] => {
      const story = parts ? partingAfter(long, parts.after, parts.more, parts.of) : long;
      return story.slice(0, cut).flatMap((record, index): unknown[] => {
        if (index === drop) return [];
        if (index === spoil) return [{ ...record, number: record.number + 1 }];
        return index === double ? [record, record] : [record];
      });
    };
    fc.assert(fc.property(damage, damage, (a, b) => {
      const [first, second] = [damaged(a), damaged(b)];
      const merged = mergeCopies(first, second);
      const prefixes = [validPrefix(first).records, validPrefix(second).records];
      const kept = new Set([...merged.records, ...merged.setAside].map(({ checksum }) => checksum));
      for (const prefix of prefixes) expect(prefix.every(({ checksum }) => kept.has(checksum))).toBe(true);
      expect(merged.records.length).toBeGreaterThanOrEqual(Math.max(...prefixes.map(({ length }) => length)));
      expect(validPrefix(merged.records).records).toEqual(merged.records);
      if (merged.told === null) expect([first.length, second.length]).toEqual([merged.records.length + doubles(first), merged.records.length + doubles(second)]);
    }), { numRuns: 500 });
  });
});

function doubles(values: readonly unknown[]): number {
  return values.length - new Set(values).size;
}
