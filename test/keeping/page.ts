import { EMPTY_SNAPSHOT, foldJournal } from '../../core/journal/fold.ts';
import { keeperCopy } from '../../kiosk/store/keeperCopy.ts';
import { openStore } from '../../kiosk/store/openStore.ts';
import { NotKept, type Store } from '../../kiosk/store/store.ts';

/**
 * A page that does nothing but keep a journal, for tests that kill the browser under it. It tells what it does on the console, which the
 * browser writes to its error output. In the address: `alone` (no keeper), `look` (add nothing), `relaxed` (the mistake that
 * these tests must notice), `at=N` (tell the checksum of that record), `acts=N` (stop after so many), `slowly` (a pause after each
 * act, and on with the next when one is refused), `called=NAME` (goes before all that it tells), `also=ADDRESS` (opens another such page).
 */
const wanted = new URLSearchParams(location.search);

/** What the page found when it opened the journal. */
export interface PageFound {
  readonly length: number;
  readonly checksum: string;
  readonly checksumAt: string;
  readonly folded: number;
  readonly notes: number;
  readonly status: Store['status'];
  readonly openMs: number;
  /** Of the script's heap, where the browser says. */
  readonly heapMb: number;
}

/** How long the acts took to be kept. */
export interface PageDone {
  readonly medianMs: number;
  readonly ms95: number;
  readonly longestMs: number;
}

function tell(what: string, value: unknown): void {
  console.log(`${wanted.get('called') ?? ''}KEEPING ${what} ${JSON.stringify(value)} END`);
}

/** Leaves out `durability: 'strict'`, as a plain use of the library would. */
function forgetStrictness(): void {
  const strict = Object.getOwnPropertyDescriptor(IDBDatabase.prototype, 'transaction')?.value as (this: IDBDatabase, names: string[], mode?: IDBTransactionMode) => IDBTransaction;
  IDBDatabase.prototype.transaction = function relaxed(this: IDBDatabase, names: string[], mode?: IDBTransactionMode) {
    return strict.call(this, names, mode);
  } as IDBDatabase['transaction'];
}

async function work(store: Store): Promise<void> {
  const acts = Number(wanted.get('acts') ?? Infinity);
  const tookMs: number[] = [];
  for (let done = 0; done < acts; done += 1) {
    const texts = done % 4 === 0 ? ['the left cheek, a shaving proud', 'and the right one true'] : ['leg, reference face to far shoulder'];
    const at = { wallMs: Date.now(), wallTrusted: false, bootId: 'test', monotonicMs: Math.round(performance.now()) };
    const began = performance.now();
    try {
      const records = await store.append(texts.map((text) => ({ kind: 'noted', text: `${text} (${done})` })), at);
      const last = records.at(-1);
      tookMs.push(performance.now() - began);
      tell('kept', { number: last?.number, checksum: last?.checksum });
    } catch (error) {
      if (!wanted.has('slowly') || !(error instanceof NotKept)) throw error;
      tell('refused', { message: error.message, status: store.status });
    }
    if (wanted.has('slowly')) await new Promise((resolve) => setTimeout(resolve, 100));
  }
  tookMs.sort((a, b) => a - b);
  const at = (part: number) => tookMs[Math.floor(part * (tookMs.length - 1))] ?? 0;
  const done: PageDone = { medianMs: at(0.5), ms95: at(0.95), longestMs: at(1) };
  tell('done', done);
}

async function main(): Promise<void> {
  if (wanted.has('relaxed')) forgetStrictness();
  const also = wanted.get('also');
  if (also !== null) window.open(also, '_blank', 'popup');
  tell('opening', location.search);
  const began = performance.now();
  const store = await openStore(wanted.has('alone') ? { keeper: keeperCopy('/no-keeper-here') } : {});
  store.onChange(() => tell('changed', store.status));
  const { state } = foldJournal(store.records, EMPTY_SNAPSHOT);
  const found: PageFound = {
    length: store.records.length,
    checksum: store.records.at(-1)?.checksum ?? '',
    checksumAt: store.records[Number(wanted.get('at') ?? 0) - 1]?.checksum ?? '',
    folded: state.lastNumber,
    notes: state.notes.length,
    status: store.status,
    openMs: Math.round(performance.now() - began),
    heapMb: Math.round((((performance as { memory?: { usedJSHeapSize: number } }).memory?.usedJSHeapSize ?? 0) / 2 ** 20) * 10) / 10,
  };
  tell('found', found);
  if (!wanted.has('look')) await work(store);
}

main().catch((error: unknown) => tell('failed', String(error)));
