import { build } from 'esbuild';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { BUNDLING } from '../../deploy/build.ts';
import { CHROMIUM_FLAGS } from '../../deploy/chromium.mjs';
import { writeWav } from './sound.ts';
import { chromiumPath, serveFiles } from './servedFiles.ts';
import type {} from './earPage.ts';

const ROOT = join(import.meta.dirname, '..', '..');

export interface EarBench {
  readonly page: Page;
  readonly browser: Browser;
  /** Everything the browser wrote to its console. */
  readonly console: readonly string[];
  close(): Promise<void>;
}

export interface ShopOptions {
  /** What the microphone hears, over and over: 16 kHz samples, -1 to 1. Without it, the browser has the machine's own devices (in a test, none). */
  readonly microphone?: Float32Array;
  readonly flags?: readonly string[];
}

export interface ServedOptions {
  /** Another file for the model; null when there is none. */
  readonly model?: string | null;
  /** More files to serve. */
  readonly files?: Readonly<Record<string, string>>;
}

/** One browser with one sound at its microphone, in which ear after ear can be opened; to start a browser takes longer than most tests. */
export interface EarShop {
  /** Serves the ear as the kiosk serves it, under the kiosk's own policy, and opens it in a page that has nothing in common with the ones before. */
  open(options?: ServedOptions): Promise<EarBench>;
  close(): Promise<void>;
}

export async function openShop(options: ShopOptions = {}): Promise<EarShop> {
  const folder = mkdtempSync(join(tmpdir(), 'ear-'));
  const undo: (() => unknown)[] = [() => rmSync(folder, { recursive: true, force: true })];
  try {
    await bundle(folder);
    const browser = await chromium.launch(launchOptions(folder, options));
    undo.unshift(() => browser.close());
    return { open: (served = {}) => openIn(browser, folder, served), close: () => runAll(undo) };
  } catch (error) {
    await runAll(undo);
    throw error;
  }
}

/** An ear in a browser of its own. */
export async function openEar(options: ShopOptions & ServedOptions = {}): Promise<EarBench> {
  const shop = await openShop(options);
  try {
    const bench = await shop.open(options);
    return { ...bench, close: () => runAll([() => bench.close(), () => shop.close()]) };
  } catch (error) {
    await shop.close();
    throw error;
  }
}

async function openIn(browser: Browser, folder: string, served: ServedOptions): Promise<EarBench> {
  const server = await serveFiles(fileTable(folder, served));
  const undo: (() => unknown)[] = [() => server.close()];
  try {
    const context = await browser.newContext();
    undo.unshift(() => context.close());
    const page = await context.newPage();
    const lines: string[] = [];
    page.on('console', (message) => lines.push(message.text()));
    page.on('pageerror', (error) => lines.push(String(error)));
    await page.goto(server.address);
    await page.waitForFunction(() => 'page' in window);
    return { page, browser, console: lines, close: () => runAll(undo) };
  } catch (error) {
    await runAll(undo);
    throw error;
  }
}

async function runAll(steps: readonly (() => unknown)[]): Promise<void> {
  for (const step of steps) await step();
}

async function bundle(folder: string): Promise<void> {
  await build({
    ...BUNDLING, outdir: folder, sourcemap: false,
    entryPoints: [
      { in: 'kiosk/ear/recogniser-worker.ts', out: 'recogniser-worker' },
      { in: 'kiosk/ear/capture-worklet.ts', out: 'capture-worklet' },
      { in: 'test/voice/earPage.ts', out: 'page' },
    ],
  });
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Ear</title><script type="module" src="/page.js"></script>');
}

function fileTable(folder: string, { model, files = {} }: ServedOptions): ReadonlyMap<string, string> {
  const shipped = join(ROOT, 'sounds', 'speech-model', 'model.tar.gz');
  return new Map(Object.entries({
    '/': join(folder, 'index.html'),
    '/page.js': join(folder, 'page.js'),
    '/ear/recogniser-worker.js': join(folder, 'recogniser-worker.js'),
    '/ear/capture-worklet.js': join(folder, 'capture-worklet.js'),
    '/ear/vosk.wasm': join(ROOT, 'node_modules', '@lichess-org', 'vosk-browser', 'dist', 'vosk.wasm'),
    '/ear/dictionary.txt.gz': join(ROOT, 'sounds', 'dictionary', 'dictionary.txt.gz'),
    ...(model === null ? {} : { '/models/model.tar.gz': model ?? shipped }),
    ...files,
  }));
}

function launchOptions(folder: string, { microphone, flags = [] }: ShopOptions): Parameters<typeof chromium.launch>[0] {
  const executablePath = chromiumPath();
  const args = [...CHROMIUM_FLAGS, ...flags];
  if (microphone !== undefined) {
    const file = join(folder, 'microphone.wav');
    writeFileSync(file, writeWav(microphone));
    args.push('--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream', `--use-file-for-fake-audio-capture=${file}`);
  }
  return { executablePath, headless: true, args };
}
