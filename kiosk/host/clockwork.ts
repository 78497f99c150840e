import type { Moment } from '../../core/clock/moment.ts';
import { clockFault, sayClockFault } from '../../core/clock/jump.ts';
import { clockCalls, type ClockCall } from '../../core/respond/announce.ts';
import type { Mouth } from '../mouth/mouth.ts';
import type { BenchClock } from '../store/clock.ts';
import type { BenchKeeper } from './bench.ts';

const LOOK_EVERY_MS = 500;
/** 'Two minutes left' is true for this long. */
const NOTE_MS = 20_000;

export interface ClockworkOptions {
  readonly keeper: BenchKeeper;
  readonly clock: BenchClock;
  readonly mouth: Mouth;
  readonly notice: (sentence: string) => void;
  /** False while blows fall or somebody speaks: a call that may wait does so, but never longer than its clock allows (two seconds for glue, two minutes at most). */
  readonly lull: () => boolean;
  /** False when another window calls out. */
  readonly aloud: () => boolean;
  /** After each look at the clocks, for the screen. */
  readonly looked: () => void;
}

/** Looks at the clocks twice a second: calls out what is due, and notices clocks that jump, stop or start anew. */
export class Clockwork {
  readonly #options: ClockworkOptions;
  #before: Moment | undefined;
  /** The first look has only the journal to go by: how long nobody looked before it is not known. */
  #lookedBefore = false;
  #waiting: { readonly call: ClockCall; readonly until: number }[] = [];

  constructor(options: ClockworkOptions) {
    this.#options = options;
  }

  /** Tells the journal how long the bench is known to have lived before this start, then runs for as long as the page does. */
  async start(): Promise<void> {
    const { keeper, clock } = this.#options;
    const seenBefore = await clock.seenBefore();
    const last = keeper.bench.state.clock;
    const alive = seenBefore && last?.bootId === seenBefore.bootId && seenBefore.monotonicMs > last.monotonicMs ? seenBefore : last;
    if (seenBefore && alive === seenBefore && keeper.bench.state.timers.length > 0) await keeper.note([{ kind: 'clock seen', note: 'heartbeat' }], seenBefore);
    const now = clock.now();
    if (alive && alive.bootId !== now.bootId && keeper.bench.state.timers.length > 0) {
      await keeper.note([{ kind: 'clock seen', note: 'restarted' }]);
    }
    this.#before = alive ?? now;
    this.#look();
    setInterval(() => this.#look(), LOOK_EVERY_MS);
  }

  #look(): void {
    const { keeper, clock, looked } = this.#options;
    const now = clock.now();
    const before = this.#before ?? now;
    this.#before = now;
    this.#noticeFault(before, now);
    const told = performance.now();
    this.#waiting.push(...clockCalls(keeper.bench, before, now).map((call) => ({ call, until: told + call.mayWaitMs })));
    this.#callOut(told);
    looked();
  }

  #noticeFault(before: Moment, now: Moment): void {
    const { keeper, notice } = this.#options;
    const fault = clockFault(before, now);
    const first = !this.#lookedBefore;
    this.#lookedBefore = true;
    if (!fault || keeper.bench.state.timers.length === 0 || fault.kind === 'restarted' || (first && fault.kind === 'gap')) return;
    notice(sayClockFault(fault));
    if (fault.kind !== 'gap') void keeper.note([{ kind: 'clock seen', note: 'jumped' }]);
  }

  #callOut(told: number): void {
    const quiet = this.#options.lull();
    const ready = this.#waiting.filter(({ until }) => quiet || told >= until);
    this.#waiting = this.#waiting.filter((waiting) => !ready.includes(waiting));
    for (const { call } of ready.filter(({ call: { timers } }) => timers.some((timer) => this.#stillCalls(timer)))) {
      this.#options.keeper.interject(call.reply);
      setTimeout(() => this.#options.keeper.dropNote(call.reply), NOTE_MS);
      if (!this.#options.aloud()) continue;
      if (call.reply.signal) void this.#options.mouth.signal(call.reply.signal);
      void this.#options.mouth.say(call.reply.say, { priority: call.priority, key: call.key });
    }
  }

  /** A call waited for quiet; meanwhile its clock may have been acknowledged or stopped. */
  #stillCalls(id: number): boolean {
    return this.#options.keeper.bench.state.timers.some((timer) => timer.id === id && (timer.acknowledgedAt === undefined || timer.kind === 'break'));
  }
}
