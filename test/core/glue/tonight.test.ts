import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ADHESIVE_NAMES, adhesiveCalled, adhesiveInUse } from '../../../core/glue/adhesive.ts';
import { clampStretch, openShare, timesAt } from '../../../core/glue/stretch.ts';
import { tonight } from '../../../core/glue/tonight.ts';
import { warmBoard } from '../../../core/glue/warming.ts';
import { nanometres } from '../../../core/length/length.ts';

const yellow = adhesiveInUse({ kind: 'yellow wood glue' });

describe('will this glue work tonight', () => {
  it('not at five degrees: wood, glue and air are each too cold, and twelve would do', () => {
    expect(tonight(yellow, { air: { tempC: 5, humidityPercent: 80 } })).toMatchObject({
      verdict: 'do not', warm: { what: ['wood', 'glue', 'air'], toC: 12 },
      reasons: [{ kind: 'too cold', what: 'wood', isC: 5, lowestC: 10 }, { kind: 'too cold', what: 'glue' }, { kind: 'too cold', what: 'air' }],
    });
  });

  it('warm air does not help while the wood is cold', () => {
    expect(tonight(yellow, { air: { tempC: 20, humidityPercent: 50 }, woodC: 6, glueC: 20 })).toMatchObject({ verdict: 'do not', warm: { what: ['wood'] } });
  });

  it('with care at twelve: the clamp time stretched, and close to the limit', () => {
    const found = tonight(yellow, { air: { tempC: 12, humidityPercent: 60 } });
    expect(found.verdict).toBe('with care');
    expect(found.times.stretch).toBeCloseTo(1 + 9 / 11, 9);
    expect(found.times.clampMs).toBe(Math.round((60 * 60 * 20) / 11) * 1000);
    expect(found.reasons.map(({ kind }) => kind)).toEqual(['stretched']);
  });

  it('a go at twenty-one, in ordinary air', () => {
    expect(tonight(yellow, { air: { tempC: 21, humidityPercent: 50 } })).toMatchObject({ verdict: 'go', reasons: [], times: { stretch: 1, openShare: 1 } });
  });

  it('with care in damp or dry air and in heat, which shortens the open time', () => {
    expect(tonight(yellow, { air: { tempC: 21, humidityPercent: 80 } }).reasons).toEqual([{ kind: 'damp air', humidityPercent: 80 }]);
    expect(tonight(yellow, { air: { tempC: 31, humidityPercent: 20 } }).reasons.map(({ kind }) => kind)).toEqual(['warm', 'dry air']);
    expect(tonight(yellow, { air: { tempC: 31, humidityPercent: 50 } }).times.openMs).toBe(120_000);
  });

  it('not on wet wood; polyurethane with care on dry wood', () => {
    expect(tonight(yellow, { air: { tempC: 21, humidityPercent: 50 }, woodMoisturePercent: 18 })).toMatchObject({ verdict: 'do not', reasons: [{ kind: 'wood too wet' }] });
    expect(tonight(adhesiveInUse({ kind: 'polyurethane' }), { air: { tempC: 21, humidityPercent: 50 }, woodMoisturePercent: 7 })).toMatchObject({ verdict: 'with care', reasons: [{ kind: 'wood too dry' }] });
  });

  it('takes the maker\'s label over the piece file, and the file over common practice', () => {
    const own = adhesiveInUse({ kind: 'yellow glue', openMinutes: 6, clampMinutes: 40 }, { openMinutes: 8, lowestC: 4 });
    expect([own.label.openMinutes, own.label.clampMinutes, own.label.closedMinutes, own.label.lowestC]).toEqual([8, 40, 10, 4]);
    expect([own.basis.openMinutes, own.basis.clampMinutes, own.basis.closedMinutes]).toEqual(['your label', 'your piece file', 'common practice']);
    expect(tonight(own, { air: { tempC: 5, humidityPercent: 50 } }).verdict).toBe('with care');
  });
});

describe('times in the cold', () => {
  const classes = fc.constantFrom(...ADHESIVE_NAMES).map(adhesiveCalled);
  const degrees = fc.double({ min: -10, max: 45, noNaN: true });

  it('clamp times never shrink as it gets colder', () => {
    fc.assert(fc.property(classes, degrees, degrees, (glue, one, other) => {
      const [cold, warm] = [Math.min(one, other), Math.max(one, other)];
      expect(clampStretch(glue.sets, cold, glue.usual.lowestC)).toBeGreaterThanOrEqual(clampStretch(glue.sets, warm, glue.usual.lowestC));
      expect(timesAt(glue.usual, glue.sets, cold).clampMs).toBeGreaterThanOrEqual(timesAt(glue.usual, glue.sets, warm).clampMs);
    }));
  });

  it('open times never grow as it gets warmer', () => {
    fc.assert(fc.property(degrees, degrees, (one, other) => { expect(openShare(Math.max(one, other))).toBeLessThanOrEqual(openShare(Math.min(one, other))); }));
  });

  it('no verdict is a go where a colder one is not refused less: what is refused at a temperature is refused below it', () => {
    fc.assert(fc.property(fc.constantFrom(...ADHESIVE_NAMES), degrees, degrees, (kind, one, other) => {
      const at = (tempC: number) => tonight(adhesiveInUse({ kind }), { air: { tempC, humidityPercent: 50 } }).verdict;
      if (at(Math.max(one, other)) === 'do not') expect(at(Math.min(one, other))).toBe('do not');
    }));
  });

  it('a thicker board takes longer to warm, and a room that is too cold never does it', () => {
    const board = { gravity: 0.63, fromC: 5, toC: 12, roomC: 20 };
    const [thin, thick] = [warmBoard({ ...board, thickness: nanometres(20_000_000) }), warmBoard({ ...board, thickness: nanometres(80_000_000) })];
    expect(thin.ok && thick.ok && thick.value.minutes / thin.value.minutes).toBeGreaterThan(3);
    expect(warmBoard({ ...board, thickness: nanometres(20_000_000), roomC: 12 })).toMatchObject({ ok: false, fault: { key: 'room' } });
  });
});
