import type { JournalRecord } from './entry.ts';
import { EMPTY_SNAPSHOT, foldJournal, stillHolds, type Snapshot } from './fold.ts';

/**
 * The fold as it stands, with a few earlier ones, so that neither a new act nor taking one back goes through the whole
 * journal again.
 */
export interface History {
  readonly newest: Snapshot;
  /** Earlier folds, oldest first. */
  readonly earlier: readonly Snapshot[];
}

export const EMPTY_HISTORY: History = { newest: EMPTY_SNAPSHOT, earlier: [] };

/** An evening's undoing reaches back this far at most without a fold of the whole. */
const EVERY = 256;
const KEPT = 8;

/** Goes on to the whole journal as it is now, from the latest earlier fold that nothing since reaches behind. */
export function foldOn(history: History, records: readonly JournalRecord[]): History {
  const standing = [...history.earlier, history.newest].filter((snapshot) => stillHolds(snapshot, records));
  let newest = standing.at(-1) ?? EMPTY_SNAPSHOT;
  const last = records.length - EVERY;
  if (newest.state.lastNumber < last) {
    // A journal just opened: stop short of its end once, for the undoing that may follow.
    const short = foldJournal(records.slice(0, last), newest);
    if (stillHolds(short, records)) {
      standing.push(short);
      newest = short;
    }
  }
  newest = foldJournal(records, newest);
  return { newest, earlier: thinned(standing) };
}

/** Keeps the latest folds that are far enough apart. */
function thinned(snapshots: readonly Snapshot[]): readonly Snapshot[] {
  const kept: Snapshot[] = [];
  for (const snapshot of snapshots) {
    const before = kept.at(-1)?.state.lastNumber ?? 0;
    if (snapshot.state.lastNumber - before >= EVERY) kept.push(snapshot);
  }
  return kept.slice(-KEPT);
}
