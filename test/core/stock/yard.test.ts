import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import type { Blank, Board } from '../../../core/stock/board.ts';
import { toBuy } from '../../../core/stock/buying.ts';
import { helpOf, yardOrder } from '../../../core/stock/yard.ts';

const inches = (count: number) => nanometres(count * NANOMETRES_PER_INCH);
const SAW = { kerf: inches(1 / 16), endTrim: inches(1), cutAgain: true };
const YARD = { width: inches(7), saw: SAW, grade: 'FAS', centsPerBoardFoot: 900 } as const;
const TOPS: Blank = { id: 'top', name: 'top board', species: 'hard maple', length: inches(61), width: inches(5.125), thickness: inches(1.875), count: 6, together: 1, mayHideDefect: false };
const orderOf = (blanks: readonly Blank[], yard: Parameters<typeof yardOrder>[2] = YARD) => {
  const [list] = toBuy(blanks.map(({ id, count }) => ({ blank: id, count, why: 'no board left' })), blanks, yard.grade);
  if (!list) throw new Error('nothing is short');
  return yardOrder(list, blanks, yard);
};

describe('what to buy at the yard', () => {
  it('is boards that the parts do fit on, not only as many board feet', () => {
    // Two boards of the top lie end to end on 11 ft (124 1/16 in and two trims in 132 in): three boards. 7 in x 11 ft is 6 5/12, surface measure 6 by the trade's rounding, 12 board feet in 8/4.
    expect(orderOf([TOPS])).toMatchObject({ feet: 11, boards: 3, boardFeetEach: 12, boardFeet: 36, cents: 32_400 });
  });

  it('has a fifth to spare in the best grade and a half in the next, by the yields of the grading chart', () => {
    // FAS 83 1/3 %, No. 1 Common 66 2/3 % (hardwood grading chart): 1/0.8333 = 1.2, 1/0.6667 = 1.5.
    expect(orderOf([TOPS]).sparePercent).toBe(20);
    expect(orderOf([TOPS], { ...YARD, grade: 'No. 1 Common' }).sparePercent).toBe(50);
  });

  it('says so when a part is longer than boards are sold', () => {
    expect(orderOf([{ ...TOPS, length: inches(200) }]).feet).toBeUndefined();
  });

  it('takes wider boards for a part that is wider than the yard has them as a rule', () => {
    expect(orderOf([{ ...TOPS, width: inches(11), count: 1 }]).boards).toBeGreaterThan(0);
  });
});

describe('whether a board at the yard helps', () => {
  const board = (length: number, width: number): Board => ({ number: 1, species: 'hard maple', length: inches(length), width: inches(width), farWidth: inches(width), thickness: inches(2), defects: [], sapwood: inches(0) });

  it('is told by the parts that it gives', () => {
    expect(helpOf(board(132, 7), [TOPS], SAW)).toMatchObject({ parts: [{ blank: 'top', count: 2 }], boardFeet: 12 });
    expect(helpOf(board(60, 7), [TOPS], SAW).parts).toEqual([]);
  });
});
