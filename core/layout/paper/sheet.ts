import { nanometres, type Length } from '../../length/length.ts';

/** A place on paper or on a drawing: to the right and down, in nanometres, at full size. */
export interface Spot {
  readonly x: Length;
  readonly y: Length;
}

export interface Box extends Spot {
  readonly width: Length;
  readonly height: Length;
}

/** What a line is for: it gives the line its weight. */
export type Look = 'outline' | 'mark' | 'gauge' | 'thin' | 'hatch' | 'trim' | 'bar';

export interface Stroke {
  readonly kind: 'stroke';
  readonly look: Look;
  /** Two or more, joined by straight lines. */
  readonly points: readonly Spot[];
  /** What it shows, for who reads the drawing back: 'longRailTenon/mortise start'. */
  readonly of?: string;
}

export interface Words {
  readonly kind: 'words';
  /** On the base line: its left end, its middle or its right end. */
  readonly at: Spot;
  readonly text: string;
  /** Height of the type, in nanometres. */
  readonly size: Length;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold?: true;
  /** A quarter turn to the left: read from the right-hand side of the sheet. */
  readonly turned?: true;
}

export type Item = Stroke | Words;

/** A strip of a drawing that is best not cut along its length: one face of a part, one rod. */
export interface Band {
  readonly title: string;
  readonly length: Length;
  readonly depth: Length;
  readonly items: readonly Item[];
}

/** One sheet of paper, upright or lying, as it is printed. */
export interface Page {
  readonly width: Length;
  readonly height: Length;
  /** What is drawn on the sheet itself: titles, bars, crosses, trim lines. */
  readonly furniture: readonly Item[];
  /** What is drawn at full size, cut off at the edges of the window. */
  readonly window: Box;
  readonly drawn: readonly Item[];
  /** For sheets that are joined: from 1. */
  readonly place?: TilePlace;
}

/** Which piece of a drawing a sheet shows. Sheets of one group are joined; rows and columns count from 1. */
export interface TilePlace {
  readonly group: number;
  readonly row: number;
  readonly column: number;
  /** Of the drawing: what lies in the upper left corner of the window. */
  readonly from: Spot;
}

/** Sheets that belong together, ready to be printed. */
export interface SheetSet {
  /** For the file: 'layout of the leg'. */
  readonly name: string;
  readonly pages: readonly Page[];
  /** Rows and columns of each group of joined sheets; empty for lists and cards. */
  readonly groups: readonly { readonly rows: number; readonly columns: number }[];
  /** The longest size that is drawn, which a fault of the printer shows in most. */
  readonly longest: Length;
}

export function spot(x: number, y: number): Spot {
  return { x: nanometres(x), y: nanometres(y) };
}

/** Whole millimetres and tenths of them, as a length. */
export function mm(count: number): Length {
  return nanometres(Math.round(count * 1_000_000));
}

export function line(look: Look, from: Spot, to: Spot, of?: string): Stroke {
  return { kind: 'stroke', look, points: [from, to], ...(of === undefined ? {} : { of }) };
}

export function rectangle(look: Look, { x, y, width, height }: Box, of?: string): Stroke {
  const [right, bottom] = [x + width, y + height];
  return { kind: 'stroke', look, points: [spot(x, y), spot(right, y), spot(right, bottom), spot(x, bottom), spot(x, y)], ...(of === undefined ? {} : { of }) };
}

export function words(text: string, at: Spot, size: Length, more: Partial<Pick<Words, 'anchor' | 'bold' | 'turned'>> = {}): Words {
  return { kind: 'words', text, at, size, anchor: 'start', ...more };
}

/** The same item, elsewhere. */
export function moved(item: Item, by: Spot): Item {
  const shift = ({ x, y }: Spot): Spot => spot(x + by.x, y + by.y);
  return item.kind === 'words' ? { ...item, at: shift(item.at) } : { ...item, points: item.points.map(shift) };
}

/** About how wide a text of the sheets' face is: half its height for each letter, which keeps texts apart. */
export function textWidth(text: string, size: Length): Length {
  return nanometres(Math.round(text.length * size * 0.5));
}

/** Lines of a text that fit a width, broken between words. */
export function wrapped(text: string, size: Length, width: Length): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1) ?? ''} ${word}`;
    if (lines.length > 0 && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
