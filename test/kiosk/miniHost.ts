import { aTimeout } from '@open-wc/testing';
import type { Conversation } from '../../core/bench/bench.ts';
import type { Reply } from '../../core/bench/reply.ts';
import type { Request } from '../../core/bench/request.ts';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { EMPTY_SNAPSHOT, foldJournal } from '../../core/journal/fold.ts';
import type { Snapshot } from '../../core/journal/fold.ts';
import { makeRecords } from '../../core/journal/record.ts';
import { inTurnAfter } from '../../core/respond/inTurn.ts';
import { offerAfter } from '../../core/respond/offer.ts';
import { newsOf } from '../../core/respond/sayPlan.ts';
import { respond } from '../../core/respond/respond.ts';
import { planStock } from '../../core/stock/plan/planStock.ts';
import type { HostAct, KioskView } from '../../kiosk/hostPort.ts';
import '../../kiosk/kiosk.ts';
import '../../kiosk/screens/later.ts';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { BenchKey } from '../../kiosk/keys/benchKey.ts';
import { pressGuard } from '../../kiosk/keys/pressGuard.ts';
import { NOW, PIECE_TEXT, viewOf } from './sampleViews.ts';
import { CHARACTER_MS } from '../../kiosk/keys/instrument.ts';
import { everyElement, settled, stage } from './stage.ts';

/** The one path without store, ear and mouth: requests are answered by the bench, in memory, at a time that stands still. */
export class MiniHost {
  readonly kiosk: BenchKiosk = document.createElement('bench-kiosk');
  readonly requests: Request[] = [];
  readonly acts: HostAct[] = [];
  readonly said: string[] = [];
  #records: readonly JournalRecord[] = [];
  #snapshot: Snapshot = EMPTY_SNAPSHOT;
  #conversation: Conversation = { screen: { name: 'step' }, lastReply: null, question: null };
  #clockMs = 1_000_000;

  constructor() {
    pressGuard.forget();
    this.kiosk.addEventListener('bench-request', ({ detail }) => this.ask(detail));
    this.kiosk.addEventListener('bench-act', ({ detail }) => { this.acts.push(detail); });
  }

  /** With the demo piece on the bench. */
  static async start(): Promise<MiniHost> {
    const host = new MiniHost();
    host.ask({ kind: 'load piece', text: PIECE_TEXT, from: 'the demo' });
    await stage(host.kiosk);
    return host;
  }

  get view(): KioskView {
    const bench = { state: this.#snapshot.state, records: this.#records, acts: this.#snapshot.acts, conversation: this.#conversation };
    return { ...viewOf(this.#conversation.screen), bench };
  }

  get screen(): KioskView['bench']['conversation']['screen'] {
    return this.#conversation.screen;
  }

  ask(request: Request): void {
    this.requests.push(request);
    const { entries, reply } = respond(this.view.bench, request, NOW);
    const added = makeRecords(entries, this.#records.at(-1) ?? null, NOW);
    this.#records = [...this.#records, ...added];
    this.#snapshot = foldJournal(this.#records, this.#snapshot);
    this.#conversation = { screen: reply.screen ?? this.#conversation.screen, lastReply: reply, question: reply.question ?? null, ...this.#offered(reply), ...this.#told(reply, added) };
    if (reply.say !== '') this.said.push(reply.say);
    this.kiosk.view = this.view;
  }

  #offered({ planning }: Reply): Pick<Conversation, 'offer'> {
    const offer = offerAfter(this.#conversation.offer, { say: '', ...(planning === undefined ? {} : { planning }) }, this.#snapshot.state);
    return offer === undefined ? {} : { offer };
  }

  #told(reply: Reply, added: readonly JournalRecord[]): Pick<Conversation, 'inTurn'> {
    const inTurn = inTurnAfter(this.#conversation, reply, added);
    return inTurn === undefined ? {} : { inTurn };
  }

  /** What the planner's worker finds of what the bench wants planned: its first plan, and what is told of it. */
  async plan(): Promise<string | undefined> {
    const { offer, ...talk } = this.#conversation;
    if (offer === undefined) throw new Error('nothing is being planned');
    const found = { ...offer, plan: planStock(offer.problem, () => false, () => undefined), looking: false };
    const news = newsOf(this.#snapshot.state, found);
    this.#conversation = news === undefined ? talk : { ...talk, offer: found };
    this.kiosk.view = this.view;
    await settled();
    return news;
  }

  /** Keys of a number pad, by what is printed on them (⏎ for Enter), half a second apart. */
  async pad(symbols: string): Promise<void> {
    const codes: Readonly<Record<string, string>> = { '+': 'NumpadAdd', '-': 'NumpadSubtract', '*': 'NumpadMultiply', '/': 'NumpadDivide', '.': 'NumpadDecimal', '⏎': 'NumpadEnter' };
    for (const symbol of symbols) {
      const code = codes[symbol] ?? `Numpad${symbol}`;
      const down = new KeyboardEvent('keydown', { code, key: symbol === '⏎' ? 'Enter' : symbol, location: 3, bubbles: true, composed: true, cancelable: true });
      Object.defineProperty(down, 'timeStamp', { value: (this.#clockMs += 500) });
      this.kiosk.dispatchEvent(down);
      this.kiosk.dispatchEvent(new KeyboardEvent('keyup', { code, bubbles: true, composed: true }));
      // Until it is clear that no instrument typed it.
      await aTimeout(CHARACTER_MS + 5);
      await settled();
    }
  }

  /** A line as a caliper or tape gauge types it: a character every eight thousandths of a second, and Enter. */
  async instrument(line: string): Promise<void> {
    const at = (this.#clockMs += 500);
    [...Array.from(line), 'Enter'].forEach((key, index) => {
      const down = new KeyboardEvent('keydown', { key, location: 0, bubbles: true, composed: true, cancelable: true });
      Object.defineProperty(down, 'timeStamp', { value: at + index * 8 });
      this.kiosk.dispatchEvent(down);
    });
    await settled();
  }

  /** A finger on the key of this name; throws when no such key is shown. */
  async touch(...labels: string[]): Promise<void> {
    for (const label of labels) {
      const key = this.keys().find(({ spec }) => spec?.label === label);
      if (key === undefined) throw new Error(`no key “${label}” among ${this.keys().map(({ spec }) => spec?.label).join(', ')}`);
      key.press((this.#clockMs += 500));
      await settled();
    }
  }

  /** The keys that can be seen and pressed. */
  keys(): readonly BenchKey[] {
    return everyElement(this.kiosk).filter((each): each is BenchKey => each instanceof BenchKey && each.checkVisibility({ visibilityProperty: true }));
  }
}

