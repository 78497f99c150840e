import { add, subtract, timesWhole } from '../../../core/length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../../core/length/length.ts';
import type { Blank, Board, Defect, SawSettings } from '../../../core/stock/board.ts';
import type { StockProblem } from '../../../core/stock/plan/planStock.ts';

/** A small generator of chance numbers that gives the same numbers every time (Lehmer, with the constants of Park and Miller 1988). */
export function chance(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647;
}

function inches(count: number, of = 1): Length {
  return nanometres(Math.round((count * NANOMETRES_PER_INCH) / of / 396_875) * 396_875);
}

export const SAW: SawSettings = { kerf: inches(1, 16), endTrim: inches(1), cutAgain: true };

function boardOf(number: number, next: () => number): Board {
  const length = inches(72 + Math.floor(next() * 72));
  const width = inches(5 + Math.floor(next() * 20) / 4);
  const taper = next() < 0.3 ? inches(Math.floor(next() * 6), 8) : nanometres(0);
  const defects = Array.from({ length: Math.floor(next() * 4) }, (_, index): Defect => {
    const from = inches(4 + next() * 60);
    const fromEdge = inches(next() * 4);
    return { what: index % 2 === 0 ? 'knot' : 'check', from, to: add(from, inches(1 + next() * 5)), fromEdge, toEdge: add(fromEdge, inches(0.5 + next() * 2)), face: next() < 0.3 ? 'other face' : 'through' };
  });
  return { number, species: 'hard maple', length, width, farWidth: subtract(width, taper), thickness: inches(number % 3 === 0 ? 5 : 3, 2), defects, sapwood: nanometres(next() < 0.2 ? inches(1, 2) : 0) };
}

/** Rails, stretchers, slats, drawer parts: lengths and widths as they come in furniture, in sixteenths, and legs of three layers. */
function blanksOf(count: number, next: () => number): Blank[] {
  const blanks: Blank[] = [];
  for (let left = count, kind = 1; left > 0; kind++) {
    const together = next() < 0.2 ? 3 : 1;
    const copies = Math.min(left, together * (1 + Math.floor(next() * 6)));
    const whole = Math.max(together, copies - (copies % together));
    blanks.push({
      id: `part${kind}`, name: `part ${kind}`, species: 'hard maple', together, count: whole, mayHideDefect: next() < 0.2,
      length: inches(8 + Math.floor(next() * 40 * 16) / 16), width: inches(1.5 + Math.floor(next() * 3 * 16) / 16), thickness: inches(kind % 5 === 0 ? 9 : 5, 4),
    });
    left -= whole;
  }
  return blanks;
}

/** A job of so many boards and about so many blanks; the same for the same numbers. */
export function job(boards: number, blanks: number, seed: number): StockProblem {
  const next = chance(seed);
  return {
    boards: Array.from({ length: boards }, (_, index) => boardOf(index + 1, next)),
    blanks: blanksOf(blanks, next), saw: SAW, objectives: ['fewest boards', 'least sawing'],
  };
}

/** What a careful person does without a plan: longest part first, into the first board with room for it at the end of what is laid there, in strips of one row. */
export function firstFitDecreasing({ boards, blanks, saw }: StockProblem): { boards: number; missing: number } {
  const rows = boards.map((board) => ({ board, used: 0, at: saw.endTrim, strips: [] as { length: number; width: number; from: number }[] }));
  let missing = 0;
  for (const blank of [...blanks].sort((a, b) => b.length - a.length || b.width - a.width)) {
    for (let copy = 0; copy < blank.count; copy++) if (!rows.some((row) => lay(row, blank, saw))) missing++;
  }
  return { boards: rows.filter(({ used }) => used > 0).length, missing };
}

interface Row {
  readonly board: Board;
  used: number;
  at: number;
  readonly strips: { length: number; width: number; from: number }[];
}

function lay(row: Row, blank: Blank, { kerf, endTrim }: SawSettings): boolean {
  const { board } = row;
  if (board.species !== blank.species || board.thickness < blank.thickness) return false;
  const width = Math.min(board.width, board.farWidth) - board.sapwood;
  const beside = row.strips.find((strip) => strip.length >= blank.length && strip.width + kerf + blank.width <= width && clear(board, strip.from, blank.length, strip.width + kerf, blank));
  if (beside !== undefined) {
    beside.width += kerf + blank.width;
    row.used++;
    return true;
  }
  for (const from of [row.at, ...board.defects.map(({ to }) => to as number).filter((to) => to > row.at)].sort((a, b) => a - b)) {
    if (from + blank.length > board.length - endTrim || blank.width > width || !clear(board, from, blank.length, 0, blank)) continue;
    row.strips.push({ length: blank.length, width: blank.width, from });
    row.at = from + timesWhole(blank.length, 1) + kerf;
    row.used++;
    return true;
  }
  return false;
}

function clear(board: Board, from: number, length: number, fromEdge: number, blank: Blank): boolean {
  return board.defects.every((defect) => defect.to <= from || defect.from >= from + length || defect.toEdge <= fromEdge || defect.fromEdge >= fromEdge + blank.width || (blank.mayHideDefect && defect.face !== 'through'));
}
