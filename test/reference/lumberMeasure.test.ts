import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../core/length/length.ts';
import { boardFeet, boardFeetUnrounded, surfaceMeasure, tally, tallyWidth, wholeFeet } from '../../core/wood/lumber/measure.ts';
import { quarterCalled, quarterFor } from '../../core/wood/lumber/quarters.ts';

const inch = (count: number): Length => nanometres(Math.round(count * NANOMETRES_PER_INCH));
const board = (thickness: number, width: number, feet: number) => ({ thickness: inch(thickness), width: inch(width), length: inch(12 * feet) });

describe('lumber measure', () => {
  it('2 in by 6 1/4 in by 8 ft: surface measure 4, 8 board feet (hardwood export council)', () => {
    expect(surfaceMeasure(board(2, 6.25, 8))).toBe(4);
    expect(boardFeet(board(2, 6.25, 8))).toBe(8);
  });

  it('8 in by 12 ft: surface measure 8 (grading-rule page)', () => {
    expect(surfaceMeasure(board(1, 8, 12))).toBe(8);
  });

  it('5 1/4 in by 8 1/2 ft is tallied as 5 in, 8 ft (grading-rule page)', () => {
    expect([tallyWidth(inch(5.25)), wholeFeet(inch(102))]).toEqual([5, 8]);
  });

  it('1 in by 6 in by 12 ft: 6 board feet (Noyes, Handwork in Wood, 1910)', () => {
    expect(boardFeet(board(1, 6, 12))).toBe(6);
    expect(boardFeetUnrounded(board(1, 6, 12))).toBeCloseTo(6, 9);
  });

  it('14 ft of 11 in by 1 in: 12 10/12 board feet (Essex table, Noyes 1910), unrounded', () => {
    expect(boardFeetUnrounded(board(1, 11, 14))).toBeCloseTo(12 + 10 / 12, 9);
  });

  it('1 by 9 by 96 in: 6 board feet; 1 1/2 by 9 by 96 in: 9 (magazine tip)', () => {
    expect(boardFeetUnrounded(board(1, 9, 8))).toBeCloseTo(6, 9);
    expect(boardFeetUnrounded(board(1.5, 9, 8))).toBeCloseTo(9, 9);
  });

  it('less than an inch counts as one (US Navy engineering-aid text)', () => {
    expect(boardFeet(board(0.75, 6, 12))).toBe(6);
  });

  it('exact halves go by turns up and down in one tally (from memory of the grading rules)', () => {
    // 6 in by 9 ft is 4 1/2.
    const half = board(1, 6, 9);
    expect(tally([half, half, half]).boards.map(({ surfaceMeasure: measure }) => measure)).toEqual([5, 4, 5]);
    expect([tallyWidth(inch(5.5), 'up'), tallyWidth(inch(5.5), 'down')]).toEqual([6, 5]);
  });

  it('4/4 surfaced on both faces is 13/16 in at least, 20.6375 mm (two charts of the grading standard)', () => {
    expect(quarterCalled('4/4')?.bothFaces).toBe(20_637_500);
  });

  it('three sixteenths come off up to 6/4, a quarter above (the pattern of the charts)', () => {
    for (const [name, off] of [['3/4', 3 / 16], ['4/4', 3 / 16], ['5/4', 3 / 16], ['6/4', 3 / 16], ['7/4', 1 / 4], ['8/4', 1 / 4], ['12/4', 1 / 4], ['16/4', 1 / 4]] as const) {
      const quarter = quarterCalled(name);
      expect((quarter?.rough ?? 0) - (quarter?.bothFaces ?? 0), name).toBe(off * NANOMETRES_PER_INCH);
    }
  });

  it('an inch and an eighth is cut from 6/4, seven eighths from 5/4', () => {
    expect([quarterFor(inch(1.125))?.name, quarterFor(inch(0.875))?.name, quarterFor(inch(5))]).toEqual(['6/4', '5/4', undefined]);
  });
});
