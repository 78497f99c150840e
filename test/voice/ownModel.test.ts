import { writeFile } from 'node:fs/promises';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { loadPiece } from '../../core/piece/load.ts';
import { checkWords } from '../../deploy/model/checkWords.ts';
import { packModel } from '../../deploy/model/pack.ts';
import { ModelShelf } from '../../deploy/model/shelf.ts';
import type { BenchKiosk } from '../../kiosk/kiosk.ts';
import { DEMO_TEXT } from '../core/respond/session.ts';
import { DICTIONARY, foreignFiles } from '../deploy/model/variants.ts';
import { benchNow, inTheShop, loadDemo, openWholeKiosk, type WholeKiosk } from './wholeKiosk.ts';

let kiosk: WholeKiosk;

/** A models folder with a model of the maker's own that lacks two words of the piece, found good, and with one that is no model. */
async function furnish(folder: string): Promise<void> {
  const piece = loadPiece(DEMO_TEXT);
  if (!piece.ok) throw new Error('the demo piece is faulty');
  const words = checkWords(undefined, DICTIONARY, [piece.value]).asked.filter((word) => !['stretcher', 'stretchers'].includes(word));
  const files = await foreignFiles(words);
  const models = join(folder, 'models');
  mkdirSync(models);
  const check = async ({ packTo }: { packTo: string }) => {
    await writeFile(packTo, packModel(files));
    return { faults: [], remarks: [], unheard: [] };
  };
  await new ModelShelf({ folder: models, pieceTexts: () => Promise.resolve([]), check }).takeIn('/elsewhere/own.zip', 'own');
  writeFileSync(join(models, 'broken.zip'), 'no zip');
}

beforeEach(async () => {
  kiosk = await openWholeKiosk(inTheShop('bench, record leg two width three and five sixteenths', { before: 3, after: 5 }), { furnish });
  await loadDemo(kiosk.page);
});
afterEach(() => kiosk.close());

const view = () => kiosk.page.evaluate(() => { const shown = document.querySelector<BenchKiosk>('bench-kiosk')?.view; return { hearing: shown?.hearing, notices: shown?.notices, microphones: shown?.microphones }; });
const dispatch = (type: string, detail: object) => kiosk.page.evaluate(([name, what]) => document.querySelector('bench-kiosk')?.dispatchEvent(new CustomEvent(name, { detail: what })), [type, detail] as const);

test('a model of the maker\'s own is heard with; what it cannot hear of the piece, and one that is refused, are told; trying the microphone writes nothing down', async () => {
  await dispatch('bench-request', { kind: 'show', screen: { name: 'microphone' } });
  // A page that opens in the middle of a sentence may miss the word that addresses the bench; what the rest would do is shown all the same.
  const shown = async () => JSON.stringify((await view()).hearing);
  await expect.poll(shown, { timeout: 150_000, interval: 1_000 }).toMatch(/would write down leg two, width, three, and five sixteenths inches/);
  const { hearing, notices } = await view();
  expect(hearing?.model?.name).toBe('own.tar.gz');
  expect(hearing?.cannotHear).toEqual(['stretcher', 'stretchers']);
  await expect.poll(async () => (await view()).hearing?.trial?.playableSeconds, { timeout: 60_000 }).toBeGreaterThan(2);
  expect(notices).toContainEqual(expect.stringMatching(/I cannot hear “stretcher”, “stretchers”/));
  await expect.poll(async () => (await view()).notices, { timeout: 60_000 }).toContainEqual(expect.stringMatching(/“broken\.zip” is refused\. broken\.zip: it is neither a \.zip nor a \.tar\.gz/));
  expect((await benchNow(kiosk.page)).entries.map(({ kind }) => kind)).toEqual(['piece loaded']);
  await dispatch('bench-act', { kind: 'choose model', name: 'built-in' });
  await expect.poll(async () => (await view()).hearing?.model?.name, { timeout: 60_000 }).toBe('built-in');
  await expect.poll(async () => (await view()).hearing?.cannotHear, { timeout: 60_000 }).toEqual([]);
}, 300_000);
