import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'cut-plan-'));
afterAll(() => { rmSync(folder, { recursive: true }); });

const ROOT = join(import.meta.dirname, '..', '..');
const DEMO = join(ROOT, 'core', 'piece', 'demo', 'bakers-work-table.json');

/** The command as it is typed. */
function cutPlan(words: readonly string[]): { readonly status: number | null; readonly out: string; readonly told: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', join(ROOT, 'deploy', 'cutPlan.ts'), ...words], { encoding: 'utf8' });
  return { status, out: stdout, told: stderr };
}

function table(name: string, lines: readonly string[]): string {
  const path = join(folder, name);
  writeFileSync(path, ['board,species,length,width,thickness,defects', ...lines].join('\r\n'));
  return path;
}

describe('a cutting plan from the command line', () => {
  test('plans the demo table, tells every cut, writes the parts to a table, and never over one that is there', () => {
    const boards = table('boards.csv', [
      '1,hard maple,100 in,11 in,5/4,"knot 36 in to 38 in, 1 in to 2 in"', '2,hard maple,100 in,11 in,5/4,', '3,hard maple,120 in,8 1/2 in,6/4,', '4,hard maple,96 in,8 1/2 in,6/4,',
      '5,hard maple,130 in,11 in,8/4,', '6,hard maple,70 in,11 in,8/4,', '7,hard maple,40 in,5 in,4/4,',
    ]);
    const out = join(folder, 'plan.csv');
    const { status, out: told } = cutPlan(['--piece', DEMO, '--boards', boards, '--seconds', '2', '--out', out]);
    expect(status).toBe(0);
    expect(told).toMatch(/Best possible is \d boards; this plan uses \d\.|This plan uses \d; no plan cut in these stages does with less than \d boards\./);
    expect(told).toMatch(/cut 1: crosscut at 1 in from the marked end/);
    const rows = readFileSync(out, 'utf8').trim().split('\r\n');
    expect(rows[0]).toBe('board,cut,part,from marked end,from reference edge,length,width,is cut');
    // 12 leg layers, 2 and 2 rails, 2 and 1 stretchers, 6 boards of the top, 12 buttons.
    expect(rows).toHaveLength(1 + 12 + 4 + 3 + 6 + 12);
    expect(cutPlan(['--piece', DEMO, '--boards', boards, '--out', out])).toMatchObject({ status: 1, out: '' });
  }, 60_000);

  test('plans parts from a table, and tells faults in both tables at once', () => {
    const parts = join(folder, 'parts.csv');
    writeFileSync(parts, 'part,count,species,length,width,thickness\r\nrail,3,cherry,30 in,3 in,1 in\r\n');
    const boards = table('cherry.csv', ['1,cherry,96 in,8 in,4/4,']);
    const { status, out } = cutPlan(['--parts', parts, '--boards', boards, '--seconds', '1']);
    expect([status, out.match(/^ {2}rail: /gm)?.length]).toEqual([0, 3]);
    writeFileSync(parts, 'part,count,species,length,width,thickness\r\nrail,none,cherry,30 in,3 in,1 in\r\n');
    const { told } = cutPlan(['--parts', parts, '--boards', table('bad2.csv', ['1,cherry,long,8 in,4/4,'])]);
    expect(told).toMatch(/parts\.csv: Line 2: count[\s\S]*bad2\.csv: Line 2: length/);
  }, 60_000);

  test('says every fault of the table by its line, and plans nothing', () => {
    const boards = table('bad.csv', ['1,hard maple,100 in,0 in,5/4,', '2,hard maple,long,6 in,5/4,']);
    const { status, out, told } = cutPlan(['--piece', DEMO, '--boards', boards, '--grade', 'prime']);
    expect([status, out]).toEqual([1, '']);
    expect(told).toContain('Line 2: width');
    expect(told).toContain('Line 3: length');
    expect(told).toContain('--grade: expected one of FAS');
  }, 60_000);
});
