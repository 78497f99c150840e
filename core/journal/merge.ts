import { chainFrom, nextIn, sortOut, strandedOf, type Chain, type Numbered } from './chain.ts';
import type { JournalRecord } from './entry.ts';

/** Two stored copies of one journal, put together. */
export interface Merged {
  /** The journal from now on. */
  readonly records: readonly JournalRecord[];
  /** Whose records these are: 'both' when each copy has all of them, or when they filled each other's holes. */
  readonly from: 'both' | 'first' | 'second';
  /** Sound records that the journal could not take: of the shorter story after the copies parted, or beyond a hole in both. To be kept aside. */
  readonly setAside: readonly JournalRecord[];
  /** What could not be read at all. */
  readonly refused: { readonly first: Chain['refused']; readonly second: Chain['refused'] };
  /** What the person should know, in sentences; null when both copies are whole and the same. */
  readonly told: string | null;
}

/** How the copies are called in a sentence. */
export interface CopyNames {
  readonly first: string;
  readonly second: string;
}

const USUAL_NAMES: CopyNames = { first: 'the browser\'s copy', second: 'the keeper\'s copy' };

/**
 * Joins two copies record by record: what one lacks or holds damaged, the other gives. Where they tell different stories
 * the longer one goes on (the first, when they are as long) and the rest of the other is set aside: which of the two
 * is the newer, no clock can be trusted to tell. Every record of either copy's valid prefix is in the journal or set aside.
 */
export function mergeCopies(first: readonly unknown[], second: readonly unknown[], names: CopyNames = USUAL_NAMES): Merged {
  const one = sortOut(first);
  const other = sortOut(second);
  const common: JournalRecord[] = [];
  const lacks = { first: 0, second: 0 };
  let parted = false;
  for (;;) {
    const last = common.at(-1) ?? null;
    const [mine, theirs] = [nextIn(one.numbered, last), nextIn(other.numbered, last)];
    const next = mine ?? theirs;
    if (!next) break;
    parted = mine !== undefined && theirs !== undefined && mine.checksum !== theirs.checksum;
    if (parted) break;
    if (!mine) lacks.first++;
    if (!theirs) lacks.second++;
    common.push(next);
  }
  const story = parted ? longerStory(one.numbered, other.numbered, common) : { goesOn: [], from: undefined };
  const records = [...common, ...story.goesOn];
  const setAside = uniqueBy(strandedOf(one.numbered, records), strandedOf(other.numbered, records));
  const from: Merged['from'] = story.from ?? (lacks.first > 0 === lacks.second > 0 ? 'both' : lacks.first > 0 ? 'second' : 'first');
  const refused = { first: one.refused, second: other.refused };
  const merged = { records, from, setAside, refused };
  return { ...merged, told: tell(merged, parted ? common.length : null, { first: first.length, second: second.length }, lacks, names) };
}

function longerStory(one: Numbered, other: Numbered, common: readonly JournalRecord[]): { goesOn: readonly JournalRecord[]; from: 'first' | 'second' } {
  const last = common.at(-1) ?? null;
  const [mine, theirs] = [chainFrom(one, last), chainFrom(other, last)];
  return mine.length >= theirs.length ? { goesOn: mine, from: 'first' } : { goesOn: theirs, from: 'second' };
}

function uniqueBy(...lists: readonly (readonly JournalRecord[])[]): readonly JournalRecord[] {
  const unique = new Map(lists.flat().map((record) => [`${record.number} ${record.checksum}`, record]));
  return [...unique.values()].sort((a, b) => a.number - b.number);
}

function tell({ records, from, setAside, refused }: Omit<Merged, 'told'>, partedAfter: number | null, sizes: { first: number; second: number }, lacks: { first: number; second: number }, names: CopyNames): string | null {
  const sentences: string[] = [];
  for (const which of ['first', 'second'] as const) {
    const other = which === 'first' ? names.second : names.first;
    if (sizes[which] === 0 && records.length > 0) sentences.push(`${names[which]} of the journal is gone; all ${entries(records.length)} come from ${other}.`);
    else if (lacks[which] > 0) sentences.push(`${names[which]} of the journal lacked ${entries(lacks[which])}; they come from ${other}.`);
    if (refused[which].length > 0) sentences.push(`In ${names[which]} ${entries(refused[which].length)} could not be read.`);
  }
  if (partedAfter !== null) sentences.push(`After entry ${partedAfter} the two copies differ; ${from === 'second' ? names.second : names.first}, the longer, goes on.`);
  if (setAside.length > 0) sentences.push(`${entries(setAside.length)} that could not be joined on ${setAside.length === 1 ? 'is' : 'are'} set aside.`);
  return sentences.length === 0 ? null : sentences.map((sentence) => sentence.charAt(0).toUpperCase() + sentence.slice(1)).join(' ');
}

function entries(count: number): string {
  return count === 1 ? 'one entry' : `${count} entries`;
}
