import { afterEach, expect, it, vi } from 'vitest';
import { currentModel } from '../../../kiosk/ear/models.ts';

const SHIPPED = { name: 'model.tar.gz', url: '/models/model.tar.gz', shipped: true, changedMs: 9 };
const own = (name: string, changedMs: number) => ({ name, url: `/api/models/${name}`, shipped: false, changedMs });
const answer = (body: unknown) => { vi.stubGlobal('fetch', () => Promise.resolve(new Response(JSON.stringify(body)))); };
afterEach(() => { vi.unstubAllGlobals(); });

it('the model that the maker installed last is heard with', async () => {
  answer({ files: [SHIPPED, own('old.tar.gz', 1), own('new.tar.gz', 5)] });
  expect(await currentModel()).toBe('/api/models/new.tar.gz');
});

it('without one of the maker\'s own, the model that ships', async () => {
  answer({ files: [SHIPPED] });
  expect(await currentModel()).toBe('/models/model.tar.gz');
});

it.each([null, [], 'x', { files: 'x' }, { files: [null, 7, { url: 'https://elsewhere/', shipped: false, changedMs: 1 }] }])('an answer without sense (%j) means the model that ships', async (body) => {
  answer(body);
  expect(await currentModel()).toBe('/models/model.tar.gz');
});

it('a server that does not answer means the model that ships', async () => {
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('failed')));
  expect(await currentModel()).toBe('/models/model.tar.gz');
});
