import { describe, expect, test } from 'vitest';
import { describeSize, pluralOf, sizeNames } from '../../../core/piece/describe.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { writeExact } from '../../../core/piece/writeExact.ts';
import { loadPiece, writePiece } from '../../../core/piece/load.ts';
import { DEMO_TEXT, loadSound } from './demo.ts';

const piece = loadSound(DEMO_TEXT);
const planned = evaluate(piece, []);

function plan(name: string): string | undefined {
  const value = sizeOf(planned, name);
  return value && writeExact(value.length);
}

describe("the baker's work table", () => {
  test('comes out at sizes that were worked out on paper', () => {
    // 46 in between the legs, legs 3 1/4 in, tenons 1 3/4 in, top 1 3/4 in on a 34 in table.
    expect(plan('longRail.shoulders')).toBe('46 in');
    expect(plan('longRail.length')).toBe('49 1/2 in');
    expect(plan('leg.length')).toBe('32 1/4 in');
    expect(plan('top.length')).toBe('60 in');
    expect(plan('top.width')).toBe('30 in');
    expect(plan('sideStretcherTenon.fromTop')).toBe('23 3/4 in');
    expect(plan('leg.blankThickness')).toBe('3 3/8 in');
    expect(plan('button.thickness')).toBe('13/16 in');
  });

  test('is the same after being written and read again', () => {
    const again = loadPiece(writePiece(piece.file));
    expect(again.ok && again.value.file).toEqual(piece.file);
    expect(piece.file).toEqual(JSON.parse(DEMO_TEXT));
  });

  test('has a name for every size that can be said aloud', () => {
    for (const name of sizeNames(piece)) {
      const described = describeSize(piece, name);
      expect(described?.say, name).toMatch(/^[a-z][a-z ]+$/u);
      expect(described?.owner.name, name).toMatch(/^[a-z][a-z ]+$/u);
    }
  });

  test('says its sizes as the trade does, each with its reference', () => {
    expect(describeSize(piece, 'longRail.shoulders')).toEqual({
      owner: { kind: 'part', id: 'longRail', name: 'long rail', plural: 'long rails', count: 2 },
      sizeKey: 'shoulders', say: 'shoulder to shoulder', critical: true,
    });
    expect(describeSize(piece, 'longRailTenon.tenonLength')).toMatchObject({ owner: { kind: 'joint', count: 4 }, say: 'tenon length', from: 'from the shoulder' });
    expect(describeSize(piece, 'inside.length')).toMatchObject({ owner: { kind: 'parameter', id: 'inside.length' }, say: 'inside length', critical: true });
    expect(describeSize(piece, 'leg.2.width')).toEqual(describeSize(piece, 'leg.width'));
    expect(describeSize(piece, 'leg.girth')).toBeUndefined();
  });
});

test('plurals follow the usual rules', () => {
  expect(['leg', 'box', 'shelf', 'half', 'tray', 'body', 'bench'].map(pluralOf)).toEqual(['legs', 'boxes', 'shelves', 'halves', 'trays', 'bodies', 'benches']);
});
