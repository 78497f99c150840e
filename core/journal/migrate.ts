import * as v from 'valibot';
import { validPrefix } from './chain.ts';
import { checksumOf } from './checksum.ts';
import type { Entry, JournalRecord } from './entry.ts';
import { RecordSchema } from './entrySchema.ts';
import { follows, joinRecord, readEntry } from './record.ts';

/** The form in which this bench writes its journal. */
export const JOURNAL_VERSION = 2;

/** An entry of an older form: plain data, its fields not known. */
type OldEntry = Readonly<Record<string, unknown>>;

/** One numbered step from the form before to form `to`: makes an entry of that form from each entry. Order and number stay. */
export interface Migration {
  readonly to: number;
  /** What changed and why, in a sentence. */
  readonly why: string;
  readonly entry: (old: OldEntry) => OldEntry;
}

/** From form 1 on, in order, without a hole; never changed once it was in use. */
export const MIGRATIONS: readonly Migration[] = [
  {
    to: 2, why: 'a copy is put into its place together with others, and with the turn that it has there',
    entry: (old) => (old['kind'] === 'placed' ? { kind: 'legs assigned', part: old['part'], legs: [{ copy: old['copy'], place: old['place'] }] } : old),
  },
];


/** What a stored journal can be used for. */
export type Opened =
  | { readonly how: 'writing'; readonly records: readonly JournalRecord[]; readonly migratedFrom?: number }
  /** Written by a newer bench: what can be read may be looked at, and nothing is written. */
  | { readonly how: 'read-only'; readonly records: readonly JournalRecord[]; readonly say: string }
  | { readonly how: 'refused'; readonly say: string };

/**
 * Opens stored records that were written in form `version`, bringing older ones to the present form step by step; the
 * old ones are left as they are for the caller to keep. Throws only when the migrations themselves have a hole.
 */
export function openJournal(version: unknown, values: readonly unknown[], migrations: readonly Migration[] = MIGRATIONS, present = JOURNAL_VERSION): Opened {
  checkMigrations(migrations, present);
  if (typeof version !== 'number' || !Number.isSafeInteger(version) || version < 1) {
    return { how: 'refused', say: `The journal does not say in which form it is written: a whole number from 1 to ${present} was expected, found was ${typeof version === 'number' ? version : typeof version}. It is left as it is; restore a copy.` };
  }
  if (version > present) {
    return { how: 'read-only', records: validPrefix(values).records, say: `This journal was written by a newer bench, in form ${version}; this one knows forms up to ${present}. It can be read, and nothing is written. Bring this bench up to date to go on with it.` };
  }
  if (version === present) return { how: 'writing', records: validPrefix(values).records };
  return migrate(version, values, migrations);
}

/** Throws when the migrations do not lead from form 1 to the present form one by one. */
export function checkMigrations(migrations: readonly Migration[], present: number): void {
  for (let index = 0; index < Math.max(migrations.length, present - 1); index++) {
    const to = migrations[index]?.to;
    if (to !== index + 2) throw new Error(`migration to form ${index + 2} was expected at place ${index}, found was ${to === undefined ? 'none' : `one to form ${to}`}`);
  }
  if (migrations.length !== present - 1) throw new Error(`the last migration leads to form ${migrations.length + 1}, but the present form is ${present}`);
}

function migrate(version: number, values: readonly unknown[], migrations: readonly Migration[]): Opened {
  const steps = migrations.slice(version - 1);
  const records: JournalRecord[] = [];
  for (const old of oldPrefix(values)) {
    const read = readEntry(steps.reduce((entry, step) => step.entry(entry), old.entry));
    if (!read.ok) return { how: 'refused', say: `Entry ${old.number} could not be brought from form ${version} to form ${version + steps.length}: ${read.fault.message}. Nothing was changed; go on with the bench that wrote it.` };
    records.push(joinRecord({ ...old, entry: read.value }, records.at(-1) ?? null));
  }
  return { how: 'writing', records, migratedFrom: version };
}

const OldRecordSchema = v.strictObject({ ...RecordSchema.entries, entry: v.record(v.string(), v.unknown()) });

type OldRecord = Omit<JournalRecord, 'entry'> & { readonly entry: OldEntry };

/** As validPrefix, for entries whose fields are not known: what their checksums and the chain vouch for. */
function oldPrefix(values: readonly unknown[]): readonly OldRecord[] {
  const records: OldRecord[] = [];
  for (const value of values) {
    const read = v.safeParse(OldRecordSchema, value, { abortEarly: true });
    if (!read.success || !isShallow(read.output.entry)) return records;
    // The checksum is over plain data; what the entry means is for the migrations.
    const record = read.output as OldRecord & { readonly entry: Entry & OldEntry };
    const last = records.at(-1) as JournalRecord | undefined;
    if (checksumOf(record) !== record.checksum || !follows(record, last ?? null)) return records;
    records.push(record);
  }
  return records;
}

/** No entry was ever nested deeper; hostile data may be, deep enough to break what walks through it. */
function isShallow(value: unknown, depth = 12): boolean {
  if (typeof value !== 'object' || value === null) return true;
  return depth > 0 && Object.values(value).every((inner) => isShallow(inner, depth - 1));
}
