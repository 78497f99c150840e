import { describe, expect, it } from 'vitest';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../../core/length/length.ts';
import { writeLength } from '../../../core/length/write.ts';
import type { Board } from '../../../core/stock/board.ts';
import { boardSheets } from '../../../core/stock/boardSheets.ts';
import { freedBlanks, newOffcuts, offcutsOf, takenBoard } from '../../../core/stock/cutting.ts';
import { planStock } from '../../../core/stock/plan/planStock.ts';
import { pieceOf } from '../../../core/stock/rack.ts';

const inches = (count: number): Length => nanometres(count * NANOMETRES_PER_INCH);
const KERF = inches(1 / 16);
const BOARD: Board = { number: 7, species: 'cherry', length: inches(96), width: inches(9), farWidth: inches(8), thickness: inches(1), sapwood: inches(0), defects: [{ what: 'knot', from: inches(50), to: inches(53), fromEdge: inches(4), toEdge: inches(6), face: 'through' }] };

function planned() {
  const plan = planStock({
    boards: [BOARD], saw: { kerf: KERF, endTrim: inches(1), cutAgain: true }, objectives: ['fewest boards'],
    blanks: [{ id: 'rail', name: 'rail', species: 'cherry', length: inches(24), width: inches(3), thickness: inches(1), count: 3, together: 1, mayHideDefect: false }],
  }, () => false, () => undefined);
  const [board] = plan.boards;
  if (!board) throw new Error('nothing was planned');
  return takenBoard(board, BOARD, KERF);
}

describe('the sheet of a board', () => {
  const board = planned();
  const sheets = boardSheets({ boards: [board], title: 'Table · cutting plan', drawn: '', paper: 'a4', write: (length) => writeLength(length, { unit: 'inch', denominator: 32 }) });
  const items = sheets.pages.flatMap(({ drawn }) => drawn);

  it('has every part and every cut once, and tells each cut in words', () => {
    expect(items.filter((item) => item.kind === 'stroke' && item.of === 'rail')).toHaveLength(3);
    board.cuts.forEach((_, index) => expect(items.filter((item) => item.kind === 'stroke' && item.of === `cut ${index + 1}`)).toHaveLength(1));
    const text = items.flatMap((item) => (item.kind === 'words' ? [item.text] : [])).join('\n');
    expect(text).toContain('Board 7: 4/4 cherry, 96 in × 9 in to 8 in');
    expect(text).toContain('To keep clear of: knot 50 in to 53 in.');
    expect(text).toMatch(/^1 {2}crosscut at /m);
  });

  it('keeps everything in the window of the sheet', () => {
    for (const { drawn, window } of sheets.pages) for (const item of drawn) for (const { x, y } of item.kind === 'words' ? [item.at] : item.points) {
      expect([x >= window.x, x <= window.x + window.width, y >= window.y, y <= window.y + window.height]).toEqual([true, true, true, true]);
    }
  });
});

describe('what a board gives as it is cut', () => {
  it('is free only when every cut along its edges is made, and all of it in the end', () => {
    const board = planned();
    expect(freedBlanks(board)).toEqual([]);
    const counts = board.cuts.map((_, made) => freedBlanks({ ...board, made: made + 1 }).length);
    expect(counts.every((count, index) => index === 0 || count >= (counts[index - 1] ?? 0))).toBe(true);
    expect(counts.at(-1)).toBe(3);
  });

  it('and each off-cut comes back once', () => {
    const board = planned();
    const back = board.cuts.flatMap((_, made) => newOffcuts({ ...board, made }));
    expect(back).toHaveLength(offcutsOf(board).length);
    expect(back.length).toBeGreaterThan(0);
  });

  it('an off-cut takes its defects along, from its own mark', () => {
    const piece = pieceOf(BOARD, 9, { from: inches(40), to: inches(96), fromEdge: inches(3), toEdge: inches(9) });
    expect(piece).toMatchObject({ number: 9, cutFrom: 7, length: inches(56), farWidth: inches(5) });
    expect(piece.defects).toEqual([{ what: 'knot', from: inches(10), to: inches(13), fromEdge: inches(1), toEdge: inches(3), face: 'through' }]);
  });
});
