import type { Page } from 'playwright-core';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { hearItself } from './loopback.ts';
import { roomResponse, SHOP } from './room.ts';
import { joined, quiet } from './sound.ts';
import { loadDemo, openWholeKiosk, spoken, untilSaid, type WholeKiosk } from './wholeKiosk.ts';

/** How much softer the kiosk's own voice comes back into its microphone. */
export const ECHO_DB = -15;

/** From the loudspeaker to the microphone, 0.6 m away, with the echo of the room. */
export function roomBetween(): Float32Array {
  return roomResponse(0.6, { ...SHOP, reverberationSeconds: 0.4 });
}

/** The whole kiosk with the demo piece in a room, hearing itself and what is played in the shop, ready to be spoken to. */
export async function openInRoom(): Promise<WholeKiosk> {
  const kiosk = await openWholeKiosk(quiet(2), { prepare: (page) => hearItself(page, roomBetween().map((sample) => sample * 10 ** (ECHO_DB / 20))) });
  await loadDemo(kiosk.page);
  await kiosk.page.evaluate((samples) => window.playInShop(samples, true), [...quiet(4)]);
  await untilSilent(kiosk.page);
  await kiosk.page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.ear.state === 'waiting', undefined, { timeout: 150_000 });
  return kiosk;
}

/** Waits until the kiosk has spoken and its ear hears again, for so long; gives the loudest that its microphone heard meanwhile. */
export async function untilSilent(page: Page, forMs = 900): Promise<number> {
  return page.evaluate(async (wanted) => {
    const view = () => document.querySelector<BenchKiosk>('bench-kiosk')?.view;
    let loudest = -90;
    let silentSince = performance.now();
    while (performance.now() - silentSince < wanted) {
      if (view()?.mouth.state === 'speaking' || view()?.ear.state === 'deaf') silentSince = performance.now();
      loudest = Math.max(loudest, view()?.ear.levelDb ?? -90);
      await new Promise((soon) => { setTimeout(soon, 50); });
    }
    return loudest;
  }, forMs);
}

/** What is still being said is cut short by the listen key; then somebody in the shop says it, and again when nothing like the answer comes. Gives the whole answer. */
export async function answerTo(page: Page, words: string, answer: RegExp): Promise<string> {
  const samples = [...joined(quiet(0.2), spoken(words))];
  for (let times = 1; ; times += 1) {
    await page.evaluate(() => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-act', { detail: { kind: 'hush' } })));
    await untilSilent(page, 400);
    await page.evaluate((sound) => window.playInShop(sound, false), samples);
    try {
      return await untilSaid(page, answer, 15_000);
    } catch (error) {
      if (times === 3) throw error;
    }
  }
}
