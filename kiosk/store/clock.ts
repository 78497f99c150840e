import * as v from 'valibot';
import type { Moment } from '../../core/clock/moment.ts';

/** The clock that the kiosk gives to core. */
export interface BenchClock {
  now(): Moment;
  /** The last time that the bench is known to have been alive before the server was started; null on the first start. */
  seenBefore(): Promise<Moment | null>;
  /** Why the wall clock is believed or not, in words. */
  readonly basis: string;
  stop(): void;
}

/** What the clock stands on; a test gives its own. */
export interface ClockSources {
  /** Asks the server; `heartbeat` also tells it that the bench is alive. */
  ask(what: 'clock' | 'heartbeat'): Promise<unknown>;
  /** Milliseconds since the page began; steady, but it may stand still while the machine sleeps. */
  steadyMs(): number;
  wallMs(): number;
  /** Identity for a page whose server does not answer: nothing is known of any time before it. */
  readonly pageId: string;
}

const HEARTBEAT_MS = 10_000;
/** An answer that took longer says too little about when it was given. */
const LONGEST_ANSWER_MS = 500;
/** The two clocks may drift apart by this much before one of them is said to have jumped. */
const JUMP_MS = 2_000;
const FIRST_ATTEMPTS = 3;

const MomentSchema = v.object({ wallMs: v.number(), wallTrusted: v.boolean(), bootId: v.string(), monotonicMs: v.number() });
const ClockAnswer = v.object({ ...MomentSchema.entries, basis: v.string(), seenBefore: v.nullable(MomentSchema) });

/** A reading of the machine's clock, and the page's own at that time. */
interface Anchor {
  readonly reading: Moment;
  readonly steadyMs: number;
}

/**
 * Starts the clock: asks the server for the machine's time since boot (which counts sleep) and asks again with each heartbeat; in between
 * the page's own steady clock carries on. When the server does not answer at the start, the page is a boot of its own, and its wall clock
 * is not believed. The boot's identity stays as it was at the start: a page lives within one boot.
 */
export async function openBenchClock(sources: ClockSources = browserSources()): Promise<BenchClock> {
  let anchor: Anchor = { reading: { wallMs: sources.wallMs(), wallTrusted: false, bootId: sources.pageId, monotonicMs: sources.steadyMs() }, steadyMs: sources.steadyMs() };
  let seenBefore: Moment | null = null;
  let basis = 'the bench\'s server does not answer';
  let furthestMs = 0;
  let asking = false;

  const take = (reading: Moment, asked: number) => {
    const answered = sources.steadyMs();
    if (answered - asked > LONGEST_ANSWER_MS) return;
    const ours = reading.bootId === anchor.reading.bootId;
    const steadyMs = (asked + answered) / 2;
    anchor = ours ? { reading, steadyMs } : { reading: { ...reading, bootId: anchor.reading.bootId, monotonicMs: anchor.reading.monotonicMs + steadyMs - anchor.steadyMs }, steadyMs };
  };

  const beat = async () => {
    if (asking) return;
    asking = true;
    try {
      const asked = sources.steadyMs();
      take(v.parse(MomentSchema, await sources.ask('heartbeat')), asked);
    } catch {
      // The page's own clock carries on, and the next heartbeat asks again.
    } finally {
      asking = false;
    }
  };

  for (let attempt = 0; attempt < FIRST_ATTEMPTS; attempt += 1) {
    const asked = sources.steadyMs();
    const answer = v.safeParse(ClockAnswer, await sources.ask('clock').catch(() => undefined));
    if (!answer.success) continue;
    const { basis: why, seenBefore: before, ...reading } = answer.output;
    anchor = { reading, steadyMs: (asked + sources.steadyMs()) / 2 };
    seenBefore = before;
    basis = why;
    break;
  }
  void beat();
  const timer = setInterval(() => void beat(), HEARTBEAT_MS);

  return {
    now() {
      const sinceMs = sources.steadyMs() - anchor.steadyMs;
      const wallMs = sources.wallMs();
      const jumped = Math.abs(wallMs - anchor.reading.wallMs - sinceMs) > JUMP_MS;
      if (jumped) void beat();
      furthestMs = Math.max(furthestMs, Math.round(anchor.reading.monotonicMs + sinceMs));
      return { wallMs, wallTrusted: anchor.reading.wallTrusted && !jumped, bootId: anchor.reading.bootId, monotonicMs: furthestMs };
    },
    seenBefore: () => Promise.resolve(seenBefore),
    basis,
    stop: () => clearInterval(timer),
  };
}

function browserSources(): ClockSources {
  return {
    async ask(what) {
      const response = await fetch(`/api/${what}`, {
        cache: 'no-store',
        signal: AbortSignal.timeout(1_500),
        ...(what === 'clock' ? {} : { method: 'POST', headers: { 'x-benchcall': '1' } }),
      });
      if (!response.ok) throw new Error(`the server answered ${response.status}`);
      return response.json() as Promise<unknown>;
    },
    steadyMs: () => performance.now(),
    wallMs: () => Date.now(),
    pageId: `page ${performance.timeOrigin}`,
  };
}
