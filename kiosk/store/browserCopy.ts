import { CopyFault, type Copy, type CopyFaultKind, type End } from './copy.ts';
import { openDatabase, type Database, type OpenedDatabase } from './database.ts';
import { withDeadline } from './deadline.ts';

const DEADLINE_MS = 15_000;

export interface BrowserCopy extends Copy {
  /** What the last opening found. */
  readonly opening: Pick<OpenedDatabase, 'fresh' | 'lossMessage'> | undefined;
  readDerived(key: string): Promise<unknown>;
  writeDerived(key: string, value: unknown): Promise<void>;
}

/**
 * The journal in the browser's database.
 * @param name of the storage bucket and of the database in it
 * @param onLost called when the browser closes the database under us, or another window makes us let go of it
 */
export function browserCopy(name: string, onLost: (fault: CopyFault) => void): BrowserCopy {
  let opened: Promise<OpenedDatabase> | undefined;
  let opening: BrowserCopy['opening'];
  let outdated = false;

  const lose = (fault: CopyFault) => {
    opened = undefined;
    onLost(fault);
  };

  async function database(): Promise<Database> {
    if (outdated) throw newer();
    opened ??= openDatabase(name, {
      onTerminated: () => lose(new CopyFault('broken', 'the browser has closed its database')),
      onOutdated: () => {
        outdated = true;
        lose(newer());
      },
    });
    const result = await opened;
    opening = { fresh: result.fresh, lossMessage: result.lossMessage };
    return result.database;
  }

  /** Every call goes through here: bounded in time, and a fault lets the next call open the database again. */
  async function attempt<Value>(work: (database: Database) => Promise<Value>): Promise<Value> {
    try {
      return await withDeadline(DEADLINE_MS, database().then(work));
    } catch (error) {
      const fault = faultOf(error);
      if (fault.kind !== 'conflict') letGo(opened);
      if (fault.kind !== 'conflict') opened = undefined;
      throw fault;
    }
  }

  return {
    place: 'the browser\'s database',
    get opening() {
      return opening;
    },
    end: () => attempt((db) => db.read(async (transaction): Promise<End> => {
      const cursor = await transaction.objectStore('records').openCursor(null, 'prev');
      const last = cursor?.value as { readonly checksum?: unknown } | undefined;
      return { lastNumber: cursor?.key ?? 0, lastChecksum: typeof last?.checksum === 'string' ? last.checksum : '' };
    })),
    readAfter: (number) => attempt((db) => db.read((transaction): Promise<readonly unknown[]> => transaction.objectStore('records').getAll(IDBKeyRange.lowerBound(number, true)))),
    append: (records) => attempt((db) => db.strictly(async (transaction) => {
      const store = transaction.objectStore('records');
      await Promise.all(records.map((record) => store.add(record)));
    })),
    setAsideAfter: (number, end) => attempt((db) => db.strictly(async (transaction) => {
      const range = IDBKeyRange.lowerBound(number, true);
      const store = transaction.objectStore('records');
      const values: readonly unknown[] = await store.getAll(range);
      await transaction.objectStore('aside').add({ why: `after entry ${number}, of ${end.lastNumber}, the journal could not stand`, values });
      await store.delete(range);
    })),
    readDerived: (key) => attempt((db) => db.read((transaction) => transaction.objectStore('derived').get(key))),
    writeDerived: (key, value) => attempt((db) => db.strictly(async (transaction) => {
      await transaction.objectStore('derived').put(value, key);
    })),
    close() {
      letGo(opened);
      opened = undefined;
    },
  };
}

function letGo(opened: Promise<OpenedDatabase> | undefined): void {
  opened?.then(({ database }) => database.close(), () => undefined);
}

function newer(): CopyFault {
  return new CopyFault('newer', 'a newer version of the bench has opened the browser\'s database: load this page again');
}

const FAULTS: ReadonlyMap<string, { kind: CopyFaultKind; sentence: string }> = new Map([
  ['QuotaExceededError', { kind: 'no space', sentence: 'the browser has no more room for its database' }],
  ['ConstraintError', { kind: 'conflict', sentence: 'the browser\'s database holds other entries at these numbers' }],
  ['SecurityError', { kind: 'broken', sentence: 'the browser does not let this page keep anything' }],
]);

function faultOf(error: unknown): CopyFault {
  if (error instanceof CopyFault) return error;
  const { name, message } = error instanceof Error ? error : new Error(String(error));
  if (name === 'VersionError') return newer();
  const known = FAULTS.get(name);
  if (known) return new CopyFault(known.kind, known.sentence);
  return /NO_SPACE|disk.*full|Quota/i.test(message)
    ? new CopyFault('no space', 'the disk is full, so the browser\'s database cannot be written')
    : new CopyFault('broken', `the browser's database fails (${name}: ${message})`);
}
