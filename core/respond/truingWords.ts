import { absolute } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayLength, sayNumber } from '../length/say.ts';
import { writeLength } from '../length/write.ts';
import type { State } from '../journal/state.ts';
import type { SideAsRead, SideToTrue } from '../true/asRead.ts';
import { stationsFor, type WantedReading } from '../true/guide.ts';
import { isEdge, isOfBoard, type BoardFace, type FaceReading, type ReadingKind, type TruedFace } from '../true/readings.ts';
import { seenBySticks } from '../true/shape.ts';
import { sayTolerance, writeTolerance } from '../work/wording.ts';
import { sayCount, sayOwner, sentence } from './saying.ts';
import { sideToTrue } from './truingSide.ts';

/** For the ear or for the eye: gaps are never rounded away, for a shaving is thinner than any rule. */
export interface Telling {
  /** A gap as it was read: a sixty-fourth stays a sixty-fourth. */
  readonly gap: (length: Length) => string;
  /** What follows from gaps, always in thousandths of an inch (twentieths of a millimetre), so that it can be compared with what is allowed. */
  readonly amount: (length: Length) => string;
  readonly size: (length: Length) => string;
  readonly number: (count: number) => string;
  readonly count: (count: number, one: string, several: string) => string;
}

/** What is wider than that is told by the rule again. */
const WIDE = nanometres(NANOMETRES_PER_INCH / 8);
const THOUSANDTH = NANOMETRES_PER_INCH / 1000;

/** Thickness to a sixty-fourth, or a tenth of a millimetre, whatever sizes are rounded to. */
function fine({ settings: { rounding } }: State): Rounding {
  return rounding.unit === 'inch' ? { unit: 'inch', denominator: 64 } : { unit: 'millimetre', step: nanometres(NANOMETRES_PER_MILLIMETRE / 10) };
}

export function aloud(state: State): Telling {
  const { unit } = state.settings.rounding;
  const size = (length: Length): string => sayLength(absolute(length), fine(state));
  const small = (tell: (length: Length) => string) => (length: Length): string => (length === 0 ? 'nothing' : absolute(length) > WIDE ? size(length) : tell(absolute(length)));
  return { gap: small((length) => sayTolerance(length, unit)), amount: small((length) => (unit === 'inch' ? `${sayCount(Math.round(length / THOUSANDTH), 'thousandth', 'thousandths')} of an inch` : sayTolerance(length, unit))), size, number: (count) => (count === 0 ? 'none' : sayNumber(count)), count: sayCount };
}

export function onPaper(state: State): Telling {
  const { unit } = state.settings.rounding;
  const size = (length: Length): string => writeLength(absolute(length), fine(state));
  const small = (tell: (length: Length) => string) => (length: Length): string => (length === 0 ? '0' : absolute(length) > WIDE ? size(length) : tell(absolute(length)));
  return { gap: small((length) => writeTolerance(length, unit)), amount: small((length) => (unit === 'inch' ? `${(Math.round(length / THOUSANDTH) / 1000).toFixed(3)} in` : writeTolerance(length, unit))), size, number: String, count: (count, one, several) => `${count} ${count === 1 ? one : several}` };
}

const SIDE_NAMES: Readonly<Record<TruedFace, string>> = { 'face': 'reference face', 'other face': 'other face', 'edge': 'reference edge', 'other edge': 'other edge' };

/** 'leg two, layer one, reference face' */
export function saySide(state: State, { part, copy, board, face }: BoardFace): string {
  const made = state.piece?.file.parts.find(({ id }) => id === part)?.made.kind;
  return [sayOwner(state, `${part}.length`, copy), ...(board === undefined ? [] : [`${made === 'panel' ? 'board' : 'layer'} ${sayNumber(board)}`]), SIDE_NAMES[face]].join(', ');
}

/** 'leg 2, layer 1: reference face' */
export function writeSide(state: State, { part, copy, board, face }: BoardFace): string {
  const found = state.piece?.file.parts.find(({ id }) => id === part);
  const name = [`${found?.name ?? part}${copy === undefined ? '' : ` ${copy}`}`, ...(board === undefined ? [] : [`${found?.made.kind === 'panel' ? 'board' : 'layer'} ${board}`])].join(', ');
  return `${name}: ${SIDE_NAMES[face]}`;
}

/** 'near the marked end', 'in the middle', 'at fifteen inches'. */
export function spotWords(side: Pick<SideToTrue, 'size' | 'unit'>, fromEnd: Length, { size }: Telling): string {
  const stations = stationsFor(side.size.length, side.unit);
  if (fromEnd === stations[0]) return 'near the marked end';
  if (fromEnd === stations.at(-1)) return 'near the far end';
  return fromEnd === stations[(stations.length - 1) / 2] ? 'in the middle' : `at ${size(fromEnd)}`;
}

/** What the guide asks, for ear and eye alike. */
export function questionOf(side: Pick<SideToTrue, 'size' | 'unit'>, { what, fromEnd }: WantedReading, telling: Telling): string {
  const where = spotWords(side, fromEnd, telling);
  switch (what) {
    case 'sticks': return `Near stick near the marked end, far stick ${where}: which end of it is high, and by how much?`;
    case 'along': return `Straightedge along the middle: what gap ${where}?`;
    case 'across': return `Straightedge across, ${where}: hollow or crowned, and by how much?`;
    case 'square': return `Try square ${where}: light at the far side or at the face, and how much?`;
    case 'thickness': return `Thickness ${where}?`;
    case 'first diagonal': return 'Diagonal from the near left corner to the far right one?';
    case 'second diagonal': return 'Diagonal from the near right corner to the far left one?';
  }
}

/** 'left end high by one thirty-second of an inch', 'hollow by …', 'nothing'. */
export function gapWords(what: ReadingKind, gap: Length, telling: Telling): string {
  if (isOfBoard(what)) return telling.size(gap);
  if (gap === 0) return 'no gap';
  const amount = telling.gap(gap);
  switch (what) {
    case 'sticks': return `${gap > 0 ? 'left' : 'right'} end high by ${amount}`;
    case 'across': return `${gap > 0 ? 'hollow' : 'crowned'} by ${amount}`;
    case 'square': return `light ${gap > 0 ? 'at the far side' : 'at the face'}, ${amount}`;
    default: return `a gap of ${amount}`;
  }
}

/** 'left end high by one sixteenth of an inch, near the far end'; a diagonal has no place. */
export function readingWords(side: Pick<SideToTrue, 'size' | 'unit'>, { what, fromEnd, gap }: FaceReading, telling: Telling): string {
  const amount = gapWords(what, gap, telling);
  return what === 'first diagonal' || what === 'second diagonal' ? `${what}, ${amount}` : `${amount}, ${spotWords(side, fromEnd, telling)}`;
}

/** One reading in words: 'leg two, layer one, reference face, left end high by one sixteenth of an inch, near the far end'. */
export function sayReading(state: State, of: BoardFace, reading: FaceReading): string {
  const side = sideToTrue(state, of);
  const name = isOfBoard(reading.what) ? saySide(state, of).replace(/, reference face$/, reading.what === 'thickness' ? ', thickness' : '') : saySide(state, of);
  return [name, ...(side ? [readingWords(side, reading, aloud(state))] : [])].join(', ');
}

/** How the side is: whether it will do, and wind, hollow and crown in their places. */
export function verdictWords(side: SideToTrue, found: SideAsRead, telling: Telling): readonly string[] {
  const { outOfFlat, trueEnough, read, wanted } = found;
  const { limit } = side.limit;
  const edge = isEdge(side.face);
  const will = trueEnough ? `True enough: out by ${telling.amount(outOfFlat)}, and ${telling.amount(limit)} is allowed.` : `Not true yet: out by ${telling.amount(outOfFlat)}, and ${telling.amount(limit)} is allowed.`;
  return [will, ...(edge ? edgeWords(side, found, telling) : shapeWords(side, found, telling)), ...(read < wanted ? [sentence(`${telling.number(read)} of ${telling.count(wanted, 'reading', 'readings')} taken: what was not read counts as true`)] : [])];
}

function shapeWords(side: SideToTrue, { shape: { wind, across, along }, calipers, diagonals }: SideAsRead, telling: Telling): readonly string[] {
  const { limit } = side.limit;
  const tells = (amount: Length): boolean => absolute(amount) * 4 > limit;
  return [
    ...(tells(wind.lift) ? [`In wind: the far ${wind.highFarCorner} corner is ${telling.amount(wind.lift)} high in the board itself; the sticks show ${telling.amount(seenBySticks(wind.lift, side.stick, side.size.width))}.`] : ['No wind to speak of.']),
    ...(tells(along.amount) ? [`Along it is ${along.amount > 0 ? 'hollow' : 'crowned'} by ${telling.amount(along.amount)}, ${spotWords(side, along.at, telling)}.`] : []),
    ...(tells(across.amount) ? [`Across it is ${across.amount > 0 ? 'hollow' : 'crowned'} by ${telling.amount(across.amount)}, ${spotWords(side, across.at, telling)}.`] : []),
    ...(diagonals ? [diagonalWords(diagonals, telling)] : []),
    ...(calipers && calipers.most > calipers.least ? [`Its thickness runs from ${telling.size(calipers.least)} to ${telling.size(calipers.most)}.`] : []),
  ];
}

function diagonalWords({ longer, by, endsOff }: NonNullable<SideAsRead['diagonals']>, telling: Telling): string {
  if (longer === 'neither') return 'Its diagonals agree: the ends are square if the sides are alike.';
  const [near, far] = longer === 'first' ? ['left', 'right'] : ['right', 'left'];
  return `The diagonal from near ${near} to far ${far} is longer by ${telling.amount(by)}: the ends are out of square by ${telling.amount(endsOff)} over the width, those corners stand out.`;
}

function edgeWords(side: SideToTrue, { shape: { wind, along }, outOfSquare }: SideAsRead, telling: Telling): readonly string[] {
  const within = side.squareWithin;
  return [
    ...(outOfSquare && within !== undefined ? [outOfSquare.gap <= within ? 'It is square to the face.' : `Out of square by ${telling.amount(outOfSquare.gap)} ${spotWords(side, outOfSquare.fromEnd, telling)}; ${telling.amount(within)} is allowed.`] : []),
    ...(along.amount === 0 ? [] : [`Along it is ${along.amount > 0 ? 'hollow' : 'crowned'} by ${telling.amount(along.amount)}.`]),
    ...(wind.lift === 0 ? [] : [`From end to end it winds by ${telling.amount(wind.lift)}.`]),
  ];
}
