import { describe, expect, it } from 'vitest';
import { parseRequest } from '../../../core/talk/parse.ts';
import { bench, inches } from './benches.ts';

/** What the recogniser wrote for these sentences, spoken by synthetic voices over a fan. */
describe('words that sound like those that were said', () => {
  it.each([
    ['start it twenty second timer', { kind: 'start timer', timer: 'plain', durationMs: 20_000 }],
    ['start a fifteen second time are', { kind: 'start timer', timer: 'plain', durationMs: 15_000 }],
    ['start open time four twenty seconds', { kind: 'start timer', timer: 'open time', durationMs: 20_000 }],
    ['record leg two width three and won quarter', { kind: 'record', size: 'leg.width', copy: 2, length: inches(3.25) }],
  ])('“%s” is taken as it was meant', (heard, request) => {
    expect(parseRequest(heard, bench())).toEqual(request);
  });

  it('no number is taken for another: fifteen stays fifteen, and nonsense stays nonsense', () => {
    expect(parseRequest('start a fifty second timer', bench())).toMatchObject({ durationMs: 50_000 });
    expect(parseRequest('start it an second timer', bench()).kind).toBe('not understood');
    expect(parseRequest('four for to two too', bench()).kind).toBe('not understood');
  });
});
