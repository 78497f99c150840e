import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Deafness, TAIL_MS } from '../../../kiosk/ear/deafness.ts';
import { createMouth, type Mouth } from '../../../kiosk/mouth/mouth.ts';
import { PRETENDED, PretendedContext, pretendedVoice, type Fate } from './pretendedSound.ts';

beforeEach(() => {
  vi.useFakeTimers();
  for (const [name, pretended] of Object.entries(PRETENDED)) vi.stubGlobal(name, pretended);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** What may happen to a mouth. */
type Happening =
  | { readonly what: 'say'; readonly text: string; readonly priority: 'due' | 'mark' | 'reply'; readonly key: string }
  | { readonly what: 'signal'; readonly name: 'wrong' | 'due' | 'mark' }
  | { readonly what: 'hush' | 'stands still' | 'goes on' | 'unplugged' | 'plugged in' | 'screen fails' }
  | { readonly what: 'volume'; readonly volume: number }
  | { readonly what: 'voice'; readonly fate: Fate }
  | { readonly what: 'wait'; readonly ms: number };

const WORDS = ['Yes.', 'Long rail, length, end to end, forty-nine, and a half inches.', 'Leg two clamps, time is up.', 'Undone: went to step three. Nothing else has changed, and nothing is lost.'];
const happening: fc.Arbitrary<Happening> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ what: fc.constant('say' as const), text: fc.constantFrom(...WORDS), priority: fc.constantFrom('due', 'mark', 'reply'), key: fc.constantFrom('reply', 'clock 1', 'clock 2') }) },
  { weight: 5, arbitrary: fc.record({ what: fc.constant('wait' as const), ms: fc.integer({ min: 0, max: 4_000 }) }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('signal' as const), name: fc.constantFrom('wrong', 'due', 'mark') }) },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('voice' as const), fate: fc.constantFrom<Fate>('made', 'made', 'refused', 'no answer', 'dies') }) },
  { weight: 4, arbitrary: fc.record({ what: fc.constantFrom('hush', 'stands still', 'goes on', 'unplugged', 'plugged in', 'screen fails') }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant('volume' as const), volume: fc.constantFrom(0, 3, 7) }) },
);

/** The room carries a sound for less than the ear waits. */
const ROOM_MS = TAIL_MS - 50;
const STEP_MS = 50;
/** When everything has been given up: the longest phrase's deadlines, twice for each of the phrases that wait. */
const GIVEN_UP_MS = 240_000;

/** A mouth, the loudspeaker that it sounds through, and the ear's deafness; and whether the microphone has anything of the mouth's now. */
class MouthAndEar {
  readonly deafness = new Deafness(() => undefined);
  readonly #latencyMs: number;
  readonly #contexts: PretendedContext[] = [];
  readonly #devices = Object.assign(new EventTarget(), { plugged: true, enumerateDevices: () => Promise.resolve(this.#devices.plugged ? [{ kind: 'audiooutput' }] : []) });
  readonly #mouth: Mouth;
  #fate: Fate = 'made';
  #screenFails = false;
  #ms = 0;
  /** When something left the mouth last. */
  #soundedAt = -Infinity;
  /** And since when, without a break that a room would not bridge. */
  #soundsSince = Infinity;
  waiting = 0;
  everSounded = false;

  constructor(latencyMs: number) {
    this.#latencyMs = latencyMs;
    this.#mouth = createMouth({
      events: { speaking: () => { if (this.#screenFails) throw new Error('the screen is gone'); }, silent: () => undefined, state: () => undefined },
      deafen: () => this.deafness.deafen(),
      player: { devices: this.#devices as unknown as MediaDevices, gestures: new EventTarget(), openContext: () => this.#open() as unknown as AudioContext },
      voiceOptions: { startWorker: () => pretendedVoice(() => this.#fate) },
    });
  }

  start(): Promise<void> { return this.#mouth.start(); }

  /** Whether what it hears now is of the mouth: what left it by the loudspeaker's lag ago, or a little before that. */
  get hearsMouth(): boolean {
    return this.#ms - this.#latencyMs - this.#soundedAt <= ROOM_MS && this.#ms - this.#latencyMs >= this.#soundsSince;
  }

  happens(event: Happening): Promise<void> {
    switch (event.what) {
      case 'say': this.#count(this.#mouth.say(event.text, event)); break;
      case 'signal': this.#count(this.#mouth.signal(event.name)); break;
      case 'hush': this.#mouth.hush(); break;
      case 'volume': this.#mouth.setVolume(event.volume); break;
      case 'voice': this.#fate = event.fate; break;
      case 'screen fails': this.#screenFails = !this.#screenFails; break;
      case 'stands still': case 'goes on': for (const context of this.#contexts) context.standsStill = event.what === 'stands still'; break;
      case 'unplugged': case 'plugged in':
        this.#devices.plugged = event.what === 'plugged in';
        this.#devices.dispatchEvent(new Event('devicechange'));
        break;
      case 'wait': return this.pass(event.ms);
    }
    return this.pass(STEP_MS);
  }

  /** At each step, nothing of the mouth may be heard by an ear that hears. */
  async pass(ms: number, stepMs = STEP_MS): Promise<void> {
    for (let passed = 0; passed < ms; passed += stepMs) {
      for (const context of this.#contexts) context.pass(stepMs / 1_000);
      await vi.advanceTimersByTimeAsync(stepMs);
      this.#ms += stepMs;
      this.#note(this.#contexts.some(({ sounds }) => sounds));
      if (this.hearsMouth) expect(this.deafness.deaf, `${this.#ms} ms after the beginning the ear hears the mouth`).toBe(true);
    }
  }

  #note(sounds: boolean): void {
    if (!sounds) return;
    if (this.#ms - this.#soundedAt > ROOM_MS) this.#soundsSince = this.#ms;
    this.#soundedAt = this.#ms;
    this.everSounded = true;
  }

  #open(): PretendedContext {
    const context = new PretendedContext(this.#latencyMs / 1_000);
    this.#contexts.push(context);
    return context;
  }

  #count(settles: Promise<unknown>): void {
    this.waiting += 1;
    void settles.finally(() => { this.waiting -= 1; });
  }
}

test('whatever happens to mouth, voice and loudspeaker, the ear never hears the mouth, is not deaf for ever, and everything asked for comes to an end', async () => {
  let sounded = 0;
  await fc.assert(fc.asyncProperty(fc.array(happening, { minLength: 4, maxLength: 14 }), fc.constantFrom(0, 100, 450), async (happenings, latencyMs) => {
    const both = new MouthAndEar(latencyMs);
    const started = both.start();
    await both.pass(500);
    await started;
    for (const event of happenings) await both.happens(event);
    await both.pass(GIVEN_UP_MS, 250);
    expect(both.waiting, 'still waited for').toBe(0);
    expect(both.deafness.deaf, 'deaf for ever after').toBe(false);
    if (both.everSounded) sounded += 1;
  }), { numRuns: 60 });
  expect(sounded, 'runs in which anything sounded').toBeGreaterThan(20);
});

test('no pause between two phrases lets the ear wake', async () => {
  const both = new MouthAndEar(100);
  const started = both.start();
  await both.pass(500);
  await started;
  await both.happens({ what: 'say', text: WORDS[1] ?? '', priority: 'reply', key: 'reply' });
  await both.pass(1_000);
  const begun = both.everSounded;
  while (both.waiting > 0) {
    expect(both.deafness.deaf).toBe(true);
    await both.pass(STEP_MS);
  }
  expect(begun).toBe(true);
});
