import type { Moment } from '../../core/clock/moment.ts';
import type { Entry, JournalRecord } from '../../core/journal/entry.ts';
import type { Snapshot } from '../../core/journal/fold.ts';
import { makeRecords } from '../../core/journal/record.ts';
import { browserCopy, type BrowserCopy } from './browserCopy.ts';
import { asFault, CopyFault } from './copy.ts';
import { keeperCopy, type KeeperCopy } from './keeperCopy.ts';
import { readMemo, writeMemo } from './memo.ts';
import { readCopies, readWhole, repair, type Recovered } from './recover.ts';
import { Replica } from './replica.ts';
import { readSnapshot, writeSnapshot } from './snapshot.ts';
import { isNewer, reasons, sentenceStart, warnings, type Standing } from './standing.ts';
import { NotKept, type Store, type StoreStatus } from './store.ts';
import { tellRecovery } from './telling.ts';
import { askToWrite, type WriterLock } from './writerLock.ts';

export interface StoreOptions {
  /** Of the storage bucket, the database, the lock and the memo. */
  readonly name?: string;
  /** Made with the given callback when the browser takes its database away; a test gives its own. */
  readonly browser?: (onLost: (fault: CopyFault) => void) => BrowserCopy;
  readonly keeper?: KeeperCopy;
}

/** Opens the journal. Opening is recovery: the two copies are read, compared and made alike, and what happened is told. */
export async function openStore({ name = 'benchcall', browser, keeper = keeperCopy() }: StoreOptions = {}): Promise<Store> {
  void askToPersist();
  const lock = await askToWrite(name);
  const store = new JournalStore(name, lock, browser ?? ((onLost) => browserCopy(name, onLost)), keeper);
  await store.begin();
  return store;
}

/** So that the browser does not clear the journal away when its disk runs short; it may refuse, and is not asked twice. */
async function askToPersist(): Promise<void> {
  await navigator.storage.persist().catch(() => false);
}

class JournalStore implements Store {
  records: readonly JournalRecord[] = [];
  snapshot: Snapshot | undefined;
  readonly #name: string;
  readonly #lock: WriterLock;
  readonly #browserCopy: BrowserCopy;
  readonly #keeperCopy: KeeperCopy;
  readonly #browser: Replica;
  readonly #keeper: Replica;
  readonly #channel: BroadcastChannel;
  readonly #listeners = new Set<() => void>();
  #told: readonly string[] = [];
  #writing = false;
  /** Neither copy could be opened: what is recorded lasts as long as the page. */
  #memoryOnly = false;
  #closed = false;
  #queue: Promise<unknown> = Promise.resolve();
  #retry: ReturnType<typeof setTimeout> | undefined;

  constructor(name: string, lock: WriterLock, browser: (onLost: (fault: CopyFault) => void) => BrowserCopy, keeper: KeeperCopy) {
    this.#name = name;
    this.#lock = lock;
    this.#browserCopy = browser((fault) => this.#lose(fault));
    this.#keeperCopy = keeper;
    this.#browser = new Replica(this.#browserCopy);
    this.#keeper = new Replica(keeper);
    this.#channel = new BroadcastChannel(`${name} journal`);
  }

  async begin(): Promise<void> {
    this.#channel.addEventListener('message', () => void this.#follow());
    if (this.#lock.held) return this.#inTurn(() => this.#takeUp());
    await this.#inTurn(() => this.#look());
    this.#tell('The bench is open in another window. This one only shows it, until that one is closed.');
    void this.#lock.granted.then(() => this.#inTurn(async () => {
      if (this.#closed) return;
      await this.#takeUp();
      this.#tell('The other window was closed: this one writes the journal now.');
      this.#changed();
    }));
  }

  get status(): StoreStatus {
    return { mode: this.#mode, elsewhere: !this.#writing, kept: this.#kept, warnings: warnings(this.#standing), told: this.#told };
  }

  append(entries: readonly Entry[], now: Moment): Promise<readonly JournalRecord[]> {
    return this.#inTurn(async () => {
      if (this.#mode === 'read only') throw new NotKept(warnings(this.#standing).join(' '));
      if (entries.length === 0) return [];
      const fresh = makeRecords(entries, this.records.at(-1) ?? null, now);
      if (!this.#memoryOnly) await this.#write([...this.records, ...fresh]);
      this.records = [...this.records, ...fresh];
      if (!this.#memoryOnly) writeMemo(this.#name, { lastNumber: this.records.length });
      this.#channel.postMessage('written');
      return fresh;
    });
  }

  replaceWith(records: readonly JournalRecord[]): Promise<void> {
    return this.#inTurn(async () => {
      if (this.#mode === 'read only') throw new NotKept(warnings(this.#standing).join(' '));
      for (const replica of this.#memoryOnly ? [] : [this.#keeper, this.#browser]) await repair(replica, await readWhole(replica).catch(asFault), records);
      this.#watch();
      if (this.#kept === 'memory' && !this.#memoryOnly) throw new NotKept(`The other journal could not be taken over: ${reasons(this.#standing)}.`);
      this.records = records;
      if (!this.#memoryOnly) writeMemo(this.#name, { lastNumber: records.length });
      this.#channel.postMessage('written');
    });
  }

  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  async keepSnapshot(snapshot: Snapshot): Promise<void> {
    if (this.#writing && this.#browser.sound) await writeSnapshot(this.#browserCopy, snapshot, this.records);
  }

  async close(): Promise<void> {
    this.#closed = true;
    clearTimeout(this.#retry);
    await this.#queue;
    this.#channel.close();
    this.#browserCopy.close();
    this.#keeperCopy.close();
    this.#lock.release();
  }

  get #mode(): StoreStatus['mode'] {
    return !this.#writing || isNewer(this.#standing) || this.#closed ? 'read only' : 'writing';
  }

  get #standing(): Standing {
    return { closed: this.#closed, writing: this.#writing, memoryOnly: this.#memoryOnly, browser: this.#browser, keeper: this.#keeper };
  }

  get #kept(): StoreStatus['kept'] {
    if (this.#browser.sound) return this.#keeper.sound ? 'twice' : 'browser';
    return this.#keeper.sound ? 'keeper' : 'memory';
  }

  /** Reads both copies, makes them alike and becomes the one that writes. */
  async #takeUp(): Promise<void> {
    const memo = readMemo(this.#name);
    const recovered = await readCopies(this.#browser, this.#keeper);
    this.#passOn();
    for (const sentence of tellRecovery(recovered, memo, this.#browserCopy.opening)) this.#tell(sentence);
    this.records = recovered.records;
    this.#writing = true;
    if (foundNewer(recovered)) {
      this.#noteFaults(recovered);
      return;
    }
    await Promise.all([repair(this.#browser, recovered.browser, this.records), repair(this.#keeper, recovered.keeper, this.records)]);
    this.#memoryOnly = !this.#browser.sound && !this.#keeper.sound;
    if (!this.#memoryOnly) writeMemo(this.#name, { lastNumber: this.records.length });
    this.snapshot = await readSnapshot(this.#browserCopy, this.records);
    this.#watch();
  }

  /** Reads without touching: another window writes. */
  async #look(): Promise<void> {
    const recovered = await readCopies(this.#browser, this.#keeper);
    this.records = recovered.records;
    this.#noteFaults(recovered);
  }

  #noteFaults({ browser, keeper }: Recovered): void {
    if (browser instanceof CopyFault) this.#browser.fail(browser);
    else this.#browser.settle(browser.records.length);
    if (keeper instanceof CopyFault) this.#keeper.fail(keeper);
    else this.#keeper.settle(keeper.records.length);
  }

  async #follow(): Promise<void> {
    if (this.#writing || this.#closed) return;
    await this.#inTurn(() => this.#look());
    this.#changed();
  }

  /** Writes into each copy that is in use (into any, when none is), the keeper's first: it alone sees what other browsers wrote. */
  async #write(wanted: readonly JournalRecord[]): Promise<void> {
    const before = this.#news();
    const inUse = [this.#keeper, this.#browser].filter((replica) => replica.sound);
    let copies = 0;
    for (const replica of inUse.length > 0 ? inUse : [this.#keeper, this.#browser]) {
      if (await this.#tryToWrite(replica, wanted)) copies += 1;
    }
    this.#watch();
    this.#passOn();
    if (this.#news() !== before) queueMicrotask(() => this.#changed());
    if (copies === 0) throw new NotKept(`This could not be written down and is not kept: ${reasons(this.#standing)}. What was recorded before is safe.`);
  }

  async #tryToWrite(replica: Replica, wanted: readonly JournalRecord[]): Promise<boolean> {
    const fault = await faultOf(replica.catchUp(wanted));
    if (fault?.kind !== 'conflict') return fault === undefined;
    // It may only have become shorter (a server started again on a file that had been cut): then asking where it ends is enough.
    const again = await faultOf(replica.catchUp(wanted));
    if (again?.kind === 'conflict' && replica === this.#keeper) await this.#startOver();
    return again === undefined;
  }

  /** The keeper's file holds what this page does not know: nothing is written on top of it. */
  async #startOver(): Promise<never> {
    await this.#adopt();
    throw new NotKept('The journal had grown meanwhile, so this was not written down. Look, and say it again.');
  }

  async #adopt(): Promise<void> {
    await this.#mendBrowser();
    await this.#takeUp();
    this.#tell('The journal\'s file held entries that this window did not know: another browser wrote them, or their writing could not be confirmed before. They were taken over.');
    this.#changed();
  }

  /** In this browser only this page writes: whatever else its database holds was never answered for, and is set aside. */
  async #mendBrowser(): Promise<void> {
    const found = await readWhole(this.#browser).catch((error: unknown) => asFault(error));
    await repair(this.#browser, found, this.records);
  }

  #lose(fault: CopyFault): void {
    this.#browser.fail(fault);
    this.#watch();
    this.#changed();
  }

  /** Tries a copy that fails again and again, with growing pauses, until it has caught up. */
  #watch(): void {
    clearTimeout(this.#retry);
    const failing = [this.#keeper, this.#browser].filter((replica) => replica.fault !== undefined);
    if (this.#closed || !this.#writing || isNewer(this.#standing) || failing.length === 0) return;
    this.#retry = setTimeout(() => void this.#inTurn(() => this.#mend(failing)), Math.min(...failing.map((replica) => replica.pauseMs)));
  }

  async #mend(failing: readonly Replica[]): Promise<void> {
    if (this.#closed) return;
    const before = this.#news();
    for (const replica of failing) await this.#mendOne(replica);
    this.#watch();
    if (this.#news() !== before) this.#changed();
  }

  async #mendOne(replica: Replica): Promise<void> {
    const fault = await faultOf(replica.catchUp(this.records));
    if (fault?.kind === 'conflict' && !this.#memoryOnly) {
      if (replica === this.#keeper) return this.#adopt();
      await this.#mendBrowser();
    }
    if (!replica.sound) return;
    this.#memoryOnly = false;
    this.#tell(`${sentenceStart(replica.copy.place)} can be written again and has caught up.`);
  }

  /** Changes when there is something new for the screen to show. */
  #news(): string {
    return `${this.#browser.fault?.message ?? ''}|${this.#keeper.fault?.message ?? ''}|${this.#told.length}`;
  }

  /** Passes on what the keeper has to tell, once, and not again at the next start. */
  #passOn(): void {
    const { told } = this.#keeperCopy;
    const before = readMemo(this.#name).told;
    const fresh = told.filter((sentence) => !before.includes(sentence) && !this.#told.includes(sentence));
    for (const sentence of fresh) this.#tell(sentence);
    if (fresh.length > 0) writeMemo(this.#name, { told });
  }

  #tell(sentence: string): void {
    if (this.#told.at(-1) !== sentence) this.#told = [...this.#told, sentence];
  }

  #changed(): void {
    for (const listener of this.#listeners) listener();
  }

  #inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
    const turn = this.#queue.then(work);
    this.#queue = turn.catch(() => undefined);
    return turn;
  }
}

function foundNewer({ browser, keeper }: Recovered): boolean {
  return [browser, keeper].some((found) => found instanceof CopyFault && found.kind === 'newer');
}

async function faultOf(work: Promise<void>): Promise<CopyFault | undefined> {
  return work.then(() => undefined, asFault);
}
