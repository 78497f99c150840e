import { wrap, type DBSchema, type IDBPDatabase, type IDBPTransaction, type StoreNames } from 'idb';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { JOURNAL_VERSION, MIGRATIONS, openJournal, type Migration } from '../../core/journal/migrate.ts';

/** How the journal is written now, and how to come to it from the forms before; the database's version is the journal's. */
export interface Form {
  readonly present: number;
  readonly migrations: readonly Migration[];
}

const PRESENT_FORM: Form = { present: JOURNAL_VERSION, migrations: MIGRATIONS };

interface Schema extends DBSchema {
  /** The journal. Typed as unknown when read: stored data is checked, never believed. */
  records: { key: number; value: JournalRecord };
  /** What could not stand in the journal, kept for whoever wants to look. */
  aside: { key: number; value: { readonly why: string; readonly values: readonly unknown[] } };
  /** What can be made again from the records, kept to start faster. */
  derived: { key: string; value: unknown };
}

type Writing = IDBPTransaction<Schema, StoreNames<Schema>[], 'readwrite'>;
type Reading = IDBPTransaction<Schema, StoreNames<Schema>[]>;

/**
 * The database without its shortcut writers: those commit with relaxed durability, which a power cut undoes, and cannot be asked for more.
 */
export interface Database {
  /** Runs `work` in one transaction that is on the disk when this resolves. Await nothing but the transaction inside. */
  strictly<Value>(work: (transaction: Writing) => Promise<Value>): Promise<Value>;
  read<Value>(work: (transaction: Reading) => Promise<Value>): Promise<Value>;
  close(): void;
}

export interface OpenedDatabase {
  readonly database: Database;
  /** It was not there, or the browser has just replaced a damaged one by an empty one. */
  readonly fresh: boolean;
  /** What the browser says that it lost in doing so; empty when it says nothing. */
  readonly lossMessage: string;
}

export interface DatabaseEvents {
  /** The browser closed the database by itself. */
  onTerminated(): void;
  /** A newer page in another window wants to change the database's shape: it was closed to make way. */
  onOutdated(): void;
}

/** Opens the database, in a storage bucket of its own where the browser has them: damage to other data then does not touch it. */
export async function openDatabase(name: string, events: DatabaseEvents, form: Form = PRESENT_FORM): Promise<OpenedDatabase> {
  const request = (await factoryFor(name)).open(name, form.present);
  let fresh = false;
  let lossMessage = '';
  request.addEventListener('upgradeneeded', (event) => {
    fresh = event.oldVersion === 0;
    lossMessage = lossOf(event);
    if (fresh) createStores(request.result);
    else if (request.transaction) void bringUp(wrap(request.transaction) as unknown as Upgrading, event.oldVersion, form);
  });
  const opened = (await wrap(request)) as unknown as IDBPDatabase<Schema>;
  opened.addEventListener('versionchange', () => {
    opened.close();
    events.onOutdated();
  });
  opened.addEventListener('close', () => events.onTerminated());
  return { database: safely(opened), fresh, lossMessage };
}

function createStores(database: IDBDatabase): void {
  database.createObjectStore('records', { keyPath: 'number' });
  database.createObjectStore('aside', { autoIncrement: true });
  database.createObjectStore('derived');
}

type Upgrading = IDBPTransaction<Schema, StoreNames<Schema>[], 'versionchange'>;

/** Brings the records of an older form up, in the one transaction that changes the version; the old ones are kept aside. */
async function bringUp(transaction: Upgrading, from: number, { present, migrations }: Form): Promise<void> {
  transaction.done.catch(() => undefined);
  const records = transaction.objectStore('records');
  const values: readonly unknown[] = await records.getAll();
  const opened = openJournal(from, values, migrations, present);
  if (opened.how !== 'writing') {
    transaction.abort();
    return;
  }
  await transaction.objectStore('aside').add({ why: `these were the records of form ${from}`, values });
  await records.clear();
  await Promise.all(opened.records.map((record) => records.add(record)));
}

function safely(opened: IDBPDatabase<Schema>): Database {
  const all: StoreNames<Schema>[] = ['records', 'aside', 'derived'];
  return {
    async strictly(work) {
      const transaction = opened.transaction(all, 'readwrite', { durability: 'strict' });
      const [value] = await Promise.all([work(transaction).catch((error: unknown) => abandon(transaction, error)), transaction.done]);
      return value;
    },
    async read(work) {
      return work(opened.transaction(all));
    },
    close: () => opened.close(),
  };
}

/** Nothing of a transaction stands when a part of it failed. */
function abandon(transaction: Writing, error: unknown): never {
  try {
    transaction.abort();
  } catch {
    // It has been aborted already, by the fault itself.
  }
  throw error;
}

/** Chromium says in the event itself that it threw a damaged database away; no standard does. */
function lossOf(event: IDBVersionChangeEvent): string {
  const { dataLoss, dataLossMessage } = event as IDBVersionChangeEvent & { dataLoss?: string; dataLossMessage?: string };
  return dataLoss === undefined || dataLoss === 'none' ? '' : (dataLossMessage ?? dataLoss);
}

interface StorageBucket {
  readonly indexedDB: IDBFactory;
}
interface StorageBucketManager {
  open(name: string, options?: { persisted?: boolean; durability?: 'strict' | 'relaxed' }): Promise<StorageBucket>;
}

async function factoryFor(name: string): Promise<IDBFactory> {
  const { storageBuckets } = navigator as Navigator & { storageBuckets?: StorageBucketManager };
  if (!storageBuckets) return indexedDB;
  try {
    const bucket = await storageBuckets.open(name, { persisted: true, durability: 'strict' });
    return bucket.indexedDB;
  } catch {
    return indexedDB;
  }
}
