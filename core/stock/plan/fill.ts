import type { SawSettings } from '../board.ts';
import { bestAcross, type PlacedStrip, type Room } from './across.ts';
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
  readonly tables: Map<number, readonly Step[]>;
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

/** By room across: the best strips of a section so long, for any part. */
function tablesFor(worth: Worth, length: number): readonly Step[] {
  const known = worth.tables.get(length);
  if (known !== undefined) return known;
  let least = 0;
  const fillers = worth.widths.flatMap((width, item) => {
    const { value } = bestWithin(worth.strips[item] ?? [], length + worth.saw.kerf);
    if (value <= least) return [];
    least = value;
    return [{ item, size: width + worth.saw.kerf, value, most: Infinity }];
  });
  const made = staircase(fillers, worth.widest + worth.saw.kerf);
  worth.tables.set(length, made);
  return made;
}

function valueOf(worth: Worth, kind: number, section: SectionKind): number {
  const known = worth.known[kind] ?? -1;
  if (known >= 0) return known;
  const value = hides(worth, section) ? bestAcross(roomsOf(worth, section), worth.saw.kerf).value
    : section.clear.reduce((total, { width }) => total + bestWithin(tablesFor(worth, section.length), width + worth.saw.kerf).value, 0);
  worth.known[kind] = value;
  return value;
}

/** Whether some part may lie in the section where others may not. */
function hides({ hidingStrips }: Worth, { hiding }: SectionKind): boolean {
  return hidingStrips.length > 0 && hiding.length > 0;
}

/** All stretches of a section with what strips of each width are worth there: where it is clear, any part; over what one face shows, parts that hide it. */
function roomsOf({ widths, strips, hidingStrips, saw }: Worth, { length, clear, hiding }: SectionKind): Room<readonly Step[]>[] {
  const offers = (fillings: readonly (readonly Step[])[]) => widths.map((width, item) => ({ width, value: bestWithin(fillings[item] ?? [], length + saw.kerf).value, strip: fillings[item] ?? [] }));
  const room = (stretches: readonly Clear[], fillings: ReturnType<typeof offers>) => stretches.map(({ from, width }) => ({ from, to: from + width, offers: fillings }));
  const hidden = offers(hidingStrips);
  return [...room(clear, offers(strips)), ...hiding.flatMap((stretches) => room(stretches, hidden))];
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
  const chosen = hides(worth, section) ? bestAcross(roomsOf(worth, section), worth.saw.kerf).strips : section.clear.flatMap((one) => stripsIn(worth, section.length, one));
  return { from, length: section.length, strips: chosen.map(({ across, width, strip }) => ({ across, width, laid: laidOf(worth, strip, section.length, from, across) })) };
}

/** The best strips of one clear stretch, the widest nearest the reference edge. */
function stripsIn(worth: Worth, length: number, room: Clear): PlacedStrip<readonly Step[]>[] {
  let across = room.from;
  return itemsOf(bestWithin(tablesFor(worth, length), room.width + worth.saw.kerf)).sort((a, b) => b - a).map((item) => {
    const width = worth.widths[item] ?? 0;
    const placed = { across, width, strip: worth.strips[item] ?? [] };
    across += width + worth.saw.kerf;
    return placed;
  });
}

function laidOf(worth: Worth, strip: readonly Step[], length: number, from: number, across: number): Laid[] {
  let along = from;
  return itemsOf(bestWithin(strip, length + worth.saw.kerf)).sort((a, b) => (worth.shapes[b]?.length ?? 0) - (worth.shapes[a]?.length ?? 0)).map((shape) => {
    const laid = { shape, along, across };
    along += (worth.shapes[shape]?.length ?? 0) + worth.saw.kerf;
    return laid;
  });
}
