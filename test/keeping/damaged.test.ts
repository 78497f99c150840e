import { closeSync, cpSync, existsSync, mkdirSync, openSync, readdirSync, readFileSync, rmSync, statSync, truncateSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { JOURNAL_VERSION } from '../../core/journal/migrate.ts';
import { journalFile } from '../../deploy/keeperForm.ts';
import { foundBy, inWorkshop, keptAtLeast, lastKept, look, openPage, REMOVAL, startServerProcess, type Kept, type Running, type Workshop } from './bench.ts';
import type { PageFound } from './page.ts';

const ACTS = 60;

/** One journal, written once; each test damages a copy of it. */
interface Written {
  readonly workshop: Workshop;
  readonly port: number;
  readonly profile: string;
  readonly data: string;
  readonly kept: Kept;
}

let written: Written;
let finish: () => void = () => undefined;
let workshopOver: Promise<void> | undefined;

beforeAll(async () => {
  await new Promise<void>((ready, failed) => {
    workshopOver = inWorkshop(async (workshop) => {
      const [profile, data] = [join(workshop.folder, 'profile'), join(workshop.folder, 'data')];
      const server = await startServerProcess(workshop, data);
      const page = openPage(server.address, `acts=${ACTS}`, profile);
      await page.line(/KEEPING done/);
      await keptAtLeast(page, ACTS);
      await memoWritten(profile);
      await page.end();
      await server.end();
      written = { workshop, port: Number(new URL(server.address).port), profile, data, kept: lastKept(page) };
      ready();
      await new Promise<void>((resolve) => (finish = resolve));
    });
    workshopOver.catch(failed);
  });
});

afterAll(async () => {
  finish();
  await workshopOver;
});

/** What the browser remembers apart from its database (kiosk/store/memo.ts) it writes to the disk seconds later, and not always when it is ended. */
async function memoWritten(profile: string): Promise<void> {
  const folder = join(profile, 'Default', 'Local Storage', 'leveldb');
  const written = () => existsSync(folder) && readdirSync(folder).some((name) => name.endsWith('.log') && readFileSync(join(folder, name)).includes('lastNumber'));
  await vi.waitUntil(written, { timeout: 60_000, interval: 200 });
}

interface Copies {
  readonly profile: string;
  readonly data: string;
  /** The folder of the browser's database. */
  readonly database: string;
  readonly journalFile: string;
}

/** Damages a copy of the journal's two copies, opens the page on what is left, and tells what it found. */
async function afterDamage(name: string, damage: (copies: Copies) => void, query = ''): Promise<PageFound> {
  const where = join(written.workshop.folder, name.replaceAll(/\W+/g, '-'));
  const copies = copyOf(where);
  damage(copies);
  const server = await startServerProcess(written.workshop, copies.data, written.port);
  try {
    return await look(server.address, copies.profile, `at=${written.kept.number}&${query}`);
  } finally {
    await server.end();
    rmSync(where, REMOVAL);
  }
}

function copyOf(where: string): Copies {
  mkdirSync(where);
  const [profile, data] = [join(where, 'profile'), join(where, 'data')];
  cpSync(written.profile, profile, { recursive: true, filter: (file) => !/Singleton/.test(file) });
  cpSync(written.data, data, { recursive: true });
  const storage = join(profile, 'Default', 'WebStorage');
  const database = readdirSync(storage, { recursive: true, encoding: 'utf8' }).find((name) => name.endsWith('indexeddb.leveldb'));
  if (database === undefined) throw new Error(`the journal's bucket was not found in ${storage}`);
  return { profile, data, database: join(storage, database), journalFile: join(data, 'journal', journalFile(JOURNAL_VERSION)) };
}

function inDatabase(copies: Copies, ending: RegExp): string {
  const name = readdirSync(copies.database).find((file) => ending.test(file));
  if (name === undefined) throw new Error(`no ${String(ending)} in ${copies.database}`);
  return join(copies.database, name);
}

function zeros(file: string, from: number, length: number): void {
  const opened = openSync(file, 'r+');
  writeSync(opened, Buffer.alloc(length), 0, length, from);
  closeSync(opened);
}

const BROWSER_DAMAGE: readonly (readonly [string, (copies: Copies) => void, RegExp])[] = [
  ['its database folder deleted', (copies) => rmSync(copies.database, { recursive: true }), /The browser had lost its journal. It was restored from the journal's file: 75 entries/],
  ['an empty CURRENT', (copies) => truncateSync(inDatabase(copies, /^CURRENT$/), 0), /The browser had lost its journal. It was restored from the journal's file: 75 entries/],
  ['4096 zeros in the middle of its log', (copies) => {
    const log = inDatabase(copies, /\.log$/);
    expect(statSync(log).size).toBeGreaterThan(3 * 4096);
    zeros(log, Math.floor(statSync(log).size / 2), 4096);
  }, /restored from the journal's file/],
  ['the last kilobyte of its log cut off', (copies) => {
    const log = inDatabase(copies, /\.log$/);
    truncateSync(log, statSync(log).size - 1024);
  }, /missing in the browser and restored from the journal's file/],
  ['an empty log', (copies) => truncateSync(inDatabase(copies, /\.log$/), 0), /The browser had lost its journal. It was restored from the journal's file: 75 entries/],
  ['the whole profile deleted', (copies) => rmSync(copies.profile, { recursive: true }), /This browser had no journal yet. 75 entries were taken over from the journal's file/],
];

describe('the browser\'s copy is damaged', () => {
  it.each(BROWSER_DAMAGE)('%s: everything is restored from the keeper\'s file, and told', { timeout: 60_000 }, async (name, damage, told) => {
    const found = await afterDamage(name, damage);
    expect(found.status.told.join(' ')).toMatch(told);
    expect(found.checksumAt).toBe(written.kept.checksum);
    expect([found.length, found.folded, found.notes]).toEqual([75, 75, 75]);
    expect(found.status).toMatchObject({ mode: 'writing', kept: 'twice', warnings: [] });
  });

  it('its MANIFEST missing, so that it cannot be opened at all: the file goes on alone, and the person is told', { timeout: 60_000 }, async () => {
    const found = await afterDamage('no manifest', (copies) => rmSync(inDatabase(copies, /^MANIFEST/)));
    expect(found.checksumAt).toBe(written.kept.checksum);
    expect(found.status).toMatchObject({ mode: 'writing' });
    if (found.status.kept === 'twice') expect(found.status.told.join(' ')).toMatch(/restored from the journal's file/);
    else expect(found.status.warnings.join(' ')).toMatch(/Entries are kept in the journal's file alone/);
  });
});

const FILE_DAMAGE: readonly (readonly [string, (copies: Copies) => void, RegExp])[] = [
  ['deleted', (copies) => rmSync(copies.journalFile), /The journal's file was empty. It was written again from the browser: 75 entries/],
  ['cut in the middle of its last line', (copies) => truncateSync(copies.journalFile, statSync(copies.journalFile).size - 30), /the last line was cut off in the middle: entries 1 to 74 can be read; .* One entry was missing in the journal's file and written again/],
  ['cut in the middle of a line half way', (copies) => truncateSync(copies.journalFile, Math.floor(statSync(copies.journalFile).size / 2)), /cut off in the middle: .* missing in the journal's file and written again/],
  ['zeros in its middle', (copies) => zeros(copies.journalFile, Math.floor(statSync(copies.journalFile).size / 2), 512), /a line cannot be read: .* set aside in set-aside\.jsonl\. \d+ entries were missing in the journal's file and written again/],
];

describe('the keeper\'s file is damaged', () => {
  it.each(FILE_DAMAGE)('%s: everything is written again from the browser, and told', { timeout: 60_000 }, async (name, damage, told) => {
    const found = await afterDamage(name, damage);
    expect(found.status.told.join(' ')).toMatch(told);
    expect(found.checksumAt).toBe(written.kept.checksum);
    expect(found.status).toMatchObject({ mode: 'writing', kept: 'twice', warnings: [] });
  });
});

describe('both copies are damaged', () => {
  it('at their ends: what one lacks the other gives, and the one entry that both lost is named', { timeout: 60_000 }, async () => {
    const found = await afterDamage('both', (copies) => {
      truncateSync(inDatabase(copies, /\.log$/), statSync(inDatabase(copies, /\.log$/)).size - 4096);
      truncateSync(copies.journalFile, statSync(copies.journalFile).size - 30);
    });
    // The file ends at 74: the last entry is in neither, and that is said.
    expect(found.length).toBe(74);
    expect(found.status.told.join(' ')).toMatch(/One entry that was kept before \(up to number 75\) can be found in neither copy/);
  });
});

describe('the server is started on another port', () => {
  it('and the page, which then has another database, takes everything over from the file', { timeout: 60_000 }, async () => {
    const copies = copyOf(join(written.workshop.folder, 'another-port'));
    let server: (Running & { readonly address: string }) | undefined;
    try {
      server = await startServerProcess(written.workshop, copies.data, 0);
      const page = openPage(server.address, `look&at=${written.kept.number}`, copies.profile);
      const found = await foundBy(page);
      await page.end();
      expect(found.checksumAt).toBe(written.kept.checksum);
      expect(found.status.told.join(' ')).toMatch(/taken over from the journal's file/);
    } finally {
      await server?.end();
    }
  });
});
