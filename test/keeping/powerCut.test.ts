import { cpSync, existsSync, readdirSync, rmSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { foundBy, inWorkshop, look, openPage, startServerProcess, type Workshop } from './bench.ts';
import { readTrace, saidIn, syncedAt, tracing, whyNoTracing, type Trace } from './powerCut.ts';
import type { PageFound } from './page.ts';

const ACTS = 40;

/** What was written under the eyes of strace, by the browser and by the server. */
interface Run {
  readonly address: string;
  readonly profile: string;
  readonly data: string;
  readonly browser: Trace;
  readonly server: Trace;
}

async function writeTraced(workshop: Workshop, query: string): Promise<Run> {
  const [profile, data] = [join(workshop.folder, 'profile'), join(workshop.folder, 'data')];
  const traces = { browser: join(workshop.folder, 'browser.trace'), server: join(workshop.folder, 'server.trace') };
  const server = await startServerProcess(workshop, data, 0, tracing(traces.server));
  const page = openPage(server.address, `acts=${ACTS}&${query}`, profile, tracing(traces.browser));
  await foundBy(page);
  await page.line(/KEEPING done/);
  await Promise.all([page.kill(), server.kill()]);
  return { address: server.address, profile, data, browser: readTrace(traces.browser), server: readTrace(traces.server) };
}

/** Copies profile and data as the disk would hold them if the power had gone at that time: of each log only what was synced. */
function cutPower(run: Run, seconds: number, where: string): { profile: string; data: string } {
  const [profile, data] = [join(where, 'profile'), join(where, 'data')];
  cpSync(run.profile, profile, { recursive: true, filter: (file) => !/Singleton|LOCK$/.test(file) });
  if (existsSync(run.data)) cpSync(run.data, data, { recursive: true });
  truncateLogs(join(profile, 'Default', 'WebStorage'), run.profile, profile, syncedAt(run.browser, seconds));
  truncateLogs(data, run.data, data, syncedAt(run.server, seconds));
  return { profile, data };
}

function truncateLogs(folder: string, original: string, copy: string, synced: ReadonlyMap<string, number>): void {
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const file = join(folder, name);
    if (!/(\.log|MANIFEST-\d+|\.ldb|\.jsonl)$/.test(name)) continue;
    const bytes = synced.get(file.replace(copy, original));
    if (bytes === undefined) rmSync(file);
    else truncateSync(file, bytes);
  }
}

/** Cuts the power after the n-th answered act, starts everything again on what is left, and tells what the page finds. */
async function replay(workshop: Workshop, run: Run, act: number, query: string, spoil?: (profile: string) => void): Promise<{ said: { number: number; checksum: string }; found: PageFound }> {
  const said = saidIn(run.browser)[act - 1];
  if (!said) throw new Error(`the trace holds no act ${act}`);
  const where = join(workshop.folder, `cut-${act}-${query}`);
  const { profile, data } = cutPower(run, said.seconds, where);
  spoil?.(profile);
  const server = await startServerProcess(workshop, data, Number(new URL(run.address).port));
  try {
    return { said, found: await look(server.address, profile, `at=${said.number}&${query}`) };
  } finally {
    await server.kill();
  }
}

const because = whyNoTracing();

describe.skipIf(because !== undefined)(`the power is cut and only what was synced is left${because === undefined ? '' : ` (${because})`}`, () => {
  it('the browser\'s copy alone holds all that was answered for, wherever the cut fell', { timeout: 180_000 }, () => inWorkshop(async (workshop) => {
    const run = await writeTraced(workshop, 'alone');
    for (const act of [1, 17, ACTS]) {
      const { said, found } = await replay(workshop, run, act, 'alone');
      expect(found.checksumAt, `after act ${act}: ${JSON.stringify(found.status)}`).toBe(said.checksum);
      expect(found.folded).toBe(found.length);
    }
  }));

  it('the keeper\'s file alone holds all that was answered for, and the browser is restored from it', { timeout: 180_000 }, () => inWorkshop(async (workshop) => {
    const run = await writeTraced(workshop, '');
    for (const act of [1, ACTS]) {
      const { said, found } = await replay(workshop, run, act, '', (profile) => rmSync(join(profile, 'Default', 'WebStorage'), { recursive: true }));
      expect(found.checksumAt, `after act ${act}: ${JSON.stringify(found.status)}`).toBe(said.checksum);
      expect(found.status.told.join(' ')).toMatch(/(restored|taken over) from the journal's file/);
      expect(found.status.kept).toBe('twice');
    }
  }));

  it('and a journal kept without strict durability would be found short: this test can see the difference', { timeout: 180_000 }, () => inWorkshop(async (workshop) => {
    const run = await writeTraced(workshop, 'alone&relaxed');
    const { said, found } = await replay(workshop, run, ACTS, 'alone');
    expect(found.length).toBeLessThan(said.number);
  }));
});
