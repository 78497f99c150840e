/** How a thing said ends: said to its end, cut off (by the listen key, by a newer message of its key, or grown stale), or not sayable now. */
export type SayEnd = 'said' | 'interrupted' | 'failed';

/** A due timer goes before a mark, a mark before a reply. */
export type SayPriority = 'due' | 'mark' | 'reply';

export interface Utterance {
  readonly text: string;
  readonly priority: SayPriority;
  /** Messages of one key are about one thing: a newer one takes the place of an older, and the same words are not said twice. */
  readonly key?: string;
  readonly slow: boolean;
}

/** One performance of an utterance. `stop` makes it end at once; `ended` always settles. */
export interface Performance {
  readonly ended: Promise<SayEnd>;
  stop(): void;
}

export interface QueueOptions {
  readonly perform: (utterance: Utterance) => Performance;
  /** Milliseconds that only grow. */
  readonly now: () => number;
}

const RANK: Readonly<Record<SayPriority, number>> = { due: 2, mark: 1, reply: 0 };

/**
 * How long after it was asked for a thing is still worth beginning. A reply is forgotten soon after the question; a mark tells of a moment; what is
 * due stays due.
 */
export const WANTED_MS: Readonly<Record<SayPriority, number>> = { due: Infinity, mark: 60_000, reply: 20_000 };

interface Item {
  readonly utterance: Utterance;
  readonly askedAt: number;
  readonly ended: Promise<SayEnd>;
  readonly settle: (end: SayEnd) => void;
}

/**
 * One thing is said at a time. A higher priority cuts off a lower one, which then begins anew if it is still wanted; equals wait their turn. Every
 * promise settles, once.
 */
export class SpeechQueue {
  readonly #options: QueueOptions;
  #waiting: Item[] = [];
  #current: { readonly item: Item; readonly performance: Performance } | undefined;

  constructor(options: QueueOptions) {
    this.#options = options;
  }

  /** What is being said, if anything. */
  get current(): Utterance | undefined {
    return this.#current?.item.utterance;
  }

  say(utterance: Utterance): Promise<SayEnd> {
    const older = this.#ofSameKey(utterance);
    if (older !== undefined && sameWords(older.utterance, utterance)) return older.ended;
    if (older !== undefined) this.#drop(older);
    const item = newItem(utterance, this.#options.now());
    this.#waiting.push(item);
    this.#giveWay(item);
    this.#next();
    return item.ended;
  }

  /** Ends all that is said or waits. What is due will be announced again by whoever keeps the clocks. */
  hush(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    if (this.#current !== undefined) this.#drop(this.#current.item);
    for (const item of waiting) item.settle('interrupted');
  }

  #ofSameKey({ key }: Utterance): Item | undefined {
    if (key === undefined) return undefined;
    return [this.#current?.item, ...this.#waiting].find((item) => item?.utterance.key === key);
  }

  #drop(item: Item): void {
    if (this.#current?.item === item) this.#stopCurrent();
    this.#waiting = this.#waiting.filter((other) => other !== item);
    item.settle('interrupted');
  }

  /** Cuts off what is being said when the newcomer goes before it; it waits to begin anew, first of its rank. */
  #giveWay(newcomer: Item): void {
    const current = this.#current?.item;
    if (current === undefined || RANK[newcomer.utterance.priority] <= RANK[current.utterance.priority]) return;
    this.#stopCurrent();
    this.#waiting.unshift(current);
  }

  #stopCurrent(): void {
    const performance = this.#current?.performance;
    this.#current = undefined;
    performance?.stop();
  }

  #next(): void {
    if (this.#current !== undefined) return;
    this.#forgetStale();
    const item = this.#first();
    if (item === undefined) return;
    this.#waiting = this.#waiting.filter((other) => other !== item);
    const performance = this.#options.perform(item.utterance);
    this.#current = { item, performance };
    void performance.ended.catch((): SayEnd => 'failed').then((end) => {
      if (this.#current?.performance !== performance) return;
      this.#current = undefined;
      item.settle(end);
      this.#next();
    });
  }

  #first(): Item | undefined {
    let first: Item | undefined;
    for (const item of this.#waiting) {
      if (first === undefined || RANK[item.utterance.priority] > RANK[first.utterance.priority]) first = item;
    }
    return first;
  }

  #forgetStale(): void {
    const now = this.#options.now();
    const stale = this.#waiting.filter(({ askedAt, utterance }) => now - askedAt > WANTED_MS[utterance.priority]);
    this.#waiting = this.#waiting.filter((item) => !stale.includes(item));
    for (const item of stale) item.settle('interrupted');
  }
}

function sameWords(one: Utterance, other: Utterance): boolean {
  return one.text === other.text && one.slow === other.slow && one.priority === other.priority;
}

function newItem(utterance: Utterance, askedAt: number): Item {
  let settle: Item['settle'] = () => undefined;
  const ended = new Promise<SayEnd>((resolve) => { settle = resolve; });
  return { utterance, askedAt, ended, settle };
}
