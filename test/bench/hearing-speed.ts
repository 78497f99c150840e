/**
 * How fast and how large the ear is: load, grammar swap, share of real time, end of speech to words, memory.
 * Figures are of the machine it runs on; 'slowed' stops and continues the browser's process, for the browser's own slowing does not reach workers.
 */
import { join } from 'node:path';
import { SPARING } from '../../deploy/chromium.mjs';
import { phrasesFor } from '../../core/talk/grammar.ts';
import { sentencesFor } from '../../core/talk/strict/sentences.ts';
import { openEar } from '../voice/earBench.ts';
import type { EarBench } from '../voice/earBench.ts';
import { pageBytes, slowDown } from './pageProcess.ts';
import { bench as asking, TALKATIVE } from '../core/talk/benches.ts';

const RECORDINGS = ['bench-next-step', 'how-long-is-the-long-rail', 'bench-record-leg-two', 'remark'];
const ROUNDS = 4;

const files = Object.fromEntries(RECORDINGS.map((name) => [`/${name}.wav`, join(import.meta.dirname, '..', 'voice', 'recordings', `${name}.wav`)]));
const phrases = phrasesFor(TALKATIVE);
/** In turn, as at the bench: with nothing asked, and with a question for a size. */
const LISTENED_FOR = [TALKATIVE, asking({ question: { kind: 'length', size: 'leg.width' } })].map((each) => [phrasesFor(each), sentencesFor(each)] as const);
// As the kiosk is started.
const bench = await openEar({ files, flags: [SPARING] });
try {
  print('memory of the page before', megabytes(pageBytes()));
  const times: number[] = [];
  for (let round = 0; round < 3; round += 1) times.push(await load(bench));
  print('load, engine and model', ...times.map(milliseconds));
  print('grammar of', `${phrases.length} phrases`);
  print('grammar swap, strict sentences', ...(await swaps(bench)).map(milliseconds));
  print('memory of the page with the model', megabytes(pageBytes()), 'of which the engine', megabytes(await heap(bench)));
  print('share of real time', await share(bench));
  for (const slowdown of [4, 6]) {
    const release = slowDown(slowdown);
    print(`load, slowed ${slowdown} times`, milliseconds(await load(bench)));
    print(`grammar swap, slowed ${slowdown} times`, ...(await swaps(bench)).slice(0, 2).map(milliseconds));
    print(`share of real time, slowed ${slowdown} times`, await share(bench));
    release();
  }
  print('end of speech to words', ...(await endToWords(bench)).map(milliseconds), '(the engine waits 500 ms for more)');
  const before = await heap(bench);
  await noise(bench, 300);
  print('engine after five minutes of noise', megabytes(await heap(bench)), `(${megabytes(before)} before)`, 'page', megabytes(pageBytes()));
} finally {
  await bench.close();
}

function print(what: string, ...figures: string[]): void {
  console.log(`${what}: ${figures.join('  ')}`);
}

function load({ page }: EarBench): Promise<number> {
  return page.evaluate(async () => {
    window.page.ear.stop();
    window.page.make({ pushed: true });
    const began = performance.now();
    await window.page.ear.start();
    return performance.now() - began;
  });
}

function swaps({ page }: EarBench): Promise<number[]> {
  // An argument keeps what is shared in it shared, so the sentences arrive as small as they are.
  return page.evaluate(async (listenedFor) => {
    const took: number[] = [];
    for (let swap = 0; swap < 3; swap += 1) {
      for (const [list, strict] of listenedFor) {
        const began = performance.now();
        await window.page.ear.setGrammar(list, 'bench', strict);
        took.push(performance.now() - began);
      }
    }
    return took;
  }, LISTENED_FOR);
}

async function share({ page }: EarBench): Promise<string> {
  const { tookMs, soundMs } = await page.evaluate(async ([names, rounds]) => {
    const sounds = await Promise.all(names.map((name) => window.page.wav(`/${name}.wav`)));
    let soundMs = 0;
    const began = performance.now();
    for (let round = 0; round < rounds; round += 1) {
      for (const sound of sounds) {
        await window.page.push(sound);
        await window.page.push(new Float32Array(16_000));
        soundMs += sound.length / 16 + 1_000;
      }
    }
    return { tookMs: performance.now() - began, soundMs };
  }, [RECORDINGS, ROUNDS] as const);
  return (tookMs / soundMs).toFixed(3);
}

/** Gives a command in real time and measures from its last block until its words come. */
function endToWords({ page }: EarBench): Promise<number[]> {
  return page.evaluate(async () => {
    const sound = await window.page.wav('/bench-next-step.wav');
    const took: number[] = [];
    for (let round = 0; round < 5; round += 1) {
      await window.page.pushInTime(sound);
      const ended = performance.now();
      await window.page.pushInTime(new Float32Array(48_000));
      const heard = window.page.log.findLast(({ event, at }) => event === 'heard' && at > ended - 500);
      if (heard !== undefined) took.push(heard.at - ended);
    }
    return took;
  });
}

async function heap({ page }: EarBench): Promise<number> {
  return (await page.evaluate(() => window.page.ear.diagnosis())).engine?.heapBytes ?? 0;
}

function noise({ page }: EarBench, seconds: number): Promise<void> {
  return page.evaluate(async (count) => {
    for (let second = 0; second < count; second += 1) {
      // Swelling, so that the gate keeps opening.
      await window.page.push(Float32Array.from({ length: 16_000 }, (_, at) => (Math.random() - 0.5) * 0.5 * Math.max(0, Math.sin((Math.PI * at) / 8_000))));
    }
  }, seconds);
}

function milliseconds(ms: number): string {
  return `${Math.round(ms)} ms`;
}

function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1024 / 1024)} MB`;
}
