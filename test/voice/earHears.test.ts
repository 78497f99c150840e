import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openShop } from './earBench.ts';
import type { EarBench, EarShop } from './earBench.ts';
import { joined, quiet, recording } from './sound.ts';

const PHRASES = ['next step', 'say again', 'how long is the long rail', 'how wide is the short rail', 'what is left', 'undo', 'yes', 'no',
  'record leg two width', 'width three', 'three and seven sixteenths', 'three', 'seven sixteenths', 'four', 'leg one', 'leg two'];

/** What the microphone hears, over and over; between two sentences, what the ear needs to know that one is over. */
const HEARD = joined(quiet(1), recording('bench-next-step'), quiet(1.5), recording('bench-record-leg-two'), quiet(1.5));
const LOOP_MS = HEARD.length / 16;

let shop: EarShop;
let bench: EarBench;
beforeAll(async () => { shop = await openShop({ microphone: HEARD }); });
afterAll(() => shop.close());

/** Opens the ear and lets it listen to the microphone, or to what it is given. */
async function listen({ pushed }: { readonly pushed: boolean }): Promise<void> {
  bench = await shop.open();
  await bench.page.evaluate(async ([phrases, given]) => {
    window.page.make({ pushed: given });
    await window.page.ear.start();
    await window.page.ear.setGrammar(phrases, 'bench');
  }, [PHRASES, pushed] as const);
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
  beforeAll(() => listen({ pushed: false }));
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
    await pause(LOOP_MS + 500);
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

describe('in the time of the sound', () => {
  beforeAll(() => listen({ pushed: true }));
  afterAll(() => bench.close());

  /** What came of the sound, in order. */
  async function hear(...parts: readonly Float32Array[]): Promise<{ event: string; detail: unknown }[]> {
    return bench.page.evaluate(async (samples) => {
      const before = window.page.log.length;
      await window.page.hear(Float32Array.from(samples));
      return window.page.log.slice(before).map(({ event, detail }) => ({ event, detail }));
    }, [...joined(...parts)]);
  }
  const told = (all: readonly { event: string; detail: unknown }[]) => all.filter(({ event }) => event === 'heard' || event === 'address');

  test('the word, a pause, and then the command', async () => {
    const all = told(await hear(quiet(1), recording('bench'), quiet(2.5), recording('next-step'), quiet(1.5)));
    expect(all).toContainEqual({ event: 'address', detail: true });
    expect(all.at(-1)).toEqual({ event: 'heard', detail: 'next step' });
  });

  test('the word, and a command that comes too late, are nobody\'s business', async () => {
    expect(told(await hear(quiet(1), recording('bench'), quiet(9), recording('next-step'), quiet(1.5)))).not.toContainEqual(expect.objectContaining({ event: 'heard' }));
  });

  test('a command without the word, and a remark, are nobody\'s business', async () => {
    const all = await hear(quiet(1), recording('next-step'), quiet(2), recording('remark'), quiet(2), recording('how-long-is-the-long-rail'), quiet(1.5));
    expect(told(all)).toEqual([]);
    expect(Math.max(...all.filter(({ event }) => event === 'level').map(({ detail }) => Number(detail))), 'it did hear them').toBeGreaterThan(-30);
  });

  test('the listen key, and an answer that was asked for, need no word', async () => {
    const NEXT_STEP = [quiet(1), recording('next-step'), quiet(3)];
    await bench.page.evaluate(() => window.page.ear.listenNow());
    expect(told(await hear(...NEXT_STEP))).toEqual([{ event: 'heard', detail: 'next step' }]);
    expect(told(await hear(...NEXT_STEP)), 'one press, one command').toEqual([]);
    await bench.page.evaluate(() => window.page.ear.openAnswerWindow(8_000));
    expect(told(await hear(...NEXT_STEP))).toEqual([{ event: 'heard', detail: 'next step' }]);
  });
});
