import { chromium } from 'playwright-core';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COPIES, PAGE_BUNDLES, WORKER_BUNDLES } from '../../deploy/assets.ts';
import { buildKiosk, PAGE_BUDGET_BYTES, type BuildReport } from '../../deploy/build.ts';
import { CHROMIUM_FLAGS, findChromium } from '../../deploy/chromium.mjs';
import { startServer, type BenchServer } from '../../deploy/server.ts';
import { REMOVAL } from './bench.ts';

let folder: string;
let built: BuildReport;
let server: BenchServer;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'benchcall-page-'));
  built = await buildKiosk(join(folder, 'site'));
  server = await startServer({ site: join(folder, 'site'), port: 0, folders: { journal: join(folder, 'journal'), pieces: join(folder, 'pieces'), models: join(folder, 'models') }, keeper: { reserveBytes: 0 } });
});

afterAll(async () => {
  await server.close();
  await rm(folder, REMOVAL);
});

describe('the built page', () => {
  it('holds everything that the table of assets names', () => {
    for (const { to } of [...PAGE_BUNDLES, ...WORKER_BUNDLES, ...COPIES]) expect(existsSync(join(built.out, to)), to).toBe(true);
  });

  it('weighs less than its budget, without the recogniser and the voice', () => {
    expect(built.pageGzipBytes).toBeGreaterThan(10_000);
    expect(built.pageGzipBytes).toBeLessThan(PAGE_BUDGET_BYTES);
  });

  it('opens under its own policy without a fault, asks nothing of any other machine, and keeps a journal', async () => {
    const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: [...CHROMIUM_FLAGS, '--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'] });
    try {
      const page = await browser.newPage({ viewport: { width: 800, height: 480 } });
      const faults: string[] = [];
      const asked: string[] = [];
      page.on('pageerror', (error) => faults.push(error.message));
      page.on('console', (message) => { if (message.type() === 'error') faults.push(message.text()); });
      page.on('request', (request) => asked.push(request.url()));
      await page.addInitScript(() => document.addEventListener('securitypolicyviolation', (event) => console.error(`policy: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`)));
      const response = await page.goto(`${server.address}/`);
      expect(response?.headers()['content-security-policy']).toContain("default-src 'none'");
      await page.locator('bench-kiosk button').first().waitFor({ timeout: 60_000 });
      await page.waitForTimeout(1_500);
      expect(faults).toEqual([]);
      expect(asked.filter((url) => !url.startsWith(`${server.address}/`) && !url.startsWith('data:') && !url.startsWith('blob:'))).toEqual([]);
      expect(asked).toContain(`${server.address}/api/keeper`);
    } finally {
      await browser.close();
    }
  });
});
