import type { JournalRecord } from '../../core/journal/entry.ts';
import { asFault, CopyFault, type Copy, type End } from './copy.ts';

/** Growing pauses between attempts on a copy that fails. */
const FIRST_PAUSE_MS = 1_000;
const LONGEST_PAUSE_MS = 30_000;

/** A copy of the journal together with what is known of it: how far it is sure to have come, and what is the matter with it. */
export class Replica {
  readonly copy: Copy;
  /** How many records it is sure to hold; undefined when it must be asked. */
  #kept: number | undefined;
  #fault: CopyFault | undefined;
  #pauseMs = FIRST_PAUSE_MS;

  constructor(copy: Copy) {
    this.copy = copy;
  }

  get fault(): CopyFault | undefined {
    return this.#fault;
  }

  /** In use: its last call succeeded, so it is written before anything is answered for. */
  get sound(): boolean {
    return this.#fault === undefined && this.#kept !== undefined;
  }

  /** How long to wait before it is tried again. */
  get pauseMs(): number {
    return this.#pauseMs;
  }

  /** Says how far the copy has come, after it was read. */
  settle(kept: number): void {
    this.#kept = kept;
    this.#fault = undefined;
  }

  /** Takes a failure down: the copy must be asked again where it ends before it is written. */
  fail(fault: CopyFault): void {
    if (this.#fault !== undefined) this.#pauseMs = Math.min(2 * this.#pauseMs, LONGEST_PAUSE_MS);
    this.#fault = fault;
    this.#kept = undefined;
  }

  /**
   * Brings the copy to where `records` end: all that it lacks is added in order, at once.
   * @throws CopyFault 'conflict' when it holds something else
   */
  async catchUp(records: readonly JournalRecord[]): Promise<void> {
    try {
      const kept = this.#kept ?? agreement(await this.copy.end(), records, this.copy.place);
      if (kept < records.length) await this.copy.append(records.slice(kept));
      this.settle(records.length);
      this.#pauseMs = FIRST_PAUSE_MS;
    } catch (error) {
      const fault = asFault(error);
      this.fail(fault);
      throw fault;
    }
  }
}

/** How many of `records` a copy holds that ends so. @throws CopyFault when its end is none of theirs */
function agreement({ lastNumber, lastChecksum }: End, records: readonly JournalRecord[], place: string): number {
  if (lastNumber === 0 || records[lastNumber - 1]?.checksum === lastChecksum) return lastNumber;
  throw new CopyFault('conflict', `${place} holds other entries than this page`);
}
