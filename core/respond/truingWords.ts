import { absolute } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayLength, sayNumber } from '../length/say.ts';
import { writeLength } from '../length/write.ts';
import type { State } from '../journal/state.ts';
import type { SideAsRead, SideToTrue } from '../true/asRead.ts';
import { stationsFor, type WantedReading } from '../true/guide.ts';
import type { PlaningStage } from '../true/planing.ts';
import { isEdge, type BoardFace, type FaceReading, type ReadingKind, type TruedFace } from '../true/readings.ts';
import { seenBySticks } from '../true/shape.ts';
import type { Place } from '../true/surface.ts';
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
  }
}

/** 'left end high by one thirty-second of an inch', 'hollow by …', 'nothing'. */
export function gapWords(what: ReadingKind, gap: Length, telling: Telling): string {
  if (what === 'thickness') return telling.size(gap);
  if (gap === 0) return 'no gap';
  const amount = telling.gap(gap);
  switch (what) {
    case 'sticks': return `${gap > 0 ? 'left' : 'right'} end high by ${amount}`;
    case 'across': return `${gap > 0 ? 'hollow' : 'crowned'} by ${amount}`;
    case 'square': return `light ${gap > 0 ? 'at the far side' : 'at the face'}, ${amount}`;
    case 'along': return `a gap of ${amount}`;
  }
}

/** One reading in words: 'leg two, layer one, reference face, left end high by one sixteenth of an inch, near the far end'. */
export function sayReading(state: State, of: BoardFace, { what, fromEnd, gap }: FaceReading): string {
  const side = sideToTrue(state, of);
  const name = what === 'thickness' ? saySide(state, of).replace(/, reference face$/, ', thickness') : saySide(state, of);
  return [name, gapWords(what, gap, aloud(state)), ...(side ? [spotWords(side, fromEnd, aloud(state))] : [])].join(', ');
}

/** How the side is: whether it will do, and wind, hollow and crown in their places. */
export function verdictWords(side: SideToTrue, found: SideAsRead, telling: Telling): readonly string[] {
  const { outOfFlat, trueEnough, read, wanted } = found;
  const { limit } = side.limit;
  const edge = isEdge(side.face);
  const will = trueEnough ? `True enough: out by ${telling.amount(outOfFlat)}, and ${telling.amount(limit)} is allowed.` : `Not true yet: out by ${telling.amount(outOfFlat)}, and ${telling.amount(limit)} is allowed.`;
  return [will, ...(edge ? edgeWords(side, found, telling) : shapeWords(side, found, telling)), ...(read < wanted ? [sentence(`${telling.number(read)} of ${telling.count(wanted, 'reading', 'readings')} taken: what was not read counts as true`)] : [])];
}

function shapeWords(side: SideToTrue, { shape: { wind, across, along }, calipers }: SideAsRead, telling: Telling): readonly string[] {
  const { limit } = side.limit;
  const tells = (amount: Length): boolean => absolute(amount) * 4 > limit;
  return [
    ...(tells(wind.lift) ? [`In wind: the far ${wind.highFarCorner} corner is ${telling.amount(wind.lift)} high in the board itself; the sticks show ${telling.amount(seenBySticks(wind.lift, side.stick, side.size.width))}.`] : ['No wind to speak of.']),
    ...(tells(along.amount) ? [`Along it is ${along.amount > 0 ? 'hollow' : 'crowned'} by ${telling.amount(along.amount)}, ${spotWords(side, along.at, telling)}.`] : []),
    ...(tells(across.amount) ? [`Across it is ${across.amount > 0 ? 'hollow' : 'crowned'} by ${telling.amount(across.amount)}, ${spotWords(side, across.at, telling)}.`] : []),
    ...(calipers && calipers.most > calipers.least ? [`Its thickness runs from ${telling.size(calipers.least)} to ${telling.size(calipers.most)}.`] : []),
  ];
}

function edgeWords(side: SideToTrue, { shape: { wind, along }, outOfSquare }: SideAsRead, telling: Telling): readonly string[] {
  const within = side.squareWithin;
  return [
    ...(outOfSquare && within !== undefined ? [outOfSquare.gap <= within ? 'It is square to the face.' : `Out of square by ${telling.amount(outOfSquare.gap)} ${spotWords(side, outOfSquare.fromEnd, telling)}; ${telling.amount(within)} is allowed.`] : []),
    ...(along.amount === 0 ? [] : [`Along it is ${along.amount > 0 ? 'hollow' : 'crowned'} by ${telling.amount(along.amount)}.`]),
    ...(wind.lift === 0 ? [] : [`From end to end it winds by ${telling.amount(wind.lift)}.`]),
  ];
}

/** What to plane first, then next. */
export function stageWords(side: SideToTrue, found: SideAsRead, telling: Telling): readonly string[] {
  const { stages } = found.board.plan;
  return stages.map((stage, index) => {
    const count = telling.count(stage.shavings, 'shaving', 'shavings');
    return sentence(`${index === 0 && stages.length > 1 ? 'first ' : index === 0 ? '' : 'then '}${count} ${placesWords(side, stage, found, telling)}`);
  });
}

const ALL_PLACES: readonly Place[] = ['left', 'middle', 'right'];

interface Run { readonly from: Length; readonly to: Length; readonly rows: readonly Place[] }

/** So many stretches are kept in mind. */
const MOST_RUNS = 3;

/** Neighbouring places that are alike run together, and, of many, those that are the most alike: the drawing is exact, the words are what one can keep. */
function placesWords(side: SideToTrue, { places }: PlaningStage, { surface }: SideAsRead, telling: Telling): string {
  const stations = [...new Set(surface.points.map(({ fromEnd }) => fromEnd))];
  const rowsAt = (at: Length): readonly Place[] => ALL_PLACES.filter((row) => places.some(({ place, from, to }) => place === row && from <= at && at <= to));
  let runs: readonly Run[] = stations.map((at): Run => ({ from: at, to: at, rows: rowsAt(at) }));
  for (let excess = 0; excess <= ALL_PLACES.length && runs.filter(({ rows }) => rows.length > 0).length > (excess === 0 ? 0 : MOST_RUNS); excess += 1) runs = runTogether(runs, excess);
  return runs.filter(({ rows }) => rows.length > 0).map(({ from, to, rows }) => {
    const whole = from === stations[0] && to === stations.at(-1);
    const stretch = whole ? (rows.length === ALL_PLACES.length ? 'all over' : 'from end to end') : from === to ? spotWords(side, from, telling) : `from ${endWords(side, from, telling)} to ${endWords(side, to, telling)}`;
    return rows.length === ALL_PLACES.length ? stretch : `${stretch}, ${rowWords(side.face, new Set(rows))}`;
  }).join('; and ');
}

/** Neighbours of which both want planing, and whose rows differ in no more than that. */
function runTogether(runs: readonly Run[], differing: number): readonly Run[] {
  return runs.reduce<readonly Run[]>((done, run) => {
    const before = done.at(-1);
    const joined = before && ALL_PLACES.filter((row) => before.rows.includes(row) || run.rows.includes(row));
    if (!before || !joined || before.rows.length === 0 || run.rows.length === 0 || 2 * joined.length - before.rows.length - run.rows.length > differing) return [...done, run];
    return [...done.slice(0, -1), { from: before.from, to: run.to, rows: joined }];
  }, []);
}

function rowWords(face: TruedFace, rows: ReadonlySet<Place>): string {
  const [left, right] = isEdge(face) ? ['the arris at the face', 'the far arris'] : ['the left side', 'the right side'];
  if (rows.has('left') && rows.has('right')) return isEdge(face) ? 'both arrises' : 'both sides';
  return rows.has('left') ? left : rows.has('right') ? right : 'the middle';
}

function endWords(side: SideToTrue, at: Length, telling: Telling): string {
  return spotWords(side, at, telling).replace(/^(?:near|in|at) /, '');
}
