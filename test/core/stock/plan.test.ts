import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../../../core/length/length.ts';
import type { Blank, Board, Defect, SawSettings } from '../../../core/stock/board.ts';
import { areaOf, freedBlanks, offcutsOf, takenBoard } from '../../../core/stock/cutting.ts';
import { faultsOf } from '../../../core/stock/plan/check.ts';
import { partedBy } from '../../../core/stock/plates.ts';
import { planStock, type StockPlan, type StockProblem } from '../../../core/stock/plan/planStock.ts';

const inches = (count: number): Length => nanometres(Math.round(count * 64) * (NANOMETRES_PER_INCH / 64));
const SAW: SawSettings = { kerf: inches(1 / 16), endTrim: ZERO_LENGTH, cutAgain: true };

const RESAWING: SawSettings = { ...SAW, resaw: inches(1 / 4) };

function board(number: number, length: number, width: number, more: Partial<Board> = {}): Board {
  return { number, species: 'hard maple', length: inches(length), width: inches(width), farWidth: inches(width), thickness: inches(1), defects: [], sapwood: ZERO_LENGTH, ...more };
}

function blank(id: string, count: number, length: number, width: number, more: Partial<Blank> = {}): Blank {
  return { id, name: id, species: 'hard maple', length: inches(length), width: inches(width), thickness: inches(1), count, together: 1, mayHideDefect: false, ...more };
}

function knot(from: number, to: number, fromEdge: number, toEdge: number, face: Defect['face'] = 'through'): Defect {
  return { what: 'knot', from: inches(from), to: inches(to), fromEdge: inches(fromEdge), toEdge: inches(toEdge), face };
}

function plan(boards: readonly Board[], blanks: readonly Blank[], more: Partial<StockProblem> = {}): StockPlan {
  const problem: StockProblem = { boards, blanks, saw: SAW, objectives: ['fewest boards', 'least sawing'], ...more };
  const found = planStock(problem, () => true, () => undefined);
  expect(faultsOf(found, problem)).toEqual([]);
  return found;
}

const knots = fc.record({ from: fc.integer({ min: 0, max: 60 }), length: fc.integer({ min: 1, max: 8 }), edge: fc.integer({ min: 0, max: 7 }), width: fc.integer({ min: 1, max: 4 }), face: fc.constantFrom<Defect['face']>('through', 'other face') });
const racks = fc.array(fc.record({ sawn: fc.constantFrom<Board['sawn']>(undefined, 'both ends', 'marked end', 'far end'), length: fc.integer({ min: 20, max: 110 }), width: fc.integer({ min: 3, max: 10 }), far: fc.integer({ min: 3, max: 10 }), knots: fc.array(knots, { maxLength: 3 }), thick: fc.constantFrom(1, 2, 2.5) }), { minLength: 1, maxLength: 4 })
  .map((list) => list.map(({ sawn, length, width, far, knots: spots, thick }, index) => board(index + 1, length, width, { ...(sawn === undefined ? {} : { sawn }), farWidth: inches(far), thickness: inches(thick), defects: spots.map((spot) => knot(spot.from, spot.from + spot.length, spot.edge, spot.edge + spot.width, spot.face)) })));
const needs = fc.array(fc.record({ length: fc.integer({ min: 20, max: 200 }), width: fc.integer({ min: 4, max: 20 }), count: fc.integer({ min: 1, max: 5 }), together: fc.constantFrom(1, 1, 2), hides: fc.boolean() }), { minLength: 1, maxLength: 5 })
  .map((list) => list.map(({ length, width, count, together, hides }, index) => blank(`part${index}`, count * together, length / 4, width / 4, { together, mayHideDefect: hides })));

describe('planning boards', () => {
  it('makes only plans that can be cut: edge to edge, a kerf apart, clear of defects, every part as often as needed or told missing', () => {
    fc.assert(fc.property(racks, needs, fc.boolean(), (boards, blanks, resaw) => { plan(boards, blanks, resaw ? { saw: RESAWING } : {}); }), { numRuns: 14 });
  }, 60_000);

  it('tells cuts that each go from edge to edge of one piece, in their order, and leave every part alone in the end', () => {
    fc.assert(fc.property(racks, needs, fc.boolean(), (boards, blanks, resaw) => {
      for (const { board: number, cuts, placed } of plan(boards, blanks, resaw ? { saw: RESAWING } : {}).boards) {
        const stood = boards.find((one) => one.number === number);
        if (stood === undefined) throw new Error('a plan is of its boards');
        const { plates, astray } = partedBy({ stood, kerf: SAW.kerf }, cuts);
        expect(astray).toEqual([]);
        for (const blank of placed) expect(plates).toContainEqual(areaOf(blank));
      }
    }), { numRuns: 16 });
  }, 60_000);

  it('never claims a bound above what it found, and uses as many boards whatever the order they are told in', () => {
    fc.assert(fc.property(racks, needs, fc.boolean(), (boards, blanks, resaw) => {
      const more = resaw ? { saw: RESAWING } : {};
      const found = plan(boards, blanks, more);
      if (found.missing.length > 0) return;
      expect(found.bound).toBeLessThanOrEqual(found.used);
      const other = plan([...boards].reverse(), [...blanks].reverse(), more);
      if (found.proven && other.proven) expect(other.used).toBe(found.used);
      expect(other.bound).toBeLessThanOrEqual(found.used);
    }), { numRuns: 10 });
  }, 60_000);

  it('cuts five pieces that fill a board to the last 64th from that board', () => {
    expect(plan([board(1, 5 * 19 + 4 / 16, 4)], [blank('slat', 5, 19, 4)])).toMatchObject({ used: 1, bound: 1, proven: true, missing: [] });
    expect(plan([board(1, 5 * 19 + 4 / 16 - 1 / 64, 4)], [blank('slat', 5, 19, 4)]).missing).toEqual([{ blank: 'slat', count: 1, why: 'no board left' }]);
  });

  it('leaves out the rip along the edge of a board that is no wider than its strip, and counts none; a board that is one part keeps one cut', () => {
    const rips = (wide: number, more: Partial<Board> = {}, widths: readonly number[] = [4]) => plan([board(1, 40, wide, more)], widths.map((width, at) => blank(`slat${String(at)}`, 1, 30, width)));
    const kinds = (found: StockPlan) => found.boards[0]?.cuts.map(({ kind }) => kind);
    expect(kinds(rips(4))).toEqual(['crosscut']);
    expect(rips(4).ripMetres).toBe(0);
    expect(kinds(rips(4 + 1 / 16))).toEqual(['crosscut']);
    expect(kinds(rips(4 + 1 / 8))).toEqual(['crosscut', 'rip']);
    expect(kinds(rips(4, { width: inches(4.5) }))).toEqual(['crosscut', 'rip']);
    expect(kinds(rips(5, { sapwood: inches(1) }))).toEqual(['crosscut', 'rip']);
    expect(kinds(plan([board(1, 30, 4)], [blank('slat', 1, 30, 4)]))).toEqual(['rip']);
    const two = rips(7 + 1 / 16, {}, [4, 3]);
    expect(kinds(two)).toEqual(['crosscut', 'rip']);
    const [planned] = two.boards;
    if (planned === undefined) throw new Error('nothing is planned');
    const after = { ...takenBoard(planned, board(1, 40, 7 + 1 / 16), SAW.kerf), made: 2 };
    expect(freedBlanks(after)).toHaveLength(2);
    expect(offcutsOf(after).map(({ fromEdge, toEdge }) => [fromEdge, toEdge])).toEqual([]);
  });

  it('rips beside a knot and lays a part over one that shows on a hidden face only', () => {
    const rack = [board(1, 40, 6, { defects: [knot(10, 14, 0, 2)] })];
    expect(plan(rack, [blank('rail', 1, 40, 3.5)]).boards[0]?.placed[0]?.fromEdge).toBe(inches(2));
    const oneFace = [board(1, 40, 6, { defects: [knot(10, 14, 0, 6, 'other face')] })];
    expect(plan(oneFace, [blank('shelf', 1, 40, 6, { mayHideDefect: true })]).missing).toEqual([]);
    expect(plan(oneFace, [blank('shelf', 1, 40, 6)]).missing).toHaveLength(1);
  });

  it('hides one face of a part and not both, and lays a part that hides beside one that must be clear', () => {
    const both = [board(1, 40, 6, { defects: [knot(10, 14, 0, 6, 'other face'), knot(20, 22, 0, 6, 'marked face')] })];
    expect(plan(both, [blank('shelf', 1, 40, 6, { mayHideDefect: true })]).missing).toHaveLength(1);
    const half = [board(1, 40, 6 + 1 / 16, { defects: [knot(10, 14, 0, 2, 'other face')] })];
    expect(plan(half, [blank('cleat', 1, 40, 3, { mayHideDefect: true }), blank('rail', 1, 40, 3)])).toMatchObject({ missing: [], used: 1, bound: 1, proven: true });
    expect(plan(half, [blank('cleat', 1, 40, 3), blank('rail', 1, 40, 3)]).missing).toHaveLength(1);
  });

  it('takes the layers of one leg from one stretch of one board', () => {
    const found = plan([board(1, 40, 11), board(2, 70, 4), board(3, 120, 4)], [blank('leg layer', 6, 34, 3.5, { together: 3 })]);
    expect(found.missing).toEqual([]);
    for (const { placed } of found.boards) expect(placed.length % 3).toBe(0);
  });

  it('tells when a set cannot stay together, and cuts it apart', () => {
    const found = plan([board(1, 40, 4), board(2, 40, 4)], [blank('leg layer', 2, 34, 3.5, { together: 2 })]);
    expect(found).toMatchObject({ separated: ['leg layer'], missing: [], used: 2 });
  });

  it('goes to thicker boards only for what the thin ones do not hold', () => {
    const found = plan([board(1, 40, 4, { thickness: inches(2) }), board(2, 40, 4)], [blank('rail', 2, 38, 4)]);
    expect(found.missing).toEqual([]);
    expect(found.boards.map(({ board: number }) => number)).toEqual([1, 2]);
    expect(plan([board(1, 40, 4, { thickness: inches(2) }), board(2, 40, 4)], [blank('rail', 1, 38, 4)]).boards.map(({ board: number }) => number)).toEqual([2]);
  });

  it('says why a part is missing', () => {
    const rack = [board(1, 40, 4)];
    expect(plan(rack, [blank('rail', 1, 41, 4)]).missing).toEqual([{ blank: 'rail', count: 1, why: 'no board long or wide enough' }]);
    expect(plan(rack, [blank('leg', 1, 30, 3, { thickness: inches(2) })]).missing).toEqual([{ blank: 'leg', count: 1, why: 'no board thick enough' }]);
    expect(plan(rack, [blank('peg', 1, 30, 3, { species: 'ash' })]).missing).toEqual([{ blank: 'peg', count: 1, why: 'no board of the species' }]);
    expect(plan([], [blank('rail', 1, 41, 4)]).missing).toHaveLength(1);
  });

  it('has a whole plan when it is stopped at once, and the same plan for the same rack', () => {
    const problem: StockProblem = { boards: [board(1, 96, 8), board(2, 84, 6)], blanks: [blank('rail', 6, 28, 3.5), blank('slat', 9, 14, 1.5)], saw: SAW, objectives: ['fewest boards'] };
    let reported = 0;
    const stopped = planStock(problem, () => false, () => { reported++; });
    expect(reported).toBeGreaterThan(0);
    expect(faultsOf(stopped, problem)).toEqual([]);
    expect(plan(problem.boards, problem.blanks)).toEqual(plan(problem.boards, problem.blanks));
  });

  it('resaws a thick board for two thin blanks where it may and where both and what a resaw takes fit, and counts it as sawing', () => {
    const thick = [board(1, 40, 4, { thickness: inches(2.25) })];
    const two = [blank('panel', 2, 40, 4)];
    const found = plan(thick, two, { saw: RESAWING });
    expect(found).toMatchObject({ missing: [], used: 1, bound: 1, proven: true });
    expect(found.boards[0]?.placed.map(({ layer }) => layer)).toEqual([1, 2]);
    expect(found.boards[0]?.cuts.at(-1)).toMatchObject({ kind: 'resaw', at: inches(1), fromEdge: 0, toEdge: inches(4) });
    expect(found.ripMetres).toBeCloseTo(plan(thick, [blank('panel', 1, 40, 4)]).ripMetres + 40 * 0.0254, 9);
    expect(plan(thick, two).missing).toHaveLength(1);
    expect(plan([board(1, 40, 4, { thickness: inches(2.25 - 1 / 64) })], two, { saw: RESAWING }).missing).toHaveLength(1);
    expect(plan([...thick, board(2, 40, 4), board(3, 40, 4)], two, { saw: RESAWING }).boards.map(({ board: number }) => number)).toEqual([2, 3]);
  });

  it('takes a set whole from one thickness, or does not resaw it; an odd one is still had', () => {
    const legs = [blank('leg layer', 3, 30, 3, { together: 3 })];
    expect(plan([board(1, 31, 3, { thickness: inches(3.5) })], legs, { saw: RESAWING })).toMatchObject({ missing: [], used: 1, separated: [] });
    expect(plan([board(1, 31, 3, { thickness: inches(2.5) })], legs, { saw: RESAWING }).missing).toEqual([{ blank: 'leg layer', count: 1, why: 'no board left' }]);
    expect(plan([board(1, 31, 6.5, { thickness: inches(2.5) })], [blank('slat', 3, 30, 3)], { saw: RESAWING })).toMatchObject({ missing: [], used: 1 });
  });

  it('trims nothing off an end that was sawn already', () => {
    const saw = { ...SAW, endTrim: inches(1) };
    expect(plan([board(1, 40, 4, { sawn: 'both ends' })], [blank('rail', 1, 40, 4)], { saw })).toMatchObject({ missing: [], proven: true });
    expect(plan([board(1, 41, 4, { sawn: 'far end' })], [blank('rail', 1, 40, 4)], { saw }).boards[0]?.placed[0]?.from).toBe(inches(1));
    expect(plan([board(1, 41, 4, { sawn: 'marked end' })], [blank('rail', 1, 40, 4)], { saw }).boards[0]?.placed[0]?.from).toBe(0);
    expect(plan([board(1, 40, 4, { sawn: 'marked end' })], [blank('rail', 1, 40, 4)], { saw }).missing).toHaveLength(1);
  });

  it('trims the checked ends off before anything else', () => {
    const saw = { ...SAW, endTrim: inches(1) };
    const found = plan([board(1, 42, 4)], [blank('rail', 1, 40, 4)], { saw });
    expect(found.boards[0]?.placed[0]?.from).toBe(inches(1));
    expect(plan([board(1, 41, 4)], [blank('rail', 1, 40, 4)], { saw }).missing).toHaveLength(1);
  });
});
