import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sayPrice } from '../../../core/respond/saying.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { TALKATIVE } from './benches.ts';

const priceOf = (words: string) => {
  const request = parseRequest(words, TALKATIVE);
  return request.kind === 'set sawing' ? request.setting.centsPerBoardFoot : request.kind;
};

test.each([
  ['a board foot costs nine', 900], ['a board foot costs nine fifty', 950], ['a board foot costs twenty five fifty', 2550], ['a board foot costs twenty five', 2500], ['nine oh five for a board foot', 905],
  ['four dollars and fifty cents per board foot', 450], ['a board foot costs eleven dollars seventy five', 1175], ['a board foot costs four dollars and five cents', 405], ['a board foot costs six and a half', 650],
  ['a board foot costs seven and three quarters', 775], ['a board foot costs 9.5', 950], ['a board foot costs 9.25', 925],
])('%s', (words, cents) => { expect(priceOf(words)).toBe(cents); });

test('so many board feet are no price, nor is nothing, nor a hundred and more', () => {
  for (const words of ['thirty six board feet', 'a board foot costs zero', 'a board foot costs one hundred fifty', 'a board foot costs nine five']) expect(priceOf(words), words).toBe('not understood');
});

test('every price is said so that it is understood again', () => {
  fc.assert(fc.property(fc.integer({ min: 1, max: 9_999 }), (cents) => {
    expect(priceOf(`a board foot costs ${sayPrice(cents)}`)).toBe(cents);
  }), { numRuns: 200 });
});
