import type { Entry, JournalRecord } from './entry.ts';

/** Which acts stand, and which were taken back. */
export interface Acts {
  /** Acts that can be taken back, newest last. */
  readonly standing: readonly number[];
  /** Acts taken back that can be put back, the one taken back last at the end. */
  readonly scratched: readonly number[];
  /** All acts that are taken back now, whether or not they can still be put back. */
  readonly gone: ReadonlySet<number>;
}

export const NO_ACTS: Acts = { standing: [], scratched: [], gone: new Set() };

/**
 * Entries that say what was seen, said or looked at rather than what was done: they are not something to take back of
 * themselves, and they stay when their act is taken back (a caution that was said was said), but for moving to a step.
 */
const BOOK_KEEPING: ReadonlySet<Entry['kind']> = new Set(['clock seen', 'caution said', 'scratched', 'put back', 'went to step']);

/** Whether an entry holds even when its act is taken back. */
export function holdsAlways({ kind }: Entry): boolean {
  return BOOK_KEEPING.has(kind) && kind !== 'went to step';
}

/** Which acts of a journal can be taken back and put back. */
export function actsOf(records: readonly JournalRecord[]): Acts {
  return followActs(NO_ACTS, records);
}

/**
 * Goes on from `before` over the records that follow. Taking back goes further back each time; putting back returns
 * what was taken back last; anything new that is done makes what was taken back before it stay so, as with any undo.
 * A take-back of what does not stand, or a put-back of what was not taken back, does nothing.
 */
export function followActs(before: Acts, records: readonly JournalRecord[]): Acts {
  const standing = [...before.standing];
  const scratched = [...before.scratched];
  const gone = new Set(before.gone);
  for (const { act, entry } of records) {
    if (entry.kind === 'scratched') {
      if (!remove(standing, entry.act)) continue;
      scratched.push(entry.act);
      gone.add(entry.act);
    } else if (entry.kind === 'put back') {
      if (!remove(scratched, entry.act)) continue;
      gone.delete(entry.act);
      standing.push(entry.act);
      standing.sort((a, b) => a - b);
    } else if (!BOOK_KEEPING.has(entry.kind) && standing.at(-1) !== act) {
      standing.push(act);
      scratched.length = 0;
    }
  }
  return { standing, scratched, gone };
}

function remove(acts: number[], act: number): boolean {
  const index = acts.lastIndexOf(act);
  if (index >= 0) acts.splice(index, 1);
  return index >= 0;
}
