import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planJoint, type JointPlan, type RailInLeg } from '../../../core/joint/railInLeg.ts';
import { planBridle, planDrawerRail } from '../../../core/joint/otherJoints.ts';
import { nanometres, type Length } from '../../../core/length/length.ts';
import { renderTelling } from '../../../core/reckoning/telling.ts';
import type { InputFault } from '../../../core/reckoning/reckoning.ts';
import type { Result } from '../../../core/result.ts';
import { inches } from './shop.ts';

const CHISELS = [inches(1, 4), inches(3, 8), inches(1, 2)];
const TABLE: RailInLeg = {
  rail: { width: inches(5), thickness: inches(5, 4) }, leg: { into: inches(13, 4), across: inches(13, 4), length: inches(32) }, setback: inches(1, 4), fromTop: nanometres(0),
  chisels: CHISELS, joint: 'blind', haunch: 'square', clearance: inches(1, 16), widestTenon: inches(5), step: inches(1, 16),
};

function planned(change: Partial<RailInLeg> = {}): JointPlan {
  const plan = planJoint({ ...TABLE, ...change });
  if (!plan.ok) throw new Error(JSON.stringify(plan.fault));
  return plan.value;
}

function faultOf(result: Result<unknown, InputFault>): string {
  return result.ok ? '' : `${result.fault.key ?? ''}: ${renderTelling(result.fault.message, (length) => `${length / 25_400_000}`)}`;
}

describe('a table rail', () => {
  it('has all its sizes, worked by hand', () => {
    expect(planned()).toMatchObject({
      chisel: inches(3, 8), outerShoulder: inches(7, 16), innerShoulder: inches(7, 16), outerWall: inches(11, 16), innerWall: inches(35, 16),
      topShoulder: inches(1), bottomShoulder: inches(1, 4), tenons: [{ fromTopEdge: inches(1), width: inches(15, 4) }],
      // Seven eighths of 3 1/4 are 2 27/32; less the clearance, 2 25/32; down to a sixteenth, 2 3/4.
      longest: inches(89, 32), tenonLength: inches(11, 4), mortiseDepth: inches(45, 16), floor: inches(7, 16),
      haunch: { shape: 'square', fromTopEdge: 0, width: inches(1), length: inches(3, 8) }, woodAbove: inches(1),
    });
  });

  it('with a horn keeps its whole width, and the leg is cut longer', () => {
    expect(planned({ haunch: 'horn' })).toMatchObject({ topShoulder: inches(1, 4), horn: inches(3, 4), woodAbove: inches(1) });
    expect(planned({ haunch: 'horn' }).haunch).toBeUndefined();
  });

  it('set a little down keeps a shoulder over its haunch', () => {
    expect(planned({ fromTop: inches(1, 4) })).toMatchObject({ topShoulder: inches(3, 4), haunch: { fromTopEdge: inches(1, 4), width: inches(1, 2) } });
    expect(planned({ fromTop: inches(10) })).toMatchObject({ topShoulder: inches(1, 4), woodAbove: inches(41, 4) });
  });

  it('that is narrow gives no more than half to the inch above, and is told to leave a horn', () => {
    const narrow = planned({ rail: { width: inches(3, 2), thickness: inches(3, 4) } });
    expect(narrow.topShoulder).toBe(inches(3, 4));
    expect(narrow.warnings.map((told) => renderTelling(told, String)).join()).toMatch(/horn/);
  });

  it('that is wide has two tenons with a third left between', () => {
    const { tenons, gap, mortises } = planned({ rail: { width: inches(29, 4), thickness: inches(5, 4) } });
    expect(gap).toBe(inches(2));
    expect(tenons).toEqual([{ fromTopEdge: inches(1), width: inches(2) }, { fromTopEdge: inches(5), width: inches(2) }]);
    expect(mortises.map(({ from }) => from)).toEqual([inches(1), inches(5)]);
  });

  it('through the leg is as long as the leg is thick', () => {
    expect(planned({ joint: 'through' })).toMatchObject({ tenonLength: inches(13, 4), mortiseDepth: inches(13, 4), floor: 0 });
  });

  it('says what the books say where they do not agree', () => {
    const top = planned().proportions.find(({ of }) => of === 'top shoulder');
    expect(top?.published.map(({ says }) => says)).toEqual([nanometres(42_333_333), inches(5, 2), inches(1)]);
  });
});

describe('the chisel', () => {
  it('is the owned one nearest to a third, as measured', () => {
    expect(planned({ chisels: [inches(1, 4), nanometres(10_400_000), inches(1, 2)] }).chisel).toBe(10_400_000);
    // Equally near to a third of 9/8: the wider one.
    expect(planned({ rail: { width: inches(5), thickness: inches(9, 8) }, chisels: [inches(5, 16), inches(7, 16)] }).chisel).toBe(inches(7, 16));
  });

  it('is never under a quarter or over a half of the rail', () => {
    fc.assert(fc.property(fc.integer({ min: 12, max: 50 }), fc.array(fc.integer({ min: 3, max: 30 }), { maxLength: 6 }), (thickness, owned) => {
      const plan = planJoint({ ...TABLE, rail: { width: inches(5), thickness: nanometres(thickness * 1e6) }, chisels: owned.map((width) => nanometres(width * 1e6)) });
      const fitting = owned.filter((width) => width * 4 >= thickness && width * 2 <= thickness);
      expect(plan.ok).toBe(fitting.length > 0);
      if (!plan.ok) return;
      expect(fitting.map((width) => Math.abs(3 * width - thickness)).every((off) => off >= Math.abs(3 * (plan.value.chisel / 1e6) - thickness))).toBe(true);
      expect(fitting).toContain(plan.value.chisel / 1e6);
    }));
  });
});

describe('whatever the wood', () => {
  const sixteenths = (min: number, max: number): fc.Arbitrary<Length> => fc.integer({ min, max }).map((count) => inches(count, 16));
  const rails = fc.record({
    rail: fc.record({ width: sixteenths(16, 160), thickness: sixteenths(10, 32) }), leg: fc.record({ into: sixteenths(20, 80), across: sixteenths(20, 80), length: sixteenths(160, 640) }),
    setback: sixteenths(0, 16), fromTop: sixteenths(0, 400), haunch: fc.constantFrom('square' as const, 'sloped' as const, 'none' as const), joint: fc.constantFrom('blind' as const, 'through' as const),
    widestTenon: sixteenths(48, 96),
  });

  it('all marks lie inside the leg and the rail, and the sizes add up again', () => {
    fc.assert(fc.property(rails, (given) => {
      const input: RailInLeg = { ...TABLE, chisels: [...CHISELS, inches(5, 16), inches(5, 8), inches(3, 4)], ...given };
      const plan = planJoint(input);
      if (!plan.ok) { expect(renderTelling(plan.fault.message, String).length).toBeGreaterThan(20); return; }
      const joint = plan.value;
      expect(joint.outerShoulder + joint.chisel + joint.innerShoulder).toBe(input.rail.thickness);
      expect(joint.outerWall + joint.chisel + joint.innerWall).toBe(input.leg.across);
      expect(joint.mortiseDepth + joint.floor).toBe(input.leg.into);
      expect(Math.min(joint.outerWall, joint.innerWall, joint.floor, joint.topShoulder, joint.bottomShoulder)).toBeGreaterThanOrEqual(0);
      const tenons = joint.tenons.reduce((sum, { width }) => sum + width, 0);
      expect(joint.topShoulder + tenons + (joint.gap ?? 0) + joint.bottomShoulder).toBe(input.rail.width);
      for (const { width } of joint.tenons) expect(width).toBeGreaterThan(0);
      for (const { from, length } of joint.mortises) {
        expect(from).toBeGreaterThanOrEqual(input.fromTop);
        expect(from + length).toBeLessThanOrEqual(input.leg.length);
      }
      if (joint.haunch) expect(joint.haunch.fromTopEdge + joint.haunch.width).toBe(joint.topShoulder);
      if (input.joint === 'blind') expect(joint.tenonLength).toBeLessThanOrEqual(joint.longest);
    }), { numRuns: 400 });
  });
});

describe('a joint that cannot be', () => {
  it.each([
    [{ setback: inches(-1, 8) }, /setback: .*proud/],
    [{ fromTop: inches(-1) }, /fromTop: .*above the end/],
    [{ rail: { width: inches(5), thickness: inches(7, 2) } }, /rail.thickness: .*proud of the inside/],
    [{ rail: { width: inches(40), thickness: inches(5, 4) } }, /fromTop: .*does not fit on a leg/],
    [{ chisels: [] }, /chisels: No chisel is given/],
    [{ chisels: [inches(1)] }, /chisels: No chisel of yours is between 0.3125 and 0.625/],
    [{ rail: { width: inches(5, 8), thickness: inches(5, 4) } }, /rail.width: .*leaves a tenon of only/],
    [{ leg: { into: nanometres(0), across: inches(3), length: inches(30) } }, /leg.into: /],
    [{ clearance: inches(-1, 16) }, /clearance: /],
    [{ clearance: inches(4) }, /clearance: .*leaves no tenon/],
    [{ haunch: 'horn' as const, fromTop: inches(3) }, /haunch: /],
  ])('is refused in a sentence that says where: %#', (change, sentence) => {
    expect(faultOf(planJoint({ ...TABLE, ...change }))).toMatch(sentence);
  });
});

describe('other joints', () => {
  const frame = { width: inches(2), thickness: inches(3, 4) };

  it('a bridle joint divides the thickness, and its tenon is as long as the stile is wide', () => {
    const bridle = planBridle({ rail: frame, stile: { ...frame, width: inches(5, 2) }, chisels: CHISELS, proud: inches(1, 32) });
    expect(bridle).toMatchObject({ ok: true, value: { chisel: inches(1, 4), outerShoulder: inches(1, 4), innerShoulder: inches(1, 4), tenonLength: inches(81, 32), slotDepth: inches(65, 32), tenonWidth: inches(2) } });
    expect(faultOf(planBridle({ rail: frame, stile: { ...frame, thickness: inches(1) }, chisels: CHISELS, proud: nanometres(0) }))).toMatch(/one thickness/);
  });

  it('a drawer rail has two tenons and three spaces that fill its width', () => {
    const rail = planDrawerRail({ rail: { width: inches(9, 4), thickness: inches(1) }, legInto: inches(2), legAcross: inches(5, 2), setback: nanometres(0), chisels: CHISELS, clearance: inches(1, 16), step: inches(1, 16) });
    // Nearest to a fifth of 2 1/4 (29/64) is a half; three spaces share 1 1/4.
    expect(rail.ok && rail.value.chisel).toBe(inches(1, 2));
    const [first, second] = rail.ok ? rail.value.tenons : [];
    const spaces = [first?.fromFront ?? 0, (second?.fromFront ?? 0) - (first?.fromFront ?? 0) - inches(1, 2), inches(9, 4) - (second?.fromFront ?? 0) - inches(1, 2)];
    expect(spaces.reduce((sum, space) => sum + space, 0)).toBe(inches(5, 4));
    expect(Math.max(...spaces) - Math.min(...spaces)).toBeLessThanOrEqual(1);
    expect(rail).toMatchObject({ value: { tenonHeight: inches(3, 4), tenonLength: inches(27, 16), mortiseDepth: inches(7, 4) } });
  });
});
