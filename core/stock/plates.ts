import type { Board } from './board.ts';
import { kerfOf, type Area, type TakenBoard } from './cutting.ts';
import type { Cut } from './plan/placed.ts';

/** What the saw has made of a board so far. */
export interface Parted {
  /** The pieces it is in now, as rectangles; a tapered board reaches to its wider end's width. */
  readonly plates: readonly Area[];
  /** Cuts that did not go from edge to edge of a piece: those pieces are not to be trusted. */
  readonly astray: readonly Cut[];
}

/** The pieces of a board after its cuts, each from edge to edge of one piece. */
export function partedBy({ stood, kerf }: { readonly stood: Pick<Board, 'length' | 'width' | 'farWidth'>; readonly kerf: number }, cuts: readonly Cut[]): Parted {
  let plates: readonly Area[] = [{ from: 0, to: stood.length, fromEdge: 0, toEdge: Math.max(stood.width, stood.farWidth) }];
  const astray: Cut[] = [];
  for (const cut of cuts) {
    // A resawn piece stays where it is, in layers.
    if (cut.kind === 'resaw') continue;
    const [low, high] = across(cut, kerf);
    // Sawn along an edge there is nothing to part.
    const sawn = plates.filter((plate) => touches(cut, plate, low, high));
    const [plate] = sawn;
    if (plate === undefined) continue;
    if (sawn.length > 1 || !reaches(cut, plate)) astray.push(cut);
    else plates = plates.flatMap((one) => (one === plate ? split(cut, plate, low, high) : [one]));
  }
  return { plates, astray };
}

/** Whether one rectangle lies in another. */
export function liesIn(inner: Area, outer: Area): boolean {
  return inner.from >= outer.from && inner.to <= outer.to && inner.fromEdge >= outer.fromEdge && inner.toEdge <= outer.toEdge;
}

/** The cut's kerf, in the direction it parts. */
function across(cut: Cut, kerf: number): readonly [number, number] {
  const area = kerfOf(cut, kerf);
  return cut.kind === 'rip' ? [area.fromEdge, area.toEdge] : [area.from, area.to];
}

function touches({ kind, from, to }: Cut, plate: Area, low: number, high: number): boolean {
  return kind === 'rip' ? plate.fromEdge < high && low < plate.toEdge && plate.from < to && from < plate.to : plate.from < high && low < plate.to && plate.fromEdge < to && from < plate.toEdge;
}

function reaches({ kind, from, to }: Cut, plate: Area): boolean {
  return kind === 'rip' ? from <= plate.from && to >= plate.to : from <= plate.fromEdge && to >= plate.toEdge;
}

function split({ kind }: Cut, plate: Area, low: number, high: number): Area[] {
  const [near, far] = kind === 'rip' ? [{ ...plate, toEdge: low }, { ...plate, fromEdge: high }] : [{ ...plate, to: low }, { ...plate, from: high }];
  return [near, far].filter(({ from, to, fromEdge, toEdge }) => from < to && fromEdge < toEdge);
}

/** The piece of a board that a rectangle of it lies in now; undefined where a cut has gone astray in it. */
export function plateOf(board: TakenBoard, area: Area): Area | undefined {
  const { plates, astray } = partedBy(board, board.cuts.slice(0, board.made));
  const plate = plates.find((one) => liesIn(area, one));
  return plate === undefined || astray.some((cut) => overlaps(kerfOf(cut, board.kerf), plate)) ? undefined : plate;
}

export function overlaps(one: Area, other: Area): boolean {
  return one.from < other.to && other.from < one.to && one.fromEdge < other.toEdge && other.fromEdge < one.toEdge;
}
