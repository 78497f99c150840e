import { actsOf, followActs, holdsAlways, NO_ACTS, type Acts } from './acts.ts';
import { applyRecord, seeRecord } from './apply.ts';
import { NO_CRAFT_STATE } from './craft.ts';
import { NO_CUTTING_STATE } from './cutting.ts';
import { draftOf } from './draft.ts';
import { NO_EDGE_STATE } from './edges.ts';
import type { JournalRecord } from './entry.ts';
import { NO_PROGRESS } from './progress.ts';
import { readPieceOnce } from './readPiece.ts';
import { DEFAULT_SETTINGS } from './settings.ts';
import type { State } from './state.ts';

export { actsOf };

/** The bench before anything was written down. */
export const EMPTY_STATE: State = {
  lastNumber: 0,
  piece: null, pieceText: null, pieceFaults: [], pieceName: null,
  ...NO_CRAFT_STATE,
  ...NO_CUTTING_STATE,
  ...NO_PROGRESS, hidden: NO_PROGRESS, shelf: new Map(),
  ...NO_EDGE_STATE,
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
 * unless something before it was taken back or put back since: then an earlier one serves, or none.
 */
export function foldRecords(records: readonly JournalRecord[], snapshot?: Snapshot): State {
  return foldJournal(records, snapshot).state;
}

/** As foldRecords, with the acts; the result is the snapshot for the next time. */
export function foldJournal(records: readonly JournalRecord[], snapshot: Snapshot = EMPTY_SNAPSHOT): Snapshot {
  const standing = [...(EARLIER.get(snapshot.state) ?? []), snapshot].filter((one) => stillHolds(one, records));
  const cut = shortOfUndo(records);
  const latest = standing.at(-1) ?? EMPTY_SNAPSHOT;
  if (latest.state.lastNumber < cut) standing.push(foldFrom(latest, records.slice(0, cut)));
  const folded = foldFrom(standing.at(-1) ?? EMPTY_SNAPSHOT, records);
  if (folded.state !== EMPTY_STATE) EARLIER.set(folded.state, thinned(standing));
  return folded;
}

/** Goes from a snapshot that still holds over the records after it. */
export function foldFrom(from: Snapshot, records: readonly JournalRecord[]): Snapshot {
  const fresh = records.slice(from.state.lastNumber);
  if (fresh.length === 0) return from;
  const acts = followActs(from.acts, fresh);
  const draft = draftOf(from.state);
  for (const record of fresh) {
    seeRecord(draft, record);
    if (!acts.gone.has(record.act) || holdsAlways(record.entry)) applyRecord(draft, record, readPieceOnce);
    draft.state.lastNumber = record.number;
  }
  return { state: draft.state, acts };
}

/** Whether a snapshot is of a beginning of these records that nothing after it reaches back into. */
function stillHolds({ state }: Snapshot, records: readonly JournalRecord[]): boolean {
  for (let index = state.lastNumber; index < records.length; index++) {
    const entry = records[index]?.entry;
    if ((entry?.kind === 'scratched' || entry?.kind === 'put back') && entry.act <= state.lastNumber) return false;
  }
  return state.lastNumber <= records.length;
}

/**
 * Snapshots on the way to a state, oldest first, a few hundred records apart: undo starts from the last one before what
 * it takes back. Kept beside the state, not in it, for they say nothing that the journal does not.
 */
const EARLIER = new WeakMap<State, readonly Snapshot[]>();
const APART = 256;
const KEPT = 8;

function thinned(snapshots: readonly Snapshot[]): readonly Snapshot[] {
  const kept: Snapshot[] = [];
  for (const snapshot of snapshots) {
    if (snapshot.state.lastNumber - (kept.at(-1)?.state.lastNumber ?? 0) >= APART) kept.push(snapshot);
  }
  return kept.slice(-KEPT);
}

/** A record some way before the end, where a snapshot will hold for the undoing that may follow. */
function shortOfUndo(records: readonly JournalRecord[]): number {
  let cut = records.length - APART;
  for (let index = records.length - 1; index >= Math.max(0, cut); index--) {
    const entry = records[index]?.entry;
    if (entry?.kind === 'scratched' || entry?.kind === 'put back') cut = Math.min(cut, entry.act - 1);
  }
  return cut;
}
