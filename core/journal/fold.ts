import { actsOf, followActs, holdsAlways, NO_ACTS, type Acts } from './acts.ts';
import { applyRecord, seeRecord } from './apply.ts';
import { draftOf } from './draft.ts';
import type { JournalRecord } from './entry.ts';
import { NO_PROGRESS } from './progress.ts';
import type { ReadPiece } from './putOnBench.ts';
import { readPieceOnce } from './readPiece.ts';
import { DEFAULT_SETTINGS } from './settings.ts';
import type { State } from './state.ts';

export { actsOf };

/** The bench before anything was written down. */
export const EMPTY_STATE: State = {
  lastNumber: 0,
  piece: null, pieceText: null, pieceFaults: [], pieceName: null,
  ...NO_PROGRESS, hidden: NO_PROGRESS, shelf: new Map(),
  timers: [], settings: DEFAULT_SETTINGS, notes: [], cautionsSaid: new Map(), clock: null,
};

/** What a journal came to at one record. */
export interface Snapshot {
  readonly state: State;
  readonly acts: Acts;
}

export const EMPTY_SNAPSHOT: Snapshot = { state: EMPTY_STATE, acts: NO_ACTS };

/**
 * The state that a whole journal comes to. With a snapshot of an earlier record only what follows is gone through,
 * unless something before it was taken back or put back since: then the snapshot is of no use and is passed over.
 */
export function foldRecords(records: readonly JournalRecord[], snapshot?: Snapshot): State {
  return foldJournal(records, snapshot).state;
}

/** As foldRecords, with the acts; the result is a snapshot for the next time. `readPiece` is for tests. */
export function foldJournal(records: readonly JournalRecord[], snapshot: Snapshot = EMPTY_SNAPSHOT, readPiece: ReadPiece = readPieceOnce): Snapshot {
  const from = stillHolds(snapshot, records) ? snapshot : EMPTY_SNAPSHOT;
  const fresh = from.state.lastNumber === 0 ? records : records.slice(from.state.lastNumber);
  if (fresh.length === 0) return from;
  const acts = followActs(from.acts, fresh);
  const draft = draftOf(from.state);
  for (const record of fresh) {
    seeRecord(draft, record);
    if (!acts.gone.has(record.act) || holdsAlways(record.entry)) applyRecord(draft, record, readPiece);
    draft.state.lastNumber = record.number;
  }
  return { state: draft.state, acts };
}

/** Whether nothing after a snapshot reaches back before it. */
export function stillHolds({ state }: Snapshot, records: readonly JournalRecord[]): boolean {
  for (let index = state.lastNumber; index < records.length; index++) {
    const entry = records[index]?.entry;
    if ((entry?.kind === 'scratched' || entry?.kind === 'put back') && entry.act <= state.lastNumber) return false;
  }
  return state.lastNumber <= records.length;
}
