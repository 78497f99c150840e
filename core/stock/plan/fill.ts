import type { SawSettings } from '../board.ts';
import type { Ground } from './ground.ts';
import type { Clear, SectionKind } from './sectionKinds.ts';
import type { Shape } from './shapes.ts';
import { bestWithin, itemsOf, staircase, type Step } from './staircase.ts';

/** A shape laid on a board: its corner nearest the start and the reference edge, in the board's planning places. */
export interface Laid {
  readonly shape: number;
  readonly along: number;
  readonly across: number;
}

/** A section cut from a board, the strips ripped from it and what is crosscut from them. */
export interface Strip {
  readonly across: number;
  readonly width: number;
  readonly laid: readonly Laid[];
}

export interface CutSection {
  readonly from: number;
  readonly length: number;
  readonly strips: readonly Strip[];
}

export interface Filled {
  readonly value: number;
  readonly sections: readonly CutSection[];
}

/** What shapes are worth now, and what that makes sections worth. */
export interface Worth {
  readonly shapes: readonly Shape[];
  readonly saw: SawSettings;
  readonly widths: readonly number[];
  /** By width of strip, for all shapes and for those that may hide a defect: the fillings of a strip's length. */
  readonly strips: readonly (readonly Step[])[];
  readonly hidingStrips: readonly (readonly Step[])[];
  readonly tables: Map<number, { all: readonly Step[]; hiding: readonly Step[] }>;
  /** Worth by kind of section; below zero where it was not asked yet. */
  readonly known: Float64Array;
  readonly widest: number;
}

/** `values` and `left` by blank. No filling of a strip holds more of a blank than are left. */
export function worthOf(shapes: readonly Shape[], values: ArrayLike<number>, left: ArrayLike<number>, saw: SawSettings, longest: number, widest: number, kinds: number): Worth {
  const widths = [...new Set(shapes.filter(({ blank }) => (left[blank] ?? 0) > 0).map(({ width }) => width))].sort((a, b) => a - b);
  const fillings = (hidingOnly: boolean) => widths.map((width) => staircase(shapes.flatMap((shape, item) => (
    shape.width <= width && (!hidingOnly || shape.mayHideDefect)
      ? [{ item, size: shape.length + saw.kerf, value: values[shape.blank] ?? 0, most: left[shape.blank] ?? 0 }] : [])), longest + saw.kerf));
  const anyHides = shapes.some(({ mayHideDefect }) => mayHideDefect);
  return { shapes, saw, widths, strips: fillings(false), hidingStrips: anyHides ? fillings(true) : [], tables: new Map(), known: new Float64Array(kinds).fill(-1), widest };
}

function tablesFor(worth: Worth, length: number): { all: readonly Step[]; hiding: readonly Step[] } {
  const known = worth.tables.get(length);
  if (known !== undefined) return known;
  const across = (strips: readonly (readonly Step[])[]): Step[] => {
    let least = 0;
    const fillers = worth.widths.flatMap((width, item) => {
      const { value } = bestWithin(strips[item] ?? [], length + worth.saw.kerf);
      if (value <= least) return [];
      least = value;
      return [{ item, size: width + worth.saw.kerf, value, most: Infinity }];
    });
    return staircase(fillers, worth.widest + worth.saw.kerf);
  };
  const made = { all: across(worth.strips), hiding: worth.hidingStrips.length === 0 ? [] : across(worth.hidingStrips) };
  worth.tables.set(length, made);
  return made;
}

function valueOf(worth: Worth, kind: number, { length, clear, hiding }: SectionKind): number {
  const known = worth.known[kind] ?? -1;
  if (known >= 0) return known;
  const tables = tablesFor(worth, length);
  const sum = (table: readonly Step[], stretches: readonly Clear[]): number => stretches.reduce((total, { width }) => total + bestWithin(table, width + worth.saw.kerf).value, 0);
  const value = Math.max(sum(tables.all, clear), tables.hiding.length === 0 ? 0 : sum(tables.hiding, hiding));
  worth.known[kind] = value;
  return value;
}

/** The most a board is worth from a place on, and by which sections: exact among sections that start where others, ends or defects stop. */
export function bestFilling(ground: Ground, worth: Worth, from = 0): Filled {
  const { places, kindAt, nextAt, kinds } = ground;
  const columns = kinds.lengths.length;
  const best = new Float64Array(places.length + 1);
  const chosen = new Int32Array(places.length).fill(-1);
  for (let at = places.length - 1; at >= from; at--) {
    best[at] = best[at + 1] ?? 0;
    for (let column = 0; column < columns; column++) {
      const number = kindAt[at * columns + column] ?? -1;
      const kind = kinds.all[number];
      if (kind === undefined) break;
      const value = valueOf(worth, number, kind) + (best[nextAt[at * columns + column] ?? 0] ?? 0);
      if (value > (best[at] ?? 0)) [best[at], chosen[at]] = [value, column];
    }
  }
  const cut: CutSection[] = [];
  for (let at = from; at < places.length;) {
    const column = chosen[at] ?? -1;
    const kind = column < 0 ? undefined : kinds.all[kindAt[at * columns + column] ?? -1];
    if (kind !== undefined) cut.push(cutOf(worth, kind, places[at] ?? 0));
    at = kind === undefined ? at + 1 : nextAt[at * columns + column] ?? places.length;
  }
  return { value: best[from] ?? 0, sections: cut };
}

function cutOf(worth: Worth, section: SectionKind, from: number): CutSection {
  const { all, hiding } = tablesFor(worth, section.length);
  const rooms = (table: readonly Step[], clear: readonly Clear[]): { step: Step; from: number }[] => clear.map((one) => ({ step: bestWithin(table, one.width + worth.saw.kerf), from: one.from }));
  const plain = rooms(all, section.clear);
  const hidden = hiding.length === 0 ? [] : rooms(hiding, section.hiding);
  const total = (list: readonly { step: Step }[]): number => list.reduce((sum, { step }) => sum + step.value, 0);
  const [best, strips] = total(hidden) > total(plain) ? [hidden, worth.hidingStrips] : [plain, worth.strips];
  return {
    from, length: section.length,
    strips: best.flatMap((room) => {
      let across = room.from;
      return itemsOf(room.step).sort((a, b) => b - a).map((item) => {
        const width = worth.widths[item] ?? 0;
        const strip = { across, width, laid: laidOf(worth, strips[item] ?? [], section.length, from, across) };
        across += width + worth.saw.kerf;
        return strip;
      });
    }),
  };
}

function laidOf(worth: Worth, strip: readonly Step[], length: number, from: number, across: number): Laid[] {
  let along = from;
  return itemsOf(bestWithin(strip, length + worth.saw.kerf)).sort((a, b) => (worth.shapes[b]?.length ?? 0) - (worth.shapes[a]?.length ?? 0)).map((shape) => {
    const laid = { shape, along, across };
    along += (worth.shapes[shape]?.length ?? 0) + worth.saw.kerf;
    return laid;
  });
}
