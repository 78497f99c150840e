import { afterEach, describe, expect, test } from 'vitest';
import { forgetSound, heardSound } from './capturedSound.ts';
import { benchNow, inTheShop, loadDemo, openWholeKiosk, untilSaid, type WholeKiosk } from './wholeKiosk.ts';

let kiosk: WholeKiosk;
afterEach(() => kiosk.close());

/** Opens the kiosk with the demo piece, in a shop where somebody says that again and again. */
async function saidInTheShop(words: string): Promise<void> {
  kiosk = await openWholeKiosk(inTheShop(words, { before: 3, after: 14 }));
  await loadDemo(kiosk.page);
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
  test('"bench, next step" goes on to the next step and says it aloud', async () => {
    await saidInTheShop('bench, next step');
    await forgetSound(kiosk.page);
    await untilSaid(kiosk.page, /Reference edge, leg layers/);
    expect((await benchNow(kiosk.page)).entries.some((entry) => entry.kind === 'went to step')).toBe(true);
    await kiosk.page.waitForTimeout(6_000);
    // The sentence has a dozen words: at 150 words a minute that is several seconds of speech.
    expect(await secondsSounded()).toBeGreaterThan(2);
  });

  test('"bench, how long is the long rail" is answered with the size in fractions', async () => {
    await saidInTheShop('bench, how long is the long rail');
    expect(await untilSaid(kiosk.page, /^Long rail/)).toBe('Long rail, length, end to end, forty-nine, and a half inches.');
    await kiosk.page.waitForTimeout(5_000);
    expect(await secondsSounded()).toBeGreaterThan(2);
  });

  test('"bench, record leg two width three and five sixteenths" is written down, read back, and what moved is told', async () => {
    await saidInTheShop('bench, record leg two width three and five sixteenths');
    expect(await untilSaid(kiosk.page, /noted/)).toMatch(/^Leg two, width, three, and five sixteenths inches, noted\. One sixteenth of an inch over the plan\./);
    const measured = (await benchNow(kiosk.page)).entries.filter((entry) => entry.kind === 'measured');
    // 3 5/16 in = 53 x 1.5875 mm
    expect(measured[0]).toEqual({ kind: 'measured', measurement: { size: 'leg.width', copy: 2, length: 84_137_500 } });
  });

  test('"bench, start a twenty second timer" starts a clock that calls out when it is due', async () => {
    await saidInTheShop('bench, start a twenty second timer');
    await untilSaid(kiosk.page, /^Timer, twenty seconds, running/);
    await forgetSound(kiosk.page);
    await untilSaid(kiosk.page, /time is up/);
    await kiosk.page.waitForTimeout(4_000);
    expect(await secondsSounded()).toBeGreaterThan(1);
  });
});
