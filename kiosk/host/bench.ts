import type { Bench, PlanOffer } from '../../core/bench/bench.ts';
import type { Reply } from '../../core/bench/reply.ts';
import type { Request } from '../../core/bench/request.ts';
import type { Moment } from '../../core/clock/moment.ts';
import type { Entry, JournalRecord } from '../../core/journal/entry.ts';
import { advance, benchFrom } from '../../core/respond/advance.ts';
import { withOffer } from '../../core/respond/offer.ts';
import type { respond } from '../../core/respond/respond.ts';
import { NotKept, type Store } from '../store/store.ts';

export interface BenchKeeperOptions {
  readonly store: Store;
  /** What answers, once it is there. */
  readonly answering: Promise<{ readonly respond: typeof respond }>;
  readonly now: () => Moment;
  /** After each answered request: what is to be said and shown. The entries behind it are durable by then. */
  readonly answered: (reply: Reply) => void;
  /** After any change of the bench. */
  readonly changed: () => void;
}

const SILENCE: Reply = { say: '' };

/** Fold kept for a faster start, every so many records. */
const SNAPSHOT_EVERY = 200;

/**
 * Holds the bench and takes requests one after the other: answer, write down durably, fold, and only then let it be said.
 * Nothing that could not be kept is ever acknowledged.
 */
export class BenchKeeper {
  readonly #options: BenchKeeperOptions;
  #bench: Bench;
  #queue: Promise<void> = Promise.resolve();
  #keptAt: number;

  constructor(options: BenchKeeperOptions) {
    this.#options = options;
    const { records, snapshot } = options.store;
    this.#bench = benchFrom(records, snapshot);
    this.#keptAt = snapshot?.state.lastNumber ?? 0;
    options.store.onChange(() => this.#followStore());
  }

  get bench(): Bench {
    return this.#bench;
  }

  /** Settles when the request was answered. Never rejects: what cannot be done is said. */
  submit(request: Request): Promise<void> {
    return this.#inTurn(async () => {
      const { respond } = await this.#options.answering;
      const now = this.#options.now();
      const { entries, journal, reply } = respond(this.#bench, request, now);
      this.#options.answered(journal ? await this.#replace(journal, reply) : await this.#write(entries, reply, now));
    });
  }

  /** Writes down what nobody asked for: a clock that jumped, a heartbeat. Says nothing. A window that only shows the bench leaves it to the one that has it. */
  note(entries: readonly Entry[], at: Moment = this.#options.now()): Promise<void> {
    if (this.#options.store.status.elsewhere) return Promise.resolve();
    return this.#inTurn(async () => {
      const reply = await this.#write(entries, SILENCE, at);
      if (reply !== SILENCE) this.#options.answered(reply);
    });
  }

  /** A reply that comes without a request (a clock that is due): it can be said again, and asks nothing. */
  interject(reply: Reply): void {
    const { question } = this.#bench.conversation;
    this.#bench = advance(this.#bench, question ? { ...reply, question } : reply, []);
    this.#options.changed();
  }

  /** A cutting plan as far as it is found: nothing is said, and the talk goes on. */
  offer(offer: PlanOffer | undefined): void {
    this.#bench = withOffer(this.#bench, offer);
    this.#options.changed();
  }

  /** What the reply added for the eye is out of date: it goes, unless something else was said meanwhile. */
  dropNote(reply: Reply): void {
    const { conversation } = this.#bench;
    const { lastReply } = conversation;
    if (!lastReply || lastReply.note !== reply.note) return;
    this.#bench = { ...this.#bench, conversation: { ...conversation, lastReply: { ...lastReply, note: '' } } };
    this.#options.changed();
  }

  /** The reply that holds in the end: another one when the entries could not be kept. */
  async #write(entries: readonly Entry[], reply: Reply, now: Moment): Promise<Reply> {
    const { added, holds } = await this.#append(entries, reply, now);
    // A reply of the bench's own book-keeping leaves the talk as it is.
    const { question } = this.#bench.conversation;
    this.#bench = advance(this.#bench, holds === SILENCE && question ? { ...holds, question } : holds, added);
    this.#keepSnapshot();
    this.#options.changed();
    return holds;
  }

  async #replace(journal: readonly JournalRecord[], reply: Reply): Promise<Reply> {
    const holds = await this.#kept(async () => {
      await this.#options.store.replaceWith(journal);
      this.#bench = benchFrom(journal);
    }, reply);
    this.#bench = advance(this.#bench, holds, []);
    this.#options.changed();
    return holds;
  }

  async #append(entries: readonly Entry[], reply: Reply, now: Moment): Promise<{ added: readonly JournalRecord[]; holds: Reply }> {
    let added: readonly JournalRecord[] = [];
    const holds = entries.length === 0 ? reply : await this.#kept(async () => {
      added = await this.#options.store.append(entries, now);
    }, reply);
    return { added, holds };
  }

  /** The reply when the work could be kept; else the one that says why not. */
  async #kept(work: () => Promise<void>, reply: Reply): Promise<Reply> {
    try {
      await work();
      return reply;
    } catch (error) {
      if (!(error instanceof NotKept)) throw error;
      return { say: error.message, note: error.message, signal: 'wrong' };
    }
  }

  #keepSnapshot(): void {
    const { state, acts } = this.#bench;
    if (state.lastNumber - this.#keptAt < SNAPSHOT_EVERY) return;
    this.#keptAt = state.lastNumber;
    void this.#options.store.keepSnapshot({ state, acts });
  }

  /** Another window wrote, or a copy came back longer: the bench is folded anew, the talk goes on. */
  #followStore(): void {
    const { records } = this.#options.store;
    if (records.length !== this.#bench.records.length || records.at(-1)?.checksum !== this.#bench.records.at(-1)?.checksum) {
      this.#bench = { ...benchFrom(records), conversation: this.#bench.conversation };
    }
    this.#options.changed();
  }

  #inTurn(work: () => Promise<void>): Promise<void> {
    this.#queue = this.#queue.then(work).catch((error: unknown) => {
      const say = 'Something went wrong inside me. Nothing was written down. Ask again, or take another way.';
      const reply: Reply = { say, note: `${say} (${error instanceof Error ? error.message : String(error)})`, signal: 'wrong' };
      this.#bench = advance(this.#bench, reply, []);
      this.#options.changed();
      this.#options.answered(reply);
    });
    return this.#queue;
  }
}
