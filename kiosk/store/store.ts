import type { Moment } from '../../core/clock/moment.ts';
import type { Entry, JournalRecord } from '../../core/journal/entry.ts';
import type { Snapshot } from '../../core/journal/fold.ts';

export interface StoreStatus {
  readonly mode: 'writing' | 'read only';
  /** Another window has the bench, with its ear and its voice: this one only shows it. */
  readonly elsewhere: boolean;
  /** Where entries go now. 'memory': nowhere that lasts. */
  readonly kept: 'twice' | 'browser' | 'keeper' | 'memory';
  /** What is the matter as long as it lasts, a sentence each for the screen; empty when all is well. */
  readonly warnings: readonly string[];
  /** What happened to the journal, a sentence each, in order; only ever added to while the page lives. */
  readonly told: readonly string[];
}

/** The journal as the kiosk sees it. */
export interface Store {
  readonly records: readonly JournalRecord[];
  /** A fold made earlier, when it still fits the records. */
  readonly snapshot: Snapshot | undefined;
  readonly status: StoreStatus;
  /**
   * Writes down what one request does, all of it or nothing. Resolves when it lasts: in both copies, or in one while `status` tells of the other.
   * @throws NotKept with a sentence for the person; nothing of it stands then
   */
  append(entries: readonly Entry[], now: Moment): Promise<readonly JournalRecord[]>;
  /**
   * A whole other journal takes this one's place in both copies; what was there is set aside, not thrown away.
   * @throws NotKept with a sentence for the person; the journal stays as it was then
   */
  replaceWith(records: readonly JournalRecord[]): Promise<void>;
  /** Called after records or status changed by themselves: another window wrote, a copy failed or came back. @returns a function that ends it */
  onChange(listener: () => void): () => void;
  /** Keeps a fold, to start faster the next time. A failure does no harm and is not told. */
  keepSnapshot(snapshot: Snapshot): Promise<void>;
  close(): Promise<void>;
}

/** What was to be written down could not be, and is not; the message is for the person. */
export class NotKept extends Error {}
