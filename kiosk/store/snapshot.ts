import type { JournalRecord } from '../../core/journal/entry.ts';
import type { Snapshot } from '../../core/journal/fold.ts';
import type { BrowserCopy } from './browserCopy.ts';

/** Set by the build to a digest of core's own text: a fold made by other code is not used. */
declare const CORE_DIGEST: string | undefined;

const KEY = 'snapshot';

interface KeptSnapshot {
  readonly core: string;
  readonly lastChecksum: string;
  readonly snapshot: Snapshot;
}

/** The fold kept earlier, if it was made by this very core from a beginning of these records. */
export async function readSnapshot(copy: BrowserCopy, records: readonly JournalRecord[]): Promise<Snapshot | undefined> {
  const kept = (await copy.readDerived(KEY).catch(() => undefined)) as Partial<KeptSnapshot> | undefined;
  if (kept?.snapshot === undefined || kept.core !== coreDigest()) return undefined;
  const { lastNumber } = kept.snapshot.state;
  return records[lastNumber - 1]?.checksum === kept.lastChecksum ? kept.snapshot : undefined;
}

/** Keeps a fold of a beginning of `records`. What cannot be kept is left out: it can be made again. */
export async function writeSnapshot(copy: BrowserCopy, snapshot: Snapshot, records: readonly JournalRecord[]): Promise<void> {
  const last = records[snapshot.state.lastNumber - 1];
  if (!last) return;
  const kept: KeptSnapshot = { core: coreDigest(), lastChecksum: last.checksum, snapshot };
  await copy.writeDerived(KEY, kept).catch(() => undefined);
}

function coreDigest(): string {
  return typeof CORE_DIGEST === 'string' ? CORE_DIGEST : 'not built';
}
