import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { forgetSound, heardSound } from './capturedSound.ts';
import { joined, quiet } from './sound.ts';
import { benchNow, inTheShop, loadDemo, openWholeKiosk, plugInMicrophone, untilSaid, withoutMicrophone, type WholeKiosk } from './wholeKiosk.ts';

/** What is said, one after the other and then again, each with the seconds that its answer takes. */
const SAID: readonly (readonly [words: string, after: number])[] = [
  ['bench, how long is the long rail', 9], ['bench, start a ten second timer', 20], ['bench, next step', 11], ['bench, record leg two width three and five sixteenths', 20],
];

/** Who misses a sentence hears it again when the others were said. */
const PATIENCE_MS = 240_000;

let kiosk: WholeKiosk;
beforeAll(async () => {
  kiosk = await openWholeKiosk(joined(quiet(3), ...SAID.map(([words, after]) => inTheShop(words, { before: 2, after }))), { prepare: withoutMicrophone });
  await loadDemo(kiosk.page);
  await plugInMicrophone(kiosk.page);
}, 300_000);
afterAll(() => kiosk.close());

/** Speaks for longer than so many seconds, since the recording began anew. */
async function speaksFor(seconds: number): Promise<void> {
  await expect.poll(secondsSounded, { timeout: 30_000, interval: 500 }).toBeGreaterThan(seconds);
}

/** Seconds of sound above -40 dB below full scale, which is speech and no hiss, since the recording began anew. */
async function secondsSounded(): Promise<number> {
  const { samples, rate } = await heardSound(kiosk.page);
  const block = Math.round(rate / 50);
  let loud = 0;
  for (let at = 0; at + block <= samples.length; at += block) {
    let sum = 0;
    for (let index = at; index < at + block; index++) sum += (samples[index] ?? 0) ** 2;
    if (Math.sqrt(sum / block) > 0.01) loud += 1;
  }
  return loud / 50;
}

describe('the whole kiosk, from a voice in the shop to a voice from the loudspeaker', () => {
  test('"bench, how long is the long rail" is answered with the size in fractions', async () => {
    await forgetSound(kiosk.page);
    expect(await untilSaid(kiosk.page, /^Long rail/, PATIENCE_MS)).toBe('Long rail, length, end to end, forty-nine, and a half inches.');
    await speaksFor(2);
  });

  test('"bench, start a ten second timer" starts a clock that calls out when it is due', async () => {
    await untilSaid(kiosk.page, /^Timer, ten seconds, running/, PATIENCE_MS);
    await forgetSound(kiosk.page);
    await untilSaid(kiosk.page, /time is up/);
    await speaksFor(1);
    await kiosk.page.evaluate(() => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-request', { detail: { kind: 'acknowledge' } })));
  });

  test('"bench, next step" goes on to the next step and says it aloud', async () => {
    await forgetSound(kiosk.page);
    await untilSaid(kiosk.page, /Reference edge, leg layers/, PATIENCE_MS);
    expect((await benchNow(kiosk.page)).entries.some((entry) => entry.kind === 'went to step')).toBe(true);
    // The sentence has a dozen words: at 150 words a minute that is several seconds of speech.
    await speaksFor(2);
  });

  test('"bench, record leg two width three and five sixteenths" is written down, read back, and what moved is told', async () => {
    expect(await untilSaid(kiosk.page, /noted/, PATIENCE_MS)).toMatch(/^Leg two, width, three, and five sixteenths inches, noted\. One sixteenth of an inch over the plan\./);
    const measured = (await benchNow(kiosk.page)).entries.filter((entry) => entry.kind === 'measured');
    // 3 5/16 in = 53 x 1.5875 mm
    expect(measured[0]).toEqual({ kind: 'measured', measurement: { size: 'leg.width', copy: 2, length: 84_137_500 } });
  });
});
