import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contributorsOf } from '../../../core/layout/contributors.ts';
import { stackOf, tightened, type Share } from '../../../core/layout/stack.ts';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { evaluate } from '../../../core/piece/evaluate.ts';
import type { Measurement } from '../../../core/piece/measurement.ts';
import { Session } from '../respond/session.ts';
import { bakersTable, piece } from '../work/pieces.ts';
import { partOf } from '../piece/builder.ts';

const mm = (count: number): Length => nanometres(Math.round(count * 1_000_000));
const share: fc.Arbitrary<Share> = fc.record({
  tolerance: fc.integer({ min: 0, max: 5_000_000 }).map(nanometres),
  pieces: fc.integer({ min: 1, max: 12 }),
  factor: fc.record({ numerator: fc.integer({ min: -9, max: 9 }), denominator: fc.integer({ min: 1, max: 9 }) }),
});

describe('a tolerance stack', () => {
  it('by root and squares is never over the worst case, nor under the largest share alone', () => {
    fc.assert(fc.property(fc.array(share, { maxLength: 8 }), (shares) => {
      const { worst, rootSumSquare, parts } = stackOf(shares);
      expect(rootSumSquare).toBeLessThanOrEqual(worst);
      for (const one of shares) expect(rootSumSquare).toBeGreaterThanOrEqual(stackOf([{ ...one, pieces: 1 }]).worst - 1);
      if (worst > 0) expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 9);
    }));
  });

  it('is the same in floating point, to a nanometre or so', () => {
    fc.assert(fc.property(fc.array(share, { maxLength: 8 }), (shares) => {
      const each = shares.map(({ tolerance, pieces, factor }) => ({ pieces, off: Math.abs((tolerance * factor.numerator) / factor.denominator) }));
      const { worst, rootSumSquare } = stackOf(shares);
      expect(Math.abs(worst - each.reduce((sum, { pieces, off }) => sum + pieces * off, 0))).toBeLessThan(1);
      expect(Math.abs(rootSumSquare - Math.sqrt(each.reduce((sum, { pieces, off }) => sum + pieces * off ** 2, 0)))).toBeLessThan(1.1);
    }));
  });

  it('tightened in proportion holds the target', () => {
    fc.assert(fc.property(fc.array(share, { minLength: 1, maxLength: 6 }), fc.integer({ min: 1, max: 2_000_000 }).map(nanometres), (shares, target) => {
      const { worst, rootSumSquare } = stackOf(shares);
      fc.pre(rootSumSquare > 10_000);
      const within = (together: Length): Length[] => shares.map(({ tolerance }) => tightened(tolerance, together, target) ?? nanometres(0));
      // Each tolerance is off by half a nanometre at most, and the whole they were scaled by likewise.
      const rounding = target / rootSumSquare + shares.reduce((sum, { pieces, factor }) => sum + pieces * Math.abs(factor.numerator), 1);
      expect(Math.abs(stackOf(shares.map((one, index) => ({ ...one, tolerance: within(worst)[index] ?? one.tolerance }))).worst - target)).toBeLessThanOrEqual(rounding);
      expect(Math.abs(stackOf(shares.map((one, index) => ({ ...one, tolerance: within(rootSumSquare)[index] ?? one.tolerance }))).rootSumSquare - target)).toBeLessThanOrEqual(rounding);
    }));
  });
});

describe('what a size comes of', () => {
  const made = (name: string, measurements: readonly Measurement[] = [], of = bakersTable()) => {
    const found = contributorsOf(evaluate(of, measurements), name);
    if (!found.ok) throw new Error(found.fault);
    return found.value.map(({ size, pieces, factor, measured }) => `${measured ? 'measured ' : ''}${pieces} × ${factor.numerator}/${factor.denominator} ${size}`);
  };

  it('for the top: one rail from shoulder to shoulder and two legs, each off in its own way', () => {
    expect(made('top.length')).toEqual(['1 × 1/1 longRail.shoulders', '2 × 1/1 leg.width']);
  });

  it('for a size that is only named: what is cut to it', () => {
    expect(made('inside.length')).toEqual(['1 × 1/1 longRail.shoulders']);
    expect(made('height')).toEqual(['1 × 1/1 leg.length', '1 × 1/1 top.thickness']);
    expect(made('overhang.ends')).toEqual(['1 × 1/2 top.length', '1 × -1/2 longRail.shoulders', '2 × -1/2 leg.width']);
  });

  it('for a part cut to a given size: that size itself', () => {
    expect(made('leg.width')).toEqual(['1 × 1/1 leg.width']);
  });

  it('leaves nothing open where it was measured', () => {
    const measurement = { size: 'longRail.shoulders', length: mm(1168) };
    expect(made('top.length', [measurement])).toEqual(['measured 1 × 1/1 longRail.shoulders', '2 × 1/1 leg.width']);
    const found = contributorsOf(evaluate(bakersTable(), [measurement]), 'top.length');
    expect(found.ok && stackOf(found.value).worst).toBe(mm(0.6));
  });

  it('counts one thing reached by two ways once, and what cancels not at all', () => {
    const shelf = piece([partOf('side', 2, {}), partOf('shelf', 1, { length: 'between + side.thickness', width: 'side.width + 2 * side.thickness - across' })], [],
      { parameters: { between: '10 in + side.thickness', across: 'side.thickness + side.thickness' } });
    expect(made('shelf.length', [], shelf)).toEqual(['1 × 2/1 side.thickness']);
    expect(made('shelf.width', [], shelf)).toContain('1 × 1/1 side.width');
  });

  it('is refused for what nothing is cut to', () => {
    const lonely = piece([partOf('board', 1, {})], [], { parameters: { spare: '3 in' } });
    expect(contributorsOf(evaluate(lonely, []), 'spare')).toEqual({ ok: false, fault: 'Nothing that is cut stands on that size.' });
  });
});

describe('tolerances at the bench', () => {
  it('are told at worst and most likely, with the part that makes most of it', () => {
    expect(Session.withDemo().say('what is the tolerance of the top length')).toBe('Top, length, at worst forty-three thousandths of an inch off, either way; most likely within twenty-six thousandths of an inch. Most of it comes from long rail, shoulder to shoulder.');
  });

  it('are shared out for a target', () => {
    const reply = Session.withDemo().say('how true must the parts be to hold the top length to one thirty second');
    expect(reply).toMatch(/^To hold top, length to one thirty-second of an inch: long rail, shoulder to shoulder within fourteen thousandths/);
  });

  it('of what was measured are nothing', () => {
    const session = Session.withDemo();
    session.say('record inside length forty six inches');
    session.say('record long rail shoulder to shoulder forty six inches');
    expect(session.say('tolerance of the inside length')).toMatch(/nothing of it is open\.$/);
  });

  it('are not asked without a piece, nor held to nothing', () => {
    expect(new Session().request({ kind: 'tolerance', size: 'top.length' }).signal).toBe('wrong');
    expect(Session.withDemo().request({ kind: 'tolerance', size: 'top.length', target: nanometres(0) }).signal).toBe('wrong');
    expect(Session.withDemo().request({ kind: 'tolerance', size: 'no.such' }).say).toBe('This piece has no such size.');
  });
});
