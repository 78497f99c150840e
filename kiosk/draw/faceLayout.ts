import type { Mark } from '../../core/joint/marks.ts';
import type { FaceView, ViewLine } from '../../core/layout/paper/faceView.ts';
import type { Length } from '../../core/length/length.ts';
import { stretchesOf, type Stretches } from './faceStretches.ts';
import type { Box, Line, Point } from './partLayout.ts';

/** One face of a part laid out for the screen: the marks at one scale both ways, with what lies empty between them broken out. */
export interface FaceLayout {
  /** Drawing units per nanometre. */
  readonly scale: number;
  readonly face: Box;
  /** Where the face is drawn shorter than it is. */
  readonly breaks: readonly number[];
  readonly waste: readonly Box[];
  readonly lines: readonly { readonly of: ViewLine; readonly line: Line }[];
  /** What each mortise or tenon is for, over it. */
  readonly names: readonly { readonly joint: string; readonly at: Point }[];
  /** Below the face: distances from the ends. */
  readonly along: readonly Figure[];
  /** On the face: distances from the edge that the gauge runs on. */
  readonly across: readonly Figure[];
}

/** A distance with its figure, and the leader from its line to it. */
export interface Figure {
  readonly of: ViewLine;
  readonly figure: Point;
  /** How high it is written. */
  readonly letter: number;
  readonly leader: readonly Point[];
}

/** Room beside the face: its left end turned, and what its edges are. */
export const BESIDE = { left: 28, right: 122 } as const;
const OVER = 24;
const LEADER = 16;
/** Of the height of a figure: the space beside it, how high a row with its caption is, and how far figures stand apart one above the other. */
const SPACE = 0.5;
const ROW = 2.15;
const APART = 1.28;
/** Of the height of the letters of a caption: about as wide as each of them is. */
const CAPTION_LETTER = 9;
/** For a second line of captions. */
const SECOND_LINE = 17;

/** How wide a distance is when it is written at that height. */
export type WidthOf = (length: Length, letter: number) => number;

/** Lays the face out within `width` × `height` drawing units, its figures `letter` high. */
export function layFace(view: FaceView, width: number, height: number, letter: number, widthOf: WidthOf): FaceLayout {
  const marked = firstOf(view.lines.filter(({ lies }) => lies === 'across'));
  const wide = (of: ViewLine): number => Math.max(widthOf(of.mark.at, letter), ...captionOf(of.mark).map((line) => line.length * CAPTION_LETTER)) + letter * SPACE;
  const rows = marked.reduce((sum, of) => sum + wide(of), 0) > width ? 2 : 1;
  const room = { width: width - BESIDE.left - BESIDE.right, height: height - OVER - LEADER - rows * letter * ROW - (marked.some(({ mark }) => captionOf(mark).length > 1) ? SECOND_LINE : 0) };
  const groups = groupsOf(view);
  const stretches = stretchesOf(view, groups.map(({ from, to }) => ({ from, to })), { ...room, figure: Math.max(0, ...groups.flatMap(({ lines }) => lines.map(({ mark }) => widthOf(mark.at, letter)))) + letter * SPACE });
  const { scale } = stretches;
  const face: Box = { x: BESIDE.left + (room.width - stretches.width) / 2, y: OVER + (room.height - view.across * scale) / 2, width: stretches.width, height: view.across * scale };
  const x = (at: number): number => face.x + stretches.place(at);
  const y = (at: number): number => face.y + at * scale;
  return {
    scale, face, breaks: stretches.breaks.map((at) => face.x + at),
    waste: view.waste.map(({ from, to, top, bottom }) => ({ x: x(from), y: y(top), width: x(to) - x(from), height: (bottom - top) * scale })),
    lines: view.lines.map((of) => ({ of, line: of.lies === 'across' ? { x1: x(of.at), x2: x(of.at), y1: y(of.from), y2: y(of.to) } : { x1: x(of.from), x2: x(of.to), y1: y(of.at), y2: y(of.at) } })),
    names: groups.filter(({ joint }, index) => groups.findIndex((other) => other.joint === joint) === index).map(({ joint, from, to }) => ({ joint, at: { x: (x(from) + x(to)) / 2, y: face.y - 7 } })),
    along: layAlong(marked, { x, foot: face.y + face.height, width, rows, letter, wide }),
    across: groups.flatMap((group, index) => layAcross(group, { x, y, face, stretches, group: index, letter, widthOf })),
  };
}

const CAPTIONS: Readonly<Partial<Record<Mark['kind'], string>>> = {
  'mortise start': 'start', 'mortise end': 'end', 'haunch start': 'haunch', 'first shoulder': 'shoulder', 'second shoulder': 'shoulder', 'haunch end': 'haunch', horn: 'top line', 'lower horn': 'foot line', 'foot bevel inwards': 'bevel in',
};

/** 'start'; below it the end that it is from, where that is not the one on the left. */
export function captionOf({ kind, say: name, from: { say } }: Mark): readonly string[] {
  const from = /bottom/.test(say) ? ['from the foot'] : /rough lower/.test(say) ? ['from the lower end'] : /each end/.test(say) ? ['from each end'] : /each side/.test(say) ? ['from each side'] : /under the horn/.test(say) ? ['from the top line'] : [];
  return [name === 'bottom of the slot' ? 'slot bottom' : CAPTIONS[kind] ?? kind, ...from];
}

/** Each mark once, at the first of its places. */
function firstOf(lines: readonly ViewLine[]): readonly ViewLine[] {
  return lines.filter(({ mark }, index) => lines.findIndex((other) => other.mark === mark) === index);
}

interface Group { readonly joint: string; readonly from: Length; readonly to: Length; readonly lines: readonly ViewLine[] }

/** The gauge lines of each mortise, tenon or groove: together they are labelled beside it. */
function groupsOf(view: FaceView): readonly Group[] {
  const gauged = firstOf(view.lines.filter(({ lies, mark }) => lies === 'along' && mark.joint !== undefined));
  const key = ({ mark: { joint }, from, to }: ViewLine): string => `${joint ?? ''}/${from}/${to}`;
  const groups = [...new Set(gauged.map(key))].flatMap((of): readonly Group[] => {
    const lines = gauged.filter((line) => key(line) === of);
    const [first] = lines;
    return first?.mark.joint === undefined ? [] : [{ joint: first.mark.joint, from: first.from, to: first.to, lines }];
  });
  // Twins one above the other stand in one line: what is written beside the one holds for both.
  return groups.filter((group, index) => groups.findIndex((other) => other.joint === group.joint && distances(other) === distances(group)) === index);
}

function distances({ lines }: Group): string {
  return lines.map(({ mark }) => mark.at).sort((one, other) => one - other).join();
}

interface Below { readonly x: (at: number) => number; readonly foot: number; readonly width: number; readonly rows: number; readonly letter: number; readonly wide: (of: ViewLine) => number }

/** In one row, or by turns in two: as near below its line as its neighbours leave room. */
function layAlong(marked: readonly ViewLine[], { x, foot, width, rows, letter, wide }: Below): readonly Figure[] {
  const sorted = [...marked].sort((one, other) => one.at - other.at);
  return Array.from({ length: rows }, (_, row) => row).flatMap((row) => {
    const own = sorted.filter((_, index) => index % rows === row);
    const places = spread(own.map((of) => ({ at: x(of.at), size: wide(of) })), 0, width);
    return own.map((of, index): Figure => {
      const at = { x: places[index] ?? x(of.at), y: foot + LEADER + letter * (row * ROW + 0.72) };
      return { of, figure: at, letter, leader: [{ x: x(of.at), y: foot }, { x: at.x, y: foot + LEADER }, ...(row === 0 ? [] : [{ x: at.x, y: at.y - letter * 0.72 }])] };
    });
  });
}

interface Beside { readonly x: (at: number) => number; readonly y: (at: number) => number; readonly face: Box; readonly stretches: Stretches; readonly group: number; readonly letter: number; readonly widthOf: WidthOf }

/** One above the other in the empty stretch that is theirs, each as near to the height of its line as the others leave room. */
function layAcross({ lines, from: begins, to: ends }: Group, { x, y, face, stretches, group, letter, widthOf }: Beside): readonly Figure[] {
  const sorted = [...lines].sort((one, other) => one.at - other.at);
  // A groove along the whole of the face leaves nothing beside it: its figures stand under it.
  const whole = x(begins) <= face.x && x(ends) >= face.x + face.width;
  const { from, side } = stretches.beside[group] ?? { from: 0, side: 'right' as const };
  const size = Math.min(letter, face.height / Math.max(1, sorted.length) / APART);
  const heights = spread(sorted.map(({ at }) => ({ at: y(at), size: size * APART })), whole ? y(sorted.at(-1)?.at ?? 0) + size * 0.2 : face.y, face.y + face.height);
  const way = side === 'right' ? 1 : -1;
  return sorted.map((of, index): Figure => {
    const edge = face.x + from;
    const [level, start] = [heights[index] ?? y(of.at), whole ? edge : x(side === 'right' ? of.to : of.from)];
    return { of, letter: size, figure: { x: edge + way * (14 + widthOf(of.mark.at, size) / 2), y: level }, leader: [{ x: start, y: y(of.at) }, { x: edge, y: y(of.at) }, { x: edge + way * 12, y: level }] };
  });
}

interface Wanted { readonly at: number; readonly size: number }

/** Middles of things in their order, none over another, and between `least` and `most` as long as there is room. */
function spread(wanted: readonly Wanted[], least: number, most: number): readonly number[] {
  const places: number[] = [];
  let free = least;
  for (const { at, size } of wanted) {
    const place = Math.max(at, free + size / 2);
    places.push(place);
    free = place + size / 2;
  }
  let limit = most;
  return wanted.map((_, index) => index).reverse().map((index) => {
    const { size } = wanted[index] ?? { size: 0 };
    const place = Math.min(places[index] ?? limit, limit - size / 2);
    limit = place - size / 2;
    return place;
  }).reverse();
}
