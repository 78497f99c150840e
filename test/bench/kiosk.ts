/**
 * The whole kiosk as a person meets it: start to usable, key to picture, end of speech to first sound, memory, what is shipped.
 * Figures are of the machine it runs on; 'slowed' stops and continues the page's process, workers and all.
 */
import { gzipSync } from 'node:zlib';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { inTheShop, loadDemo, openWholeKiosk, type WholeKiosk } from '../voice/wholeKiosk.ts';
import { pageBytes, pageProcess, slowDown } from './pageProcess.ts';

const ROUNDS = 5;
const SPEECH = 'bench, how long is the long rail';

const kiosk = await openWholeKiosk(inTheShop(SPEECH, { before: 3, after: 9 }));
try {
  print('shipped, page scripts', `${await pageScriptKilobytes(kiosk)} KB gzip`);
  await loadDemo(kiosk.page);
  print('start to usable', ...await starts(kiosk, 1));
  print('start to usable, slowed 6 times', ...await starts(kiosk, 6));
  print('request to reply on the screen', ...await requests(kiosk));
  const release = slowDown(6);
  print('request to reply on the screen, slowed 6 times', ...await requests(kiosk));
  release();
  print('end of speech to the first sound', ...await answers(kiosk));
  print('memory with ear and mouth', megabytes(pageBytes()));
  await ask(kiosk, { kind: 'set', setting: { listening: false } });
  await kiosk.page.reload();
  await usable(kiosk);
  await kiosk.page.waitForTimeout(3_000);
  print('memory with the mouth alone', megabytes(pageBytes()));
} finally {
  await kiosk.close();
}

function print(what: string, ...figures: readonly string[]): void {
  console.log(`${what}: ${figures.join('  ')}`);
}

function megabytes(bytes: number): string {
  return `${(bytes / 2 ** 20).toFixed(0)} MB`;
}

async function pageScriptKilobytes({ page, address }: WholeKiosk): Promise<string> {
  const script = await page.evaluate(async (root) => (await fetch(`${root}/app.js`)).text(), address);
  return (gzipSync(script, { level: 9 }).length / 1024).toFixed(1);
}

/** Reloads, and waits until the step is drawn with its sizes. */
async function starts({ page }: WholeKiosk, slowdown: number): Promise<string[]> {
  const took: string[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const release = slowdown === 1 ? () => undefined : slowDown(slowdown, pageProcess());
    const began = performance.now();
    await page.reload();
    await usable(kiosk);
    release();
    took.push(`${Math.round(performance.now() - began)} ms`);
  }
  return took;
}

async function usable({ page }: WholeKiosk): Promise<void> {
  await page.waitForFunction(() => {
    const element = document.querySelector<BenchKiosk>('bench-kiosk');
    return element?.view?.bench.state.piece && element.shadowRoot?.querySelector('bench-step');
  }, undefined, { polling: 20 });
}

async function ask({ page }: WholeKiosk, detail: unknown): Promise<void> {
  await page.evaluate((request) => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-request', { detail: request })), detail);
}

/** A request goes in, is answered, written down twice, and drawn. */
async function requests({ page }: WholeKiosk): Promise<string[]> {
  return page.evaluate(async (rounds) => {
    const element = document.querySelector<BenchKiosk>('bench-kiosk');
    const took: string[] = [];
    for (let round = 0; element && round < rounds; round++) {
      const before = element.view?.bench.records.length ?? 0;
      const began = performance.now();
      element.dispatchEvent(new CustomEvent('bench-request', { detail: { kind: round % 2 === 0 ? 'next step' : 'step back' } }));
      while ((element.view?.bench.records.length ?? 0) === before) await new Promise(requestAnimationFrame);
      await element.updateComplete;
      took.push(`${Math.round(performance.now() - began)} ms`);
    }
    return took;
  }, ROUNDS);
}

/** From the last loud moment of the sentence to the mouth's first sound. */
async function answers({ page }: WholeKiosk): Promise<string[]> {
  return page.evaluate(async (rounds) => {
    const element = document.querySelector<BenchKiosk>('bench-kiosk');
    const took: string[] = [];
    let loudAt = 0;
    let asleep = true;
    const until = performance.now() + 120_000;
    while (took.length < rounds && performance.now() < until) {
      await new Promise(requestAnimationFrame);
      const view = element?.view;
      if (!view) continue;
      const now = performance.now();
      if (view.mouth.words === '') asleep = true;
      if (asleep && (view.ear.levelDb ?? -90) > -35) loudAt = now;
      if (asleep && view.mouth.words.startsWith('Long rail')) {
        took.push(`${Math.round(now - loudAt)} ms`);
        asleep = false;
      }
    }
    return took;
  }, ROUNDS);
}
