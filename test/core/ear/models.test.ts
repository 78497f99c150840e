import { afterEach, expect, it, vi } from 'vitest';
import { chooseModel, currentModel, listModels } from '../../../kiosk/ear/models.ts';

const SHIPPED = { name: 'built-in', url: '/models/model.tar.gz', shipped: true, chosen: false, sentences: [] };
const own = (name: string, chosen: boolean) => ({ name, url: `/api/models/${name}`, shipped: false, chosen, sentences: [] });
const answer = (body: unknown, status = 200) => { vi.stubGlobal('fetch', () => Promise.resolve(new Response(JSON.stringify(body), { status }))); };
afterEach(() => { vi.unstubAllGlobals(); });

it('the model that was chosen is heard with', async () => {
  answer({ files: [SHIPPED, own('old.zip', false), own('new.zip', true)] });
  expect(await currentModel()).toBe('/api/models/new.zip');
});

it('a chosen model that could not be used gives way to the one that ships', async () => {
  answer({ files: [SHIPPED, own('new.zip', true)] });
  expect(await currentModel(new Set(['/api/models/new.zip']))).toBe('/models/model.tar.gz');
});

it('without one of the maker\'s own, the model that ships', async () => {
  answer({ files: [{ ...SHIPPED, chosen: true }, { name: 'bad.zip', shipped: false, chosen: false, sentences: ['bad.zip: it is empty.'] }] });
  expect(await currentModel()).toBe('/models/model.tar.gz');
});

it.each([null, [], 'x', { files: 'x' }, { files: [null, 7, { name: 'x', url: 'https://elsewhere/', shipped: false, chosen: true, sentences: [] }] }])('an answer without sense (%j) means the model that ships', async (body) => {
  answer(body);
  expect(await currentModel()).toBe('/models/model.tar.gz');
  expect((await listModels()).models.map(({ name }) => name)).toEqual(['built-in']);
});

it('a server that does not answer means the model that ships', async () => {
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('failed')));
  expect(await currentModel()).toBe('/models/model.tar.gz');
});

it('a model that cannot be chosen is told in the server\'s words', async () => {
  answer({ error: 'There is no model "x" that can be used.' }, 409);
  await expect(chooseModel('x')).rejects.toThrow('There is no model "x" that can be used.');
});
