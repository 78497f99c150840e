import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { activeLevel } from '../../kiosk/mouth/loudness.ts';
import { decibels, peakOf, silences } from '../core/mouth/voices.ts';
import { forgetSound, heardSound, type HeardSound } from './capturedSound.ts';
import { openMouth, type MouthBench, type MouthBenchOptions } from './mouthBench.ts';

const SIZE = 'Long rail, shoulder to shoulder, thirty-one, and five eighths inches.';

/** The part of what was heard from its first sound to its last. */
function sounding({ samples, rate }: HeardSound): { samples: Float32Array<ArrayBuffer>; rate: number } {
  const loud = (sample: number) => Math.abs(sample) > 0.002;
  return { samples: samples.slice(Math.max(0, samples.findIndex(loud)), samples.findLastIndex(loud) + 1), rate };
}

async function withMouth<Value>(options: MouthBenchOptions, use: (bench: MouthBench) => Promise<Value>): Promise<Value> {
  const bench = await openMouth(options);
  try {
    return await use(bench);
  } finally {
    await bench.close();
  }
}

const start = ({ page }: MouthBench) => page.evaluate(async () => {
  await window.mouthPage.mouth.start();
  return window.mouthPage.mouth.state;
});
/** Evaluates in the page without seeming to be a person who touches it. */
async function untouched({ page }: MouthBench, expression: string): Promise<unknown> {
  const session = await page.context().newCDPSession(page);
  const { result } = await session.send('Runtime.evaluate', { expression, awaitPromise: true, returnByValue: true, userGesture: false });
  await session.detach();
  return result.value;
}

const log = ({ page }: MouthBench) => page.evaluate(() => window.mouthPage.log.map(({ event, detail }) => detail === '' ? event : `${event}: ${detail}`));

describe('the mouth, heard', () => {
  let bench: MouthBench;
  beforeAll(async () => { bench = await openMouth(); });
  afterAll(async () => { await bench.close(); });

  const sayAt = async (volume: number, words = SIZE): Promise<HeardSound> => {
    await forgetSound(bench.page);
    await bench.page.evaluate(async ([text, level]) => {
      window.mouthPage.mouth.setVolume(level);
      await window.mouthPage.mouth.say(text, { priority: 'reply' });
    }, [words, volume] as const);
    return heardSound(bench.page);
  };

  test('gets ready by itself, under the kiosk\'s own policy, and says what was asked for before', async () => {
    const said = bench.page.evaluate(() => window.mouthPage.mouth.say('due', { priority: 'due' }));
    expect(await start(bench)).toEqual({ name: 'ready', sentence: '' });
    expect(await said).toBe('said');
    await bench.page.evaluate(() => { window.mouthPage.log.length = 0; });
  });

  test('says a size with a pause after each part of it, as long and as loud as it was made', async () => {
    const heard = sounding(await sayAt(10));
    const pauses = silences(heard, -45, 120);
    expect(pauses).toHaveLength(3);
    for (const { ms } of pauses) expect(ms).toBeGreaterThan(180);
    const seconds = heard.samples.length / heard.rate;
    expect(seconds).toBeGreaterThan(4);
    expect(seconds).toBeLessThan(7);
    expect(decibels(activeLevel(heard.samples, heard.rate))).toBeCloseTo(-18, 0);
    expect(peakOf(heard.samples)).toBeLessThan(0.9);
    expect(await log(bench)).toEqual(['deaf', `speaking: ${SIZE}`, 'hearing', 'silent']);
  });

  test('is softer by the decibels that the volume says', async () => {
    const levels: number[] = [];
    for (const volume of [10, 7, 4]) levels.push(activeLevel(sounding(await sayAt(volume, 'thirty-one')).samples, 16_000));
    expect(decibels((levels[1] ?? NaN) / (levels[0] ?? NaN))).toBeCloseTo(-9, 0);
    expect(decibels((levels[2] ?? NaN) / (levels[0] ?? NaN))).toBeCloseTo(-18, 0);
  });

  test('is mute at volume 0, and says so', async () => {
    await forgetSound(bench.page);
    const end = await bench.page.evaluate(async () => {
      window.mouthPage.mouth.setVolume(0);
      await window.mouthPage.mouth.signal('due');
      return window.mouthPage.mouth.say('thirty-one', { priority: 'due' });
    });
    expect(end).toBe('interrupted');
    expect(peakOf((await heardSound(bench.page)).samples)).toBe(0);
  });

  test('falls silent within 50 ms of the listen key, by the samples', async () => {
    await forgetSound(bench.page);
    const ends = await bench.page.evaluate(async (text) => {
      const { mouth } = window.mouthPage;
      mouth.setVolume(10);
      const said = mouth.say(text, { priority: 'reply' });
      const waiting = mouth.say('and another thing', { priority: 'reply' });
      await new Promise((resolve) => setTimeout(resolve, 1_500));
      window.markSound('hush');
      mouth.hush();
      const all = await Promise.all([said, waiting]);
      await new Promise((resolve) => setTimeout(resolve, 600));
      return all;
    }, SIZE);
    expect(ends).toEqual(['interrupted', 'interrupted']);
    const { samples, rate, marks } = await heardSound(bench.page);
    const hush = marks['hush'] ?? NaN;
    expect(samples.length).toBeGreaterThan(hush + rate / 2);
    expect(peakOf(samples.subarray(hush - rate, hush))).toBeGreaterThan(0.05);
    expect(peakOf(samples.subarray(hush + Math.round(0.05 * rate)))).toBe(0);
  });

  test('lets a due timer interrupt a size, sounds its signal first, and then says the size from its start', async () => {
    await bench.page.evaluate(() => { window.mouthPage.log.length = 0; });
    const ends = await bench.page.evaluate(async () => {
      const { mouth } = window.mouthPage;
      const size = mouth.say('Long rail, thirty-one inches', { priority: 'reply', key: 'reply' });
      await new Promise((resolve) => setTimeout(resolve, 700));
      void mouth.signal('due');
      const due = mouth.say('The glue is due', { priority: 'due', key: 'glue' });
      return Promise.all([size, due]);
    });
    expect(ends).toEqual(['said', 'said']);
    const told = (await log(bench)).filter((line) => line.startsWith('s'));
    expect(told).toEqual(['speaking: Long rail, thirty-one inches', 'silent', 'speaking: The glue is due', 'silent', 'speaking: Long rail, thirty-one inches', 'silent']);
  });

  test('says prepared phrases without asking the voice again', async () => {
    const turns = (text: string, prepare: boolean) => bench.page.evaluate(async ([words, first]) => {
      const { mouth, rendered } = window.mouthPage;
      if (first) {
        mouth.prepare([words]);
        await new Promise((resolve) => setTimeout(resolve, 1_500));
      }
      rendered.length = 0;
      const said = mouth.say(words, { priority: 'reply' });
      // A kept phrase is there before the browser turns to anything else; a phrase that is made comes as a message, so in a later turn.
      await new Promise((resolve) => queueMicrotask(() => queueMicrotask(() => queueMicrotask(() => queueMicrotask(() => resolve(undefined))))));
      const atOnce = rendered.length > 0;
      mouth.hush();
      await said;
      return atOnce;
    }, [text, prepare] as const);
    expect(await turns('Short rail number nine', true)).toBe(true);
    expect(await turns('Short rail number ten', false)).toBe(false);
  });

  test('slow speech is longer, with longer pauses', async () => {
    const lengthOf = async (slow: boolean) => {
      await forgetSound(bench.page);
      await bench.page.evaluate(([text, slowly]) => window.mouthPage.mouth.say(text, { priority: 'reply', slow: slowly }), ['thirty-one, and five', slow] as const);
      return sounding(await heardSound(bench.page));
    };
    const [normal, slow] = [await lengthOf(false), await lengthOf(true)];
    expect(slow.samples.length / normal.samples.length).toBeGreaterThan(1.25);
    expect(silences(slow, -45, 120)[0]?.ms).toBeGreaterThan(1.4 * (silences(normal, -45, 120)[0]?.ms ?? NaN));
  });

  test('sounds its signals, never clipped; only "heard" leaves the ear hearing', async () => {
    for (const name of ['heard', 'wrong', 'due'] as const) {
      await forgetSound(bench.page);
      await bench.page.evaluate(async (signal) => {
        window.mouthPage.log.length = 0;
        await window.mouthPage.mouth.signal(signal);
        await new Promise((resolve) => setTimeout(resolve, 100));
      }, name);
      const { samples, rate } = sounding(await heardSound(bench.page));
      expect(samples.length / rate, name).toBeGreaterThan(0.06);
      expect(peakOf(samples), name).toBeGreaterThan(0.1);
      expect(peakOf(samples), name).toBeLessThan(0.9);
      expect(await log(bench), name).toEqual(name === 'heard' ? [] : ['deaf', 'hearing']);
    }
  });
});

describe('what stands in the way is told, and the bench goes on', () => {
  test('a missing voice: signals still sound, the state says what to do, and words fail at once', async () => {
    await withMouth({ voice: null }, async (bench) => {
      const state = await start(bench);
      expect(state.name).toBe('no voice');
      expect(state.sentence).toMatch(/npm run build/);
      const end = await bench.page.evaluate(async () => {
        const { mouth } = window.mouthPage;
        const said = await mouth.say('thirty-one', { priority: 'due' });
        await mouth.signal('due');
        return said;
      });
      expect(end).toBe('failed');
      expect(peakOf((await heardSound(bench.page)).samples)).toBeGreaterThan(0.05);
    });
  });

  test('a damaged voice', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'damaged-voice-'));
    try {
      const voice = join(folder, 'flite.wasm');
      writeFileSync(voice, Buffer.from('\0asm and nothing that follows from it'));
      await withMouth({ voice }, async (bench) => { expect((await start(bench)).name).toBe('no voice'); });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('no loudspeaker', async () => {
    await withMouth({ loudspeaker: false }, async (bench) => {
      expect((await start(bench)).name).toBe('no loudspeaker');
      expect(await bench.page.evaluate(() => window.mouthPage.mouth.say('thirty-one', { priority: 'reply' }))).toBe('failed');
    });
  });

  test('a browser that wants a key first: the first key opens the mouth', async () => {
    await withMouth({ mayAlwaysSound: false }, async (bench) => {
      await expect.poll(() => untouched(bench, 'window.mouthPage?.mouth.state.sentence')).toMatch(/Press any key/);
      expect(await untouched(bench, 'window.mouthPage.mouth.state.name')).toBe('waiting for a key');
      expect(await untouched(bench, "window.mouthPage.mouth.say('thirty-one', { priority: 'reply' })")).toBe('failed');
      await bench.page.keyboard.press('5');
      await bench.page.waitForFunction(() => window.mouthPage.mouth.state.name === 'ready');
      expect(await bench.page.evaluate(() => window.mouthPage.mouth.say('thirty-one', { priority: 'reply' }))).toBe('said');
    });
  });
});
