import * as v from 'valibot';
import type { Moment } from '../clock/moment.ts';
import { failure, success, type Result } from '../result.ts';
import { checksumOf } from './checksum.ts';
import type { Entry, JournalRecord } from './entry.ts';
import { EntrySchema, RecordSchema } from './entrySchema.ts';

/** Why stored data cannot be taken as what it should be. */
export interface DataFault {
  /** Where in the data, with dots: 'entry.measurement.length'; empty for the whole. */
  readonly path: string;
  readonly expected: string;
  readonly found: string;
  /** The three in one sentence. */
  readonly message: string;
}

/** What the next record is joined on: the last record, or null at the very beginning. */
export type Tail = Pick<JournalRecord, 'number' | 'checksum'> | null;

/**
 * Makes the records of one act: all that one request writes. They follow `last` in number and in the chain of checksums.
 * Throws when an entry could not be read back from the journal: that is a bug, and must not be written.
 */
export function makeRecords(entries: readonly Entry[], last: Tail, now: Moment): readonly JournalRecord[] {
  const act = (last?.number ?? 0) + 1;
  const records: JournalRecord[] = [];
  for (const entry of entries) {
    const read = readEntry(entry);
    if (!read.ok) throw new TypeError(`an entry that could not be read back: ${read.fault.message}`);
    records.push(joinRecord({ act, at: now, entry: read.value }, records.at(-1) ?? last));
  }
  return records;
}

/** Numbers a record after `last` and seals it with its checksum. */
export function joinRecord({ act, at, entry }: Pick<JournalRecord, 'act' | 'at' | 'entry'>, last: Tail): JournalRecord {
  const open = { number: (last?.number ?? 0) + 1, act, at, entry, before: last?.checksum ?? '' };
  return { ...open, checksum: checksumOf(open) };
}

/** Whether a record follows `last` in number and in the chain. */
export function follows(record: JournalRecord, last: Tail): boolean {
  return record.number === (last?.number ?? 0) + 1 && record.before === (last?.checksum ?? '');
}

/**
 * A record from stored data, made anew field by field, its checksum checked. That it follows the record before it is for
 * the caller to see (`follows`), or for `validPrefix`.
 */
export function readRecord(value: unknown): Result<JournalRecord, DataFault> {
  const read = v.safeParse(RecordSchema, value, { abortEarly: true });
  if (!read.success) return failure(dataFault(read.issues[0]));
  const record: JournalRecord = read.output;
  const checksum = checksumOf(record);
  if (checksum !== record.checksum) return failure(describeFault('checksum', checksum, record.checksum));
  if (record.act > record.number) return failure(describeFault('act', `at most ${record.number}`, String(record.act)));
  return success(record);
}

/** An entry from stored or given data, made anew field by field. */
export function readEntry(value: unknown): Result<Entry, DataFault> {
  const read = v.safeParse(EntrySchema, value, { abortEarly: true });
  return read.success ? success(read.output) : failure(dataFault(read.issues[0]));
}

/** A valibot issue in our words. */
export function dataFault(issue: v.BaseIssue<unknown>): DataFault {
  const path = (issue.path ?? []).map(({ key }) => String(key)).join('.');
  return describeFault(path, expectedBy(issue), issue.received === 'undefined' ? 'nothing' : issue.received);
}

function expectedBy({ type, expected, requirement }: v.BaseIssue<unknown>): string {
  const limit = typeof requirement === 'number' ? requirement : '';
  switch (type) {
    case 'string': return 'a text';
    case 'number': case 'finite': return 'a number';
    case 'safe_integer': return 'a whole number';
    case 'boolean': return 'true or false';
    case 'max_value': return `at most ${limit}`;
    case 'min_value': return `at least ${limit}`;
    case 'max_length': return `at most ${limit} characters`;
    case 'min_length': return `at least ${limit} characters`;
    case 'strict_object': return expected === 'never' ? 'no such field' : expected === 'Object' ? 'an object' : 'a value';
    default: return expected === 'Object' ? 'an object' : expected ?? 'something else';
  }
}

function describeFault(path: string, expected: string, found: string): DataFault {
  const fault = { path, expected: shortened(expected), found: shortened(found) };
  return { ...fault, message: `${path === '' ? 'here' : `at ${path}`} ${fault.expected} was expected, but found was ${fault.found}` };
}

function shortened(text: string): string {
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
}
