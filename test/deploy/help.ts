import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { makeRecords, type Tail } from '../../core/journal/record.ts';
import { DISK, type FileSystem, type OpenFile } from '../../deploy/keeperFile.ts';

/** Runs `work` in a folder that is gone afterwards. */
export async function inFolder<Value>(work: (folder: string) => Promise<Value>): Promise<Value> {
  const folder = await mkdtemp(join(tmpdir(), 'benchcall-'));
  try {
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Records that follow `last`, one act of `texts.length` notes. */
export function act(last: Tail, ...texts: readonly string[]): readonly JournalRecord[] {
  const at = { wallMs: 1_800_000_000_000, wallTrusted: true, bootId: 'boot one', monotonicMs: (last?.number ?? 0) * 1000 };
  return makeRecords(texts.map((text) => ({ kind: 'noted', text })), last, at);
}

/** A journal of `acts` acts with one or two entries each. */
export function journal(acts: number): readonly JournalRecord[] {
  const records: JournalRecord[] = [];
  for (let index = 1; index <= acts; index += 1) {
    records.push(...act(records.at(-1) ?? null, `the ${index}th measurement of the long rail`, ...(index % 3 === 0 ? ['and a second note'] : [])));
  }
  return records;
}

/** A generator of numbers from 0 to 1 that gives the same ones for the same start (mulberry32). */
export function numbersFrom(start: number): () => number {
  let state = start;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export interface DiskFaults {
  /** Called before each call that changes the file; throwing makes it fail. */
  before?(call: 'write' | 'datasync' | 'truncate'): void;
  /** How much of a write a full disk still takes, 0 to 1; absent when it is not full. */
  full?: number | undefined;
}

/** A disk that fails as it is told, and that forgets at a power cut what was not synced. */
export class ForgetfulDisk implements FileSystem {
  readonly faults: DiskFaults = {};
  /** Path → bytes that are sure to be there after a power cut. */
  readonly #synced = new Map<string, number>();

  async open(path: string): Promise<OpenFile> {
    const file = await DISK.open(path);
    if (!this.#synced.has(path) || path.endsWith('.new')) this.#synced.set(path, (await file.stat()).size);
    const synced = this.#synced;
    const faults = this.faults;
    return {
      read: file.read.bind(file),
      stat: file.stat.bind(file),
      close: file.close.bind(file),
      async write(bytes: Buffer, from: number, length: number, position: number) {
        faults.before?.('write');
        if (faults.full !== undefined) {
          await file.write(bytes, from, Math.floor(length * faults.full), position);
          throw Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' });
        }
        return file.write(bytes, from, length, position);
      },
      async datasync() {
        faults.before?.('datasync');
        await file.datasync();
        synced.set(path, (await file.stat()).size);
      },
      async truncate(length: number) {
        faults.before?.('truncate');
        await file.truncate(length);
      },
    } as OpenFile;
  }

  /** What was not synced is lost in part: cut somewhere, and perhaps partly zeros, as disks leave it. */
  async cutPower(path: string, random: () => number): Promise<void> {
    const file = await DISK.open(path);
    const { size } = await file.stat();
    const sure = Math.min(this.#synced.get(path) ?? 0, size);
    const left = sure + Math.floor(random() * (size - sure + 1));
    await file.truncate(left);
    if (left > sure && random() < 0.5) {
      const zeros = Buffer.alloc(Math.ceil((left - sure) * random()));
      await file.write(zeros, 0, zeros.length, sure + Math.floor(random() * (left - sure - zeros.length + 1)));
    }
    await file.close();
  }
}
