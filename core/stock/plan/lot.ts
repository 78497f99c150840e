import type { Blank, Board, SawSettings } from '../board.ts';
import { bestFilling, worthOf, type CutSection } from './fill.ts';
import { groundOf, type Ground } from './ground.ts';
import type { SectionKinds } from './sectionKinds.ts';
import { sectionLengths, shapesOf, type Shape } from './shapes.ts';

/** Boards and blanks of one species and thickness, made ready for planning. */
export interface Lot {
  readonly blanks: readonly Blank[];
  /** How many shapes are needed of each blank: its count over how many stay together. */
  readonly needs: Int32Array;
  readonly shapes: readonly Shape[];
  readonly grounds: readonly Ground[];
  readonly saw: SawSettings;
  readonly longest: number;
  readonly widest: number;
}

/** A board as it is to be cut. */
export interface CutBoard {
  readonly ground: Ground;
  readonly sections: readonly CutSection[];
}

/** Needs are rounded up: a last leg of two layers still needs a stretch for three, so counts are best whole multiples. */
export function lotOf(boards: readonly Board[], blanks: readonly Blank[], saw: SawSettings): Lot {
  const longest = Math.max(0, ...boards.map(({ length }) => length));
  const widest = Math.max(0, ...boards.map(({ width, farWidth }) => Math.max(width, farWidth)));
  const shapes = shapesOf(blanks, saw).filter(({ length, width }) => length <= longest && width <= widest);
  const lengths = sectionLengths(shapes, saw, longest);
  const kinds: SectionKinds = { lengths, singles: [...new Set(shapes.map(({ length }) => length))], all: [], numbers: new Map() };
  return {
    blanks, saw, shapes, longest, widest,
    needs: Int32Array.from(blanks, ({ count, together }) => Math.ceil(count / together)),
    grounds: boards.map((board) => groundOf(board, kinds, saw, false)),
  };
}

/** What a pattern gives of each blank, in shapes. */
export function yieldOf(lot: Lot, sections: readonly CutSection[]): Int32Array {
  const counts = new Int32Array(lot.blanks.length);
  for (const { strips } of sections) for (const { laid } of strips) for (const { shape } of laid) {
    const blank = lot.shapes[shape]?.blank ?? -1;
    counts[blank] = (counts[blank] ?? 0) + 1;
  }
  return counts;
}

/**
 * Cuts one board for what is still needed, most value first; takes what it cuts from `left`. Sections are settled from the start of the board;
 * as soon as one would hold more of a blank than are left, the rest is planned anew without it.
 */
export function cutBoard(lot: Lot, ground: Ground, values: ArrayLike<number>, left: Int32Array): CutBoard {
  const settled: CutSection[] = [];
  for (let from = 0; from < ground.places.length;) {
    const worth = worthOf(lot.shapes, values, left, lot.saw, lot.longest, lot.widest, ground.kinds.all.length);
    const { sections } = bestFilling(ground, worth, from);
    if (sections.length === 0) break;
    let ranOut = false;
    for (const section of sections) {
      const kept = takeFrom(lot, section, left);
      ranOut = kept.strips.flatMap(({ laid }) => laid).length < section.strips.flatMap(({ laid }) => laid).length;
      if (kept.strips.length > 0) settled.push(kept);
      from = placeAfter(ground, kept.strips.length > 0 ? section.from + section.length + lot.saw.kerf : section.from);
      if (ranOut) break;
    }
    if (!ranOut) break;
    if (left.every((count) => count === 0)) break;
  }
  return { ground, sections: settled };
}

function placeAfter(ground: Ground, place: number): number {
  const at = ground.places.findIndex((one) => one >= place);
  return at < 0 ? ground.places.length : at;
}

/** The section without what is not needed any more; what is left of a strip closes up, for every cut frees what lies before it. */
function takeFrom(lot: Lot, section: CutSection, left: Int32Array): CutSection {
  const strips = section.strips.map((strip) => {
    const needed = strip.laid.filter(({ shape }) => {
      const blank = lot.shapes[shape]?.blank ?? -1;
      const wanted = (left[blank] ?? 0) > 0;
      if (wanted) left[blank] = (left[blank] ?? 0) - 1;
      return wanted;
    });
    let along = section.from;
    const laid = needed.map((one) => {
      const placed = { ...one, along };
      along += (lot.shapes[one.shape]?.length ?? 0) + lot.saw.kerf;
      return placed;
    });
    return { ...strip, laid };
  }).filter(({ laid }) => laid.length > 0);
  return { ...section, strips };
}
