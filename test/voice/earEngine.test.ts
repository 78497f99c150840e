import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openEar } from './earBench.ts';
import type { EarBench } from './earBench.ts';
import { blows, planing } from './shopNoise.ts';
import { recording, writeWav } from './sound.ts';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Sound given as fast as the engine takes it, so that minutes of a shop are heard in seconds. */
let folder: string;
let bench: EarBench;
const PHRASES = ['next step', 'say again', 'how long is the long rail', 'what is left', 'undo', 'yes', 'no', 'done', 'leg two', 'three and seven sixteenths'];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'noise-'));
  const files: Record<string, string> = {};
  for (const [name, sound] of Object.entries({ planing: planing(60, 0.25), blows: blows(60, 0.5), speech: recording('bench-next-step') })) {
    files[`/${name}.wav`] = join(folder, `${name}.wav`);
    writeFileSync(join(folder, `${name}.wav`), writeWav(sound));
  }
  bench = await openEar({ files });
  await bench.page.evaluate(async (phrases) => {
    window.page.make({ pushed: true });
    await window.page.ear.start();
    await window.page.ear.setGrammar(phrases, 'bench');
  }, PHRASES);
});
afterAll(async () => {
  await bench.close();
  rmSync(folder, { recursive: true });
});

/** Lets the ear hear a file and waits until all of it is worked through. */
async function hear(url: string): Promise<{ event: string; detail: unknown }[]> {
  return bench.page.evaluate(async (address) => {
    const before = window.page.log.length;
    await window.page.push(await window.page.wav(address));
    await window.page.push(new Float32Array(3 * 16_000));
    return window.page.log.slice(before).filter(({ event }) => event === 'heard' || event === 'address');
  }, url);
}

describe('the shop', () => {
  test.each(['planing', 'blows'])('a minute of %s cause no act', async (noise) => {
    expect(await hear(`/${noise}.wav`)).toEqual([]);
  });

  test('and after that it still hears', async () => {
    expect(await hear('/speech.wav')).toContainEqual(expect.objectContaining({ event: 'heard', detail: 'next step' }));
  });
});

describe('the grammar', () => {
  test('is swapped as often as questions change, and the old recogniser is freed each time', async () => {
    const health = () => bench.page.evaluate(async () => (await window.page.ear.diagnosis()).engine);
    await bench.page.evaluate(async (phrases) => { for (let swap = 0; swap < 20; swap += 1) await window.page.ear.setGrammar(phrases.slice(swap % 3), 'bench'); }, PHRASES);
    const before = await health();
    await bench.page.evaluate(async (phrases) => { for (let swap = 0; swap < 300; swap += 1) await window.page.ear.setGrammar(phrases.slice(swap % 3), 'bench'); }, PHRASES);
    const after = await health();
    expect(after?.recognisers).toBe(1);
    expect((after?.heapBytes ?? 0) - (before?.heapBytes ?? 0)).toBeLessThan(2 * 1024 * 1024);
  });

  test('follows the address word', async () => {
    await bench.page.evaluate((phrases) => window.page.ear.setGrammar(phrases, 'partner'), PHRASES);
    expect(await hear('/speech.wav')).toEqual([]);
  });

  test('that is asked for before there is an engine is used as soon as there is one', async () => {
    const told = await bench.page.evaluate(async (phrases) => {
      window.page.ear.stop();
      window.page.make({ pushed: true });
      const early = await window.page.ear.setGrammar(phrases, 'bench');
      await window.page.ear.start();
      return early;
    }, PHRASES);
    expect(told).toEqual({ applied: false, unknownWords: [] });
    expect(await hear('/speech.wav')).toContainEqual(expect.objectContaining({ event: 'heard', detail: 'next step' }));
  });
});

describe('memory', () => {
  test('that grew too large is given back by a fresh engine, when nobody is speaking', async () => {
    const restarts = await bench.page.evaluate(async (phrases) => {
      window.page.ear.stop();
      window.page.make({ pushed: true, heapGrowthBytes: 0, times: { checkEveryMs: 50 } });
      await window.page.ear.start();
      await window.page.ear.setGrammar(phrases, 'bench');
      await new Promise((done) => setTimeout(done, 500));
      return (await window.page.ear.diagnosis()).restarts;
    }, PHRASES);
    expect(restarts).toBe(0);
    const heard = () => bench.page.evaluate(() => window.page.log.filter(({ event, detail }) => event === 'heard' && detail === 'next step').length);
    const before = await heard();
    // With no growth allowed, a fresh engine comes after each sentence, while the silence after it is still being given.
    await hear('/speech.wav').catch(() => undefined);
    await expect.poll(() => bench.page.evaluate(async () => [(await window.page.ear.diagnosis()).restarts, window.page.ear.state.name]), { timeout: 15_000 }).toEqual([1, 'asleep']);
    await hear('/speech.wav').catch(() => undefined);
    expect(await heard()).toBe(before + 2);
  });
});
