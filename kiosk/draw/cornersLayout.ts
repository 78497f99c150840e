import { RING, type Face, type Side } from '../../core/faces/face.ts';
import type { FaceTold } from '../../core/faces/likes.ts';
import type { Box, Point } from './partLayout.ts';

/** One copy as it is drawn from above: what looks to each side, and what was told of it. */
export interface StandingCopy {
  readonly copy: number;
  readonly place: string;
  readonly sides: readonly Side[];
  /** Absent while nobody said which way it faces. */
  readonly towards?: Readonly<Partial<Record<Side, Face>>>;
  readonly numberedEndDown: boolean;
  readonly told: Readonly<Partial<Record<Face, FaceTold>>>;
  /** Where its mortises open. */
  readonly mortised: readonly Side[];
  /** Beside its number: of a rail, what looks up. */
  readonly remark?: string;
}

export interface LaidFace {
  readonly face: Face;
  readonly side: Side;
  /** The middle of the letter, inside the section. */
  readonly letter: Point;
  /** Where a face mark or an edge mark stands, outside. */
  readonly mark: Point;
  readonly shows: boolean;
}

export interface LaidCopy {
  readonly copy: StandingCopy;
  readonly box: Box;
  readonly middle: Point;
  /** Where its place is written. */
  readonly name: Point & { readonly anchor: 'start' | 'middle' | 'end' };
  readonly faces: readonly LaidFace[];
  /** Outer edges, drawn heavy. */
  readonly outer: readonly { readonly from: Point; readonly to: Point }[];
  /** Mortises, hatched. */
  readonly mortises: readonly Box[];
}

const LARGEST = 96;
const MARGIN = { x: 34, y: 30 };
/** Of a section's size: how far a letter stands from its side; how wide and deep a mortise is drawn, and how far from the outer face. */
const LETTER_IN = 0.16;
const MORTISE = { wide: 0.15, deep: 0.36, start: 0.1 };

/** Seen from above, the front below: each copy in its corner, or along its side, evenly between the corners. */
export function layCorners(copies: readonly StandingCopy[], width: number, height: number): readonly LaidCopy[] {
  const inRow = (side: Side): readonly StandingCopy[] => copies.filter(({ sides }) => sides.includes(side));
  const most = Math.max(2, ...(['front', 'back'] as const).map((side) => inRow(side).length));
  const size = Math.min(LARGEST, (width - 2 * MARGIN.x) / (most + 0.4 * (most - 1)), (height - 2 * MARGIN.y) / 2.3);
  // Beside the section there is room for words between two corners, and no line that they would stand on.
  const beside = most === 2 && copies.every(({ sides, remark }) => sides.length === 2 && remark === undefined);
  return copies.map((copy) => layCopy(copy, { x: across(copy, copies, width, size), y: down(copy, copies, height, size), width: size, height: size }, beside));
}

/** Along the front and the back from the left; at the left and the right against the edge. */
function across({ sides, place }: StandingCopy, all: readonly StandingCopy[], width: number, size: number): number {
  const [first, last] = [MARGIN.x, width - MARGIN.x - size];
  if (sides.includes('left')) return first;
  if (sides.includes('right')) return last;
  return between(all.filter((one) => sides.some((side) => one.sides.includes(side)) && one.sides.length === 1).map((one) => one.place), place, first, last);
}

function down({ sides, place }: StandingCopy, all: readonly StandingCopy[], height: number, size: number): number {
  const [first, last] = [MARGIN.y, height - MARGIN.y - size];
  if (sides.includes('back')) return first;
  if (sides.includes('front')) return last;
  return between(all.filter((one) => sides.some((side) => one.sides.includes(side)) && one.sides.length === 1).map((one) => one.place), place, first, last);
}

function between(places: readonly string[], place: string, first: number, last: number): number {
  return first + ((last - first) * (places.indexOf(place) + 1)) / (places.length + 1);
}

function layCopy(copy: StandingCopy, box: Box, nameBeside: boolean): LaidCopy {
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  return {
    copy, box, middle,
    name: nameBeside ? besideIt(copy, box) : insideOfIt(copy, box),
    faces: RING.flatMap((side) => {
      const face = copy.towards?.[side];
      return face === undefined ? [] : [layFace(copy, face, side, box)];
    }),
    outer: copy.sides.map((side) => edgeOf(box, side)),
    mortises: copy.mortised.map((side) => mortiseAt(box, side, copy.sides)),
  };
}

/** Towards the inside of the piece: outside stand the marks. */
function insideOfIt({ sides }: StandingCopy, { x, y, width, height }: Box): LaidCopy['name'] {
  return { x: x + width / 2, y: sides.includes('front') ? y - 9 : y + height + 19, anchor: 'middle' };
}

/** In the row, towards its middle, near the outer face. */
function besideIt({ sides }: StandingCopy, { x, y, width, height }: Box): LaidCopy['name'] {
  const level = sides.includes('front') ? y + height - 6 : y + 20;
  return sides.includes('left') ? { x: x + width + 10, y: level, anchor: 'start' } : { x: x - 10, y: level, anchor: 'end' };
}

/** From the middle of the section towards a side, by this share of its half. */
export function towardsSide({ x, y, width, height }: Box, side: Side, share: number): Point {
  const middle = { x: x + width / 2, y: y + height / 2 };
  const step = (width / 2) * share;
  switch (side) {
    case 'front': return { x: middle.x, y: middle.y + step };
    case 'back': return { x: middle.x, y: middle.y - step };
    case 'left': return { x: middle.x - step, y: middle.y };
    case 'right': return { x: middle.x + step, y: middle.y };
  }
}

function layFace({ sides }: StandingCopy, face: Face, side: Side, box: Box): LaidFace {
  return { side, face, letter: towardsSide(box, side, 1 - 2 * LETTER_IN), mark: towardsSide(box, side, 1.3), shows: sides.includes(side) };
}

function edgeOf(box: Box, side: Side): { readonly from: Point; readonly to: Point } {
  const { x, y, width, height } = box;
  const corners = { back: [[x, y], [x + width, y]], front: [[x, y + height], [x + width, y + height]], left: [[x, y], [x, y + height]], right: [[x + width, y], [x + width, y + height]] } as const;
  const [[fromX, fromY], [toX, toY]] = corners[side];
  return { from: { x: fromX, y: fromY }, to: { x: toX, y: toY } };
}

/** Opening at the side, near the outer face that it is gauged from. */
function mortiseAt({ x, y, width, height }: Box, side: Side, outside: readonly Side[]): Box {
  const { wide, deep, start } = { wide: width * MORTISE.wide, deep: width * MORTISE.deep, start: width * MORTISE.start };
  const far = (first: Side): number => (outside.includes(first) ? start : width - start - wide);
  if (side === 'left' || side === 'right') return { x: side === 'left' ? x : x + width - deep, y: y + far('back'), width: deep, height: wide };
  return { x: x + far('left'), y: side === 'back' ? y : y + height - deep, width: wide, height: deep };
}
