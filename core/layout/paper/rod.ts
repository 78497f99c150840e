import { absolute } from '../../length/arithmetic.ts';
import { nanometres, type Length } from '../../length/length.ts';
import type { Rounding } from '../../length/rounding.ts';
import { laneBase, lanes, lanesDepth } from './labels.ts';
import { spanOf, type RodPart, type RodStrip } from './rodMarks.ts';
import { line, mm, rectangle, spot, words, type Band, type Item } from './sheet.ts';
import { sizeText } from './sizeText.ts';

const BESIDE = mm(8);
const HEAD = mm(7);
const ROW = mm(7);
const LETTER = mm(3.4);

/** One rod at full size: its parts as they lie, each in a row of its own where they overlap, every mark right across, and what each mark is below. */
export function rodBand(strip: RodStrip, rounding: Rounding): Band {
  const { marks, parts, direction, zero } = strip;
  const least = [...marks, ...parts.map(({ from }) => ({ at: from }))].reduce((low, { at }) => Math.min(low, at), 0);
  const x = (at: Length): Length => nanometres(BESIDE + at - least);
  const rows = rowsOf(parts);
  const foot = HEAD + Math.max(1, rows.length) * ROW;
  const places = merged(marks);
  const below = lanes(places.map(({ at, say }) => ({ x: x(at), text: `${where(at, zero, rounding)} ${say}` })), LETTER);
  const length = spanOf(strip);
  const items: readonly Item[] = [
    words(`rod for the ${direction}, from the ${zero}`, spot(BESIDE, mm(4)), LETTER, { bold: true }),
    ...rows.flatMap((row, index) => row.flatMap((part) => partItems(part, x, HEAD + index * ROW))),
    rectangle('outline', { x: BESIDE, y: HEAD, width: length, height: nanometres(foot - HEAD) }, 'rod'),
    ...places.map(({ at, say }) => line('mark', spot(x(at), HEAD), spot(x(at), foot), `${direction}/${say}`)),
    ...below.flatMap(({ label, lane }): readonly Item[] => {
      const base = foot + mm(1) + laneBase(lane);
      return [line('thin', spot(label.x, foot), spot(label.x, base)), words(label.text, spot(label.x + mm(1), base), LETTER)];
    }),
  ];
  return { title: `rod for the ${direction}`, length: nanometres(length + 2 * BESIDE), depth: nanometres(foot + mm(2) + lanesDepth(below)), items };
}

function where(at: Length, zero: string, rounding: Rounding): string {
  return at < 0 ? `${sizeText(absolute(at), rounding)} before the ${zero}:` : sizeText(at, rounding);
}

/** Marks in one place become one, with all that it is. */
function merged(marks: RodStrip['marks']): RodStrip['marks'] {
  const places = [...new Set(marks.map(({ at }) => at))].sort((one, other) => one - other);
  return places.map((at) => ({ at, say: [...new Set(marks.filter((mark) => mark.at === at).map(({ say }) => say))].join('; ') }));
}

/** Parts that do not overlap share a row. */
function rowsOf(parts: readonly RodPart[]): readonly (readonly RodPart[])[] {
  const rows: RodPart[][] = [];
  for (const part of parts) {
    const free = rows.find((row) => row.every((other) => other.to <= part.from || other.from >= part.to));
    if (free) free.push(part);
    else rows.push([part]);
  }
  return rows;
}

function partItems({ say, from, to }: RodPart, x: (at: Length) => Length, top: number): readonly Item[] {
  return [
    rectangle('thin', { x: x(from), y: nanometres(top), width: nanometres(to - from), height: ROW }, `part ${say}`),
    words(say, spot(x(from) + mm(1.5), top + mm(4.8)), mm(2.8)),
  ];
}
