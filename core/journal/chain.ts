import type { JournalRecord } from './entry.ts';
import { follows, readRecord, type DataFault, type Tail } from './record.ts';

/** One stored copy of a journal, sorted into what stands and what does not. */
export interface Chain {
  /** From the first record on without a hole, each joined on the one before. */
  readonly records: readonly JournalRecord[];
  /** Sound in themselves, but after a hole, or of another history. */
  readonly stranded: readonly JournalRecord[];
  /** What is no record at all, or is damaged. */
  readonly refused: readonly { readonly index: number; readonly fault: DataFault }[];
}

/** Sound records by number; several when a number is there twice. */
export type Numbered = ReadonlyMap<number, readonly JournalRecord[]>;

/** The longest beginning of stored values that can be believed. Doubled values do no harm; the order does not matter. */
export function validPrefix(values: readonly unknown[]): Chain {
  const { numbered, refused } = sortOut(values);
  const records = chainFrom(numbered, null);
  return { records, stranded: strandedOf(numbered, records), refused };
}

export function sortOut(values: readonly unknown[]): { numbered: Numbered; refused: Chain['refused'] } {
  const numbered = new Map<number, JournalRecord[]>();
  const refused: { index: number; fault: DataFault }[] = [];
  for (const [index, value] of values.entries()) {
    const read = readRecord(value);
    if (!read.ok) {
      refused.push({ index, fault: read.fault });
      continue;
    }
    const same = numbered.get(read.value.number);
    if (same) same.push(read.value);
    else numbered.set(read.value.number, [read.value]);
  }
  return { numbered, refused };
}

/** The records that follow `tail`, for as long as there is one. */
export function chainFrom(numbered: Numbered, tail: Tail): readonly JournalRecord[] {
  const records: JournalRecord[] = [];
  for (let last = tail; ; last = records.at(-1) ?? null) {
    const next = nextIn(numbered, last);
    if (!next) return records;
    records.push(next);
  }
}

export function nextIn(numbered: Numbered, last: Tail): JournalRecord | undefined {
  return numbered.get((last?.number ?? 0) + 1)?.find((record) => follows(record, last));
}

/** Sound records that did not find a place among `records`, each once. */
export function strandedOf(numbered: Numbered, records: readonly JournalRecord[]): readonly JournalRecord[] {
  const stranded = new Map<string, JournalRecord>();
  for (const same of numbered.values()) {
    for (const record of same) {
      if (records[record.number - 1]?.checksum !== record.checksum) stranded.set(`${record.number} ${record.checksum}`, record);
    }
  }
  return [...stranded.values()].sort((a, b) => a.number - b.number);
}
