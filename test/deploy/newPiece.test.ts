import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { loadPiece } from '../../core/piece/load.ts';

const folder = mkdtempSync(join(tmpdir(), 'new-piece-'));
afterAll(() => { rmSync(folder, { recursive: true }); });

/** The command as it is typed. */
function newPiece(words: readonly string[], typed = ''): { readonly status: number | null; readonly out: string; readonly told: string } {
  const command = join(import.meta.dirname, '..', '..', 'deploy', 'newPiece.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', command, ...words], { input: typed, encoding: 'utf8' });
  return { status, out: stdout, told: stderr };
}

describe('a piece from the command line', () => {
  test('prints a file that loads', () => {
    const { status, out } = newPiece(['inside.length=4 ft', 'stretchers=sides']);
    const loaded = loadPiece(out);
    expect([status, loaded.ok]).toEqual([0, true]);
    expect(loaded.ok && loaded.value.file.parameters['inside.length']).toMatchObject({ is: '48 in' });
  }, 60_000);

  test('writes a file, and never over one that is there', () => {
    const file = join(folder, 'table.json');
    expect(newPiece(['--out', file, '--unit', 'mm', 'height=750']).status).toBe(0);
    const before = readFileSync(file, 'utf8');
    expect(before).toContain('"750 mm"');
    const again = newPiece(['--out', file]);
    expect(again.status).toBe(1);
    expect(again.told).toContain('is there already and is left as it is');
    expect(readFileSync(file, 'utf8')).toBe(before);
  }, 60_000);

  test('says everything that is wrong, and prints nothing', () => {
    const { status, out, told } = newPiece(['hieght=30 in', 'layers=1']);
    expect([status, out]).toEqual([1, '']);
    expect(told).toContain('Did you mean height?');
    expect(told).toContain('a whole number from 2 to 6');
    expect(newPiece(['height']).told).toContain('Expected name=value, found "height"');
    expect(newPiece(['--unit', 'furlong']).told).toContain('Expected --unit in or --unit mm');
    expect(newPiece(['--wrong']).told).toContain('--wrong');
  }, 60_000);

  test('asks for one thing after the other, and again after a wrong answer', () => {
    const answers = ['My table', 'wide', '44 in', '', '', '', '', 'solid', '', '', '', '', '', '', ''];
    const { status, out, told } = newPiece([], `${answers.join('\n')}\n\n`);
    expect(status).toBe(0);
    expect(told).not.toContain('layers in a leg');
    expect(told).toContain('rough thickness of the stock for the legs');
    const loaded = loadPiece(out);
    expect(loaded.ok && [loaded.value.file.name, loaded.value.file.parameters['inside.length'], loaded.value.file.parts[0]?.made.kind]).toEqual(['My table', expect.objectContaining({ is: '44 in' }), 'solid']);
  }, 60_000);

  test('makes nothing when the answers end too soon', () => {
    const { status, out, told } = newPiece([], 'My table\n');
    expect([status, out]).toEqual([1, '']);
    expect(told).toContain('the answers ended too soon');
  }, 60_000);
});
