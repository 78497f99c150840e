import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { JOINT_RECKONINGS } from '../../core/joint/reckonings.ts';

/** The command as it is typed. */
function reckon(...words: readonly string[]): { readonly status: number | null; readonly out: string; readonly told: string } {
  const command = join(import.meta.dirname, '..', '..', 'deploy', 'reckon.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', command, ...words], { encoding: 'utf8' });
  return { status, out: stdout, told: stderr };
}

const RAIL = ['rail.width=4 in', 'rail.thickness=7/8 in', 'leg.into=2 in'];

describe('reckoning from the command line', () => {
  test('without a name lists everything, with inputs, units and defaults', () => {
    const { status, out } = reckon();
    expect(status).toBe(0);
    for (const { name, inputs } of JOINT_RECKONINGS) for (const word of [name, ...Object.keys(inputs)]) expect(out).toContain(word);
    expect(out).toContain('1/4 in, 3/8 in, 1/2 in when not given');
  }, 60_000);

  test('answers in JSON: result, unit, how and source', () => {
    const { status, out } = reckon('mortise-and-tenon', ...RAIL);
    const answer = JSON.parse(out) as { readonly result: Readonly<Record<string, unknown>>; readonly unit: string; readonly how: readonly string[]; readonly source: readonly string[] };
    expect([status, answer.unit]).toEqual([0, 'in']);
    expect(answer.result['tenonThickness']).toEqual({ value: 0.25, written: '1/4 in', nanometres: 6_350_000 });
    // 7/8 of 2 in is 1 3/4; less the clearance of 1/16.
    expect(answer.result['tenonLength']).toMatchObject({ written: '1 11/16 in' });
    expect(answer.how.join(' ')).toMatch(/Noyes/);
    expect(answer.source).toContain('Fairham, Woodwork Joints');
  }, 60_000);

  test('in millimetres, bare numbers are millimetres', () => {
    const { out } = reckon('racking', 'in=mm', 'tenonLength=40', 'tenonWidth=50', 'tenonThickness=10', 'species=beech');
    expect(JSON.parse(out)).toMatchObject({ unit: 'mm', result: { asked: { value: 52.5, unit: 'N·m' } }, warnings: [expect.stringContaining('not an approval')] });
  }, 60_000);

  test.each([
    [['tenon'], /Nothing is reckoned under the name “tenon”.*mortise-and-tenon/],
    [['mortise-and-tenon', ...RAIL, 'setback=-1/8 in'], /setback: .*proud of the leg/],
    [['mortise-and-tenon', ...RAIL, 'chisels=none'], /chisels: No chisel is given/],
    [['mortise-and-tenon', 'rail.width=4'], /rail\.width: .*unit is missing[\s\S]*rail\.thickness: .*is missing/],
    [['mortise-and-tenon', 'rail.width', '4 in'], /Expected key=value/],
    [['tenons-meeting', 'rail.width=4 in', 'rail.thickness=7/8 in', 'leg.into=1 in', 'setback=0 in', 'web=1/2 in', 'ends=square'], /ends: There is no room/],
    [['bevel', 'in=feet'], /in: expected in or mm/],
  ])('what cannot be is told, and nothing is printed: %j', (words, sentence) => {
    const { status, out, told } = reckon(...words);
    expect([status, out]).toEqual([1, '']);
    expect(told).toMatch(sentence);
  }, 60_000);
});
