import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chiselOf, choppingOf, hardnessOf, rackingOfJoint, roomFor } from '../../../core/joint/ofPiece.ts';
import { marksFor, type Mark, type MarkKind } from '../../../core/joint/marks.ts';
import { nanometres } from '../../../core/length/length.ts';
import { evaluate } from '../../../core/piece/evaluate.ts';
import type { MortiseAndTenon } from '../../../core/piece/file.ts';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';
import { writePiece } from '../../../core/piece/load.ts';
import { readStarterInput, starterPiece } from '../../../core/piece/starter.ts';
import { DEMO_TEXT, loadSound } from '../piece/demo.ts';
import { inches } from './shop.ts';

const DEMO = loadSound(DEMO_TEXT);
const SIZES = evaluate(DEMO, []);

function at(marks: readonly Mark[], joint: string | undefined, kind: MarkKind): number | undefined {
  return marks.find((mark) => mark.joint === joint && mark.kind === kind)?.at;
}

function jointOf(piece: LoadedPiece, id: string): MortiseAndTenon {
  const joint = piece.file.joints.find((one) => one.id === id);
  if (joint?.kind !== 'mortise and tenon') throw new Error(`no joint ${id}`);
  return joint;
}

function madeFrom(answers: Readonly<Record<string, string>>): LoadedPiece | undefined {
  const input = readStarterInput(answers, undefined);
  const file = input.ok ? starterPiece(input.value) : input;
  return file.ok ? loadSound(writePiece(file.value)) : undefined;
}

describe('the marks on a leg of the baker\'s work table, worked by hand', () => {
  const leg = marksFor(DEMO, SIZES, 'leg', 3);

  it('are each from its reference', () => {
    // Rails 1 1/4 in, tenons 1/2 in in their middle, set back 1/4 in: cheeks at 1/4 + 3/8 and 1/2 further.
    expect(['mortise start', 'mortise end', 'mortise near side', 'mortise far side', 'mortise depth'].map((kind) => at(leg, 'longRailTenon', kind as MarkKind))).toEqual([inches(1), inches(9, 2), inches(5, 8), inches(9, 8), inches(29, 16)]);
    expect(leg.filter(({ kind }) => kind === 'mortise start').map(({ from }) => from.say)).toEqual(['the top end', 'the top end', 'the top end', 'the top end']);
    // Leg 32 1/4 in; side stretchers 6 in up, 3 in wide, shoulder 1/2 in: 32 1/4 - 9 + 1/2.
    expect(at(leg, 'sideStretcherTenon', 'mortise start')).toBe(inches(95, 4));
    expect(at(leg, undefined, 'foot bevel')).toBe(inches(1, 4));
  });

  it('of the back stretcher stand only on the back legs, and follow the place that a leg was given', () => {
    const stretcher = (copy: number, place?: string): boolean => marksFor(DEMO, SIZES, 'leg', copy, place).some(({ joint }) => joint === 'backStretcherTenon');
    expect([1, 2, 3, 4].map((copy) => stretcher(copy))).toEqual([false, false, true, true]);
    expect(stretcher(1, 'back left')).toBe(true);
    expect(stretcher(3, 'front right')).toBe(false);
  });

  it('follow what was measured', () => {
    const measured = evaluate(DEMO, [{ size: 'longRail.thickness', length: inches(19, 16) }]);
    expect(at(marksFor(DEMO, measured, 'leg'), 'longRailTenon', 'mortise near side')).toBe(inches(19, 32));
    expect(at(marksFor(DEMO, measured, 'leg'), 'shortRailTenon', 'mortise near side')).toBe(inches(5, 8));
  });
});

it('the marks on a rail are its shoulders from one end, its cheeks from the face, its edges from the top, and the groove', () => {
  const rail = marksFor(DEMO, SIZES, 'longRail', 1);
  expect(rail.map(({ kind, at: place, from }) => [kind, place, from.say])).toEqual([
    ['first shoulder', inches(7, 4), 'one end'], ['second shoulder', inches(191, 4), 'one end'],
    ['outer cheek', inches(3, 8), 'the outside face'], ['inner cheek', inches(7, 8), 'the outside face'],
    ['tenon top', inches(1), 'the top edge'], ['tenon bottom', inches(9, 2), 'the top edge'], ['haunch end', inches(5, 4), 'each end'],
    ['groove top', inches(1, 2), 'the top edge'], ['groove bottom', inches(7, 8), 'the top edge'], ['groove depth', inches(3, 8), 'the inside face'],
  ]);
});

it('of what is no part there are no marks', () => {
  expect(marksFor(DEMO, SIZES, 'drawer')).toEqual([]);
});

describe('whatever table is begun', () => {
  const tables = fc.record({
    length: fc.integer({ min: 16, max: 120 }), width: fc.integer({ min: 12, max: 60 }), height: fc.integer({ min: 20, max: 48 }),
    layers: fc.integer({ min: 2, max: 5 }), rail: fc.constantFrom('3/4 in', '1 in', '1 1/4 in'), stretchers: fc.constantFrom('none', 'sides', 'sides and back', 'all round'),
  }).map(({ length, width, height, layers, rail, stretchers }) => madeFrom({
    'inside.length': `${length} in`, 'inside.width': `${width} in`, height: `${height} in`, layers: `${layers}`, 'stock.rail': rail, stretchers,
  })).filter((piece) => piece !== undefined);

  it('every mark lies inside its part', () => {
    fc.assert(fc.property(tables, (piece) => {
      const sizes = evaluate(piece, []);
      const marks = piece.file.parts.flatMap(({ id }) => marksFor(piece, sizes, id));
      expect(marks.length).toBeGreaterThan(20);
      for (const mark of marks) {
        expect([mark, mark.at >= 0 && mark.at <= mark.within]).toEqual([mark, true]);
      }
    }), { numRuns: 40 });
  }, 60_000);

  it('legs that mirror each other have mirrored marks: those of the long rail into one face are those of the short rail into the other', () => {
    fc.assert(fc.property(tables, (piece) => {
      const leg = marksFor(piece, evaluate(piece, []), 'leg', 1);
      const of = (joint: string): unknown => leg.filter((mark) => mark.joint === joint).map(({ kind, at: place, within }) => [kind, place, within]);
      expect(of('longRailTenon')).toEqual(of('shortRailTenon'));
    }), { numRuns: 20 });
  });
});

describe('joints of the baker\'s work table', () => {
  const joint = jointOf(DEMO, 'longRailTenon');

  it('are chopped from the middle of the mortise, in hard wood, by the owned half inch chisel', () => {
    expect(choppingOf(DEMO, SIZES, joint)).toMatchObject({ ok: true, value: { startMark: inches(1), endMark: inches(9, 2), middle: inches(11, 4) } });
    expect(chiselOf(DEMO, SIZES, joint)).toEqual({ width: inches(1, 2), chisel: inches(1, 2), named: '1/2 in', off: 0 });
    expect(hardnessOf('eastern white pine')).toBe('soft');
  });

  it('may be longer than planned: the short rail stops before the long rail\'s mortise', () => {
    // 7/8 of 3 1/4 less 1/16: 2 25/32. Mitred: 3 1/4 - 5/8 - 1/16 and 3 1/4 - 1 1/8 - 1/16.
    expect(roomFor(DEMO, SIZES, joint)).toMatchObject({ planned: inches(7, 4), square: inches(89, 32), mitred: [inches(41, 16), inches(33, 16)] });
  });

  it('a back stretcher meets nothing at its height', () => {
    expect(roomFor(DEMO, SIZES, jointOf(DEMO, 'backStretcherTenon'))?.neighbours).toEqual([]);
  });

  it('the strength in racking is told only of a wood that is in the table', () => {
    expect(rackingOfJoint(DEMO, SIZES, joint)?.times).toBeGreaterThan(1);
    const other = loadSound(DEMO_TEXT.replaceAll('"hard maple"', '"driftwood"'));
    expect(rackingOfJoint(other, evaluate(other, []), jointOf(other, 'longRailTenon'))).toBeUndefined();
  });

  it('a measured neighbour that goes deeper shortens the room', () => {
    const deeper = evaluate(DEMO, [{ size: 'shortRailTenon.tenonLength', length: nanometres(inches(5, 2)) }, { size: 'shortRailTenon.mortiseDepth', length: inches(41, 16) }]);
    // Stops a web and its clearance before the far cheek at 1 1/8: 3 1/4 - 1 1/8 - 1/8 - 1/16.
    expect(roomFor(DEMO, deeper, joint)?.square).toBe(inches(31, 16));
  });
});
