import { open, type FileHandle } from 'node:fs/promises';
import type { JournalRecord } from '../core/journal/entry.ts';
import { follows, readRecord } from '../core/journal/record.ts';
import { Refusal } from './answer.ts';

/** What the keeper asks of a file; a test gives one that fails or forgets, as a disk does when the power goes. */
export type OpenFile = Pick<FileHandle, 'read' | 'write' | 'datasync' | 'truncate' | 'stat' | 'close'>;

export interface FileSystem {
  /** Opens for reading and writing; makes the file when it is not there. */
  open(path: string): Promise<OpenFile>;
}

export const DISK: FileSystem = {
  async open(path) {
    // 'a+' makes the file but could not be truncated and rewritten at a place; 'r+' could not make it.
    await (await open(path, 'a')).close();
    return open(path, 'r+');
  },
};

/** One line of the journal's file: the records of one act, written together or not at all. */
export interface Line {
  /** Where it begins, in bytes. */
  readonly offset: number;
  readonly lastNumber: number;
}

/** The sound beginning of a journal's file, and what is wrong with the rest. */
export interface SoundPrefix {
  readonly lines: readonly Line[];
  readonly records: readonly JournalRecord[];
  /** Where the sound part ends, in bytes. */
  readonly bytes: number;
  /** Why reading stopped before the end; absent when all is sound. */
  readonly fault?: string;
  /** The last line lacks only its line end. */
  readonly unended: boolean;
}

const LINE_END = 0x0a;

/** Reads lines until the first that is not sound: cut off, not JSON, a wrong checksum, or a number out of order. */
export function readPrefix(content: Buffer): SoundPrefix {
  const lines: Line[] = [];
  const records: JournalRecord[] = [];
  let offset = 0;
  while (offset < content.length) {
    const end = content.indexOf(LINE_END, offset);
    const found = readLine(content.subarray(offset, end < 0 ? content.length : end), records.at(-1) ?? null);
    if (typeof found === 'string') return { lines, records, bytes: offset, fault: end < 0 ? 'the last line was cut off in the middle' : found, unended: false };
    records.push(...found);
    lines.push({ offset, lastNumber: records.length });
    if (end < 0) return { lines, records, bytes: content.length, unended: true };
    offset = end + 1;
  }
  return { lines, records, bytes: offset, unended: false };
}

/** The records of a line, or why it is not sound. */
function readLine(text: Buffer, before: JournalRecord | null): readonly JournalRecord[] | string {
  const after = before === null ? 'at the beginning' : `after entry ${before.number}`;
  let values: unknown;
  try {
    values = JSON.parse(text.toString('utf8')) as unknown;
  } catch {
    return `${after} a line cannot be read`;
  }
  if (!Array.isArray(values) || values.length === 0) return `${after} a line holds no entries`;
  const records: JournalRecord[] = [];
  for (const value of values) {
    const read = readRecord(value);
    const last = records.at(-1) ?? before;
    if (!read.ok) return `entry ${(last?.number ?? 0) + 1} is damaged`;
    if (!follows(read.value, last)) return `entry ${(last?.number ?? 0) + 1} is missing`;
    records.push(read.value);
  }
  return records;
}

/** Records as lines, one an act. */
export function writeLines(records: readonly JournalRecord[]): { readonly text: Buffer; readonly lines: readonly Line[] } {
  const acts: JournalRecord[][] = [];
  for (const record of records) {
    const last = acts.at(-1);
    if (last?.[0]?.act === record.act) last.push(record);
    else acts.push([record]);
  }
  const lines: Line[] = [];
  const texts: Buffer[] = [];
  let offset = 0;
  for (const act of acts) {
    const text = Buffer.from(`${JSON.stringify(act)}\n`);
    lines.push({ offset, lastNumber: act.at(-1)?.number ?? 0 });
    texts.push(text);
    offset += text.length;
  }
  return { text: Buffer.concat(texts), lines };
}

/**
 * Those of `records` that a journal with these checksums does not hold yet.
 * @throws Refusal 409 when they do not go on where it ends, or it holds others under their numbers
 */
export function freshOf(records: readonly JournalRecord[], checksums: readonly string[]): readonly JournalRecord[] {
  const last = checksums.length;
  const other = records.find((record) => record.number <= last && checksums[record.number - 1] !== record.checksum);
  if (other) throw new Refusal(409, `Entry ${other.number} stands in the journal's file with other content: another window or browser wrote it.`);
  const fresh = records.filter((record) => record.number > last);
  const skipped = fresh.findIndex((record, index) => record.number !== last + 1 + index);
  if (skipped >= 0) throw new Refusal(409, `The journal's file ends with entry ${last}: entry ${last + 1 + skipped} was expected next, not ${fresh[skipped]?.number ?? 0}.`);
  const loose = fresh.find((record, index) => record.before !== (fresh[index - 1]?.checksum ?? checksums.at(-1) ?? ''));
  if (loose) throw new Refusal(409, `Entry ${loose.number} does not follow what stands in the journal's file: another window or browser wrote there.`);
  return fresh;
}

/** Writes all of `bytes` at `position`: a single write may take less than it is given. */
export async function writeAll(file: OpenFile, bytes: Buffer, position: number): Promise<void> {
  let written = 0;
  while (written < bytes.length) {
    const { bytesWritten } = await file.write(bytes, written, bytes.length - written, position + written);
    if (bytesWritten === 0) throw Object.assign(new Error('the disk takes no more'), { code: 'ENOSPC' });
    written += bytesWritten;
  }
}

/** Reads `length` bytes from `position`. @throws Error when the file is shorter */
export async function readAll(file: OpenFile, length: number, position = 0): Promise<Buffer> {
  const bytes = Buffer.alloc(length);
  let done = 0;
  while (done < length) {
    const { bytesRead } = await file.read(bytes, done, length - done, position + done);
    if (bytesRead === 0) throw new Error('the file is shorter than it was');
    done += bytesRead;
  }
  return bytes;
}
