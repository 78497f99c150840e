import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { nanometres, NANOMETRES_PER_INCH } from '../core/length/length.ts';
import type { Request } from '../core/bench/request.ts';
import type { HostAct } from '../kiosk/hostPort.ts';
import { buildKiosk } from './build.ts';
import { CHROMIUM_FLAGS, findOrInstallChromium } from './chromium.mjs';
import { startServer } from './server.ts';

/** `npm run screenshots`: builds the kiosk, walks through the demo piece and takes the README's pictures. */
const PICTURES = join(import.meta.dirname, 'screenshots');
const SIXTEENTH_NM = 1_587_500;

const inches = (count: number) => nanometres(count * NANOMETRES_PER_INCH);
/** Boards in inches, enough for the demo piece. */
const STACK = [[96, 8], [120, 10], [100, 9], [96, 10], [120, 8], [120, 9], [120, 9], [120, 10]] as const;

const RAIL = { part: 'longRail', copy: 1, face: 'face' } as const;
/** A rail in wind, and hollow along. */
const TWISTED_RAIL: readonly Request[] = [
  { kind: 'surface reading', of: RAIL, what: 'sticks', at: 'far end', gap: nanometres(3 * SIXTEENTH_NM), sense: 'left' }, { kind: 'surface reading', of: RAIL, what: 'sticks', at: 'middle', gap: nanometres(2 * SIXTEENTH_NM), sense: 'left' },
  { kind: 'surface reading', of: RAIL, what: 'along', at: 'middle', gap: nanometres(SIXTEENTH_NM / 2) }, { kind: 'surface reading', of: RAIL, what: 'across', at: 'middle', gap: nanometres(SIXTEENTH_NM / 4), sense: 'hollow' },
];

/** Picture → what is asked of the bench to get there. */
const SCENES: readonly { readonly name: string; readonly requests: readonly Request[] }[] = [
  { name: 'step', requests: [{ kind: 'where am I' }] },
  { name: 'size', requests: [{ kind: 'size', size: 'longRail.length' }] },
  { name: 'why', requests: [{ kind: 'why', size: 'top.length' }] },
  { name: 'part', requests: [{ kind: 'sizes of part', part: 'leg' }] },
  { name: 'record', requests: [{ kind: 'show', screen: { name: 'record', size: 'leg.width', copy: 2 } }] },
  { name: 'recorded', requests: [{ kind: 'record', size: 'leg.width', copy: 2, length: 53 * SIXTEENTH_NM as Extract<Request, { kind: 'record' }>['length'] }] },
  { name: 'reckoning', requests: [{ kind: 'fraction of', numerator: 1, denominator: 2, of: { size: 'longRail.length' } }] },
  { name: 'chopping', requests: [{ kind: 'chop stage', to: 4, joint: 'longRailTenon' }] },
  { name: 'truing', requests: [...TWISTED_RAIL, { kind: 'what to plane', of: RAIL }] },
  { name: 'paper', requests: [{ kind: 'sheets', sheet: { what: 'layout', part: 'leg' } }] },
  { name: 'clocks', requests: [{ kind: 'start timer', timer: 'clamp', name: 'leg two clamps' }, { kind: 'start timer', timer: 'plain', name: 'tea', durationMs: 240_000 }] },
  { name: 'layout', requests: [{ kind: 'place', part: 'leg', copy: 1, place: 'front left', front: 'A' }, { kind: 'place', part: 'leg', copy: 2, place: 'front right', front: 'B' }, { kind: 'layout face', part: 'leg', copy: 2, to: 'D' }] },
  { name: 'cutting', requests: [...STACK.map(([length, width]): Request => ({ kind: 'new board', length: inches(length), width: inches(width) })), { kind: 'board defect', board: 2, what: 'knot', from: inches(40), to: inches(44), fromEdge: inches(3), toEdge: inches(5) }, { kind: 'plan cutting' }, { kind: 'take plan' }] },
  { name: 'help', requests: [{ kind: 'what can I say' }] },
];

async function takePictures(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'benchcall-'));
  const site = join(folder, 'site');
  await buildKiosk(site);
  const server = await startServer({ site, port: 0, folders: { journal: join(folder, 'journal'), pieces: join(folder, 'pieces'), models: join(folder, 'models') } });
  const browser = await chromium.launch({ executablePath: findOrInstallChromium(), args: [...CHROMIUM_FLAGS, '--autoplay-policy=no-user-gesture-required', '--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'] });
  try {
    const page = await browser.newPage({ viewport: { width: 800, height: 480 } });
    await page.goto(server.address);
    await page.waitForFunction(() => (document.querySelector('bench-kiosk') as unknown as { view: unknown } | null)?.view);
    await act(page, { kind: 'load demo' });
    mkdirSync(PICTURES, { recursive: true });
    for (const { name, requests } of SCENES) {
      for (const request of requests) await ask(page, request);
      await page.waitForTimeout(600);
      await page.screenshot({ path: join(PICTURES, `${name}.png`) });
      console.log(`deploy/screenshots/${name}.png`);
    }
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function act(page: Page, detail: HostAct): Promise<void> {
  return send(page, 'bench-act', detail);
}

function ask(page: Page, detail: Request): Promise<void> {
  return send(page, 'bench-request', detail);
}

async function send(page: Page, type: string, detail: unknown): Promise<void> {
  await page.evaluate(([name, what]) => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent(name, { detail: what })), [type, detail] as const);
  await page.waitForTimeout(1_500);
}

await takePictures();
