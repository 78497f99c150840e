import type { Page } from 'playwright-core';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { hearItself } from './loopback.ts';
import { roomResponse, SHOP } from './room.ts';
import { quiet } from './sound.ts';
import { loadDemo, openWholeKiosk, type WholeKiosk } from './wholeKiosk.ts';

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

/** Waits until the kiosk has spoken and its ear hears again; gives the loudest that its microphone heard meanwhile. */
export async function untilSilent(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const view = () => document.querySelector<BenchKiosk>('bench-kiosk')?.view;
    let loudest = -90;
    let silentSince = performance.now();
    while (performance.now() - silentSince < 900) {
      if (view()?.mouth.state === 'speaking' || view()?.ear.state === 'deaf') silentSince = performance.now();
      loudest = Math.max(loudest, view()?.ear.levelDb ?? -90);
      await new Promise((soon) => { setTimeout(soon, 50); });
    }
    return loudest;
  });
}
