import { chainFrom, sortOut, validPrefix } from '../../core/journal/chain.ts';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { mergeCopies } from '../../core/journal/merge.ts';
import { asFault, CopyFault, type End } from './copy.ts';
import type { Replica } from './replica.ts';

/** What one copy was found to hold. */
export interface Found {
  /** The sound beginning. */
  readonly records: readonly JournalRecord[];
  /** Everything that was read, sound or not; absent when only its end was looked at, because that said enough. */
  readonly values?: readonly unknown[];
  readonly end: End;
}

/** Both copies put together. */
export interface Recovered {
  readonly records: readonly JournalRecord[];
  readonly browser: Found | CopyFault;
  readonly keeper: Found | CopyFault;
  /** From this many records on the copies told different stories, and the longer one was taken; undefined when they agree. */
  readonly partedAfter?: number;
}

/** Reads both copies and finds the journal that they hold together. Changes nothing. */
export async function readCopies(browser: Replica, keeper: Replica): Promise<Recovered> {
  const [inBrowser, keeperEnd] = await Promise.all([orFault(readWhole(browser)), orFault(keeper.copy.end())]);
  const known = inBrowser instanceof CopyFault ? [] : inBrowser.records;
  const inKeeper = keeperEnd instanceof CopyFault ? keeperEnd : await orFault(readFrom(keeper, keeperEnd, known));
  return { ...join(inBrowser, inKeeper), browser: inBrowser, keeper: inKeeper };
}

export async function readWhole({ copy }: Replica): Promise<Found> {
  const values = await copy.readAfter(0);
  return { records: validPrefix(values).records, values, end: await copy.end() };
}

/**
 * Reads only as much as is needed: the chain of checksums lets the end of a copy vouch for all before it, so what the other copy
 * holds already is not read again.
 */
async function readFrom({ copy }: Replica, end: End, known: readonly JournalRecord[]): Promise<Found> {
  if (end.lastNumber === 0 || known[end.lastNumber - 1]?.checksum === end.lastChecksum) return { records: known.slice(0, end.lastNumber), end };
  if (end.lastNumber > known.length) {
    const rest = chainFrom(sortOut(await copy.readAfter(known.length)).numbered, known.at(-1) ?? null);
    if (rest.at(-1)?.checksum === end.lastChecksum) return { records: [...known, ...rest], end };
  }
  const values = await copy.readAfter(0);
  return { records: validPrefix(values).records, values, end };
}

function join(browser: Found | CopyFault, keeper: Found | CopyFault): Pick<Recovered, 'records' | 'partedAfter'> {
  if (browser instanceof CopyFault) return { records: keeper instanceof CopyFault ? [] : keeper.records };
  if (keeper instanceof CopyFault) return { records: browser.records };
  const agreed = commonLength(browser.records, keeper.records);
  const longer = browser.records.length > keeper.records.length ? browser.records : keeper.records;
  if (agreed < Math.min(browser.records.length, keeper.records.length)) return { records: longer, partedAfter: agreed };
  if (isWhole(browser) && isWhole(keeper)) return { records: longer };
  // Sound records beyond a hole of one copy count where the other copy fills the hole.
  return { records: mergeCopies(browser.values ?? browser.records, keeper.values ?? keeper.records).records };
}

function isWhole({ records, end }: Found): boolean {
  return records.length === end.lastNumber;
}

/** How many records two journals begin with alike. Chained checksums: alike at a number means alike up to it. */
export function commonLength(a: readonly JournalRecord[], b: readonly JournalRecord[]): number {
  let alike = 0;
  let unlike = Math.min(a.length, b.length) + 1;
  while (unlike - alike > 1) {
    const middle = (alike + unlike) >> 1;
    if (a[middle - 1]?.checksum === b[middle - 1]?.checksum) alike = middle;
    else unlike = middle;
  }
  return alike;
}

/**
 * Brings a copy to hold exactly `records`: what it holds otherwise is set aside, what it lacks is added. A failure is noted in the
 * replica and not thrown: the other copy goes on alone.
 */
export async function repair(replica: Replica, found: Found | CopyFault, records: readonly JournalRecord[]): Promise<void> {
  if (found instanceof CopyFault) {
    replica.fail(found);
    return;
  }
  const sound = commonLength(found.records, records);
  try {
    if (found.end.lastNumber > sound) await replica.copy.setAsideAfter(sound, found.end);
    replica.settle(sound);
    await replica.catchUp(records);
  } catch (error) {
    replica.fail(asFault(error));
  }
}

async function orFault<Value>(value: Promise<Value>): Promise<Value | CopyFault> {
  try {
    return await value;
  } catch (error) {
    if (error instanceof CopyFault) return error;
    throw error;
  }
}
