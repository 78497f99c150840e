import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseWay, longestBeside, waysToMeet, type Comer, type MeetingLimits } from '../../../core/tenon/meeting.ts';
import { squareTenon, type TenonPlace, type TenonSteps } from '../../../core/tenon/solid.ts';
import { nanometres } from '../../../core/length/length.ts';
import { inches } from '../joint/shop.ts';

/** One cell of the grid that the solids are looked at on; all lengths here are whole numbers of it. */
const CELL = 100_000;
const cells = (count: number) => nanometres(count * CELL);

interface Leg { readonly first: Comer; readonly second: Comer; readonly limits: MeetingLimits }

/** Two tenons in one leg, of any heights, thicknesses and setbacks. */
const legs: fc.Arbitrary<Leg> = fc.record({ a: fc.integer({ min: 12, max: 34 }), b: fc.integer({ min: 12, max: 34 }) }).chain(({ a, b }) => fc.record({
  first: comer(a, b), second: comer(b, a),
  limits: fc.record({ clearance: fc.integer({ min: 0, max: 2 }).map(cells), web: fc.integer({ min: 1, max: 3 }).map(cells) }),
}));

function comer(into: number, across: number): fc.Arbitrary<Comer> {
  return fc.record({ thickness: fc.integer({ min: 2, max: 6 }), near: fc.integer({ min: 1, max: across - 9 > 1 ? across - 9 : 1 }), top: fc.integer({ min: 0, max: 14 }), height: fc.integer({ min: 4, max: 20 }), floor: fc.integer({ min: 1, max: 5 }) })
    .map(({ thickness, near, top, height, floor }) => ({ into: cells(into), near: cells(near), thickness: cells(thickness), top: cells(top), bottom: cells(top + height), most: cells(into - floor) }));
}

/** Is the middle of a cell inside the tenon? `along` from the face that the tenon points at, `across` from the face that its rail runs along. */
function holds(place: TenonPlace, steps: TenonSteps, along: number, across: number, height: number): boolean {
  const share = (across - place.near) / place.thickness;
  if (share < 0 || share > 1) return false;
  return steps.some(({ top, bottom, outerCheek, innerCheek }) => height > top && height < bottom && along > place.into - (outerCheek + share * (innerCheek - outerCheek)));
}

/** The solids, looked at cell by cell: nothing of the reckoning is used. */
function hit({ first, second }: Leg, one: TenonSteps, other: TenonSteps, fine = 1): boolean {
  const size = CELL / fine;
  for (let x = size / 2; x < first.into; x += size) {
    for (let y = size / 2; y < second.into; y += size) {
      for (let z = CELL / 2; z < 40 * CELL; z += CELL) {
        if (holds(first, one, x, y, z) && holds(second, other, y, x, z)) return true;
      }
    }
  }
  return false;
}

describe('two tenons that share a leg', () => {
  it('never hit each other, whichever way they meet', () => {
    fc.assert(fc.property(legs, (leg) => {
      for (const { way, first, second } of waysToMeet(leg.first, leg.second, leg.limits)) {
        expect([way, hit(leg, first, second, way === 'mitred' ? 4 : 1)]).toEqual([way, false]);
      }
    }), { numRuns: 60 });
  });

  it('stay inside the leg, no longer than it allows', () => {
    fc.assert(fc.property(legs, (leg) => {
      for (const { first, second } of waysToMeet(leg.first, leg.second, leg.limits)) {
        for (const step of first) expect(Math.max(step.outerCheek, step.innerCheek)).toBeLessThanOrEqual(leg.first.most);
        for (const step of second) expect(Math.max(step.outerCheek, step.innerCheek)).toBeLessThanOrEqual(leg.second.most);
        expect([first[0]?.top, first.at(-1)?.bottom]).toEqual([leg.first.top, leg.first.bottom]);
      }
    }));
  });

  it('the longest beside a settled neighbour is the longest, against every length on a grid', () => {
    fc.assert(fc.property(legs, fc.integer({ min: 1, max: 30 }), (leg, length) => {
      const settled = nanometres(Math.min(cells(length), leg.second.most));
      const found = longestBeside(leg.first, leg.second, settled, leg.limits);
      expect(Math.max(-1, found / CELL)).toBe(longestOnGrid(leg, settled));
    }), { numRuns: 60 });
  });

  it('mitred, have no more than the clearance to spare: both longer by it and a little, they hit', () => {
    fc.assert(fc.property(legs, (leg) => {
      const mitred = waysToMeet(leg.first, leg.second, leg.limits).find(({ way }) => way === 'mitred');
      const shared = Math.min(leg.first.bottom, leg.second.bottom) - Math.max(leg.first.top, leg.second.top);
      const clipped = mitred && [[mitred.first, leg.first], [mitred.second, leg.second]] as const;
      fc.pre(mitred !== undefined && shared > 0 && clipped?.every(([steps, { most }]) => (steps[0]?.outerCheek ?? 0) < most) === true);
      const grown = (steps: TenonSteps): TenonSteps => steps.map((step) => ({ ...step, outerCheek: nanometres(step.outerCheek + leg.limits.clearance + CELL / 2), innerCheek: nanometres(step.innerCheek + leg.limits.clearance + CELL / 2) }));
      expect(hit(leg, grown(mitred.first), grown(mitred.second), 8)).toBe(true);
    }), { numRuns: 30 });
  });

  it('and is mirrored when the two are taken the other way round', () => {
    fc.assert(fc.property(legs, (leg) => {
      const ways = waysToMeet(leg.first, leg.second, leg.limits);
      const mirrored = waysToMeet(leg.second, leg.first, leg.limits);
      const swapped = { 'first runs past': 'second runs past', 'second runs past': 'first runs past' } as Readonly<Record<string, string>>;
      // Of a stepped pair that starts level, the first takes the upper half.
      fc.pre(leg.first.top !== leg.second.top);
      for (const { way, first, second } of ways) expect(mirrored.find((one) => one.way === (swapped[way] ?? way))).toMatchObject({ first: second, second: first });
      expect(mirrored).toHaveLength(ways.length);
    }));
  });
});

/** The longest whole number of cells whose mortise keeps the web to the neighbour's, tried one by one; -1 when there is none. */
function longestOnGrid(leg: Leg, settled: number): number {
  const { clearance, web } = leg.limits;
  const neighbour = squareTenon(leg.second, nanometres(settled + clearance));
  const around: Comer = { ...leg.first, near: nanometres(leg.first.near - web), thickness: nanometres(leg.first.thickness + 2 * web), top: nanometres(leg.first.top - web), bottom: nanometres(leg.first.bottom + web) };
  for (let length = Math.round(leg.first.most / CELL); length >= 0; length--) {
    const mortise = squareTenon(around, nanometres(length * CELL + clearance + web));
    if (!hit({ ...leg, first: around }, mortise, neighbour)) return length;
  }
  return -1;
}

describe('rails level with each other in a three inch leg', () => {
  // Rails 7/8 in, half inch tenons set 3/4 in in from both outer faces; worked by hand, in sixteenths: leg 48, near cheek 12, far cheek 20.
  const self: Comer = { into: inches(3), near: inches(3, 4), thickness: inches(1, 2), top: inches(1), bottom: inches(4), most: inches(41, 16) };
  const ways = waysToMeet(self, self, { clearance: inches(1, 16), web: inches(1, 8) });

  it('mitred, reach 35/16 on the outer cheek and 27/16 on the inner', () => {
    const mitred = ways.find(({ way }) => way === 'mitred');
    expect(mitred?.first).toEqual([{ top: inches(1), bottom: inches(4), outerCheek: inches(35, 16), innerCheek: inches(27, 16) }]);
    expect(mitred?.mitreDegrees).toEqual([45, 45]);
  });

  it('square, one runs to 41/16 and the other stops at 25/16', () => {
    const square = chooseWay(ways, 'square');
    expect(square?.first[0]?.outerCheek).toBe(inches(41, 16));
    expect(square?.second[0]?.outerCheek).toBe(inches(25, 16));
  });

  it('stepped, part the height that they share in the middle, with the clearance between', () => {
    const stepped = chooseWay(ways, 'stepped');
    expect(stepped?.first).toEqual([
      { top: inches(1), bottom: inches(79, 32), outerCheek: inches(41, 16), innerCheek: inches(41, 16) },
      { top: inches(79, 32), bottom: inches(4), outerCheek: inches(25, 16), innerCheek: inches(25, 16) },
    ]);
    expect(stepped?.second[1]?.top).toBe(inches(81, 32));
  });

  it('are mitred when nothing is asked for', () => {
    expect(chooseWay(ways, 'best')?.way).toBe('mitred');
  });

  it('are free of each other once one is set a web below the other', () => {
    const below: Comer = { ...self, top: inches(33, 8), bottom: inches(6) };
    expect(waysToMeet(self, below, { clearance: inches(1, 16), web: inches(1, 8) }).map(({ way }) => way)).toEqual(['clear of each other']);
  });

  it('a mitre between tenons of one half and three eighths leans with their thickness', () => {
    const thin: Comer = { ...self, thickness: inches(3, 8) };
    const [first = 0, second = 0] = waysToMeet(self, thin, { clearance: inches(1, 16), web: inches(1, 8) })[0]?.mitreDegrees ?? [];
    // The diagonal of a half by three eighths: tan⁻¹(4/3).
    expect(first).toBeCloseTo(53.1301, 4);
    expect(first + second).toBeCloseTo(90, 10);
  });
});
