import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { foldersFrom } from '../../deploy/folders.ts';
import { takeLock } from '../../deploy/lock.ts';
import { readClock, type Machine } from '../../deploy/machineClock.ts';
import { inFolder } from './help.ts';

const WALL = Date.UTC(2027, 2, 1, 18, 30);

function machine(files: Record<string, string>, wallMs = WALL): Machine {
  return { wallMs: () => wallMs, readText: (file) => files[file], exists: (file) => file in files, processMs: () => 4_321 };
}

const LINUX = { '/proc/sys/kernel/random/boot_id': 'b1c2\n', '/proc/uptime': '350735.47 234388.90\n' };
const RTC = '/sys/class/rtc/rtc0/since_epoch';

describe('the machine\'s clocks', () => {
  // proc(5): /proc/uptime gives seconds since boot, sleep included; random(4): boot_id is made anew at each boot.
  it('give the boot and the milliseconds since it', () => {
    expect(readClock(machine(LINUX))).toMatchObject({ bootId: 'b1c2', monotonicMs: 350_735_470, wallMs: WALL });
  });

  it('make each start of the server a boot where the system tells neither', () => {
    expect(readClock(machine({}))).toMatchObject({ bootId: expect.stringMatching(/^server \d+/) as string, monotonicMs: 4_321, wallTrusted: false });
  });

  // systemd-timesyncd.service(8): /run/systemd/timesync/synchronized is touched on each synchronisation.
  it.each([
    ['set by a time server', { '/run/systemd/timesync/synchronized': '' }, WALL, 0, true],
    ['kept by a battery', { [RTC]: `${WALL / 1000}\n` }, WALL, 0, true],
    ['a battery clock that says something else', { [RTC]: '86400\n' }, WALL, 0, false],
    ['neither', {}, WALL, 0, false],
    ['set by a time server, yet before a time that has been', { '/run/systemd/timesync/synchronized': '' }, WALL, WALL + 1, false],
    ['never set', { [RTC]: '100\n' }, 100_000, 0, false],
  ])('say whether the wall clock can be believed: %s', (_name, files, wallMs, seenMs, trusted) => {
    expect(readClock(machine({ ...LINUX, ...files }, wallMs), seenMs).wallTrusted).toBe(trusted);
  });
});

describe('the lock', () => {
  it('is held once, and free again when released', () => inFolder(async (folder) => {
    const file = join(folder, 'lock');
    const first = await takeLock(file);
    expect(first).toHaveProperty('lock');
    expect(await takeLock(file)).toMatchObject({ heldBy: { pid: process.pid } });
    if ('lock' in first) await first.lock.release();
    expect(await takeLock(file)).toHaveProperty('lock');
  }));

  it.each([
    ['a process that is gone', JSON.stringify({ pid: 2 ** 22 - 3, started: '1', bootId: '', address: '' })],
    ['a number that another process has now', JSON.stringify({ pid: process.ppid, started: '1', bootId: '', address: '' })],
    ['a boot that is over', JSON.stringify({ pid: process.pid, started: '', bootId: 'another', address: '' })],
    ['nobody: half written', '{"pid":'],
  ])('is taken over from %s', (_name, text) => inFolder(async (folder) => {
    const { heldBy } = (await takeLock(join(folder, 'probe')).then(() => takeLock(join(folder, 'probe')))) as { heldBy: { bootId: string } };
    await writeFile(join(folder, 'lock'), text.replace('"bootId":""', `"bootId":"${heldBy.bootId}"`));
    expect(await takeLock(join(folder, 'lock'))).toHaveProperty('lock');
  }));

  it('goes to one of ten who ask at once', () => inFolder(async (folder) => {
    await mkdir(folder, { recursive: true });
    const taken = await Promise.all(Array.from({ length: 10 }, () => takeLock(join(folder, 'lock'))));
    expect(taken.filter((one) => 'lock' in one)).toHaveLength(1);
  }));
});

describe('the folders', () => {
  it('follow the desktop\'s data folder and can be named', () => {
    expect(foldersFrom({ XDG_DATA_HOME: '/data' })).toEqual({ journal: '/data/benchcall/journal', pieces: '/data/benchcall/pieces', models: '/data/benchcall/models' });
    expect(foldersFrom({ BENCHCALL_DATA: '/srv/bench', BENCHCALL_PIECES: '/home/me/pieces' })).toEqual({ journal: '/srv/bench/journal', pieces: '/home/me/pieces', models: '/srv/bench/models' });
  });
});
