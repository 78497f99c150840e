import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openEar } from './earBench.ts';
import type { EarBench } from './earBench.ts';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { modelWithOwnWords } from './models.ts';
import { recording, writeWav } from './sound.ts';

/** Words given to the model on the device: the graph is built in the worker and loaded into the engine. */
const NAMES = ['bench-scratch-that', 'bench-slower', 'bench-how-deep-are-the-mortises', 'bench-stop-the-clock', 'bench-how-wide-is-the-kumiko', 'bench-next-step'];
const PHRASES = ['next step', 'say again', 'scratch that', 'slower', 'faster', 'louder', 'stop the clock', 'start the clock', 'how deep are the mortises',
  'how deep are the tenons', 'how wide is the kumiko', 'how wide is the apron', 'how long is the long rail', 'what is left', 'undo', 'yes', 'no', 'done'];
let folder: string;
let bench: EarBench;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'words-'));
  const files: Record<string, string> = {};
  for (const name of NAMES) {
    files[`/${name}.wav`] = join(folder, `${name}.wav`);
    writeFileSync(join(folder, `${name}.wav`), writeWav(recording(name)));
  }
  bench = await openEar({ files });
  await bench.page.evaluate(async () => {
    window.page.make({ pushed: true });
    await window.page.ear.start();
  });
});
afterAll(async () => {
  await bench.close();
  rmSync(folder, { recursive: true });
});

function setGrammar(phrases: readonly string[]): Promise<{ applied: boolean; unknownWords: readonly string[] }> {
  return bench.page.evaluate((list) => window.page.ear.setGrammar(list, 'bench'), phrases);
}

function guessedWords(): Promise<unknown> {
  return bench.page.evaluate(() => window.page.log.filter(({ event }) => event === 'guessed').at(-1)?.detail);
}

/** Lets the ear hear a recording and waits until all of it is worked through. */
async function heard(name: string): Promise<unknown[]> {
  return bench.page.evaluate(async (address) => {
    const before = window.page.log.length;
    await window.page.push(await window.page.wav(address));
    await window.page.push(new Float32Array(3 * 16_000));
    return window.page.log.slice(before).filter(({ event }) => event === 'heard').map(({ detail }) => detail);
  }, `/${name}.wav`);
}

describe('the words of a piece', () => {
  test('are all known: those of the dictionary, and by the rules a part that no dictionary has', async () => {
    expect(await setGrammar(PHRASES)).toEqual({ applied: true, unknownWords: [] });
    expect(await guessedWords()).toEqual(['kumiko']);
  });

  test.each([
    ['bench-scratch-that', 'scratch that'],
    ['bench-slower', 'slower'],
    ['bench-how-deep-are-the-mortises', 'how deep are the mortises'],
    ['bench-stop-the-clock', 'stop the clock'],
    ['bench-how-wide-is-the-kumiko', 'how wide is the kumiko'],
    ['bench-next-step', 'next step'],
  ])('in "%s" are heard', async (name, words) => {
    expect(await heard(name)).toEqual([words]);
  });

  test('may change with each piece; the engine keeps some megabytes for each change, which the ear gives back by a fresh engine in time', async () => {
    const health = () => bench.page.evaluate(async () => (await window.page.ear.diagnosis()).engine);
    const before = await health();
    for (const word of ['tambour', 'gunstock', 'pulpit', 'lectern']) await setGrammar(['next step', `the ${word}`]);
    const after = await health();
    expect(after?.recognisers).toBe(1);
    expect((after?.heapBytes ?? 0) - (before?.heapBytes ?? 0)).toBeLessThan(4 * 16 * 1024 * 1024);
    expect(await heard('bench-next-step')).toEqual(['next step']);
  });

  test('that are common at every bench cost nothing to change', async () => {
    const health = () => bench.page.evaluate(async () => (await window.page.ear.diagnosis()).engine);
    const before = await health();
    for (const word of ['apron', 'tenon', 'dovetails', 'shoulders', 'chisel', 'walnut']) await setGrammar(['next step', `the ${word}`]);
    expect((await health())?.heapBytes).toBe(before?.heapBytes);
  });

  test('that nothing of can be said are told', async () => {
    expect(await setGrammar(['next step', 'the стол'])).toEqual({ applied: true, unknownWords: ['стол'] });
  });
});

describe('a model that brings its own words', () => {
  let other: EarBench;
  beforeAll(async () => {
    const model = join(folder, 'own.tar.gz');
    writeFileSync(model, modelWithOwnWords(['bench', 'next', 'step', 'say', 'again', 'how', 'long', 'is', 'the', 'rail', 'many']));
    other = await openEar({ model, files: { '/ear/dictionary.txt.gz': '/nowhere', '/next.wav': join(folder, 'bench-next-step.wav') } });
    await other.page.evaluate(async () => {
      window.page.make({ pushed: true });
      await window.page.ear.start();
    });
  });
  afterAll(() => other.close());

  const unknownAmong = (phrases: readonly string[]) => other.page.evaluate(async (list) => (await window.page.ear.setGrammar(list, 'bench')).unknownWords, phrases);

  test('tells which words it cannot hear', async () => {
    expect(await unknownAmong(['how long is the gunstock rail', 'next step'])).toEqual(['gunstock']);
  });

  test('listens for a plural that it does not know as its singular', async () => {
    expect(await unknownAmong(['next steps', 'next steppings', 'say again'])).toEqual(['steppings']);
    expect(await unknownAmong(['how many rails', 'next step'])).toEqual([]);
  });

  test('hears the words that it has', async () => {
    const words = await other.page.evaluate(async () => {
      await window.page.push(await window.page.wav('/next.wav'));
      await window.page.push(new Float32Array(3 * 16_000));
      return window.page.log.filter(({ event }) => event === 'heard').map(({ detail }) => detail);
    });
    expect(words).toEqual(['next step']);
  });
});
