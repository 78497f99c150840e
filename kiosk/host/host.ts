import type { Reply } from '../../core/bench/reply.ts';
import type { Request } from '../../core/bench/request.ts';
import type { Moment } from '../../core/clock/moment.ts';
import type { Settings } from '../../core/journal/settings.ts';
import { createEar } from '../ear/ear.ts';
import type { Ear } from '../ear/earPort.ts';
import type { HostAct, KioskView, ShelfPiece } from '../hostPort.ts';
import { createMouth, type Mouth } from '../mouth/mouth.ts';
import type { Store } from '../store/store.ts';
import type { BenchClock } from '../store/clock.ts';
import type * as Answering from './answering.ts';
import { AirWatch } from './airWatch.ts';
import { BenchKeeper } from './bench.ts';
import { Clockwork } from './clockwork.ts';
import { Files } from './files.ts';
import { Foreseen } from './foreseen.ts';
import { Hearing } from './hearing.ts';
import type { Planning } from './planning.ts';
import { LoudShop } from './loudShop.ts';
import { kioskView, noticesOf, type Seen } from './view.ts';

export interface HostOptions {
  readonly store: Store;
  readonly clock: BenchClock;
  /** Draws the bench as it is now. */
  readonly draw: (view: KioskView) => void;
  /** Settles when every screen is there: nothing is answered before, for an answer may want any of them. */
  readonly screens?: Promise<unknown>;
  /** What was rendered by the voice, for tests that listen. */
  readonly onRendered?: (samples: Float32Array, text: string) => void;
}

/** How long an answer is waited for after a question was said; then the address word is wanted again. */
const ANSWER_WINDOW_MS = 12_000;

/**
 * Joins core, store, clock, ear and mouth. Everything a person does becomes a Request and goes through the BenchKeeper;
 * what concerns only the ear, the mouth or files is done here.
 */
export class Host {
  readonly #options: HostOptions;
  readonly #ear: Ear;
  readonly #mouth: Mouth;
  readonly #keeper: BenchKeeper;
  readonly #clockwork: Clockwork;
  readonly #files: Files;
  readonly #hearing: Hearing;
  readonly #answering: Promise<typeof Answering>;
  /** The same, once it is there. */
  #answers: typeof Answering | undefined;
  readonly #loudShop: LoudShop;
  readonly #foreseen: Foreseen;
  #seen: Seen = { heard: '', levelDb: null, ambientDb: null, words: '', notices: [], putAway: [], shelf: [], microphones: [], unknownWords: [], guessedWords: [] };
  #applied: Settings | undefined;
  #drawing = false;

  constructor(options: HostOptions) {
    this.#options = options;
    this.#answering = Promise.all([import('./answering.ts'), options.screens]).then(([answering]) => answering);
    this.#mouth = createMouth({
      events: {
        speaking: (words) => this.#see({ words }),
        silent: () => this.#see({ words: '' }),
        state: () => this.#redraw(),
      },
      deafen: () => this.#ear.deafen(),
      raiseDb: () => this.#loudShop.raiseDb(),
      ...(options.onRendered ? { onRendered: options.onRendered } : {}),
    });
    this.#ear = createEar({
      dependsOn: (words, at) => this.#answers?.dependsOn(words, at, this.#keeper.bench) ?? 'wholly',
      events: {
        heard: (words, doubtful) => void this.hear(words, doubtful),
        address: (settled) => this.#addressed(settled),
        level: (levelDb) => this.#levelIs(levelDb),
        state: () => this.#earChanged(),
        distorted: () => this.notice('The microphone is so loud that it cuts off what it hears: turn its level down, or move it away from the blows.'),
        ownVoice: (db) => this.#loudShop.heardItself(db),
        unknownWords: (unknownWords) => this.#see({ unknownWords }),
        guessedWords: (guessedWords) => this.#see({ guessedWords }),
        modelLoaded: (model) => this.#hearing.loaded(model),
        modelRefused: (url, reason) => this.#hearing.refused(url, reason),
      },
    });
    this.#foreseen = new Foreseen({ ear: this.#ear, mouth: this.#mouth });
    this.#loudShop = new LoudShop(() => this.#ear.shop, () => this.#keeper.bench.state.settings);
    this.#keeper = new BenchKeeper({
      store: options.store,
      answering: this.#answering,
      now: () => this.now(),
      answered: (reply) => void this.#voice(reply),
      changed: () => this.#changed(),
    });
    this.#clockwork = new Clockwork({ keeper: this.#keeper, clock: options.clock, mouth: this.#mouth, notice: (sentence) => this.notice(sentence), lull: () => this.#loudShop.lull(), aloud: () => !options.store.status.elsewhere, looked: () => this.#redraw() });
    this.#hearing = new Hearing({ ear: () => this.#ear, bench: () => this.#keeper.bench, now: () => this.now(), notice: (sentence) => this.notice(sentence), changed: () => this.#redraw() });
    this.#files = new Files({ now: () => this.now(), submit: (request) => this.submit(request), notice: (sentence) => this.notice(sentence), tell: (reply) => this.#tell(reply), bench: () => this.#keeper.bench });
  }

  /** Begins: what was found at recovery is told, the clocks run, the ear and the mouth wake up by themselves. */
  async start(): Promise<void> {
    for (const sentence of this.#options.store.status.told) this.notice(sentence);
    this.#changed();
    await this.#clockwork.start();
    new AirWatch({ keeper: this.#keeper, now: () => this.now(), notice: (sentence) => this.notice(sentence) }).start();
    this.#answers = await this.#answering;
    this.#changed();
    await Promise.all([this.#mouth.start(), this.#startEar(), this.#lookForPieces(), this.#hearing.look()]);
  }

  now(): Moment {
    return this.#options.clock.now();
  }

  submit(request: Request): Promise<void> {
    return this.#keeper.submit(request);
  }

  /** Words that were meant for the bench: from the ear, or typed. */
  async hear(words: string, doubtful: readonly string[] = []): Promise<void> {
    this.#see({ heard: words });
    const { parseHeard } = await this.#answering;
    const request = parseHeard(words, doubtful, this.#keeper.bench);
    if (this.#onlyTries(request)) return;
    await this.submit(request);
  }

  /** While the microphone is tried, what is said is only shown; but it leads to other screens, and a clock that is due is heard out. */
  #onlyTries({ kind }: Request): boolean {
    const { screen, question } = this.#keeper.bench.conversation;
    return screen.name === 'microphone' && question === null && kind !== 'show' && kind !== 'acknowledge';
  }

  /** A sentence that stays on the screen until it is put away. */
  notice(sentence: string): void {
    if (!this.#seen.notices.includes(sentence)) this.#see({ notices: [...this.#seen.notices, sentence] });
  }

  /** News that comes again is told again; what the model cannot hear of this piece is told once. */
  #putAway(sentence: string | undefined): void {
    if (sentence === undefined) return;
    const notices = this.#seen.notices.filter((one) => one !== sentence);
    const lasting = notices.length === this.#seen.notices.length;
    this.#see({ notices, ...(lasting ? { putAway: [...this.#seen.putAway, sentence] } : {}) });
  }

  async act(act: HostAct): Promise<void> {
    switch (act.kind) {
      case 'listen':
        return this.#listen();
      case 'hush':
        { this.#mouth.hush(); return; }
      case 'choose model':
        return this.#hearing.choose(act.name);
      case 'play back':
        return this.#hearing.playBack();
      case 'put away notice':
        { this.#putAway(noticesOf(this.#seen)[act.index]); return; }
      case 'key stuck':
        { this.notice(`The key “${act.label}” has been down for a long time. Is something lying on it?`); return; }
      case 'look for pieces':
        return this.#lookForPieces();
      case 'load demo':
      case 'open from shelf':
      case 'open piece file':
      case 'save everything':
      case 'take in everything':
        return this.#files.act(act);
    }
  }

  /** What was done without a request, such as a file written: said and shown like any answer. */
  #tell(reply: Reply): void {
    this.#keeper.interject(reply);
    void this.#voice(reply);
  }

  async #voice(reply: Reply): Promise<void> {
    if (reply.hush) this.#mouth.hush();
    if (reply.file) void this.#files.keep(reply.file);
    if (reply.planning) void this.#plan(reply.planning);
    if (reply.paper) void this.#putOnPaper(reply.paper);
    if (reply.signal) void this.#mouth.signal(reply.signal);
    if (reply.say !== '') await this.#mouth.say(reply.say, { priority: 'reply', key: 'reply', ...(reply.slowly ? { slow: true } : {}) });
    // A question that was answered meanwhile, by a key, opens no window.
    if (reply.question && !reply.unasked && this.#keeper.bench.conversation.question === reply.question) this.#ear.openAnswerWindow(ANSWER_WINDOW_MS);
  }

  /** What draws and writes sheets is fetched when the first is wanted. */
  async #putOnPaper(wanted: NonNullable<Reply['paper']>): Promise<void> {
    const { putOnPaper } = await import('./paper.ts');
    await putOnPaper(wanted, { bench: this.#keeper.bench, now: this.now(), notice: (sentence) => this.notice(sentence), tell: (reply) => this.#tell(reply) });
  }

  /** What looks for cutting plans is fetched when the first is wanted. */
  async #plan(planning: NonNullable<Reply['planning']>): Promise<void> {
    this.#planning ??= import('./planning.ts').then(({ Planning }) => new Planning({ bench: () => this.#keeper.bench, offer: (offer) => this.#keeper.offer(offer), tell: (reply) => this.#tell(reply), notice: (sentence) => this.notice(sentence) }));
    (await this.#planning).follow(planning);
  }
  #planning: Promise<Planning> | undefined;

  async #listen(): Promise<void> {
    this.#mouth.hush();
    if (this.#options.store.status.elsewhere) {
      for (const sentence of this.#options.store.status.warnings) this.notice(sentence);
      return;
    }
    if (!this.#keeper.bench.state.settings.listening) await this.#ear.start();
    void this.#mouth.signal('heard');
    this.#ear.listenNow();
  }

  #addressed(settled: boolean): void {
    if (settled) void this.#mouth.signal('heard');
  }

  #levelIs(levelDb: number | null): void {
    this.#see({ levelDb, ambientDb: levelDb === null ? null : this.#ear.shop?.ambientDb ?? null });
  }

  async #startEar(): Promise<void> {
    this.#listens = false;
    this.#followEar();
    await this.#lookAtMicrophones();
  }

  /** The ear listens when it should, and in one window only. */
  #followEar(): void {
    const should = this.#keeper.bench.state.settings.listening && !this.#options.store.status.elsewhere;
    if (this.#listens === undefined || this.#listens === should) return;
    this.#listens = should;
    if (should) void this.#ear.start().then(() => this.#lookAtMicrophones());
    else this.#ear.stop();
  }
  /** Undefined until the kiosk has woken up. */
  #listens: boolean | undefined;

  /** Microphones come and go with faults, and have names only once one was allowed. */
  #earChanged(): void {
    const { name } = this.#ear.state;
    const hears = name === 'asleep' || name === 'attending' || name === 'deaf';
    if (hears !== this.#hears) void this.#lookAtMicrophones();
    this.#hears = hears;
    this.#redraw();
  }
  #hears = false;

  async #lookAtMicrophones(): Promise<void> {
    this.#see({ microphones: await this.#ear.microphones().catch(() => []) });
  }

  async #lookForPieces(): Promise<void> {
    this.#see({ shelf: await this.#files.shelf().catch((): readonly ShelfPiece[] => []) });
  }

  #changed(): void {
    const { state, conversation } = this.#keeper.bench;
    this.#apply(state.settings);
    if (!conversation.question) this.#ear.closeWindow();
    this.#hearing.try(conversation.screen.name === 'microphone');
    if (this.#answers) {
      this.#foreseen.follow(this.#answers, this.#keeper.bench, this.now());
    }
    this.#redraw();
  }

  /** Hands the settings that concern ear and mouth on to them, when they changed. */
  #apply(settings: Settings): void {
    const before = this.#applied;
    this.#applied = settings;
    if (before?.volume !== settings.volume) this.#mouth.setVolume(settings.volume);
    if (before?.speech !== settings.speech) this.#mouth.setSpeech(settings.speech);
    if ((before?.microphone ?? '') !== settings.microphone) void this.#changeMicrophone(settings.microphone);
    this.#followEar();
  }

  async #changeMicrophone(name: string): Promise<void> {
    this.#loudShop.forgetVoice();
    await this.#ear.chooseMicrophone(name);
    await this.#lookAtMicrophones();
  }

  #see(news: Partial<Seen>): void {
    this.#seen = { ...this.#seen, ...news };
    this.#redraw();
  }

  /** At most once a frame. */
  #redraw(): void {
    if (this.#drawing) return;
    this.#drawing = true;
    requestAnimationFrame(() => {
      this.#drawing = false;
      this.#options.draw(kioskView({ bench: this.#keeper.bench, now: this.now(), ear: this.#ear.state, mouth: this.#mouth.state, status: this.#options.store.status, seen: this.#seen, drowned: this.#loudShop.remark, hearing: this.#hearing.view(this.#seen.unknownWords, this.#seen.guessedWords) }));
    });
  }
}
