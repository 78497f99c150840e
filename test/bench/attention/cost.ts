import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { phrasesFor } from '../../../core/talk/grammar.ts';
import { TALKATIVE } from '../../core/talk/benches.ts';
import { openEar } from '../../voice/earBench.ts';
import type { EarBench } from '../../voice/earBench.ts';
import { blows, planing } from '../../voice/shopNoise.ts';
import { joined, mixed, quiet, RATE_HZ, writeWav } from '../../voice/sound.ts';
import type { SoundFolder } from '../hearing/sounds.ts';
import { pageBytes, pageProcess } from '../pageProcess.ts';
import { RADIO_TALK } from './radioTalk.ts';
import { fan, scaled } from './sounds.ts';

/** Clock ticks a second on Linux, for every architecture that Node runs on (sysconf(_SC_CLK_TCK)). */
const TICKS_PER_SECOND = 100;
const SETTLE_MS = 20_000;
const WATCH_MS = 30_000;

/** The share of one core that the page's process takes, with all its workers, while the microphone hears only that. */
export async function cpuShare(): Promise<void> {
  const seconds = 20;
  const sounds: readonly (readonly [string, Float32Array])[] = [
    ['a quiet room', quiet(seconds)], ['a fan', scaled(fan(seconds), -40)], ['a loud fan', scaled(fan(seconds), -25)], ['planing, a stroke a second', mixed(planing(seconds, 0.25), quiet(seconds))],
  ];
  for (const [name, sound] of sounds) {
    const bench = await openEar({ microphone: sound });
    try {
      await bench.page.evaluate(async (phrases) => {
        window.page.make({});
        await window.page.ear.start();
        await window.page.ear.setGrammar(phrases, 'bench');
      }, phrasesFor(TALKATIVE));
      await bench.page.waitForTimeout(SETTLE_MS);
      const process = pageProcess();
      const before = cpuSeconds(process);
      const began = performance.now();
      await bench.page.waitForTimeout(WATCH_MS);
      const share = (cpuSeconds(process) - before) / ((performance.now() - began) / 1_000);
      console.log(`${name.padEnd(28)} ${(100 * share).toFixed(1)} % of one core`);
    } finally {
      await bench.close();
    }
  }
}

function cpuSeconds(process: number): number {
  const fields = readFileSync(`/proc/${process}/stat`, 'utf8').replace(/^.*\) /, '').split(' ');
  return (Number(fields[11]) + Number(fields[12])) / TICKS_PER_SECOND;
}

/**
 * Hours of a shop, given as fast as the ear works them through: in each, a fan all the while, five minutes of planing and of blows and a minute of talk that is not for the
 * bench. Memory after each hour.
 */
export async function memoryOfHours(folder: SoundFolder, hours: number): Promise<void> {
  const files = mkdtempSync(join(tmpdir(), 'hours-'));
  try {
    const work = { idle: scaled(fan(60), -40), planing: mixed(planing(150, 0.25), scaled(fan(150), -40)), blows: mixed(blows(150, 0.5), scaled(fan(150), -40)), talk: talk(folder) };
    for (const [name, sound] of Object.entries(work)) writeFileSync(join(files, `${name}.wav`), writeWav(sound));
    const bench = await openEar({ files: Object.fromEntries(Object.keys(work).map((name) => [`/${name}.wav`, join(files, `${name}.wav`)])) });
    try {
      await bench.page.evaluate(async (phrases) => {
        window.page.make({ pushed: true });
        await window.page.ear.start();
        await window.page.ear.setGrammar(phrases, 'bench');
      }, phrasesFor(TALKATIVE));
      console.log(`before: ${await memory(bench)}`);
      for (let hour = 1; hour <= hours; hour += 1) {
        await oneHour(bench);
        console.log(`after ${hour} h: ${await memory(bench)}`);
      }
    } finally {
      await bench.close();
    }
  } finally {
    rmSync(files, { recursive: true });
  }
}

function oneHour({ page }: EarBench): Promise<void> {
  return page.evaluate(async () => {
    const play = async (name: string) => {
      // A fresh engine may just be starting: what is said meanwhile is lost, as it would be at the bench.
      await window.page.push(await window.page.wav(`/${name}.wav`)).catch(() => undefined);
      window.page.log.length = 0;
    };
    await play('planing');
    await play('blows');
    await play('talk');
    for (let minute = 6; minute < 60; minute += 1) await play('idle');
  });
}

async function memory({ page }: EarBench): Promise<string> {
  const { engine, restarts } = await page.evaluate(() => window.page.ear.diagnosis());
  const megabytes = (bytes: number) => `${Math.round(bytes / 2 ** 20)} MB`;
  return `engine ${megabytes(engine?.heapBytes ?? 0)}, page ${megabytes(pageBytes())}, engine started anew ${restarts} times`;
}

function talk(folder: SoundFolder): Float32Array {
  const sentences = RADIO_TALK.map((sentence) => joined(folder.spoken(sentence, 'flite slt'), quiet(1)));
  return joined(...sentences).slice(0, 60 * RATE_HZ);
}
