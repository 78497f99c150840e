import type { Moment } from '../../core/clock/moment.ts';
import type { Entry, JournalRecord } from '../../core/journal/entry.ts';
import { CopyFault, type End } from '../../kiosk/store/copy.ts';
import type { KeeperCopy } from '../../kiosk/store/keeperCopy.ts';
import type { BrowserCopy } from '../../kiosk/store/browserCopy.ts';

let names = 0;

/** A database name that no other test uses. */
export function freshName(): string {
  names += 1;
  return `bench-test-${performance.now().toFixed(0)}-${names}`;
}

export function moment(monotonicMs = 0): Moment {
  return { wallMs: 1_800_000_000_000 + monotonicMs, wallTrusted: true, bootId: 'boot one', monotonicMs };
}

export function note(text: string): Entry {
  return { kind: 'noted', text };
}

export function textsOf(records: readonly JournalRecord[]): readonly string[] {
  return records.map(({ entry }) => (entry.kind === 'noted' ? entry.text : entry.kind));
}

/** A copy held in memory that can be made to fail, as the keeper's file or the browser's database may. */
export class FakeCopy implements KeeperCopy, BrowserCopy {
  readonly place: string;
  records: JournalRecord[];
  aside: unknown[] = [];
  told: readonly string[] = [];
  fault: CopyFault | undefined;
  /** Writes what it is given and then says that it failed, as an answer lost on the way. */
  losesAnswers = false;
  opening: BrowserCopy['opening'] = { fresh: false, lossMessage: '' };
  derived = new Map<string, unknown>();
  appends = 0;

  constructor(place: string, records: readonly JournalRecord[] = []) {
    this.place = place;
    this.records = [...records];
  }

  async end(): Promise<End> {
    await this.#check();
    return { lastNumber: this.records.at(-1)?.number ?? 0, lastChecksum: this.records.at(-1)?.checksum ?? '' };
  }

  async readAfter(number: number): Promise<readonly unknown[]> {
    await this.#check();
    return this.records.filter((record) => record.number > number);
  }

  async append(records: readonly JournalRecord[]): Promise<void> {
    await this.#check();
    this.appends += 1;
    for (const record of records) {
      const there = this.records.find(({ number }) => number === record.number);
      if (there && there.checksum !== record.checksum) throw new CopyFault('conflict', 'other entries are there');
      if (!there && record.number !== (this.records.at(-1)?.number ?? 0) + 1) throw new CopyFault('conflict', 'a gap');
      if (!there) this.records.push(record);
    }
    if (this.losesAnswers) throw new CopyFault('away', 'the answer was lost');
  }

  async setAsideAfter(number: number): Promise<void> {
    await this.#check();
    this.aside.push(...this.records.filter((record) => record.number > number));
    this.records = this.records.filter((record) => record.number <= number);
  }

  async readDerived(key: string): Promise<unknown> {
    await this.#check();
    return this.derived.get(key);
  }

  async writeDerived(key: string, value: unknown): Promise<void> {
    await this.#check();
    this.derived.set(key, structuredClone(value));
  }

  close(): void {
    // Nothing is held.
  }

  async #check(): Promise<void> {
    await Promise.resolve();
    if (this.fault) throw this.fault;
  }
}

