import { appendFile, readdir, readFile, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { JournalRecord } from '../../core/journal/entry.ts';
import { validPrefix } from '../../core/journal/chain.ts';
import { checksumOf } from '../../core/journal/checksum.ts';
import { JOURNAL_VERSION } from '../../core/journal/migrate.ts';
import { Keeper, type KeeperStatus } from '../../deploy/keeper.ts';
import { journalFile } from '../../deploy/keeperForm.ts';
import { act, ForgetfulDisk, inFolder, journal, numbersFrom } from './help.ts';

const JOURNAL_FILE = journalFile(JOURNAL_VERSION);
const WITHOUT_RESERVE = { reserveBytes: 0 };

async function recordsOf(keeper: Keeper, after = 0): Promise<readonly JournalRecord[]> {
  const lines = (await keeper.linesAfter(after)).toString('utf8').split('\n').filter((line) => line !== '');
  return lines.flatMap((line) => JSON.parse(line) as JournalRecord[]);
}

/** What a keeper opened anew says. */
async function statusIn(folder: string): Promise<KeeperStatus> {
  const keeper = await open(folder);
  await keeper.close();
  return keeper.status;
}

const open = (folder: string, options = {}) => Keeper.open(folder, { ...WITHOUT_RESERVE, ...options });

describe('the keeper\'s file', () => {
  it('holds after closing and opening what was added, one line an act', () => inFolder(async (folder) => {
    const records = journal(7);
    const keeper = await open(folder);
    for (const record of records.filter(({ number, act: first }) => number === first)) await keeper.append(records.filter((other) => other.act === record.act));
    await keeper.close();
    expect((await readFile(join(folder, JOURNAL_FILE), 'utf8')).trimEnd().split('\n')).toHaveLength(7);
    const again = await open(folder);
    expect(again.status).toEqual({ lastNumber: records.length, lastChecksum: records.at(-1)?.checksum, told: [] });
    expect(await recordsOf(again)).toEqual(records);
    expect((await recordsOf(again, 5)).at(-1)).toEqual(records.at(-1));
    expect((await recordsOf(again, records.length))).toEqual([]);
    await again.close();
  }));

  it('takes the same records twice and keeps them once', () => inFolder(async (folder) => {
    const records = journal(3);
    const keeper = await open(folder);
    await keeper.append(records);
    await keeper.append(records);
    await keeper.append(records.slice(1));
    expect(await recordsOf(keeper)).toEqual(records);
    await keeper.close();
  }));

  it('refuses a gap, other content under a number it has, and a record of another history', () => inFolder(async (folder) => {
    const records = journal(3);
    const keeper = await open(folder);
    await keeper.append(records.slice(0, 2));
    await expect(keeper.append(records.slice(3))).rejects.toMatchObject({ status: 409, message: 'The journal\'s file ends with entry 2: entry 3 was expected next, not 4.' });
    await expect(keeper.append(act(records[0] ?? null, 'other'))).rejects.toMatchObject({ status: 409 });
    const stranger = act({ number: 2, checksum: 'ffffffff' }, 'other');
    await expect(keeper.append(stranger)).rejects.toMatchObject({ status: 409 });
    expect(await recordsOf(keeper)).toEqual(records.slice(0, 2));
    await keeper.close();
  }));

  it('sets a last line that was cut off aside, says so, and goes on after the sound part', () => inFolder(async (folder) => {
    const records = journal(4);
    const keeper = await open(folder);
    await keeper.append(records);
    await keeper.close();
    const path = join(folder, JOURNAL_FILE);
    const whole = await readFile(path);
    await truncate(path, whole.length - 20);
    const again = await open(folder);
    expect(again.status.lastNumber).toBe(4);
    expect(again.status.told).toEqual([expect.stringMatching(/^In the journal's file the last line was cut off in the middle: entries 1 to 4 can be read; the \d+ bytes after that were set aside in set-aside\.jsonl\.$/)]);
    const aside = await readFile(join(folder, 'set-aside.jsonl'));
    expect(whole.subarray(whole.lastIndexOf('\n', whole.length - 2) + 1, whole.length - 20)).toEqual(aside);
    await again.append(records.slice(4));
    expect(await recordsOf(again)).toEqual(records);
    await again.close();
    expect(await statusIn(folder)).toMatchObject({ told: [] });
  }));

  it('takes a last line that only lacks its line end, and ends it', () => inFolder(async (folder) => {
    const records = journal(2);
    const keeper = await open(folder);
    await keeper.append(records);
    await keeper.close();
    const path = join(folder, JOURNAL_FILE);
    await truncate(path, (await readFile(path)).length - 1);
    const again = await open(folder);
    expect(again.status).toMatchObject({ lastNumber: 2, told: [] });
    await again.append(act(records.at(-1) ?? null, 'one more'));
    await again.close();
    expect(await statusIn(folder)).toMatchObject({ lastNumber: 3 });
  }));

  it.each([
    ['zeros over a line in the middle', (text: string) => text.replace(/\n.{40}/, `\n${'\0'.repeat(40)}`), 'after entry 1 a line cannot be read'],
    ['a figure changed by hand', (text: string) => text.replace('2th', '9th'), 'entry 2 is damaged'],
    ['a line taken out', (text: string) => text.split('\n').filter((_line, index) => index !== 1).join('\n'), 'entry 2 is missing'],
    ['a line that is not a list', (text: string) => text.replace(/\n\[/, '\n{}\n['), 'after entry 1 a line holds no entries'],
  ])('keeps the sound beginning and sets the rest aside: %s', (_name, damage, words) => inFolder(async (folder) => {
    const keeper = await open(folder);
    await keeper.append(journal(5));
    await keeper.close();
    const path = join(folder, JOURNAL_FILE);
    const damaged = damage(await readFile(path, 'utf8'));
    await writeFile(path, damaged);
    const again = await open(folder);
    expect(again.status.lastNumber).toBe(1);
    expect(again.status.told[0]).toContain(words);
    expect(await readFile(join(folder, 'set-aside.jsonl'), 'utf8')).toBe(damaged.slice(damaged.indexOf('\n') + 1));
    await again.close();
  }));

  it('moves records out of the journal only for one who has seen where it ends', () => inFolder(async (folder) => {
    const records = journal(3);
    const keeper = await open(folder);
    await keeper.append(records);
    const end = { lastNumber: keeper.status.lastNumber, lastChecksum: keeper.status.lastChecksum };
    await expect(keeper.setAsideAfter(1, { ...end, lastChecksum: '00000000' })).rejects.toMatchObject({ status: 409 });
    await keeper.setAsideAfter(1, end);
    expect(await recordsOf(keeper)).toEqual(records.slice(0, 1));
    expect(await readFile(join(folder, 'set-aside.jsonl'), 'utf8')).toContain('the 2th measurement');
    await keeper.append(records.slice(1));
    await keeper.close();
    expect(await statusIn(folder)).toMatchObject({ lastNumber: records.length });
  }));

  it('does not touch a journal that a newer bench has written', () => inFolder(async (folder) => {
    await writeFile(join(folder, 'journal-99.jsonl'), 'anything');
    await expect(open(folder)).rejects.toThrow(/written by a newer Benchcall \(journal-99\.jsonl\)/);
    expect(await readdir(folder)).toEqual(['journal-99.jsonl']);
  }));

  it('brings a journal of an older form up into a file of its own, and leaves the older file as it was', () => inFolder(async (folder) => {
    const old = { number: 1, act: 1, at: journal(1)[0]?.at, entry: { kind: 'noted', words: 'the older form said words' }, before: '' };
    const older = `${JSON.stringify([{ ...old, checksum: checksumOf(old as never) }])}\n`;
    await writeFile(join(folder, journalFile(1)), older);
    const form = { present: 2, migrations: [{ to: 2, why: 'words are called text', entry: ({ words, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, text: words }) }] };
    const keeper = await open(folder, { form });
    expect((await recordsOf(keeper)).map(({ entry }) => entry)).toEqual([{ kind: 'noted', text: 'the older form said words' }]);
    expect(keeper.status.told).toEqual(['The journal was brought from form 1 to form 2. The older file is kept beside it.']);
    await keeper.append(act((await recordsOf(keeper)).at(-1) ?? null, 'and the newer goes on'));
    await keeper.close();
    expect(await readFile(join(folder, journalFile(1)), 'utf8')).toBe(older);
    expect((await open(folder, { form }).then(async (again) => again.close().then(() => again.status)))).toMatchObject({ lastNumber: 2, told: [] });
  }));

  it('refuses to add to a file that another program has changed meanwhile', () => inFolder(async (folder) => {
    const keeper = await open(folder);
    await keeper.append(journal(1));
    await appendFile(join(folder, JOURNAL_FILE), 'something\n');
    await expect(keeper.append(act(journal(1).at(-1) ?? null, 'two'))).rejects.toMatchObject({ status: 503, message: expect.stringContaining('another program has changed it') as string });
    await keeper.close();
  }));
});

describe('a disk that is full', () => {
  it('leaves no half line behind, says what to do, and takes the same entries when there is room again', () => inFolder(async (folder) => {
    const disk = new ForgetfulDisk();
    const records = journal(3);
    const keeper = await open(folder, { files: disk });
    await keeper.append(records.slice(0, 1));
    const before = await readFile(join(folder, JOURNAL_FILE));
    disk.faults.full = 0.6;
    await expect(keeper.append(records)).rejects.toMatchObject({ status: 507, message: 'The disk is full: delete or move something, then go on; nothing written before is lost.' });
    expect(await readFile(join(folder, JOURNAL_FILE))).toEqual(before);
    expect(keeper.status.problem).toContain('the disk is full');
    disk.faults.full = undefined;
    await keeper.append(records);
    expect(keeper.status.problem).toBeUndefined();
    expect(await recordsOf(keeper)).toEqual(records);
    await keeper.close();
  }));

  it('gives up the room kept in reserve for the last entries, once, and says so', () => inFolder(async (folder) => {
    const disk = new ForgetfulDisk();
    const keeper = await Keeper.open(folder, { files: disk, reserveBytes: 1024 });
    expect(await readdir(folder)).toContain('reserve');
    disk.faults.full = 0.5;
    let writes = 0;
    disk.faults.before = (call) => {
      // There is room again by the second attempt: the reserve has been given up in between.
      if (call === 'write') writes += 1;
      if (writes === 2) disk.faults.full = undefined;
    };
    await keeper.append(journal(1));
    expect(keeper.status.told).toEqual([expect.stringContaining('The room kept in reserve was used up')]);
    expect(await readdir(folder)).not.toContain('reserve');
    await keeper.close();
  }));
});

describe('a disk that fails', () => {
  const failure = Object.assign(new Error('EIO: i/o error'), { code: 'EIO' });

  /** Adds ten acts while the n-th changing call fails (and, when `always`, all after it); gives what was answered for. */
  async function work(folder: string, disk: ForgetfulDisk, nth: number, always: boolean): Promise<{ acknowledged: number; calls: number }> {
    const records = journal(10);
    let calls = 0;
    let acknowledged = 0;
    disk.faults.before = () => {
      calls += 1;
      if (calls === nth || (always && calls > nth)) throw failure;
    };
    const keeper = await open(folder, { files: disk }).catch(() => undefined);
    for (let upTo = 1; keeper && upTo <= records.length; upTo += 1) {
      await keeper.append(records.slice(acknowledged, upTo)).then((status) => (acknowledged = status.lastNumber), () => undefined);
    }
    if (!always) acknowledged = (await keeper?.append(records))?.lastNumber ?? records.length;
    delete disk.faults.before;
    await keeper?.close();
    return { acknowledged, calls };
  }

  it.each([false, true])('keeps what it answered for, whichever call fails (and all after it: %s)', { timeout: 60_000 }, async (always) => {
    for (let nth = 1; ; nth += 1) {
      const done = await inFolder(async (folder) => {
        const disk = new ForgetfulDisk();
        const { acknowledged, calls } = await work(folder, disk, nth, always);
        const again = await open(folder);
        expect(again.status.lastNumber, `call ${nth}`).toBeGreaterThanOrEqual(acknowledged);
        if (!always && calls >= nth) expect(acknowledged, `after one failure, call ${nth}, it goes on`).toBe(journal(10).length);
        expect(validPrefix(await recordsOf(again)).records).toHaveLength(again.status.lastNumber);
        await again.close();
        return calls < nth;
      });
      if (done) break;
    }
  });

  it('keeps what it answered for through a hundred and fifty power cuts in the middle of work', { timeout: 60_000 }, async () => {
    const random = numbersFrom(20261125);
    for (let round = 0; round < 150; round += 1) {
      await inFolder(async (folder) => {
        const disk = new ForgetfulDisk();
        const records = journal(8);
        const keeper = await open(folder, { files: disk });
        let acknowledged = 0;
        const stopAt = 1 + Math.floor(random() * 24);
        let calls = 0;
        disk.faults.before = () => {
          calls += 1;
          // The power goes: nothing more reaches the disk.
          if (calls >= stopAt) throw failure;
        };
        for (let upTo = 1; upTo <= records.length; upTo += 1) {
          await keeper.append(records.slice(0, upTo)).then((status) => (acknowledged = status.lastNumber), () => undefined);
        }
        await keeper.close();
        await disk.cutPower(join(folder, JOURNAL_FILE), random);
        const again = await open(folder);
        const found = await recordsOf(again);
        expect(found.length).toBeGreaterThanOrEqual(acknowledged);
        expect(found).toEqual(records.slice(0, found.length));
        await again.close();
      });
    }
  });
});
