import { build } from 'esbuild';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Page } from 'playwright-core';
import { BUNDLING } from '../../../deploy/build.ts';
import { CHROMIUM_FLAGS } from '../../../deploy/chromium.mjs';
import { chromiumPath, serveFiles } from '../../voice/servedFiles.ts';
import type {} from './page.ts';

const ROOT = join(import.meta.dirname, '..', '..', '..');

export interface HearingEngine { readonly page: Page; close(): Promise<void> }

/** Opens a page with the kiosk's recogniser and a model, and with these recordings to fetch (path → file). */
export async function openEngine(model: string, recordings: ReadonlyMap<string, string>): Promise<HearingEngine> {
  const folder = mkdtempSync(join(tmpdir(), 'hearing-'));
  await build({
    ...BUNDLING, outdir: folder, sourcemap: false,
    entryPoints: [{ in: join(ROOT, 'kiosk/ear/recogniser-worker.ts'), out: 'recogniser-worker' }, { in: join(import.meta.dirname, 'page.ts'), out: 'page' }],
  });
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Hearing</title><script type="module" src="/page.js"></script>');
  const server = await serveFiles(new Map([
    ['/', join(folder, 'index.html')], ['/page.js', join(folder, 'page.js')], ['/ear/recogniser-worker.js', join(folder, 'recogniser-worker.js')],
    ['/ear/vosk.wasm', join(ROOT, 'node_modules/@lichess-org/vosk-browser/dist/vosk.wasm')],
    ['/ear/dictionary.txt.gz', join(ROOT, 'sounds/dictionary/dictionary.txt.gz')], ['/models/model.tar.gz', model], ...recordings,
  ]));
  const browser = await chromium.launch({ executablePath: chromiumPath(), headless: true, args: [...CHROMIUM_FLAGS] });
  const page = await browser.newPage();
  await page.goto(server.address);
  await page.waitForFunction(() => 'hearing' in window);
  return { page, close: async () => { await browser.close(); server.close(); rmSync(folder, { recursive: true, force: true }); } };
}
