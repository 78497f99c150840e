import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { openEar, openShop } from './earBench.ts';
import type { EarBench, EarShop, ServedOptions } from './earBench.ts';
import { changedModel, SHIPPED_MODEL } from './models.ts';
import { joined, quiet, recording } from './sound.ts';

/** Short pauses, so that giving up takes seconds; what is done in them is the same. */
const TIMES = { retryAfterMs: [50, 100], checkEveryMs: 500, lookForModelMs: 300 };
const GRAMMAR = ['next step', 'say again', 'how long is the long rail'];

let folder: string;
let quietShop: EarShop;
let bench: EarBench | undefined;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'models-'));
  quietShop = await openShop({ microphone: quiet(2) });
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await quietShop.close();
});
afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function started(served: ServedOptions, times: object = TIMES): Promise<EarBench> {
  bench = await quietShop.open(served);
  return begun(bench, times);
}

async function begun(open: EarBench, times: object = TIMES): Promise<EarBench> {
  await open.page.evaluate(async ([care, phrases]) => {
    window.page.make({ times: care });
    void window.page.ear.setGrammar(phrases, 'bench');
    await window.page.ear.start();
  }, [times, GRAMMAR] as const);
  return open;
}

const stateOf = ({ page }: EarBench) => page.evaluate(() => window.page.ear.state);
const diagnosis = ({ page }: EarBench) => page.evaluate(() => window.page.ear.diagnosis());
const becomes = ({ page }: EarBench, name: string) => page.waitForFunction((wanted) => window.page.ear.state.name === wanted, name, { timeout: 20_000 });

describe('the speech model', () => {
  test('that is not there is told, and is heard with as soon as it comes', async () => {
    const late = join(folder, 'late.tar.gz');
    const open = await started({ model: late });
    expect((await stateOf(open)).name).toBe('no model');
    expect((await stateOf(open)).sentence).toMatch(/not there.*Install it.*keys/);
    writeFileSync(late, readFileSync(SHIPPED_MODEL));
    await becomes(open, 'asleep');
  });

  const whole = () => readFileSync(SHIPPED_MODEL);
  /** With a graph of its own, which it must use where there is no dictionary. */
  const OWN_WORDS = ['bench', 'next', 'step', 'yes', 'no', 'rail', 'three', 'sixteenths'];
  const graphless = { '/ear/dictionary.txt.gz': '/nowhere' };
  const DAMAGED: readonly [string, () => Buffer, RegExp, Record<string, string>?][] = [
    ['is cut short', () => whole().subarray(0, 3_000_000), /cut short|unpacked/],
    ['is a web page', () => Buffer.from('<!doctype html><p>Not found</p>'), /unpacked as gzip/],
    ['is empty', () => Buffer.alloc(0), /cut short|unpacked/],
    ['lacks its graph', () => changedModel('rm graph/HCLr.fst', OWN_WORDS), /lacks graph\/HCLr\.fst/, graphless],
    ['has a network of zeros', () => changedModel('dd if=/dev/zero of=am/final.mdl bs=1000 count=500 2>/dev/null', OWN_WORDS), /damaged/],
    ['has a network that ends too soon', () => changedModel('truncate -s 1000000 am/final.mdl'), /damaged/],
    ['has a graph of rubbish', () => changedModel('head -c 400000 am/final.mdl > graph/HCLr.fst', OWN_WORDS), /damaged/, graphless],
    ['has a graph that ends too soon', () => changedModel('truncate -s 3000 graph/HCLr.fst', OWN_WORDS), /damaged/, graphless],
    ['has no words for its grammar', () => changedModel('truncate -s 100 graph/Gr.fst', OWN_WORDS), /damaged/, graphless],
    ['has options that nobody knows', () => changedModel('echo "--no-such-option=1" >> conf/model.conf'), /damaged/],
  ];
  test.each(DAMAGED)('that %s is told', async (name, make, sentence, files = {}) => {
    const file = join(folder, `${name.replaceAll(' ', '-')}.tar.gz`);
    writeFileSync(file, make());
    const open = await started({ model: file, files });
    const state = await stateOf(open);
    expect(state.name).toBe('broken model');
    expect(state.sentence).toMatch(sentence);
  });

  test('of the maker\'s choice that is damaged gives way to the one that ships, and is told', async () => {
    const file = join(folder, 'own.tar.gz');
    writeFileSync(file, 'nonsense');
    bench = await quietShop.open({ files: { '/own.tar.gz': file } });
    const log = await bench.page.evaluate(async (phrases) => {
      window.page.make({ chosen: '/own.tar.gz' });
      void window.page.ear.setGrammar(phrases, 'bench');
      await window.page.ear.start();
      await new Promise<void>((loaded) => {
        const look = setInterval(() => { if (window.page.log.some(({ event }) => event === 'model')) { clearInterval(look); loaded(); } }, 100);
      });
      return window.page.log.filter(({ event }) => event === 'refused' || event === 'model');
    }, GRAMMAR);
    expect(log).toMatchObject([{ event: 'refused', detail: '/own.tar.gz' }, { event: 'model', detail: { url: '/models/model.tar.gz' } }]);
    await becomes(bench, 'asleep');
  });

  test('that was mended is taken up when the maker presses the listen key', async () => {
    const file = join(folder, 'mended.tar.gz');
    writeFileSync(file, 'nonsense');
    const open = await started({ model: file });
    expect((await stateOf(open)).name).toBe('broken model');
    writeFileSync(file, whole());
    await open.page.evaluate(() => window.page.ear.listenNow());
    await open.page.waitForFunction(() => ['asleep', 'attending'].includes(window.page.ear.state.name), undefined, { timeout: 20_000 });
  });
});

describe('the engine', () => {
  test('that never answers is given up politely, after some tries, and tried again when asked', async () => {
    const stuck = join(folder, 'stuck.js');
    writeFileSync(stuck, 'for (;;);');
    const open = await started({ files: { '/ear/recogniser-worker.js': stuck } }, { ...TIMES, loadWithinMs: 400 });
    await becomes(open, 'engine failed');
    expect((await diagnosis(open)).restarts).toBe(TIMES.retryAfterMs.length);
    expect((await stateOf(open)).sentence).toMatch(/did not answer.*Press Listen/);
    await open.page.evaluate(() => window.page.ear.listenNow());
    await becomes(open, 'starting');
    await becomes(open, 'engine failed');
  });

  test.each([
    ['whose script is not there', { '/ear/recogniser-worker.js': '/nowhere' }],
    ['whose code is not there', { '/ear/vosk.wasm': '/nowhere' }],
  ])('%s is told', async (_name, files) => {
    const open = await started({ files });
    await becomes(open, 'engine failed');
  });

  test('that dies while it listens is started again, with its grammar', async () => {
    bench = await openEar({ microphone: joined(quiet(1), recording('bench-next-step'), quiet(2)) });
    const open = await begun(bench);
    await becomes(open, 'asleep');
    for (const worker of open.page.workers()) await worker.evaluate(() => { setTimeout(() => { throw new Error('struck by the test'); }); });
    await expect.poll(async () => (await diagnosis(open)).restarts, { timeout: 10_000 }).toBe(1);
    const struckAt = await open.page.evaluate(() => performance.now());
    await open.page.waitForFunction((then) => window.page.log.some((line) => line.event === 'heard' && line.detail === 'next step' && line.at > then), struckAt, { timeout: 30_000 });
  });

  test('that hangs while it listens is started again', async () => {
    const open = await started({});
    await becomes(open, 'asleep');
    for (const worker of open.page.workers()) void worker.evaluate(() => { setTimeout(() => { for (;;); }); });
    await expect.poll(async () => (await diagnosis(open)).restarts, { timeout: 30_000 }).toBe(1);
    await becomes(open, 'asleep');
  });
});

describe('the microphone', () => {
  test('that does not exist is told, and listening goes on when one is plugged in', async () => {
    const open = await started({});
    await becomes(open, 'asleep');
    // A plug cannot be pulled from here, so the browser's own calls are made to behave as if it were.
    await open.page.evaluate(() => {
      const { mediaDevices } = navigator;
      Object.assign(window, { realGet: mediaDevices.getUserMedia.bind(mediaDevices), tracks: [] });
      mediaDevices.getUserMedia = () => Promise.reject(new DOMException('none', 'NotFoundError'));
      window.page.ear.stop();
      void window.page.ear.start();
    });
    await becomes(open, 'no microphone');
    expect((await stateOf(open)).sentence).toMatch(/Plug it in/);
    await open.page.evaluate(() => {
      navigator.mediaDevices.getUserMedia = (window as unknown as { realGet: typeof navigator.mediaDevices.getUserMedia }).realGet;
      navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    });
    await becomes(open, 'asleep');
  });

  test('that is pulled out while it listens is told, the meter shows nothing, and it is taken up again', async () => {
    bench = await quietShop.open();
    await bench.page.evaluate(async () => {
      const { mediaDevices } = navigator;
      const real = mediaDevices.getUserMedia.bind(mediaDevices);
      mediaDevices.getUserMedia = async (wanted) => {
        const stream = await real(wanted);
        Object.assign(window, { track: stream.getAudioTracks()[0] });
        return stream;
      };
      window.page.make({});
      await window.page.ear.start();
    });
    await becomes(bench, 'asleep');
    await bench.page.evaluate(() => {
      const { mediaDevices } = navigator;
      const working = mediaDevices.getUserMedia.bind(mediaDevices);
      mediaDevices.getUserMedia = () => Promise.reject(new DOMException('none', 'NotFoundError'));
      Object.assign(window, { plugIn: () => { mediaDevices.getUserMedia = working; mediaDevices.dispatchEvent(new Event('devicechange')); } });
      (window as unknown as { track: MediaStreamTrack }).track.dispatchEvent(new Event('ended'));
    });
    await becomes(bench, 'no microphone');
    expect(await bench.page.evaluate(() => window.page.log.filter((line) => line.event === 'level').at(-1)?.detail)).toBeNull();
    await bench.page.evaluate(() => { (window as unknown as { plugIn: () => void }).plugIn(); });
    await becomes(bench, 'asleep');
  });

  test('that the browser refuses is told', async () => {
    bench = await openEar({ flags: ['--use-fake-device-for-media-stream', '--deny-permission-prompts'] });
    await bench.page.evaluate(async () => { window.page.make({}); await window.page.ear.start(); });
    expect((await stateOf(bench)).name).toBe('not allowed');
  });

  test('that the browser keeps silent until the page was touched is told, and heard after the touch', async () => {
    bench = await quietShop.open();
    await bench.page.evaluate(async () => {
      // Chromium lets a page that has the microphone work with sound at once; this one behaves like the browsers that do not.
      let touched = false;
      addEventListener('pointerdown', () => { touched = true; }, { capture: true });
      window.AudioContext = class extends AudioContext {
        override resume() { return touched ? super.resume() : this.suspend(); }
      };
      window.page.make({});
      await window.page.ear.start();
    });
    await becomes(bench, 'not allowed');
    expect((await stateOf(bench)).sentence).toMatch(/Touch the screen/);
    await bench.page.mouse.click(20, 20);
    await becomes(bench, 'asleep');
  });

  test('is let go of when listening is turned off', async () => {
    const open = await started({});
    await becomes(open, 'asleep');
    await open.page.evaluate(() => window.page.ear.stop());
    const state = await stateOf(open);
    expect(state.name).toBe('off');
    const count = await open.page.evaluate(() => window.page.log.filter((line) => line.event === 'level').length);
    await open.page.waitForTimeout(500);
    expect(await open.page.evaluate(() => window.page.log.filter((line) => line.event === 'level').length)).toBe(count);
    expect(open.page.workers()).toEqual([]);
  });
});
