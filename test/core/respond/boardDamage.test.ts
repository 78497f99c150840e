import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { readRecord } from '../../../core/journal/record.ts';
import { allBlanks, isSound, problemOf, takenPlan } from '../../../core/respond/cuttingState.ts';
import { areaOf, blanksToCome, freedBlanks, isFinished } from '../../../core/stock/cutting.ts';
import { overlaps, partedBy, plateOf } from '../../../core/stock/plates.ts';
import { found, taken } from './planned.ts';
import { Session } from './session.ts';

const STACK = ['ninety six by nine eight quarter', 'one hundred and twenty by ten', 'one hundred by nine and a half', 'ninety six by ten', 'one hundred and twenty by nine', 'one hundred and twenty by nine', 'one hundred and twenty by eight', 'ninety six by eight'];

describe('a board that is being cut and turns out different', () => {
  let start: Session;
  beforeAll(() => { start = taken(STACK.map((size) => `new board ${size}`)); });

  const copy = (): Session => { const session = Session.withDemo(); session.bench = start.bench; return session; };
  const plan = (session: Session) => { const found_ = takenPlan(session.bench.state); if (!found_) throw new Error('a plan is taken'); return found_; };
  const boardOf = (session: Session, number: number) => { const board = plan(session).boards.find((one) => one.board === number); if (!board) throw new Error('the board is of the plan'); return board; };

  it('keeps every cut and all that is free or sound; what is lost is planned anew, from the pieces as the saw has parted them, and all parts are there', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 90 }), fc.integer({ min: 1, max: 12 }), (cuts, from, long) => {
      const session = copy();
      const [first] = plan(session).boards;
      if (first === undefined) throw new Error('there is a board to cut');
      const number = first.board;
      for (let made = 0; made < Math.min(cuts, first.cuts.length - 1); made++) session.say('cut');
      const before = boardOf(session, number);
      const rack = new Set(session.bench.state.rack.keys());
      session.say(`board ${String(number)} has a split from ${String(from)} to ${String(from + long)}`);
      const after = boardOf(session, number);
      expect(after.cuts.slice(0, after.made)).toEqual(before.cuts.slice(0, before.made));
      expect(freedBlanks(after)).toEqual(freedBlanks(before));
      const now = session.bench.state.rack.get(number);
      for (const blank of blanksToCome(after)) expect(now && isSound(now, blank, new Set())).toBe(true);
      const pieces = [...session.bench.state.rack.values()].filter((board) => !rack.has(board.number));
      for (const piece of pieces) expect(piece.cutFrom).toBe(number);
      // A piece given away holds no part that still comes from the board.
      const lost = before.placed.filter((blank) => !after.placed.some((one) => one.from === blank.from && one.fromEdge === blank.fromEdge));
      for (const plate of lost.flatMap((blank) => plateOf(before, areaOf(blank)) ?? [])) for (const blank of after.placed) expect(overlaps(areaOf(blank), plate)).toBe(false);
      if (!isFinished(after)) expect(partedBy({ stood: before.stood, kerf: before.kerf }, after.cuts).astray).toEqual([]);
      const planned = problemOf(session.bench.state)?.blanks.reduce((sum, { count }) => sum + count, 0) ?? 0;
      const begun = plan(session).boards.filter(({ made }) => made > 0).reduce((sum, { placed }) => sum + placed.length, 0);
      expect(planned + begun).toBe(allBlanks(session.bench.state).reduce((sum, { count }) => sum + count, 0));
      for (const record of session.bench.records.slice(-4)) expect(readRecord(JSON.parse(JSON.stringify(record))).ok).toBe(true);
    }), { numRuns: 25 });
  });

  it('says what is a board by itself now, trims nothing off where it was sawn, and what the bound of the new plan stands on', () => {
    const session = copy();
    for (let cut = 0; cut < 3; cut++) session.say('cut');
    const number = plan(session).boards.find(({ made }) => made > 0)?.board ?? 0;
    expect(session.hearOut(`board ${String(number)} has a split from sixty to sixty five`)).toMatch(/parts? of it must come from elsewhere\. Pieces of it are boards by themselves now: board \S+, .* by .* and board \S+, .* by .*; mark them\./);
    const piece = [...session.bench.state.rack.values()].at(-1);
    expect(piece?.sawn).toBe('both ends');
    found(session);
    const told = session.say('take the plan');
    expect(told).toMatch(/With one board begun and kept as it is: (best possible is|this plan uses)/);
    expect(plan(session).bound).toBeLessThanOrEqual(plan(session).boards.length);
  });

  it('numbers the boards of a panel in their order, board after board, and what has its number keeps it', () => {
    const session = copy();
    const numbers = () => plan(session).boards.flatMap(({ board, placed }) => placed.filter(({ blank }) => blank === 'top').map((blank) => ({ board, ...blank })));
    expect(numbers().map(({ nth }) => nth).sort()).toEqual([1, 2, 3, 4, 5, 6]);
    for (const { board } of plan(session).boards) {
      const own = numbers().filter((one) => one.board === board).sort((a, b) => a.from - b.from || a.fromEdge - b.fromEdge).map(({ nth }) => nth ?? 0);
      expect(own).toEqual(own.map((_, at) => (own[0] ?? 0) + at));
    }
    const holder = numbers()[0];
    if (holder === undefined) throw new Error('the top is of boards');
    let said = '';
    for (let made = 0; made < 40 && !said.includes('top board'); made++) said = session.say(`cut on board ${String(holder.board)}`);
    expect(said).toMatch(/write .*top board \d/);
    const kept = freedBlanks(boardOf(session, holder.board)).filter(({ blank }) => blank === 'top');
    session.say('plan the cutting');
    found(session);
    session.say('take the plan');
    expect(numbers().map(({ nth }) => nth).sort()).toEqual([1, 2, 3, 4, 5, 6]);
    expect(freedBlanks(boardOf(session, holder.board)).filter(({ blank }) => blank === 'top')).toEqual(kept);
  });
});
