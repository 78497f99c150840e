import { mkdir, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../../deploy/model/check.ts';
import { checkApart, type CheckAsked } from '../../../deploy/model/checkApart.ts';
import { listModels } from '../../../deploy/model/listing.ts';
import { packModel } from '../../../deploy/model/pack.ts';
import { ModelShelf } from '../../../deploy/model/shelf.ts';
import { inFolder } from '../help.ts';
import { foreignFiles, namedInGrammar, BENCH_WORDS } from './variants.ts';
import { DEMO_TEXT } from '../../core/respond/session.ts';

const GOOD: Verdict = { faults: [], remarks: [], unheard: [] };
const BAD: Verdict = { faults: [{ where: 'x', what: 'it is bad', todo: 'Take another.' }], remarks: [], unheard: [] };

/** A models folder whose checks come to what is told, and how often there was one. */
function shelfOn(folder: string, verdicts: Readonly<Record<string, Verdict>>): { shelf: ModelShelf; checks: string[] } {
  const checks: string[] = [];
  const check = async ({ path, packTo }: CheckAsked) => {
    const name = path.slice(path.lastIndexOf('/') + 1);
    checks.push(name);
    const verdict = verdicts[name] ?? BAD;
    if (verdict === GOOD) await writeFile(packTo, `packed ${name}`);
    return verdict;
  };
  return { shelf: new ModelShelf({ folder, pieceTexts: () => Promise.resolve([]), check }), checks };
}

const standing = async (shelf: ModelShelf) => (await listModels(shelf)).map(({ name, chosen, state }) => `${name} ${state}${chosen ? ', chosen' : ''}`);

describe('the models folder', () => {
  it('begins with the model that ships, and a good one that is put into it is chosen', () => inFolder(async (folder) => {
    const { shelf } = shelfOn(folder, { 'good.zip': GOOD });
    expect(await standing(shelf)).toEqual(['built-in good, chosen']);
    await writeFile(join(folder, 'good.zip'), 'x');
    expect(await standing(shelf)).toEqual(['built-in good, chosen', 'good.zip not checked yet']);
    await shelf.checkNew();
    expect(await standing(shelf)).toEqual(['built-in good', 'good.zip good, chosen']);
  }));

  it('goes on with the model that there was when a bad one is put into it', () => inFolder(async (folder) => {
    const { shelf } = shelfOn(folder, { 'good.zip': GOOD });
    await writeFile(join(folder, 'good.zip'), 'x');
    await shelf.checkNew();
    await mkdir(join(folder, 'large model'));
    await writeFile(join(folder, 'rar.rar'), 'x');
    await writeFile(join(folder, 'notes.txt'), 'x');
    await shelf.checkNew();
    expect(await standing(shelf)).toEqual(['built-in good', 'good.zip good, chosen', 'large model refused', 'rar.rar refused']);
    expect((await listModels(shelf)).at(-1)?.sentences).toEqual(['x: it is bad. Take another.']);
  }));

  it('checks a model once, and again only when it has changed', () => inFolder(async (folder) => {
    const { shelf, checks } = shelfOn(folder, { 'good.zip': GOOD });
    await writeFile(join(folder, 'good.zip'), 'x');
    await Promise.all([shelf.checkNew(), shelf.checkNew()]);
    await shelf.checkNew();
    expect(checks).toEqual(['good.zip']);
    await utimes(join(folder, 'good.zip'), 1, 1);
    expect(await standing(shelf)).toEqual(['built-in good, chosen', 'good.zip not checked yet']);
    await shelf.checkNew();
    expect(checks).toHaveLength(2);
  }));

  it('keeps to the built-in model when that was chosen, until a new one comes', () => inFolder(async (folder) => {
    const { shelf } = shelfOn(folder, { 'one.zip': GOOD, 'two.zip': GOOD });
    await writeFile(join(folder, 'one.zip'), 'x');
    await shelf.checkNew();
    expect(await shelf.choose(null)).toBe(true);
    await shelf.checkNew();
    expect(await standing(shelf)).toEqual(['built-in good, chosen', 'one.zip good']);
    await writeFile(join(folder, 'two.zip'), 'x');
    await shelf.checkNew();
    expect(await standing(shelf)).toEqual(['built-in good', 'one.zip good', 'two.zip good, chosen']);
    expect(await shelf.choose('three.zip')).toBe(false);
    await rm(join(folder, 'two.zip'));
    await shelf.checkNew();
    expect(await standing(shelf)).toEqual(['built-in good, chosen', 'one.zip good']);
    expect((await readdir(join(folder, '.checked'))).filter((name) => name.endsWith('.tar.gz'))).toHaveLength(1);
  }));

  it('takes a model in from elsewhere when it is good, and leaves everything as it was when not', () => inFolder(async (folder) => {
    const { shelf, checks } = shelfOn(folder, { 'good.zip': GOOD });
    expect((await shelf.takeIn('/elsewhere/bad.zip', 'bad')).faults).toHaveLength(1);
    expect(await standing(shelf)).toEqual(['built-in good, chosen']);
    await shelf.takeIn('/elsewhere/good.zip', 'good');
    expect(await standing(shelf)).toEqual(['built-in good', 'good.tar.gz good, chosen']);
    await shelf.checkNew();
    expect(checks).toEqual(['bad.zip', 'good.zip']);
  }));
});

describe('the check of a model, in the engine itself', () => {
  it('finds one good that names its words in its grammar, and tells what of the piece it cannot hear', () => inFolder(async (folder) => {
    const path = join(folder, 'own.tar.gz');
    const words = BENCH_WORDS.filter((word) => word !== 'chisel');
    await writeFile(path, packModel(await namedInGrammar(words)));
    const verdict = await checkApart({ path, pieceTexts: [DEMO_TEXT], packTo: join(folder, 'packed.tar.gz') });
    expect(verdict.faults).toEqual([]);
    expect(verdict.facts?.heard).toBeGreaterThanOrEqual(4);
    expect(verdict.facts?.words).toBeGreaterThan(300);
    expect(verdict.unheard).toContain('chisel');
    expect(verdict.unheard).toContain('stretcher');
    expect(verdict.remarks).toContainEqual(expect.stringMatching(/It cannot hear .*chisel.*Use the keys/));
  }), 200_000);

  it('refuses one whose files look right and that the engine cannot load', () => inFolder(async (folder) => {
    const files = new Map(await foreignFiles());
    const network = Uint8Array.from(files.get('am/final.mdl') ?? []);
    network.fill(0x7f, 60_000, 200_000);
    const path = join(folder, 'bad.tar.gz');
    await writeFile(path, packModel(files.set('am/final.mdl', network)));
    const verdict = await checkApart({ path, pieceTexts: [], packTo: join(folder, 'packed.tar.gz') });
    expect(verdict.faults).toEqual([expect.objectContaining({ where: 'the engine', what: expect.stringContaining('cannot be loaded') as string })]);
  }), 200_000);

  it('ends at its deadline, whatever the model does', async () => {
    const verdict = await checkApart({ path: '/dev/zero', pieceTexts: [], packTo: '/nowhere/x' }, 300);
    expect(verdict.faults).toEqual([expect.objectContaining({ what: expect.stringContaining('did not end within') as string })]);
  });
});
