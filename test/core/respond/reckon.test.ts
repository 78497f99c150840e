import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres } from '../../../core/length/length.ts';
import { Session } from './session.ts';

const sixteenths = (count: number) => nanometres(count * 1_587_500);

describe('arithmetic at the bench', () => {
  it('halves a size', () => {
    expect(Session.withDemo().say('half of three and seven sixteenths')).toBe('Half of three, and seven sixteenths inches is one, and twenty-three thirty-seconds inches.');
  });

  it('goes on with the last answer', () => {
    const session = Session.withDemo();
    session.say('half of forty six');
    expect(session.say('half of that')).toMatch(/eleven, and a half inches\.$/);
  });

  it('says marks cumulative from one end, so that errors do not add', () => {
    const { lengths } = Session.withDemo().request({ kind: 'equal spaces', of: { length: sixteenths(160) }, spaces: 4 });
    expect(lengths).toEqual([sixteenths(40), sixteenths(40), sixteenths(80), sixteenths(120)]);
  });

  it('sets four parts of an inch and a half into a foot with three equal gaps of two inches', () => {
    const { lengths } = Session.withDemo().request({ kind: 'equal gaps', of: { length: sixteenths(192) }, parts: 4, each: { length: sixteenths(24) } });
    expect(lengths).toEqual([sixteenths(32), ...[0, 56, 112, 168].map(sixteenths)]);
  });

  it('refuses parts that do not go into the whole', () => {
    expect(Session.withDemo().request({ kind: 'equal gaps', of: { length: sixteenths(16) }, parts: 4, each: { length: sixteenths(24) } }).signal).toBe('wrong');
  });

  it('equal spaces add up to the whole again', () => {
    const session = Session.withDemo();
    fc.assert(fc.property(fc.integer({ min: 1, max: 6_096_000_000 }), fc.integer({ min: 1, max: 40 }), (whole, spaces) => {
      const { screen } = session.request({ kind: 'equal spaces', of: { length: nanometres(whole) }, spaces });
      const [space = 0, ...marks] = screen?.name === 'reckoning' ? screen.result?.answers.map(({ length }) => length) ?? [] : [];
      const last = whole - (marks.at(-1) ?? 0);
      expect(Math.abs(last - space)).toBeLessThanOrEqual(1);
    }));
  });

  it('says an inch in millimetres (1 in = 25.4 mm exactly, the international inch of 1 July 1959)', () => {
    const { lengths, say } = Session.withDemo().request({ kind: 'in other unit', of: { length: nanometres(25_400_000) }, unit: 'millimetre' });
    expect(lengths).toEqual([nanometres(25_400_000)]);
    expect(say).toMatch(/twenty-five point five millimetres, scant/);
  });
});
