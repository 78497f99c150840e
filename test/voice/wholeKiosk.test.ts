import { afterEach, describe, expect, test } from 'vitest';
import { forgetSound, heardSound } from './capturedSound.ts';
import { joined, quiet } from './sound.ts';
import { benchNow, inTheShop, loadDemo, openWholeKiosk, plugInMicrophone, untilSaid, withoutMicrophone, type WholeKiosk } from './wholeKiosk.ts';

/** Long enough to hear a sentence a dozen times, on a machine that has other things to do and loses some of the sound. */
const PATIENCE_MS = 240_000;

let kiosk: WholeKiosk;
afterEach(() => kiosk.close());

/** The demo piece is on the bench, and someone says this over and over, with so many seconds for the answer. */
async function someoneSays(words: string, { after }: { readonly after: number }): Promise<void> {
  kiosk = await openWholeKiosk(joined(quiet(1), inTheShop(words, { before: 2, after })), { prepare: withoutMicrophone });
  await loadDemo(kiosk.page);
  await forgetSound(kiosk.page);
  await plugInMicrophone(kiosk.page);
}

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
    await someoneSays('bench, how long is the long rail', { after: 9 });
    expect(await untilSaid(kiosk.page, /^Long rail/, PATIENCE_MS)).toBe('Long rail, length, end to end, forty-nine, and a half inches.');
    await speaksFor(2);
  });

  test('"bench, start a ten second timer" starts a clock that calls out when it is due', async () => {
    await someoneSays('bench, start a ten second timer', { after: 20 });
    await untilSaid(kiosk.page, /^Timer, ten seconds, running/, PATIENCE_MS);
    await forgetSound(kiosk.page);
    await untilSaid(kiosk.page, /time is up/);
    await speaksFor(1);
  });

  test('"bench, next step" goes on to the next step and says it aloud', async () => {
    await someoneSays('bench, next step', { after: 11 });
    await untilSaid(kiosk.page, /Reference edge, leg layers/, PATIENCE_MS);
    expect((await benchNow(kiosk.page)).entries.some((entry) => entry.kind === 'went to step')).toBe(true);
    // The sentence has a dozen words: at 150 words a minute that is several seconds of speech.
    await speaksFor(2);
  });

  test('"bench, record leg two width three and five sixteenths" is written down, read back, and what moved is told', async () => {
    await someoneSays('bench, record leg two width three and five sixteenths', { after: 20 });
    expect(await untilSaid(kiosk.page, /noted/, PATIENCE_MS)).toMatch(/^Leg two, width, three, and five sixteenths inches, noted\. One sixteenth of an inch over the plan\./);
    const measured = (await benchNow(kiosk.page)).entries.filter((entry) => entry.kind === 'measured');
    // 3 5/16 in = 53 x 1.5875 mm
    expect(measured[0]).toEqual({ kind: 'measured', measurement: { size: 'leg.width', copy: 2, length: 84_137_500 } });
  });
});
