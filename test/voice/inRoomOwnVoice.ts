import { describe, expect, test } from 'vitest';
import type { Request } from '../../core/bench/request.ts';
import type { HostAct } from '../../kiosk/hostPort.ts';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { blockPower } from '../../kiosk/ear/spectrum.ts';
import { activeLevel } from '../../kiosk/mouth/loudness.ts';
import { ABOVE_NOISE_DB, furtherDb } from '../../kiosk/mouth/speakUp.ts';
import { forgetSound, heardSound } from './capturedSound.ts';
import { ECHO_DB, roomBetween, untilSilent } from './inRoom.ts';
import { randomNumbers, recording, RATE_HZ } from './sound.ts';
import type { WholeKiosk } from './wholeKiosk.ts';

const ask = (kiosk: WholeKiosk, request: Request) => kiosk.page.evaluate((detail) => { document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-request', { detail })); }, request);
const act = (kiosk: WholeKiosk, what: HostAct) => kiosk.page.evaluate((detail) => { document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-act', { detail })); }, what);
/** Something that is answered in a few words. */
const SHORT: Request = { kind: 'set', setting: { speech: 'normal' } };
const heard = (kiosk: WholeKiosk) => kiosk.page.evaluate(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.ear.heard);

/** The loudest that the microphone hears in that time. */
async function loudestFor(kiosk: WholeKiosk, ms: number): Promise<number> {
  return kiosk.page.evaluate(async (wait) => {
    let loudest = -90;
    for (const ends = performance.now() + wait; performance.now() < ends;) {
      loudest = Math.max(loudest, document.querySelector<BenchKiosk>('bench-kiosk')?.view?.ear.levelDb ?? -90);
      await new Promise((soon) => { setTimeout(soon, 50); });
    }
    return loudest;
  }, ms);
}

export function itsOwnVoice(kiosk: () => WholeKiosk): void {
  describe('its own voice', () => {
    test.each<readonly [string, Request]>([
      ['tells what can be said', { kind: 'what can I say' }],
      ['tells the step', { kind: 'where am I' }],
      ['refuses, with its signal', { kind: 'not understood', heard: 'bench next step', because: 'it is a test' }],
    ])('%s while the bench attends, and is not taken for the maker\'s', async (_what, request) => {
      await act(kiosk(), { kind: 'listen' });
      await ask(kiosk(), request);
      await kiosk().page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.mouth.state === 'speaking');
      const loudest = await loudestFor(kiosk(), 4_000);
      await act(kiosk(), { kind: 'hush' });
      expect(Math.max(loudest, await untilSilent(kiosk().page)), 'it does hear itself').toBeGreaterThan(-45);
      expect(await heard(kiosk())).toBe('');
    });

    test('ends, and the maker is heard at once', async () => {
      await ask(kiosk(), SHORT);
      await kiosk().page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.mouth.state === 'speaking');
      await untilSilent(kiosk().page);
      await kiosk().page.evaluate((samples) => window.playInShop(samples, false), [...recording('bench-next-step')]);
      await kiosk().page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.ear.heard === 'next step', undefined, { timeout: 30_000 });
      await act(kiosk(), { kind: 'hush' });
      await untilSilent(kiosk().page);
    });
  });
}

/** The noise stays. */
export function loudShop(kiosk: () => WholeKiosk): void {
  describe('in a loud shop', () => {
    /** White noise, and what of it the ear calls the loudness of the shop. */
    const noise = (rms: number) => {
      const random = randomNumbers(3);
      return Float32Array.from({ length: 5 * RATE_HZ }, () => (random() * 2 - 1) * rms * Math.sqrt(3));
    };
    const weightedDb = (sound: Float32Array) => 10 * Math.log10(blockPower(sound).weighted);
    const db = (level: number) => 20 * Math.log10(level);

    /** How loud a reply leaves, in decibels below full scale. */
    async function replyDb(): Promise<number> {
      await forgetSound(kiosk().page);
      await ask(kiosk(), SHORT);
      await kiosk().page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.mouth.state === 'speaking');
      await untilSilent(kiosk().page);
      const { samples, rate } = await heardSound(kiosk().page);
      return db(activeLevel(samples, rate));
    }

    test('it speaks 15 dB above the noise at the maker\'s ear (ISO 7731\'s figure), and as set when told not to', async () => {
      await ask(kiosk(), { kind: 'set', setting: { volume: 4, standing: 'close' } });
      await untilSilent(kiosk().page);
      const quietDb = await replyDb();
      expect(quietDb).toBeCloseTo(-18 - 18, 0);
      const fan = noise(0.00125);
      await kiosk().page.evaluate((samples) => window.playInShop(samples, true), [...fan]);
      const ambientDb = weightedDb(fan);
      await kiosk().page.waitForFunction((wanted) => Math.abs((document.querySelector<BenchKiosk>('bench-kiosk')?.view?.ear.ambientDb ?? 0) - wanted) < 1.5, ambientDb, { timeout: 30_000 });
      const loudDb = await replyDb();
      const atMicrophoneDb = loudDb + db(Math.hypot(...roomBetween())) + ECHO_DB;
      expect(atMicrophoneDb - furtherDb(0.5) - ambientDb).toBeGreaterThan(ABOVE_NOISE_DB - 2);
      expect(loudDb - quietDb, 'it had to speak up for that').toBeGreaterThan(3);
      await ask(kiosk(), { kind: 'set', setting: { speakUp: false } });
      await untilSilent(kiosk().page);
      expect(await replyDb()).toBeCloseTo(quietDb, 0);
    });
  });
}
