import { spawnSync } from 'node:child_process';
import { closeSync, mkdirSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inWorkshop, keptAtLeast, lastKept, look, openPage, startServerProcess, type Running } from './bench.ts';

/** A small disk of its own, in memory; only root may make one. */
async function onSmallDisk(folder: string, megabytes: number, work: (disk: string) => Promise<void>): Promise<void> {
  const disk = join(folder, 'disk');
  mkdirSync(disk);
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'benchcall-test', disk]).status !== 0) throw new Error('the small disk could not be made');
  try {
    await work(disk);
  } finally {
    spawnSync('umount', ['--lazy', disk]);
  }
}

function whyNoSmallDisk(): string | undefined {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return 'only root on Linux can make a small disk to fill';
  const probe = join('/tmp', `benchcall-probe-${process.pid}`);
  mkdirSync(probe);
  const made = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'benchcall-test', probe]).status === 0;
  if (made) spawnSync('umount', [probe]);
  rmSync(probe, { recursive: true, force: true });
  return made ? undefined : 'this machine does not let a small disk be made';
}

/** Writes until the disk takes no more. */
function fill(file: string): void {
  const opened = openSync(file, 'w');
  for (let size = 1024 * 1024; size >= 1; size = Math.floor(size / 4)) {
    try {
      for (;;) writeSync(opened, Buffer.alloc(size, 'full'));
    } catch {
      // A smaller piece may still go in.
    }
  }
  closeSync(opened);
}

function countOf(page: Running, pattern: RegExp): number {
  return page.lines.filter((line) => pattern.test(line)).length;
}

const because = whyNoSmallDisk();

describe.skipIf(because !== undefined)(`the disk is full${because === undefined ? '' : ` (${because})`}`, () => {
  it('what is refused is said and not half kept, what was kept stays, and it goes on when there is room', { timeout: 120_000 }, () => inWorkshop((workshop) => onSmallDisk(workshop.folder, 96, async (disk) => {
    const [profile, data, filler] = [join(disk, 'profile'), join(disk, 'data'), join(disk, 'filler')];
    const server = await startServerProcess(workshop, data);
    const page = openPage(server.address, 'slowly', profile);
    await keptAtLeast(page, 5);
    fill(filler);
    const [, refusal = ''] = await page.line(/KEEPING refused (.*?) END/);
    const { message, status } = JSON.parse(refusal) as { message: string; status: { warnings: readonly string[] } };
    expect(message).toMatch(/could not be written down and is not kept: .*disk is full/);
    expect(status.warnings.join(' ')).toMatch(/delete or move something.*Nothing can be written down until that is put right/);
    const before = lastKept(page);
    rmSync(filler);
    const soFar = countOf(page, /KEEPING kept/);
    await keptAtLeast(page, soFar + 3);
    await page.kill();
    await server.kill();
    const kept = lastKept(page);
    expect(kept.number).toBeGreaterThan(before.number);
    const again = await startServerProcess(workshop, data, Number(new URL(server.address).port));
    const found = await look(again.address, profile, `at=${kept.number}`);
    await again.kill();
    expect(found.checksumAt, JSON.stringify(found)).toBe(kept.checksum);
    expect([found.folded, found.status.kept]).toEqual([found.length, 'twice']);
  })));

  it('the last entries still find room in the reserve, and the person is told in time', { timeout: 120_000 }, () => inWorkshop((workshop) => onSmallDisk(workshop.folder, 128, async (disk) => {
    const [profile, data] = [join(workshop.folder, 'profile'), join(disk, 'data')];
    const server = await startServerProcess(workshop, data, 0, [], 1024 * 1024);
    expect(statSync(join(data, 'journal', 'reserve')).size).toBe(1024 * 1024);
    const page = openPage(server.address, 'slowly', profile);
    await keptAtLeast(page, 2);
    fill(join(disk, 'filler'));
    await page.line(/KEEPING changed .*The room kept in reserve was used up for the last entries: make room on the disk soon/);
    await keptAtLeast(page, countOf(page, /KEEPING kept/) + 5);
    expect(countOf(page, /KEEPING refused/)).toBe(0);
    await page.kill();
    const kept = lastKept(page);
    const found = await look(server.address, profile, `at=${kept.number}`);
    await server.kill();
    expect([found.checksumAt, found.status.kept]).toEqual([kept.checksum, 'twice']);
  })));
});
