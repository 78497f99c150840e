import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH } from '../../../core/length/length.ts';
import { writeLength } from '../../../core/length/write.ts';
import { evaluate } from '../../../core/piece/evaluate.ts';
import { loadPiece } from '../../../core/piece/load.ts';
import { blanksOf, cutNoun } from '../../../core/stock/blanks.ts';
import { toBuy } from '../../../core/stock/buying.ts';
import { planStock, type StockProblem } from '../../../core/stock/plan/planStock.ts';
import { roughTerms, SIDES } from '../../../core/stock/rough.ts';
import { tellCuts, tellPlaced, tellPlan } from '../../../core/stock/telling.ts';

const inches = (count: number) => nanometres(count * NANOMETRES_PER_INCH);
const write = (length: ReturnType<typeof nanometres>) => writeLength(length, { unit: 'inch', denominator: 16 });

function demo() {
  const loaded = loadPiece(readFileSync(new URL('../../../core/piece/demo/bakers-work-table.json', import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error('the demo piece is sound');
  return { piece: loaded.value, sizes: evaluate(loaded.value, []) };
}

function demoBlanks() {
  const { piece, sizes } = demo();
  return blanksOf(piece.file, sizes);
}

/** A board of six feet with a knot across its middle, and two rails of thirty inches. */
const PROBLEM: StockProblem = {
  boards: [{
    number: 3, species: 'ash', length: inches(72), width: inches(5), farWidth: inches(5), thickness: inches(1), sapwood: nanometres(0),
    defects: [{ what: 'knot', from: inches(34), to: inches(37), fromEdge: nanometres(0), toEdge: inches(5), face: 'through' }],
  }],
  blanks: [{ id: 'rail', name: 'rail', species: 'ash', length: inches(30), width: inches(4), thickness: inches(1), count: 2, together: 1, mayHideDefect: false }],
  saw: { kerf: inches(1 / 16), endTrim: inches(1), cutAgain: true }, objectives: ['fewest boards'],
};

describe('from the piece to the boards', () => {
  it('makes blanks of finished sizes and allowances: a leg of three layers that stay together, a top of six boards', () => {
    const blanks = demoBlanks();
    expect(blanks.find(({ id }) => id === 'leg')).toMatchObject({ name: 'leg layer', count: 12, together: 3, length: inches(33.25), width: inches(3.375), thickness: inches(1.25) });
    expect(blanks.find(({ id }) => id === 'top')).toMatchObject({ name: 'top board', count: 6, together: 1, length: inches(61) });
  });

  it('says what every rough size is made of, and it adds up to the blank, whatever is left on layers, panel boards and single parts', () => {
    const { piece, sizes } = demo();
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 64 }), { minLength: 9, maxLength: 9 }), (sixteenths) => {
      const over = (at: number) => inches((sixteenths[at] ?? 0) / 16);
      const extras = { layer: { length: over(0), width: over(1), thickness: over(2) }, panel: { length: over(3), width: over(4), thickness: over(5) } };
      const rough = new Map([['leg', { longer: over(6), wider: over(7), thicker: over(8) }]]);
      const blanks = blanksOf(piece.file, sizes, extras, rough);
      for (const part of piece.file.parts) for (const side of SIDES) {
        const terms = roughTerms(part, sizes, side, extras, rough.get(part.id) ?? {});
        expect(terms.reduce((sum, { length }) => sum + length, 0)).toBe(blanks.find(({ id }) => id === part.id)?.[side]);
      }
      expect(blanks.find(({ id }) => id === 'leg')?.length).toBe(inches(33.25) + over(0) + over(6));
      expect(blanks.find(({ id }) => id === 'top')?.width).toBe((demoBlanks().find(({ id }) => id === 'top')?.width ?? 0) + over(4));
    }), { numRuns: 20 });
  });

  it('takes from the file which part may hide a knot, unless it was told otherwise', () => {
    const { piece, sizes } = demo();
    const file = { ...piece.file, parts: piece.file.parts.map((part) => (part.id === 'longRail' ? { ...part, mayHideDefect: true } : part)) };
    const hiding = (rough?: Parameters<typeof blanksOf>[3]) => blanksOf(file, sizes, undefined, rough).filter(({ mayHideDefect }) => mayHideDefect).map(({ id }) => id);
    expect(hiding()).toEqual(['longRail']);
    expect(hiding(new Map([['longRail', { mayHideDefect: false }], ['top', { mayHideDefect: true }]]))).toEqual(['top']);
  });

  it('tells where each part lies and every cut from the marked end, never from the cut before', () => {
    const plan = planStock(PROBLEM, () => true, () => undefined);
    expect(tellPlan(plan)[0]).toBe('Best possible is 1 board; this plan uses 1.');
    const [board] = plan.boards;
    if (board === undefined) throw new Error('board three is used');
    expect(tellPlaced(board, write)).toEqual([
      'rail: 1 in to 31 in from the marked end, 0 in to 4 in from the reference edge', 'rail: 37 in to 67 in from the marked end, 0 in to 4 in from the reference edge',
    ]);
    expect(tellCuts(board, write)).toEqual([
      'crosscut at 1 in from the marked end, saw before the line', 'crosscut at 31 in from the marked end, saw beyond the line',
      'crosscut at 37 in from the marked end, saw before the line', 'crosscut at 67 in from the marked end, saw beyond the line',
      'rip at 4 in from the reference edge, 1 in to 31 in from the marked end in section 1, saw beyond the line',
      'rip at 4 in from the reference edge, 37 in to 67 in from the marked end in section 2, saw beyond the line',
    ]);
  });

  it('reads a board that widens away from its mark from the mark all the same', () => {
    const [given] = PROBLEM.boards;
    if (given === undefined) throw new Error('there is one board');
    const plan = planStock({ ...PROBLEM, boards: [{ ...given, width: inches(3), farWidth: inches(8), defects: [] }], blanks: PROBLEM.blanks.map((blank) => ({ ...blank, count: 1 })) }, () => true, () => undefined);
    expect(plan.boards[0]?.placed[0]).toMatchObject({ from: inches(41), fromEdge: 0 });
  });

  it('lists what to buy with the yield that the grade promises (grading chart: FAS 83 1/3 %, No. 1 Common 66 2/3 %)', () => {
    const plan = planStock({ ...PROBLEM, boards: [] }, () => true, () => undefined);
    const [list] = toBuy(plan.missing, PROBLEM.blanks, 'FAS');
    // Two of 4 in × 30 in × 1 in: 240 in³ over 144.
    expect(list?.netBoardFeet).toBeCloseTo(240 / 144, 9);
    expect(list?.boardFeet).toBeCloseTo(2, 9);
    expect(list).toMatchObject({ quarter: { name: '4/4' }, longest: inches(30), widest: inches(4) });
    expect(toBuy(plan.missing, PROBLEM.blanks, 'No. 1 Common')[0]?.boardFeet).toBeCloseTo(2.5, 9);
  });
});

describe('what is cut of a part, after its count', () => {
  it('stands in the plural of more than one, by the piece’s own word where it has one', () => {
    const { piece: { file } } = demo();
    const leg = file.parts.find(({ id }) => id === 'leg');
    const rail = file.parts.find(({ id }) => id === 'longRail');
    expect(leg && cutNoun(file.parts, { id: 'leg', name: 'leg layer' }, 6)).toBe('leg layers');
    expect(rail && cutNoun([{ ...rail, plural: 'long rails of oak' }], { id: 'longRail', name: 'long rail' }, 2)).toBe('long rails of oak');
    expect(cutNoun(file.parts, { id: 'longRail', name: 'long rail' }, 1)).toBe('long rail');
    expect(cutNoun([], { id: 'shelf', name: 'shelf' }, 3)).toBe('shelves');
  });
});
