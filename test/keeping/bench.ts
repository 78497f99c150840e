import { build } from 'esbuild';
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BUNDLING } from '../../deploy/build.ts';
import { CHROMIUM_FLAGS, findChromium } from '../../deploy/chromium.mjs';
import type { PageFound } from './page.ts';

/** Everything that a test of the keeping needs, in one folder that is gone afterwards. */
export interface Workshop {
  readonly folder: string;
  readonly site: string;
  readonly serverScript: string;
}

/** How a folder is removed that a browser wrote to: what it still had in hand when it ended may come a moment later. */
export const REMOVAL = { recursive: true, force: true, maxRetries: 20, retryDelay: 100 } as const;

/** Bundles the test's page and server, and runs `work` with them. */
export async function inWorkshop(work: (workshop: Workshop) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'benchcall-keeping-'));
  try {
    const site = join(folder, 'site');
    await mkdir(site);
    await writeFile(join(site, 'index.html'), '<!doctype html><html lang="en"><title>keeping</title><link rel="icon" href="data:,"><script type="module" src="/page.js"></script></html>');
    await build({ ...BUNDLING, entryPoints: [join(import.meta.dirname, 'page.ts')], outdir: site });
    const serverScript = join(folder, 'server.mjs');
    await build({ ...BUNDLING, entryPoints: [join(import.meta.dirname, 'serverProcess.ts')], outfile: serverScript, platform: 'node', minify: false });
    await work({ folder, site, serverScript });
  } finally {
    await rm(folder, REMOVAL);
  }
}

/** A process that tells what it does in lines; the lines are kept in order. */
export interface Running {
  readonly lines: readonly string[];
  /** The first line (from now on or before) that matches. @throws Error when none comes in time, or the process ends before */
  line(pattern: RegExp, ms?: number): Promise<RegExpExecArray>;
  /** SIGKILL, to the process and all that it started, at once. */
  kill(): Promise<void>;
  /** SIGTERM, and a wait for its end. */
  end(): Promise<void>;
}

function run([program = '', ...words]: readonly string[], environment: NodeJS.ProcessEnv = process.env): Running {
  const child = spawn(program, words, { detached: true, stdio: ['ignore', 'pipe', 'pipe'], env: environment });
  const lines: string[] = [];
  let wake: () => void = () => undefined;
  let ended = false;
  for (const stream of [child.stdout, child.stderr]) {
    let rest = '';
    stream.setEncoding('utf8').on('data', (text: string) => {
      const parts = (rest + text).split('\n');
      rest = parts.pop() ?? '';
      lines.push(...parts);
      wake();
    });
  }
  child.on('exit', () => {
    ended = true;
    wake();
  });
  return {
    lines,
    async line(pattern, ms = 60_000) {
      const deadline = Date.now() + ms;
      for (let seen = 0; ; ) {
        for (; seen < lines.length; seen += 1) {
          const match = pattern.exec(lines[seen] ?? '');
          if (match) return match;
        }
        if (ended || Date.now() > deadline) throw new Error(`${ended ? 'it ended' : 'too long'} before ${String(pattern)}; last lines:\n${lines.slice(-15).join('\n')}`);
        await Promise.race([new Promise<void>((resolve) => (wake = resolve)), new Promise((resolve) => setTimeout(resolve, 200))]);
      }
    },
    kill: () => stop(child, 'SIGKILL'),
    end: () => stop(child, 'SIGTERM'),
  };
}

async function stop(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  const { pid } = child;
  if (pid === undefined) return;
  // A browser that was asked to end leaves helpers behind that still write to its profile: all of them are waited for.
  const family = descendants(pid);
  const gone = child.exitCode === null && child.signalCode === null ? once(child, 'exit') : undefined;
  for (const each of signal === 'SIGKILL' ? [-pid, ...family] : [pid]) {
    try {
      process.kill(each, signal);
    } catch {
      // It has ended already.
    }
  }
  await gone;
  await Promise.all(family.map(async (each) => {
    for (let waited = 0; isRunning(each) && waited < 10_000; waited += 5) await new Promise((resolve) => setTimeout(resolve, 5));
  }));
}

/** The process and all that descend from it, by the parents that the system names. */
function descendants(root: number): readonly number[] {
  const parents = new Map<number, number>();
  for (const name of readdirSync('/proc')) if (/^\d+$/.test(name)) parents.set(Number(name), parentOf(Number(name)));
  const family = [root];
  for (const each of family) for (const [child, parent] of parents) if (parent === each) family.push(child);
  return family;
}

function parentOf(pid: number): number {
  return Number(statOf(pid)?.[1] ?? 0);
}

function isRunning(pid: number): boolean {
  const state = statOf(pid)?.[0];
  return state !== undefined && state !== 'Z' && state !== 'X';
}

/** State, parent and so on: the fields of /proc/PID/stat after the name in brackets. */
function statOf(pid: number): readonly string[] | undefined {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  } catch {
    return undefined;
  }
}

/** Starts the bench's server on its own process; resolves with its address when it answers. */
export async function startServerProcess({ site, serverScript }: Workshop, data: string, port = 0, wrapper: readonly string[] = [], reserveBytes = 0): Promise<Running & { readonly address: string }> {
  const running = run([...wrapper, process.execPath, serverScript, site, String(port)], { ...process.env, BENCHCALL_DATA: data, RESERVE_BYTES: String(reserveBytes) });
  const [, address = ''] = await running.line(/^SERVING (.*)$/);
  return { ...running, address };
}

/** A browser is started hundreds of times here: few processes, no window's furniture, and none of what a page without pictures can do without cost a start much less. */
const QUICK_START = [
  '--headless', '--disable-extensions', '--disable-default-apps', '--disable-component-extensions-with-background-pages', '--disable-breakpad', '--disable-popup-blocking', '--renderer-process-limit=1',
  '--in-process-gpu', '--disable-software-rasterizer', '--enable-features=NetworkServiceInProcess2', '--disable-features=SpareRendererForSitePerProcess',
  '--enable-logging=stderr', '--log-level=0',
];

/** Opens the test's page, of that address and query, in a browser with this profile. */
export function openPage(address: string, query: string, profile: string, wrapper: readonly string[] = []): Running {
  return run([...wrapper, findChromium() ?? '', ...CHROMIUM_FLAGS, ...QUICK_START, `--user-data-dir=${profile}`, `--app=${address}${address.includes('?') ? '' : '/?'}${query}`]);
}

/** One of the pages that a browser has open: what it told, by what it is called. */
export function pageCalled(name: string, browser: Running): Running {
  return {
    ...browser,
    get lines() { return browser.lines.filter((line) => line.includes(`"${name}KEEPING`)); },
    line: (pattern, ms) => browser.line(new RegExp(`"${name}${pattern.source}`), ms),
  };
}

/** What a page tells of the journal that it opened. */
export const FOUND = /KEEPING found (.*?) END/;
const KEPT = /KEEPING kept (.*?) END/;

export interface Kept {
  readonly number: number;
  readonly checksum: string;
}

export async function foundBy(page: Running): Promise<PageFound> {
  return JSON.parse((await page.line(FOUND))[1] ?? '') as PageFound;
}

/** The last entry that the page is known to have answered for; number 0 when there was none. */
export function lastKept(page: Running): Kept {
  const match = page.lines.map((line) => KEPT.exec(line)).filter((found) => found !== null).at(-1);
  return match ? (JSON.parse(match[1] ?? '') as Kept) : { number: 0, checksum: '' };
}

/** Waits until so many acts have been answered for. */
export async function keptAtLeast(page: Running, count: number, ms = 60_000): Promise<void> {
  const deadline = Date.now() + ms;
  while (page.lines.filter((line) => KEPT.test(line)).length < count) {
    if (Date.now() > deadline) throw new Error(`too few entries were kept; last lines:\n${page.lines.slice(-15).join('\n')}`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}

/** Opens the page to look only, and closes the browser. */
export async function look(address: string, profile: string, query = ''): Promise<PageFound> {
  const page = openPage(address, `look&${query}`, profile);
  try {
    return await foundBy(page);
  } finally {
    await page.end();
  }
}

export async function pause(ms: number): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, ms));
}
