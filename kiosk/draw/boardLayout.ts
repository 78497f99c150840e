import type { Board } from '../../core/stock/board.ts';
import { offcutsOf, type TakenBoard } from '../../core/stock/cutting.ts';
import { markOf } from '../../core/stock/inOrder.ts';
import type { Cut } from '../../core/stock/plan/placed.ts';
import { widthAt } from '../../core/stock/rack.ts';
import type { Length } from '../../core/length/length.ts';
import type { Box, Line } from './partLayout.ts';

/** A board as it is to be drawn: alone, or with what a plan has on it. */
export interface BoardShape {
  readonly board: Board;
  readonly plan?: TakenBoard;
}

export interface CutMark {
  readonly number: number;
  readonly line: Line;
  /** Where its number stands. */
  readonly at: { readonly x: number; readonly y: number };
  readonly standing: 'made' | 'next' | 'to come';
}

/** Everything of the drawing in its own units; the board lies with its marked end to the left and its reference edge below. */
export interface BoardLayout {
  readonly outline: readonly { readonly x: number; readonly y: number }[];
  readonly sapwood: readonly { readonly x: number; readonly y: number }[];
  readonly defects: readonly (Box & { readonly what: string })[];
  readonly parts: readonly (Box & { readonly name: string; readonly size: number })[];
  readonly offcuts: readonly Box[];
  readonly cuts: readonly CutMark[];
  /** Distances from the marked end, of the crosscuts that part the board: only where there is room for the figure. */
  readonly ticks: readonly { readonly x: number; readonly length: Length }[];
  readonly end: Box;
}

const MARGIN = { left: 44, right: 14, top: 66, bottom: 12 } as const;
/** A long narrow board is drawn wider than it is, up to so many times: else no name would fit in. */
const MOST_STRETCH = 4;
const FIGURE_ROOM = 74;
const NUMBER_APART = 24;
/** A resaw is not seen from above: a short line at the end of its piece, beside the name. */
const RESAW_LINE = 40;
const SMALLEST_NAME = 11;
const LETTER_EM = 0.56;

export function layBoard({ board, plan }: BoardShape, width: number, height: number): BoardLayout {
  const wide = Math.max(board.width, board.farWidth);
  const scale = (width - MARGIN.left - MARGIN.right) / board.length;
  const across = Math.min((height - MARGIN.top - MARGIN.bottom) / wide, scale * MOST_STRETCH);
  const bottom = MARGIN.top + wide * across;
  const x = (along: number): number => MARGIN.left + along * scale;
  const y = (edge: number): number => bottom - edge * across;
  const box = (from: number, to: number, fromEdge: number, toEdge: number): Box => ({ x: x(from), y: y(toEdge), width: (to - from) * scale, height: (toEdge - fromEdge) * across });
  const corner = (along: number, edge: number) => ({ x: x(along), y: y(edge) });
  const { length, width: near, farWidth: far, sapwood } = board;
  return {
    outline: [corner(0, 0), corner(length, 0), corner(length, far), corner(0, near)],
    sapwood: sapwood === 0 ? [] : [corner(0, near - sapwood), corner(length, far - sapwood), corner(length, far), corner(0, near)],
    defects: board.defects.map((defect) => ({ ...box(defect.from, Math.min(defect.to, length), defect.fromEdge, Math.min(defect.toEdge, widthAt(board, defect.from))), what: defect.what })),
    parts: (plan?.placed ?? []).map((blank) => named(box(blank.from, blank.from + blank.length, blank.fromEdge, blank.fromEdge + blank.width), markOf(blank))),
    offcuts: plan === undefined ? [] : offcutsOf(plan).map((area) => box(area.from, area.to, area.fromEdge, Math.min(area.toEdge, widthAt(board, area.from), widthAt(board, area.to)))),
    cuts: spread((plan?.cuts ?? []).map((cut, index) => markCut(cut, index, plan?.made ?? 0, { x, y, wide: (along) => Math.max(widthAt(board, along), 0) }))),
    ticks: ticksOf(plan?.cuts ?? [], x),
    end: { x: 6, y: y(near), width: MARGIN.left - 12, height: near * across },
  };
}

/** Letters as large as the room lets them be; a part too small for its name is drawn without. */
function named(box: Box, name: string): Box & { readonly name: string; readonly size: number } {
  const size = Math.min(20, box.height * 0.7, (box.width - 6) / (name.length * LETTER_EM));
  return { ...box, name: size < SMALLEST_NAME ? '' : name, size };
}

interface Scales {
  readonly x: (along: number) => number;
  readonly y: (edge: number) => number;
  readonly wide: (along: number) => number;
}

function markCut({ kind, at, from, to, section, fromEdge = at, toEdge = at }: Cut, index: number, made: number, { x, y, wide }: Scales): CutMark {
  const standing = index < made ? 'made' : index === made ? 'next' : 'to come';
  if (kind === 'rip') return { number: index + 1, line: { x1: x(from), y1: y(at), x2: x(to), y2: y(at) }, at: { x: x(from) + 16, y: y(at) }, standing };
  if (kind === 'resaw') {
    const middle = y((fromEdge + toEdge) / 2);
    return { number: index + 1, line: { x1: Math.max(x(from), x(to) - RESAW_LINE), y1: middle, x2: x(to), y2: middle }, at: { x: x(to) - 16, y: middle }, standing };
  }
  const line = { x1: x(at), y1: y(from) + (section === 0 ? 6 : 0), x2: x(at), y2: y(Math.min(to, wide(at))) - (section === 0 ? 10 : 0) };
  return { number: index + 1, line, at: section === 0 ? { x: x(at), y: line.y2 - 10 } : { x: x(at), y: (line.y1 + line.y2) / 2 }, standing };
}

/** Numbers that would lie on each other are moved along their lines. */
function spread(marks: readonly CutMark[]): readonly CutMark[] {
  const placed: CutMark[] = [];
  for (const mark of marks) {
    const upright = mark.line.x1 === mark.line.x2;
    let { at } = mark;
    for (let tries = 0; tries < 8 && placed.some((other) => Math.hypot(other.at.x - at.x, other.at.y - at.y) < NUMBER_APART); tries++) {
      at = upright ? { x: at.x, y: mark.at.y + (tries % 2 === 0 ? 1 : -1) * NUMBER_APART * Math.ceil((tries + 1) / 2) } : { x: at.x + NUMBER_APART, y: at.y };
    }
    placed.push({ ...mark, at });
  }
  return placed;
}

function ticksOf(cuts: readonly Cut[], x: (along: number) => number): BoardLayout['ticks'] {
  const ticks: { x: number; length: Length }[] = [];
  for (const cut of cuts.filter(({ section }) => section === 0)) {
    if (ticks.every((tick) => Math.abs(tick.x - x(cut.at)) >= FIGURE_ROOM)) ticks.push({ x: x(cut.at), length: cut.at });
  }
  return ticks;
}
