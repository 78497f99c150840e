import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import { furniture } from '../layout/paper/furniture.ts';
import { hatching } from '../layout/paper/hatch.ts';
import { pageForm, type PaperName } from '../layout/paper/paperSize.ts';
import { line, mm, moved, rectangle, spot, textWidth, words, wrapped, type Item, type Page, type SheetSet } from '../layout/paper/sheet.ts';
import { areaOf, offcutsOf, type Area, type TakenBoard } from './cutting.ts';
import { markOf } from './inOrder.ts';
import { defectsIn, quarterName, widthAt } from './rack.ts';
import { tellCut, tellHeart, tellPlaced } from './telling.ts';

export interface BoardSheets {
  readonly boards: readonly TakenBoard[];
  readonly title: string;
  readonly drawn: string;
  readonly paper: PaperName;
  readonly write: (length: Length) => string;
}

const LETTER = mm(3.6);
const LEADING = mm(5.2);
const DRAWING = mm(62);
/** Room for the number of the board at its marked end, and above it for the numbers of the cuts. */
const END = mm(9);
const HEAD = mm(12);
const MOST_STRETCH = 4;

/** A sheet a board, or more where its cuts are many: the board with its parts, what is wrong with it, its cuts numbered in order, and all of it in words. Not to scale across. */
export function boardSheets(sheets: BoardSheets): SheetSet {
  const pages = sheets.boards.flatMap((board) => pagesOf(board, sheets));
  const form = pageForm(sheets.paper, 'upright');
  const longest = Math.max(0, ...sheets.boards.map(({ stood }) => stood.length));
  return {
    name: 'cutting plan', groups: [], longest: nanometres(longest),
    pages: pages.map((items, index): Page => ({
      width: form.width, height: form.height, window: form.window, drawn: items.map((item) => moved(item, form.window)),
      furniture: furniture(form, { title: sheets.title, sheet: `sheet ${index + 1} of ${pages.length}`, drawn: sheets.drawn }),
    })),
  };
}

function pagesOf(board: TakenBoard, sheets: BoardSheets): readonly (readonly Item[])[] {
  const { window } = pageForm(sheets.paper, 'upright');
  const texts = linesOf(board, sheets).flatMap((text) => wrapped(text, LETTER, window.width).map((each, index) => (index === 0 ? each : `    ${each}`)));
  const pages: Item[][] = [];
  for (let at = 0; pages.length === 0 || at < texts.length;) {
    const drawing = pages.length === 0 ? drawBoard(board, sheets, window.width) : [];
    const top = mm(6) + (pages.length === 0 ? DRAWING + HEAD : LEADING);
    const room = Math.max(1, Math.floor((window.height - top) / LEADING));
    const title = words(titleOf(board, sheets), spot(0, mm(4)), mm(4.4), { bold: true });
    pages.push([title, ...drawing, ...texts.slice(at, at + room).map((text, index) => words(text, spot(0, top + LEADING * (index + 1)), LETTER))]);
    at += room;
  }
  return pages;
}

function titleOf({ stood }: TakenBoard, { write }: BoardSheets): string {
  return `Board ${stood.number}: ${quarterName(stood.thickness) ?? write(stood.thickness)} ${stood.species}, ${write(stood.length)} × ${write(stood.width)}${stood.farWidth === stood.width ? '' : ` to ${write(stood.farWidth)}`}`;
}

function linesOf(board: TakenBoard, { write }: BoardSheets): readonly string[] {
  const heart = tellHeart(board.stood);
  const hidden = new Set(board.placed.flatMap((blank) => defectsIn(board.stood, areaOf(blank))));
  const wrong = board.stood.defects.filter((defect) => !hidden.has(defect)).map(({ what, from, to }) => `${what} ${write(from)} to ${write(to)}`);
  return [
    ...board.cuts.map((cut, index) => `${index + 1}  ${tellCut(cut, write)}${index < board.made ? ' (made)' : ''}`), '',
    ...tellPlaced(board, write, board.stood), ...(wrong.length === 0 ? [] : ['', `To keep clear of: ${wrong.join('; ')}.`]), '',
    ...(heart === undefined ? [] : [`As the board is marked, ${heart}: mark it on each part. As it dries, a flat-sawn board goes hollow on the side away from the heart.`, '']),
    `Lengths run from the marked end, widths from the reference edge; the saw takes ${write(board.kerf)}, which is reckoned in. Mark all the crosscuts before the first is sawn.`,
  ];
}

interface Scales {
  readonly box: (area: Area) => ReturnType<typeof boxOf>;
  readonly x: (along: number) => number;
  readonly y: (edge: number) => number;
}

function drawBoard(board: TakenBoard, { write }: BoardSheets, width: number): readonly Item[] {
  const { stood } = board;
  const scales = scalesOf(stood, width);
  const { x, y, box } = scales;
  const [near, far] = [stood.width, stood.farWidth];
  return [
    { kind: 'stroke', look: 'outline', points: [spot(x(0), y(0)), spot(x(stood.length), y(0)), spot(x(stood.length), y(far)), spot(x(0), y(near)), spot(x(0), y(0))] },
    words(String(stood.number), spot(0, Math.round((y(0) + y(near)) / 2)), mm(6), { bold: true }),
    ...stood.defects.flatMap((defect) => hatching(box({ ...defect, to: Math.min(defect.to, stood.length), toEdge: Math.min(defect.toEdge, widthAt(stood, defect.from)) }))),
    ...offcutsOf(board).map((area) => rectangle('thin', box({ ...area, toEdge: Math.min(area.toEdge, widthAt(stood, area.from), widthAt(stood, area.to)) }), 'off-cut')),
    ...board.placed.flatMap((blank) => [rectangle('mark', box(areaOf(blank)), markOf(blank)), ...nameIn(box(areaOf(blank)), markOf(blank))]),
    ...board.cuts.flatMap((cut, index) => drawCut(cut, index + 1, scales, widthAt(stood, cut.kind === 'rip' ? 0 : cut.at), write)),
  ];
}

function scalesOf(stood: TakenBoard['stood'], width: number): Scales {
  const wide = Math.max(stood.width, stood.farWidth);
  const along = (width - END) / stood.length;
  const across = Math.min((DRAWING - mm(8)) / wide, along * MOST_STRETCH);
  const x = (place: number): number => Math.round(END + place * along);
  const y = (edge: number): number => Math.round(HEAD + mm(6) + (wide - edge) * across);
  return { x, y, box: (area) => boxOf(area, x, y) };
}

function boxOf({ from, to, fromEdge, toEdge }: Area, x: Scales['x'], y: Scales['y']) {
  return { ...spot(x(from), y(toEdge)), width: nanometres(x(to) - x(from)), height: nanometres(y(fromEdge) - y(toEdge)) };
}

/** Where there is room for it. */
function nameIn(box: ReturnType<typeof boxOf>, name: string): readonly Item[] {
  const size = nanometres(Math.min(mm(3.4), Math.round(box.height * 0.6)));
  return size < mm(1.8) || textWidth(name, size) > box.width ? [] : [words(name, spot(Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2 + size * 0.35)), size, { anchor: 'middle' })];
}

function drawCut({ kind, at, from, to, section, fromEdge = at, toEdge = at }: TakenBoard['cuts'][number], number: number, { x, y }: Scales, wide: number, write: BoardSheets['write']): readonly Item[] {
  const bold = { bold: true } as const;
  if (kind === 'rip') return [line('gauge', spot(x(from), y(at)), spot(x(to), y(at)), `cut ${number}`), words(String(number), spot(x(from) + mm(1), y(at) - mm(0.6)), mm(3), bold)];
  if (kind === 'resaw') return [words(String(number), spot(x(from) + mm(1), y((fromEdge + toEdge) / 2)), mm(3), bold)];
  if (section > 0) return [line('gauge', spot(x(at), y(from)), spot(x(at), y(to)), `cut ${number}`), words(String(number), spot(x(at) + mm(0.6), y(to) + mm(3.4)), mm(3), bold)];
  const top = y(wide) - mm(3);
  return [line('gauge', spot(x(at), y(0) + mm(2)), spot(x(at), top), `cut ${number}`), words(`${number}: ${write(at)}`, spot(x(at), top - mm(1) - (number % 2 === 0 ? mm(4) : 0)), mm(3), { ...bold, anchor: at < 6 * NANOMETRES_PER_INCH ? 'start' : 'middle' })];
}
