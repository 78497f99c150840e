import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { openEar, openShop } from './earBench.ts';
import type { EarBench, EarShop } from './earBench.ts';
import type { MakeOptions } from './earPage.ts';
import { changedModel, SHIPPED_MODEL } from './models.ts';
import { quiet, recording } from './sound.ts';

/** Short pauses, so that giving up takes seconds; what is done in them is the same. */
const TIMES = { retryAfterMs: [50, 100], checkEveryMs: 500, lookForModelMs: 300 };
const GRAMMAR = ['next step', 'say again', 'how long is the long rail'];

let folder: string;
let shop: EarShop;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'models-'));
  shop = await openShop({ microphone: quiet(2) });
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await shop.close();
});

/** A new ear in that page, in the place of the one before. */
async function begun(open: EarBench, options: MakeOptions = {}): Promise<EarBench> {
  await open.page.evaluate(async ([made, phrases]) => {
    window.page.ear.stop();
    window.page.log.length = 0;
    window.page.make(made);
    void window.page.ear.setGrammar(phrases, 'bench');
    await window.page.ear.start();
  }, [{ times: TIMES, ...options }, GRAMMAR] as const);
  return open;
}

const stateOf = ({ page }: EarBench) => page.evaluate(() => window.page.ear.state);
const diagnosis = ({ page }: EarBench) => page.evaluate(() => window.page.ear.diagnosis());
const becomes = ({ page }: EarBench, name: string) => page.waitForFunction((wanted) => window.page.ear.state.name === wanted, name, { timeout: 40_000 });

describe('the speech model', () => {
  const whole = () => readFileSync(SHIPPED_MODEL);
  /** With a graph of its own, which it must use where there is no dictionary. */
  const OWN_WORDS = ['bench', 'next', 'step', 'yes', 'no', 'rail', 'three', 'sixteenths'];
  const graphless = { dictionary: '/nowhere' };
  const DAMAGED: readonly [string, () => Buffer, RegExp, MakeOptions?][] = [
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
  const model = (name: string) => `/models/${name.replaceAll(' ', '-')}.tar.gz`;
  const fileOf = (name: string) => join(folder, `${name.replaceAll(' ', '-')}.tar.gz`);

  let bench: EarBench;
  beforeAll(async () => {
    const names = [...DAMAGED.map(([name]) => name), 'comes late', 'is mended', 'is the maker\'s own'];
    bench = await shop.open({ files: Object.fromEntries(names.map((name) => [model(name), fileOf(name)])) });
  });
  afterAll(() => bench.close());

  test('that is not there is told, and is heard with as soon as it comes', async () => {
    await begun(bench, { model: model('comes late') });
    expect((await stateOf(bench)).name).toBe('no model');
    expect((await stateOf(bench)).sentence).toMatch(/not there.*Install it.*keys/);
    writeFileSync(fileOf('comes late'), whole());
    await becomes(bench, 'asleep');
  });

  test.each(DAMAGED)('that %s is told', async (name, make, sentence, options = {}) => {
    writeFileSync(fileOf(name), make());
    await begun(bench, { ...options, model: model(name) });
    const state = await stateOf(bench);
    expect(state.name).toBe('broken model');
    expect(state.sentence).toMatch(sentence);
  });

  test('of the maker\'s choice that is damaged gives way to the one that ships, and is told', async () => {
    const own = model('is the maker\'s own');
    writeFileSync(fileOf('is the maker\'s own'), 'nonsense');
    await begun(bench, { chosen: own });
    await becomes(bench, 'asleep');
    const log = await bench.page.evaluate(() => window.page.log.filter(({ event }) => event === 'refused' || event === 'model'));
    expect(log).toMatchObject([{ event: 'refused', detail: own }, { event: 'model', detail: { url: '/models/model.tar.gz' } }]);
  });

  test('that was mended is taken up when the maker presses the listen key', async () => {
    writeFileSync(fileOf('is mended'), 'nonsense');
    await begun(bench, { model: model('is mended') });
    expect((await stateOf(bench)).name).toBe('broken model');
    writeFileSync(fileOf('is mended'), whole());
    await bench.page.evaluate(() => window.page.ear.listenNow());
    await bench.page.waitForFunction(() => ['asleep', 'attending'].includes(window.page.ear.state.name), undefined, { timeout: 40_000 });
  });
});

describe('the engine', () => {
  let bench: EarBench | undefined;
  afterEach(async () => {
    await bench?.close();
    bench = undefined;
  });

  test('that never answers is given up politely, after some tries, and tried again when asked', async () => {
    const stuck = join(folder, 'stuck.js');
    writeFileSync(stuck, 'for (;;);');
    bench = await shop.open({ files: { '/ear/recogniser-worker.js': stuck } });
    await begun(bench, { times: { ...TIMES, loadWithinMs: 400 } });
    await becomes(bench, 'engine failed');
    expect((await diagnosis(bench)).restarts).toBe(TIMES.retryAfterMs.length);
    expect((await stateOf(bench)).sentence).toMatch(/did not answer.*Press Listen/);
    await bench.page.evaluate(() => window.page.ear.listenNow());
    await becomes(bench, 'starting');
    await becomes(bench, 'engine failed');
  });

  test.each([
    ['whose script is not there', { '/ear/recogniser-worker.js': '/nowhere' }],
    ['whose code is not there', { '/ear/vosk.wasm': '/nowhere' }],
  ])('%s is told', async (_name, files) => {
    bench = await begun(await shop.open({ files }));
    await becomes(bench, 'engine failed');
  });

  test('that dies or hangs while it listens is started again, with its grammar', async () => {
    // Long enough for a machine that is busy with other things, and shorter than the kiosk's own patience.
    bench = await begun(await shop.open(), { pushed: true, times: { ...TIMES, answerWithinMs: 3_000 } });
    const heard = () => bench?.page.evaluate(async (samples) => {
      const before = window.page.log.length;
      await window.page.hear(Float32Array.from(samples));
      return window.page.log.slice(before).flatMap(({ event, detail }) => event === 'heard' ? [detail] : []);
    }, [...quiet(1), ...recording('bench-next-step'), ...quiet(1.5)]);
    await becomes(bench, 'asleep');
    for (const worker of bench.page.workers()) await worker.evaluate(() => { setTimeout(() => { throw new Error('struck by the test'); }); });
    await expect.poll(async () => bench && (await diagnosis(bench)).restarts, { timeout: 20_000 }).toBe(1);
    await becomes(bench, 'asleep');
    expect(await heard()).toEqual(['next step']);
    for (const worker of bench.page.workers()) void worker.evaluate(() => { setTimeout(() => { for (;;); }); });
    await expect.poll(async () => bench && (await diagnosis(bench)).restarts, { timeout: 40_000 }).toBe(2);
    await becomes(bench, 'asleep');
    expect(await heard()).toEqual(['next step']);
  });
});

/** One after the other in one page. A plug cannot be pulled from here, so the browser's own calls are made to behave as if it were. */
describe('the microphone', () => {
  let bench: EarBench;
  beforeAll(async () => {
    bench = await shop.open();
    await bench.page.evaluate(() => {
      const { mediaDevices } = navigator;
      const real = mediaDevices.getUserMedia.bind(mediaDevices);
      const devices = { plugged: false, track: undefined as MediaStreamTrack | undefined, plugIn() { devices.plugged = true; mediaDevices.dispatchEvent(new Event('devicechange')); } };
      mediaDevices.getUserMedia = async (wanted) => {
        if (!devices.plugged) throw new DOMException('none', 'NotFoundError');
        const stream = await real(wanted);
        [devices.track] = stream.getAudioTracks();
        return stream;
      };
      Object.assign(window, { devices });
    });
  });
  afterAll(() => bench.close());

  const plugIn = () => bench.page.evaluate(() => { (window as unknown as { devices: { plugIn(): void } }).devices.plugIn(); });
  const levels = () => bench.page.evaluate(() => window.page.log.filter((line) => line.event === 'level').map(({ detail }) => detail));

  test('that does not exist is told, and listening goes on when one is plugged in', async () => {
    await begun(bench);
    await becomes(bench, 'no microphone');
    expect((await stateOf(bench)).sentence).toMatch(/Plug it in/);
    await plugIn();
    await becomes(bench, 'asleep');
  });

  test('that is pulled out while it listens is told, the meter shows nothing, and it is taken up again', async () => {
    await bench.page.evaluate(() => {
      const { devices } = window as unknown as { devices: { plugged: boolean; track: MediaStreamTrack } };
      devices.plugged = false;
      devices.track.dispatchEvent(new Event('ended'));
    });
    await becomes(bench, 'no microphone');
    expect((await levels()).at(-1)).toBeNull();
    await plugIn();
    await becomes(bench, 'asleep');
  });

  test('is let go of when listening is turned off', async () => {
    await bench.page.evaluate(() => window.page.ear.stop());
    expect((await stateOf(bench)).name).toBe('off');
    const { length } = await levels();
    await bench.page.waitForTimeout(500);
    expect(await levels()).toHaveLength(length);
    expect(bench.page.workers()).toEqual([]);
  });

  test('that the browser keeps silent until the page was touched is told, and heard after the touch', async () => {
    await bench.page.evaluate(() => {
      // Chromium lets a page that has the microphone work with sound at once; this one behaves like the browsers that do not.
      let touched = false;
      addEventListener('pointerdown', () => { touched = true; }, { capture: true });
      window.AudioContext = class extends AudioContext {
        override resume() { return touched ? super.resume() : this.suspend(); }
      };
    });
    await begun(bench);
    await becomes(bench, 'not allowed');
    expect((await stateOf(bench)).sentence).toMatch(/Touch the screen/);
    await bench.page.mouse.click(20, 20);
    await becomes(bench, 'asleep');
  });

  test('that the browser refuses is told', async () => {
    const refused = await openEar({ flags: ['--use-fake-device-for-media-stream', '--deny-permission-prompts'] });
    try {
      await begun(refused);
      expect((await stateOf(refused)).name).toBe('not allowed');
    } finally {
      await refused.close();
    }
  });
});
