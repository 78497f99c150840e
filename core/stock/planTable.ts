import type { Length } from '../length/length.ts';
import { freedWith, type TakenBoard } from './cutting.ts';
import { writeCsv } from './csv.ts';
import type { PlacedBlank } from './plan/placed.ts';
import { writeCell } from './boardTable.ts';

const COLUMNS = ['board', 'cut', 'part', 'from marked end', 'from reference edge', 'length', 'width', 'is cut'] as const;

/**
 * A cutting plan as a table (RFC 4180): every rough part, from which board, where on it, and with which of the board's cuts it comes free; board after
 * board, and on each board in the order of its cuts. Lengths in inches to the sixty-fourth where that is exact, else in millimetres, unless `write` says otherwise.
 */
export function writePlanTable(boards: readonly Pick<TakenBoard, 'board' | 'placed' | 'cuts' | 'kerf' | 'made'>[], write: (length: Length) => string = writeCell): string {
  const rows = boards.flatMap((board) => inOrder(board).map(({ blank, cut }) => [
    String(board.board), String(cut), blank.name, ...[blank.from, blank.fromEdge, blank.length, blank.width].map(write), board.made > 0 && board.made >= cut ? 'yes' : 'no',
  ]));
  return writeCsv([COLUMNS, ...rows]);
}

function inOrder(board: Pick<TakenBoard, 'placed' | 'cuts' | 'kerf'>): readonly { readonly blank: PlacedBlank; readonly cut: number }[] {
  return board.placed.map((blank) => ({ blank, cut: freedWith(board, blank) }))
    .sort((a, b) => a.cut - b.cut || a.blank.from - b.blank.from || a.blank.fromEdge - b.blank.fromEdge);
}
