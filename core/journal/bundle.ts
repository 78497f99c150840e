import * as v from 'valibot';
import type { Moment } from '../clock/moment.ts';
import { LARGEST_FILE_BYTES } from '../piece/load.ts';
import { failure, success, type Result } from '../result.ts';
import { canonicalJson } from './canonical.ts';
import { validPrefix } from './chain.ts';
import type { JournalRecord } from './entry.ts';
import { SettingSchema } from './entrySchema.ts';
import { foldRecords } from './fold.ts';
import { JOURNAL_VERSION, openJournal } from './migrate.ts';
import { dataFault, type DataFault } from './record.ts';
import type { State } from './state.ts';

/**
 * Everything as one file: the piece, the journal and the settings. The journal alone would do; the other two stand in it
 * once more so that they can be taken out by hand.
 */
const FORMAT = 'benchcall backup';

/** A journal of decades stays under it; what is larger is not ours. Whoever reads the file looks at its size first. */
export const LARGEST_BUNDLE_BYTES = 64 * 1024 * 1024;

export interface Bundle {
  readonly records: readonly JournalRecord[];
  /** What the records come to. */
  readonly state: State;
  /** When it was written, by the clock of the bench that wrote it. */
  readonly madeAt: Moment['wallMs'];
}

/** Writes the file. One record a line, so that it can be read and compared by hand. */
export function exportBundle(records: readonly JournalRecord[], state: State, now: Moment): string {
  const head = { format: FORMAT, version: JOURNAL_VERSION, madeAtMs: now.wallMs, piece: state.pieceText, settings: state.settings };
  const fields = Object.entries(head).map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`);
  return `{\n${fields.join(',\n')},\n  "records": [\n${records.map((record) => JSON.stringify(record)).join(',\n')}\n  ]\n}\n`;
}

const BundleSchema = v.strictObject({
  format: v.literal(FORMAT),
  version: v.number(),
  madeAtMs: v.pipe(v.number(), v.finite()),
  piece: v.nullable(v.pipe(v.string(), v.maxLength(LARGEST_FILE_BYTES))),
  settings: SettingSchema,
  records: v.array(v.unknown()),
});

/**
 * Reads such a file and checks all of it: form, every record, the chain, that piece and settings are those of the
 * journal. Nothing is changed by it; a fault says what and where, and the whole file is refused.
 */
export function importBundle(text: string): Result<Bundle, DataFault> {
  if (text.length > LARGEST_BUNDLE_BYTES) return refuse('', `at most ${LARGEST_BUNDLE_BYTES} bytes`, `${text.length} characters`, 'This file is too large to be a backup of the bench; choose another.');
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const value = parsed.value;
  if (typeof value !== 'object' || value === null || (value as { format?: unknown }).format !== FORMAT) {
    return refuse('format', `"${FORMAT}"`, shown((value as { format?: unknown } | null)?.format), 'This is not a backup of the bench; choose another file.');
  }
  const version = (value as { version?: unknown }).version;
  if (version !== JOURNAL_VERSION && !(typeof version === 'number' && version < JOURNAL_VERSION)) {
    return refuse('version', `a whole number up to ${JOURNAL_VERSION}`, shown(version), 'This backup was written by a newer bench, or is damaged; bring this bench up to date first.');
  }
  const read = v.safeParse(BundleSchema, value, { abortEarly: true });
  if (!read.success) {
    const fault = dataFault(read.issues[0]);
    return failure({ ...fault, message: `The backup is damaged: ${fault.message}. Use another backup.` });
  }
  return readRecords(read.output);
}

function readRecords({ version, records: values, piece, settings, madeAtMs }: v.InferOutput<typeof BundleSchema>): Result<Bundle, DataFault> {
  const opened = openJournal(version, values);
  if (opened.how !== 'writing') return refuse('version', `a whole number up to ${JOURNAL_VERSION}`, shown(version), opened.say);
  const { records } = opened;
  if (records.length < values.length) {
    const fault = version === JOURNAL_VERSION ? validPrefix(values.slice(records.length, records.length + 1)).refused[0]?.fault : undefined;
    return refuse(`records.${records.length}${fault && fault.path !== '' ? `.${fault.path}` : ''}`, fault?.expected ?? 'the record that follows the one before', fault?.found ?? 'another',
      `The backup is damaged: entry ${records.length + 1} of ${values.length} cannot be believed. Use another backup.`);
  }
  const state = foldRecords(records);
  if (state.pieceText !== piece) return refuse('piece', 'the piece that the journal ends with', 'another', 'The piece in the backup was changed by hand. Load a changed piece as a piece file instead, after the backup.');
  if (canonicalJson({ ...state.settings, ...settings }) !== canonicalJson(state.settings)) return refuse('settings', 'the settings that the journal ends with', 'others', 'The settings in the backup were changed by hand. Change them on the bench instead, after the backup.');
  return success({ records, state, madeAt: madeAtMs });
}

/** What would be lost and what would come, in sentences, for asking before a backup takes the journal's place. */
export function compareBundle(bundle: Bundle, records: readonly JournalRecord[], state: State): { readonly loses: number; readonly gains: number; readonly say: string } {
  let alike = 0;
  while (alike < records.length && bundle.records[alike]?.checksum === records[alike]?.checksum) alike++;
  const [loses, gains] = [records.length - alike, bundle.records.length - alike];
  const holds = `The backup holds ${count(bundle.records.length, 'entry', 'entries')}, ${contents(bundle.state)}.`;
  if (loses === 0 && gains === 0) return { loses, gains, say: `${holds} It is the same as what is on the bench.` };
  const lost = loses === 0
    ? 'Nothing on the bench would be lost.'
    : `${count(loses, 'entry', 'entries')} on the bench ${loses === 1 ? 'is' : 'are'} not in it and would be replaced; on the bench now: ${contents(state)}.`;
  return { loses, gains, say: `${holds} ${lost}` };
}

function contents({ pieceName, measurements, done, timers }: State): string {
  return `${pieceName ?? 'no piece'}, ${count(measurements.length, 'measurement', 'measurements')}, ${count(done.size, 'step', 'steps')} done, ${count(timers.length, 'clock', 'clocks')}`;
}

function count(many: number, one: string, more: string): string {
  return `${many} ${many === 1 ? one : more}`;
}

function parseJson(text: string): Result<unknown, DataFault> {
  try {
    return success(JSON.parse(text));
  } catch (error) {
    return refuse('', 'JSON', 'something else', `This file cannot be read: ${error instanceof Error ? error.message : 'it is no JSON'}. It may have been cut off while it was copied; copy it again or use another backup.`);
  }
}

function shown(value: unknown): string {
  return value === undefined ? 'nothing' : canonicalJson(typeof value === 'object' ? null : value).slice(0, 60);
}

function refuse(path: string, expected: string, found: string, message: string): Result<never, DataFault> {
  return failure({ path, expected, found, message });
}
