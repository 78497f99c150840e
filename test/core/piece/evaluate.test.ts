import { describe, expect, test } from 'vitest';
import type { Length } from '../../../core/length/length.ts';
import { nanometres, NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import type { Measurement } from '../../../core/piece/measurement.ts';
import { withMeasurement, withoutMeasurement } from '../../../core/piece/measurement.ts';
import { whatMoved } from '../../../core/piece/moved.ts';
import { explain } from '../../../core/piece/why.ts';
import { writeExact } from '../../../core/piece/writeExact.ts';
import { DEMO_TEXT, loadSound } from './demo.ts';

const piece = loadSound(DEMO_TEXT);

function inches(count: number): Length {
  return nanometres(count * NANOMETRES_PER_INCH);
}

function made(size: string, count: number, copy?: number): Measurement {
  return { size, length: inches(count), ...(copy === undefined ? {} : { copy }) };
}

/** '3 1/4 in planned' */
function standing(measurements: readonly Measurement[], name: string, copy?: number): string {
  const value = sizeOf(evaluate(piece, measurements), name, copy);
  return value === undefined ? 'none' : `${writeExact(value.length)} ${value.basis}`;
}

function moves(before: readonly Measurement[], after: readonly Measurement[]): readonly string[] {
  return whatMoved(piece, before, after).map(({ size, copy, from, to, by, basis }) => `${size}${copy === undefined ? '' : ` ${copy}`} ${writeExact(from)} to ${writeExact(to)}, ${writeExact(by)}, ${basis}`);
}

describe('what was made overrides what was planned', () => {
  test('a rail measured a thirty-second long moves what was laid out from it, and nothing else', () => {
    expect(moves([], [made('longRail.shoulders', 46 + 1 / 32)])).toEqual([
      'longRail.shoulders 46 in to 46 1/32 in, 1/32 in, measured',
      'longRail.length 49 1/2 in to 49 17/32 in, 1/32 in, follows',
      'backStretcher.shoulders 46 in to 46 1/32 in, 1/32 in, follows',
      'backStretcher.length 49 1/2 in to 49 17/32 in, 1/32 in, follows',
      'top.length 60 in to 60 1/32 in, 1/32 in, follows',
    ]);
  });

  test('a leg that came out heavy counts for the set, and only for itself among the legs', () => {
    const heavy = [made('leg.width', 3 + 9 / 32, 2)];
    expect(standing(heavy, 'leg.width', 2)).toBe('3 9/32 in measured');
    expect(standing(heavy, 'leg.width', 1)).toBe('3 1/4 in planned');
    expect(standing(heavy, 'leg.width')).toBe('3 9/32 in measured');
    expect(standing(heavy, 'top.length')).toBe('60 1/16 in follows');
    expect(sizeOf(evaluate(piece, heavy), 'leg.width')?.largestCopy).toBe(2);
    expect(moves([], heavy)).toEqual([
      'leg.width 2 3 1/4 in to 3 9/32 in, 1/32 in, measured',
      'top.length 60 in to 60 1/16 in, 1/16 in, follows',
      'sideStretcherTenon.setback 1 in to 1 1/64 in, 1/64 in, follows',
    ]);
  });

  test('of several made copies the largest counts for the set, even when it is under the plan', () => {
    const light = [made('leg.width', 3, 1), made('leg.width', 3 + 1 / 8, 3)];
    expect(standing(light, 'leg.width')).toBe('3 1/8 in measured');
    expect(sizeOf(evaluate(piece, light), 'leg.width')?.largestCopy).toBe(3);
    expect(standing(light, 'leg.width', 4)).toBe('3 1/4 in planned');
  });

  test('a set made all alike is no copy in particular', () => {
    const alike = [1, 2, 3, 4].map((copy) => made('leg.width', 3.125, copy));
    expect(sizeOf(evaluate(piece, alike), 'leg.width')).toEqual({ length: inches(3.125), planned: inches(3.25), basis: 'measured' });
    expect(moves([], alike)[0]).toBe('leg.width 3 1/4 in to 3 1/8 in, -1/8 in, measured');
  });

  test('said of all copies it holds for all; a copy measured after that holds for itself', () => {
    const all = [made('leg.width', 3.125), made('leg.width', 3, 4)];
    expect([1, 2, 3, 4].map((copy) => standing(all, 'leg.width', copy))).toEqual(['3 1/8 in measured', '3 1/8 in measured', '3 1/8 in measured', '3 in measured']);
    expect(standing(all, 'leg.width')).toBe('3 1/8 in measured');
    const later = [made('leg.width', 3, 4), made('leg.width', 3.125)];
    expect(standing(later, 'leg.width', 4)).toBe('3 1/8 in measured');
  });

  test('within one copy its own sizes follow: the lamination of leg three is as thick as its layers make it', () => {
    const thin = [made('leg.layerThickness', 1 + 1 / 16, 3)];
    expect(standing(thin, 'leg.blankThickness', 3)).toBe('3 3/16 in follows');
    expect(standing(thin, 'leg.blankThickness', 1)).toBe('3 3/8 in planned');
  });

  test('the copy can stand in the name', () => {
    const heavy = [made('leg.2.width', 3.5)];
    expect(standing(heavy, 'leg.2.width')).toBe('3 1/2 in measured');
    expect(standing(heavy, 'leg.width', 2)).toBe('3 1/2 in measured');
    expect(standing(heavy, 'leg.9.width')).toBe('none');
    expect(standing(heavy, 'leg.width', 9)).toBe('none');
    expect(standing([], 'backStretcher.width', 1)).toBe('3 in planned');
  });

  test('a measurement of something that this piece does not have changes nothing and is not lost', () => {
    const stray = [made('arm.length', 3), made('leg.width', 3, 5)];
    const sizes = evaluate(piece, stray);
    expect(sizes.stray).toEqual(stray);
    expect(moves([], stray)).toEqual([]);
  });

  test('withdrawn, it leaves the plan as it was', () => {
    const measured = withMeasurement([], made('leg.width', 3.5, 2));
    const withdrawn = withoutMeasurement(measured, 'leg.width', 2);
    expect(moves([], withdrawn)).toEqual([]);
    expect(moves(measured, withdrawn)).toContain('top.length 60 1/2 in to 60 in, -1/2 in, planned');
  });
});

describe('why a size is what it is', () => {
  function chain(measurements: readonly Measurement[], name: string, copy?: number): readonly string[] {
    return explain(piece, measurements, name, copy).map((link) =>
      `${'·'.repeat(link.depth)}${link.size}${link.copy === undefined ? '' : ` ${link.copy}`} ${writeExact(link.value.length)}, ${link.reason}`);
  }

  test('down to the sizes that were given', () => {
    expect(chain([], 'longRail.length')).toEqual([
      'longRail.length 49 1/2 in, worked out',
      '·longRail.shoulders 46 in, worked out',
      '·longRailTenon.tenonLength 1 3/4 in, given',
      '··inside.length 46 in, given',
    ]);
  });

  test('down to what was measured, with the copy that the set counts as', () => {
    expect(chain([made('leg.width', 3.5, 2)], 'top.length')).toEqual([
      'top.length 60 1/2 in, worked out',
      '·longRail.shoulders 46 in, worked out',
      '·leg.width 3 1/2 in, largest made',
      '·overhang.ends 3 3/4 in, given',
      '··inside.length 46 in, given',
      '··leg.width 2 3 1/2 in, measured',
    ]);
  });

  test('of one copy, within that copy', () => {
    expect(chain([made('leg.layerThickness', 1, 3)], 'leg.3.blankThickness')).toEqual(['leg.blankThickness 3 3 in, worked out', '·leg.layerThickness 3 1 in, measured']);
  });

  test('of nothing there is nothing to tell', () => {
    expect(chain([], 'leg.girth')).toEqual([]);
    expect(chain([], 'leg.width', 7)).toEqual([]);
  });
});
