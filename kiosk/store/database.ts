import { wrap, type DBSchema, type IDBPDatabase, type IDBPTransaction, type StoreNames } from 'idb';
import type { JournalRecord } from '../../core/journal/entry.ts';

/** Numbered steps of the database's shape; a step that was once released is never changed. */
export const DATABASE_VERSION = 1;

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
export async function openDatabase(name: string, events: DatabaseEvents): Promise<OpenedDatabase> {
  const request = (await factoryFor(name)).open(name, DATABASE_VERSION);
  let fresh = false;
  let lossMessage = '';
  request.addEventListener('upgradeneeded', (event) => {
    fresh = event.oldVersion === 0;
    lossMessage = lossOf(event);
    upgrade(request.result, event.oldVersion);
  });
  const opened = (await wrap(request)) as unknown as IDBPDatabase<Schema>;
  opened.addEventListener('versionchange', () => {
    opened.close();
    events.onOutdated();
  });
  opened.addEventListener('close', () => events.onTerminated());
  return { database: safely(opened), fresh, lossMessage };
}

function upgrade(database: IDBDatabase, from: number): void {
  if (from < 1) {
    database.createObjectStore('records', { keyPath: 'number' });
    database.createObjectStore('aside', { autoIncrement: true });
    database.createObjectStore('derived');
  }
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
