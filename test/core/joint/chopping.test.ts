import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MortiseToChop } from '../../../core/joint/chopCuts.ts';
import { planChopping, type ChopPlan } from '../../../core/joint/chopping.ts';
import { nanometres } from '../../../core/length/length.ts';
import { inches, millimetres } from './shop.ts';

const MORTISE: MortiseToChop = { from: inches(1), length: inches(7, 2), width: inches(1, 2), depth: inches(29, 16), wood: inches(13, 4), hardness: 'hard' };

function planned(change: Partial<MortiseToChop> = {}): ChopPlan {
  const plan = planChopping({ ...MORTISE, ...change });
  if (!plan.ok) throw new Error(JSON.stringify(plan.fault));
  return plan.value;
}

const mortises: fc.Arbitrary<MortiseToChop> = fc.record({ from: fc.integer({ min: 0, max: 400 }), length: fc.integer({ min: 20, max: 120 }), width: fc.integer({ min: 3, max: 20 }), depth: fc.integer({ min: 5, max: 60 }), under: fc.integer({ min: 0, max: 30 }), hard: fc.boolean() })
  .map(({ from, length, width, depth, under, hard }) => ({ from: millimetres(from), length: millimetres(length), width: millimetres(width), depth: millimetres(depth), wood: millimetres(depth + under), hardness: hard ? 'hard' : 'soft' }));

describe('a half inch mortise in hard maple, 1 13/16 deep', () => {
  it('is chopped from the middle in passes of three eighths, three quarters of its width, and a last one to the depth', () => {
    const plan = planned();
    expect(plan).toMatchObject({ startMark: inches(1), endMark: inches(9, 2), middle: inches(11, 4), stayOff: inches(1, 8), advance: inches(1, 8), through: false });
    expect(plan.flags).toEqual([inches(3, 8), inches(3, 4), inches(9, 8), inches(3, 2), inches(29, 16)]);
    expect(plan.cutsToFarEnd.slice(0, 2)).toEqual([inches(11, 4), inches(23, 8)]);
    expect(plan.cutsToNearEnd.at(-1)).toBe(inches(9, 8));
  });

  it('needs fewer passes in soft wood', () => {
    expect(planned({ hardness: 'soft' }).flags).toHaveLength(4);
  });

  it('is marked, flagged, chopped, pared at the ends and cleared, in that order', () => {
    const kinds = planned().stages.map(({ kind }) => kind);
    expect(kinds.slice(0, 3)).toEqual(['mark', 'flag', 'pass']);
    expect(kinds.slice(-2)).toEqual(['pare the ends', 'clear the bottom']);
    expect(kinds).toContain('strop');
  });

  it('is not levered in the first pass, and later only inside of both lines', () => {
    const passes = planned().stages.filter(({ kind }) => kind === 'pass');
    expect(passes[0]?.drawing.lever).toBeUndefined();
    for (const { drawing } of passes.slice(1)) expect(drawing.lever).toEqual({ from: inches(9, 8), to: inches(35, 8) });
  });

  it('has the bevel turned between the far end and the near end of each pass', () => {
    for (const { drawing } of planned().stages.filter(({ kind }) => kind === 'pass')) expect(drawing.chisels.map(({ bevel }) => bevel)).toEqual(['towards the start', 'towards the end']);
  });

  it('through the leg is chopped from both faces, past the middle', () => {
    const plan = planned({ depth: inches(13, 4) });
    expect(plan.through).toBe(true);
    expect(plan.flags.at(-1)).toBe(inches(27, 16));
    expect(plan.stages.filter(({ kind }) => kind === 'turn over')).toHaveLength(1);
    expect(plan.stages.filter(({ kind, drawing }) => kind === 'pass' && drawing.face === 'second')).toHaveLength(plan.flags.length);
  });
});

describe('any mortise', () => {
  it('is cut inside its marks, pass by pass deeper, to the depth exactly', () => {
    fc.assert(fc.property(mortises, (mortise) => {
      const plan = planned(mortise);
      expect(plan.flags.at(-1)).toBe(plan.through ? Math.floor(mortise.wood / 2) + inches(1, 16) : mortise.depth);
      plan.flags.forEach((flag, index) => expect(flag).toBeGreaterThan(plan.flags[index - 1] ?? 0));
      const all = [...plan.cutsToFarEnd, ...plan.cutsToNearEnd];
      for (const cut of all) {
        expect(cut).toBeGreaterThanOrEqual(plan.startMark + plan.stayOff);
        expect(cut).toBeLessThanOrEqual(plan.endMark - plan.stayOff);
      }
      const sorted = [...all].sort((a, b) => a - b);
      sorted.slice(1).forEach((cut, index) => expect(cut - (sorted[index] ?? 0)).toBeLessThanOrEqual(plan.advance));
      expect(plan.stages.filter(({ kind }) => kind === 'pass')).toHaveLength(plan.flags.length * (plan.through ? 2 : 1));
    }));
  });

  it('never goes more than its width deeper in one pass, nor on without a strop past its count of cuts', () => {
    fc.assert(fc.property(mortises, (mortise) => {
      const plan = planned(mortise);
      plan.flags.forEach((flag, index) => expect(flag - (plan.flags[index - 1] ?? 0)).toBeLessThanOrEqual(mortise.width));
      const cutsInPass = plan.cutsToFarEnd.length + plan.cutsToNearEnd.length;
      const most = mortise.hardness === 'hard' ? 60 : 120;
      const stops = [0, ...plan.stropAfter, plan.flags.length];
      stops.slice(1).forEach((pass, index) => expect((pass - (stops[index] ?? 0)) * cutsInPass).toBeLessThanOrEqual(Math.max(most, cutsInPass)));
    }));
  });

  it('that has no room for its chisel, no depth, or more depth than wood, is refused', () => {
    for (const change of [{ length: inches(1, 4) }, { depth: nanometres(0) }, { depth: inches(4) }, { width: nanometres(0) }, { from: inches(-1) }]) expect(planChopping({ ...MORTISE, ...change }).ok).toBe(false);
  });
});
