import { nanometres, type Length } from '../../length/length.ts';
import type { CutSection, Strip } from './fill.ts';
import { isRipped, trimsAlong, type Ground } from './ground.ts';
import type { CutBoard, Lot } from './lot.ts';

/** A blank on its board: from the marked end along, from the reference edge across. */
export interface PlacedBlank {
  readonly blank: string;
  readonly name: string;
  readonly from: Length;
  readonly fromEdge: Length;
  readonly length: Length;
  readonly width: Length;
  /** Of blanks that are resawn from one piece: which one, from the marked face on. */
  readonly layer?: number;
  /** Which board of its panels it is, in their order from 1. */
  readonly nth?: number;
}

/** One saw cut, from edge to edge of the piece that is sawn. `at` is where the cut begins, the kerf beyond it. */
export interface Cut {
  readonly kind: 'crosscut' | 'rip' | 'crosscut again' | 'resaw';
  /** Which section of the board it is in, counted from the marked end from 1; 0 for cuts between sections. */
  readonly section: number;
  /** For crosscuts from the marked end, for rips from the reference edge, for resawing from the marked face. */
  readonly at: Length;
  /** Where the sawn piece lies: along for rips, across for crosscuts. */
  readonly from: Length;
  readonly to: Length;
  /** Which side of the line the kerf goes to. */
  readonly waste: 'beyond' | 'before';
  /** Where a piece that is resawn lies across the board. */
  readonly fromEdge?: Length;
  readonly toEdge?: Length;
}

export interface PlannedBoard {
  readonly board: number;
  readonly placed: readonly PlacedBlank[];
  /** In the order they are sawn. */
  readonly cuts: readonly Cut[];
  /** Whole-width rest beyond the last section, from the marked end (or up to the first, on a board planned from its far end). */
  readonly rest: { readonly from: Length; readonly to: Length } | undefined;
}

/** From planning places to places at the bench: a turned board is planned from its far end, but read from its mark. */
export function placedBoard(lot: Lot, { ground, sections }: CutBoard): PlannedBoard {
  const { board, turned } = ground;
  const along = (from: number, length: number): Length => nanometres(turned ? board.length - from - length : from);
  const placed = sections.flatMap(({ strips }) => strips).flatMap(({ laid }) => laid).flatMap((one) => {
    const shape = lot.shapes[one.shape];
    const blank = lot.blanks[shape?.blank ?? -1];
    if (shape === undefined || blank === undefined) return [];
    return Array.from({ length: shape.beside * shape.inLine * shape.deep }, (_, index) => ({ at: Math.floor(index / shape.deep), layer: index % shape.deep })).map(({ at, layer }): PlacedBlank => ({
      blank: blank.id, name: blank.name, length: blank.length, width: blank.width, ...(shape.deep === 1 ? {} : { layer: layer + 1 }),
      from: along(one.along + Math.floor(at / shape.beside) * (blank.length + lot.saw.kerf), blank.length),
      fromEdge: nanometres(one.across + (at % shape.beside) * (blank.width + lot.saw.kerf)),
    }));
  });
  const last = sections.at(-1);
  const end = last === undefined ? 0 : last.from + last.length + lot.saw.kerf;
  const restLength = board.length - trimsAlong(board, lot.saw, turned).last - end;
  return {
    board: board.number, placed,
    cuts: cutsOf(lot, ground, sections),
    rest: last !== undefined && restLength > 0 ? { from: along(end, restLength), to: nanometres(along(end, restLength) + restLength) } : undefined,
  };
}

/** Sections first, in order from the mark; then each section's rips from the reference edge; then strip by strip what is crosscut from it, and what is ripped from those pieces. */
function cutsOf(lot: Lot, ground: Ground, sections: readonly CutSection[]): Cut[] {
  const { turned, board: { length: boardLength } } = ground;
  const ordered = turned ? [...sections].reverse() : sections;
  const place = (at: number): Length => nanometres(turned ? boardLength - at : at);
  const between = ordered.flatMap((section, index): Cut[] => {
    const [near, far] = turned ? [section.from + section.length, section.from] : [section.from, section.from + section.length];
    const previous = ordered[index - 1];
    const touches = previous !== undefined && (turned ? previous.from - lot.saw.kerf === near : previous.from + previous.length + lot.saw.kerf === near);
    const start: Cut = { kind: 'crosscut', section: 0, at: place(near), from: nanometres(0), to: nanometres(lot.widest), waste: 'before' };
    const end: Cut = { kind: 'crosscut', section: 0, at: place(far), from: nanometres(0), to: nanometres(lot.widest), waste: 'beyond' };
    return [...(touches || place(near) === 0 ? [] : [start]), ...(place(far) === boardLength ? [] : [end])];
  });
  const sawn = [...between, ...ordered.flatMap((section, index) => sectionCuts(lot, ground, section, index + 1, place))];
  // A board that is one blank as it stands is taken in hand all the same: its edge is sawn.
  return sawn.length > 0 ? sawn : ordered.flatMap((section, index) => sectionCuts(lot, 'every edge', section, index + 1, place));
}

function sectionCuts(lot: Lot, ground: Ground | 'every edge', section: CutSection, number: number, place: (at: number) => Length): Cut[] {
  const ends = [place(section.from), place(section.from + section.length)].sort((a, b) => a - b);
  const [from = nanometres(0), to = nanometres(0)] = ends;
  let edge = 0;
  const rips = section.strips.flatMap((strip): Cut[] => {
    const starts: Cut[] = strip.across > edge ? [{ kind: 'rip', section: number, at: nanometres(strip.across), from, to, waste: 'before' }] : [];
    edge = strip.across + strip.width + lot.saw.kerf;
    const end: Cut = { kind: 'rip', section: number, at: nanometres(strip.across + strip.width), from, to, waste: 'beyond' };
    return ground === 'every edge' || isRipped(ground, lot.saw, section, strip) ? [...starts, end] : starts;
  });
  return [...rips, ...section.strips.flatMap((strip) => [...stripCuts(lot, strip, section, number, place), ...pieceRips(lot, strip, number, place), ...resaws(lot, strip, number, place)])];
}

/** Every piece of a strip by itself, from its end to its end: blanks of a set that lie side by side are ripped apart, and what is narrower than its strip is ripped to width. */
function pieceRips(lot: Lot, { laid, across, width: stripWidth }: Strip, section: number, place: (at: number) => Length): Cut[] {
  return laid.flatMap(({ shape: index, along }) => {
    const shape = lot.shapes[index];
    const { width = 0, length = 0 } = lot.blanks[shape?.blank ?? -1] ?? {};
    const rips = (shape?.beside ?? 1) - ((shape?.width ?? 0) < stripWidth ? 0 : 1);
    return Array.from({ length: shape?.inLine ?? 1 }, (_, piece) => along + piece * (length + lot.saw.kerf)).flatMap((start) => {
      const [from = nanometres(0), to = nanometres(0)] = [place(start), place(start + length)].sort((a, b) => a - b);
      return Array.from({ length: rips }, (_, at): Cut => ({ kind: 'rip', section, at: nanometres(across + (at + 1) * width + at * lot.saw.kerf), from, to, waste: 'beyond' }));
    });
  });
}

/** Pieces that give more than one blank of their thickness: each by itself, from the marked face on. What a resaw takes besides its kerf is planed off. */
function resaws(lot: Lot, { laid, across }: Strip, section: number, place: (at: number) => Length): Cut[] {
  return laid.flatMap(({ shape: index, along }) => {
    const shape = lot.shapes[index];
    const blank = lot.blanks[shape?.blank ?? -1];
    if (shape === undefined || blank === undefined || shape.deep === 1) return [];
    return Array.from({ length: shape.beside * shape.inLine }, (_, piece) => piece).flatMap((piece) => {
      const start = along + Math.floor(piece / shape.beside) * (blank.length + lot.saw.kerf);
      const fromEdge = nanometres(across + (piece % shape.beside) * (blank.width + lot.saw.kerf));
      const [from = nanometres(0), to = nanometres(0)] = [place(start), place(start + blank.length)].sort((a, b) => a - b);
      return Array.from({ length: shape.deep - 1 }, (_, layer): Cut => ({
        kind: 'resaw', section, at: nanometres((layer + 1) * blank.thickness + layer * (lot.saw.resaw ?? 0)), from, to, waste: 'beyond', fromEdge, toEdge: nanometres(fromEdge + blank.width),
      }));
    });
  });
}

function stripCuts(lot: Lot, strip: Strip, section: CutSection, number: number, place: (at: number) => Length): Cut[] {
  return strip.laid.flatMap(({ shape: index, along }) => {
    const shape = lot.shapes[index];
    const length = lot.blanks[shape?.blank ?? -1]?.length ?? 0;
    return Array.from({ length: shape?.inLine ?? 1 }, (_, at) => along + (at + 1) * length + at * lot.saw.kerf)
      .filter((end) => end < section.from + section.length)
      .map((end): Cut => ({ kind: 'crosscut again', section: number, at: place(end), from: nanometres(strip.across), to: nanometres(strip.across + strip.width), waste: place(0) === 0 ? 'beyond' : 'before' }));
  });
}
