import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { openEar } from './earBench.ts';
import type { EarBench } from './earBench.ts';
import { joined, quiet, recording } from './sound.ts';

const PHRASES = ['next step', 'say again', 'how long is the long rail', 'how wide is the short rail', 'what is left', 'undo', 'yes', 'no',
  'record leg two width', 'width three', 'three and seven sixteenths', 'three', 'seven sixteenths', 'four', 'leg one', 'leg two'];

let bench: EarBench;

/** Opens the ear and lets it listen to sound that comes again and again. */
async function listenTo(microphone: Float32Array): Promise<void> {
  bench = await openEar({ microphone });
  await bench.page.evaluate(async (phrases) => {
    window.page.make({});
    await window.page.ear.start();
    await window.page.ear.setGrammar(phrases, 'bench');
  }, PHRASES);
}

function logged(event: string): Promise<unknown[]> {
  return bench.page.evaluate((wanted) => window.page.log.filter((line) => line.event === wanted).map((line) => line.detail), event);
}

async function stateNames(): Promise<string[]> {
  return (await logged('state')).map((state) => (state as { name: string }).name);
}

async function waitFor(event: string, detail: unknown): Promise<void> {
  await bench.page.waitForFunction(([wanted, what]) => window.page.log.some((line) => line.event === wanted && line.detail === what), [event, detail] as const, { timeout: 40_000 });
}

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

describe('through the microphone, what is said to the bench', () => {
  const RECORDED = 'record leg two width three and seven sixteenths';
  beforeAll(() => listenTo(joined(quiet(1.5), recording('bench-next-step'), quiet(2.5), recording('bench-record-leg-two'), quiet(2.5))));
  afterAll(() => bench.close());

  test('comes out as "next step", and a fraction of a recorded size word for word', async () => {
    await waitFor('heard', 'next step');
    await waitFor('heard', RECORDED);
    expect(new Set(await logged('heard'))).toEqual(new Set(['next step', RECORDED]));
    expect(await logged('address')).toContain(false);
    expect(await stateNames()).toEqual(expect.arrayContaining(['starting', 'asleep', 'attending']));
  });

  test('is not heard while the mouth speaks, and is after', async () => {
    await bench.page.evaluate(() => { Object.assign(window, { release: window.page.ear.deafen() }); });
    const before = (await logged('heard')).length;
    await pause(12_000);
    expect((await logged('heard')).length).toBe(before);
    expect((await stateNames()).at(-1)).toBe('deaf');
    await bench.page.evaluate(() => { (window as unknown as { release: () => void }).release(); });
    await bench.page.waitForFunction((count) => window.page.log.filter((line) => line.event === 'heard').length > count, before, { timeout: 40_000 });
  });

  test('is left as it is by the browser, which was asked to', async () => {
    const { processing } = await bench.page.evaluate(() => window.page.ear.diagnosis());
    expect(processing).toMatchObject({ echoCancellation: false, noiseSuppression: false, autoGainControl: false });
  });

  test('leads to no breach of the page\'s policy, and the model is not put among the maker\'s work', async () => {
    expect(bench.console.filter((line) => /violates|Content Security Policy/.test(line))).toEqual([]);
    expect(await bench.page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name))).toEqual([]);
  });
});

describe('through the microphone', () => {
  afterEach(() => bench.close());

  test('the word, a pause, and then the command', async () => {
    await listenTo(joined(quiet(1), recording('bench'), quiet(2.5), recording('next-step'), quiet(9)));
    await waitFor('address', true);
    await waitFor('heard', 'next step');
  });

  test('a command without the word, and a remark, are nobody\'s business', async () => {
    await listenTo(joined(quiet(1), recording('next-step'), quiet(2), recording('remark'), quiet(2), recording('how-long-is-the-long-rail'), quiet(1.5)));
    await pause(16_000);
    expect(await logged('heard')).toEqual([]);
    expect(await logged('address')).toEqual([]);
    expect(Math.max(...(await logged('level')).map(Number)), 'it did hear them').toBeGreaterThan(-30);
  });

  test('the listen key, and an answer that was asked for, need no word', async () => {
    await listenTo(joined(quiet(1), recording('next-step'), quiet(3)));
    await bench.page.evaluate(() => window.page.ear.listenNow());
    await waitFor('heard', 'next step');
    const before = (await logged('heard')).length;
    await pause(6_000);
    expect((await logged('heard')).length, 'one press, one command').toBe(before);
    await bench.page.evaluate(() => window.page.ear.openAnswerWindow(8_000));
    await bench.page.waitForFunction((count) => window.page.log.filter((line) => line.event === 'heard').length > count, before, { timeout: 40_000 });
  });
});
