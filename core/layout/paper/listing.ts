import { nanometres, type Length } from '../../length/length.ts';
import { furniture } from './furniture.ts';
import { pageForm, type PaperName } from './paperSize.ts';
import { line, moved, spot, words, wrapped, mm, type Item, type Page, type SheetSet } from './sheet.ts';

/** What stands in one line of a list: each text from where it begins, broken to fit its width. */
export interface Row {
  readonly cells: readonly { readonly x: Length; readonly width: Length; readonly text: string; readonly bold?: true }[];
  /** A line is drawn above it. */
  readonly ruled?: true;
}

export interface Listing {
  readonly name: string;
  readonly title: string;
  readonly drawn: string;
  readonly paper: PaperName;
  /** Repeated at the head of every sheet. */
  readonly head: readonly Row[];
  readonly rows: readonly Row[];
  readonly longest: Length;
}

const LETTER = mm(3.6);
const LEADING = mm(5);
const SPACE = { ruled: mm(1.6), under: mm(0.2) } as const;

interface SetRow { readonly height: Length; readonly items: readonly Item[] }

/** A list on as many upright sheets as it takes; no row is torn apart. */
export function listSheets({ name, title, drawn, paper, head, rows, longest }: Listing): SheetSet {
  const form = pageForm(paper, 'upright');
  const { window } = form;
  const top = head.map((row) => setRow(row, window.width));
  const filled = fill(rows.map((row) => setRow(row, window.width)), window.height - heightOf(top));
  return {
    name, groups: [], longest,
    pages: filled.map((page, index): Page => ({
      width: form.width, height: form.height, window, drawn: stack([...top, ...page]).map((item) => moved(item, window)),
      furniture: furniture(form, { title, sheet: `sheet ${index + 1} of ${filled.length}`, drawn }),
    })),
  };
}

function setRow({ cells, ruled }: Row, width: Length): SetRow {
  const texts = cells.map((cell) => ({ ...cell, lines: wrapped(cell.text, LETTER, cell.width) }));
  const space = ruled ? SPACE.ruled : SPACE.under;
  const most = Math.max(1, ...texts.map(({ lines }) => lines.length));
  const items = texts.flatMap(({ x, lines, bold }) => lines.map((text, index) => words(text, spot(x, space + LEADING * (index + 1) - mm(1.4)), LETTER, bold ? { bold } : {})));
  return { height: nanometres(most * LEADING + 2 * space), items: [...(ruled ? [line('thin', spot(0, 0), spot(width, 0))] : []), ...items] };
}

function heightOf(rows: readonly SetRow[]): number {
  return rows.reduce((sum, { height }) => sum + height, 0);
}

function fill(rows: readonly SetRow[], room: number): readonly (readonly SetRow[])[] {
  const pages: SetRow[][] = [[]];
  for (const row of rows) {
    const last = pages.at(-1) ?? [];
    if (last.length > 0 && heightOf(last) + row.height > room) pages.push([row]);
    else last.push(row);
  }
  return pages;
}

function stack(rows: readonly SetRow[]): readonly Item[] {
  let down = 0;
  return rows.flatMap(({ height, items }) => {
    const at = down;
    down += height;
    return items.map((item) => moved(item, spot(0, at)));
  });
}
