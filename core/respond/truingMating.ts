import type { Response } from '../bench/reply.ts';
import { nanometres, type Length } from '../length/length.ts';
import type { State } from '../journal/state.ts';
import type { Part } from '../piece/file.ts';
import { stationsFor } from '../true/guide.ts';
import { mate, type Mating } from '../true/mating.ts';
import type { BoardFace } from '../true/readings.ts';
import { forceToClose } from '../true/springJoint.ts';
import { surfaceOf } from '../true/surface.ts';
import { flatnessLimit } from '../true/tolerance.ts';
import { readingsOf } from '../true/fromReadings.ts';
import { speciesCalled } from '../wood/species.ts';
import { N_PER_MM2_PER_PSI } from '../wood/woodStrength.ts';
import { refuse, tell } from './plain.ts';
import { sentence } from './saying.ts';
import { boardsIn, meetingSides, sideToTrue, takenOf } from './truingSide.ts';
import { aloud, saySide, type Telling } from './truingWords.ts';

const NEWTONS_PER_POUND = 4.448;

/** One joint of what is glued up: its two sides, and how they meet; undefined while one of them is not read. */
export interface Meeting {
  readonly sides: readonly [BoardFace, BoardFace];
  readonly mating?: Mating;
  readonly closes?: boolean;
  /** To close edges that are hollow along, over their whole length. */
  readonly forceN?: number;
}

/** Every joint of a part that is glued up, in order. */
export function meetingsOf(state: State, of: BoardFace): readonly Meeting[] {
  const part = state.piece?.file.parts.find(({ id }) => id === of.part);
  if (!part) return [];
  return Array.from({ length: Math.max(0, boardsIn(part) - 1) }, (_, index) => meetingAt(state, part, meetingSides(part, of, index + 1)));
}

function meetingAt(state: State, part: Part, sides: Meeting['sides']): Meeting {
  const [first, second] = sides.map((of) => sideToTrue(state, of));
  if (!first || !second || first.taken.length === 0 || second.taken.length === 0) return { sides };
  const places = [...new Set([...stationsFor(first.size.length, first.unit), ...sides.flatMap((of) => takenOf(state, of).map(({ fromEnd }) => fromEnd))])];
  const [upper, lower] = [first, second].map(({ size, stick, taken }) => surfaceOf(readingsOf(size, stick, places, taken)));
  if (!upper?.ok || !lower?.ok) return { sides };
  const mating = mate(upper.value, lower.value);
  const closes = mating.greatest.gap <= flatnessLimit('glue', first.size.length).limit;
  const force = part.made.kind === 'panel' && !closes ? springForce(state, part, first.size.length, mating.greatest.gap, sides[0]) : undefined;
  return { sides, mating, closes, ...(force === undefined ? {} : { forceN: force }) };
}

function springForce(state: State, part: Part, length: Length, gap: Length, of: BoardFace): number | undefined {
  const board = sideToTrue(state, { ...of, face: 'face' });
  const edge = sideToTrue(state, of);
  const stiffness = speciesCalled(part.species)?.strength?.stiffnessMpsi;
  if (!board || !edge || stiffness === undefined) return undefined;
  const found = forceToClose({ length, boardWidths: [board.size.width, board.size.width], thickness: edge.size.width, gap: nanometres(Math.max(0, gap)), elasticityMpa: stiffness * 1_000_000 * N_PER_MM2_PER_PSI });
  return found.ok ? found.value.forceN : undefined;
}

/** Whether the joints of what is to be glued will close, the worst first; and what is not read yet. */
export function willTheyClose(state: State, of: BoardFace): Response {
  const screen = { name: 'truing', of, shows: 'shape' } as const;
  const meetings = meetingsOf(state, of);
  if (meetings.length === 0) return refuse('This is one piece of wood: nothing of it is glued face to face or edge to edge.');
  const [open] = meetings.filter(({ mating }) => mating === undefined);
  const read = meetings.filter(({ mating }) => mating !== undefined);
  if (read.length === 0) return refuse(`Two sides that meet must be read first: ${meetings[0]?.sides.map((side) => saySide(state, side)).join('; and ') ?? ''}.`, { screen });
  const telling = aloud(state);
  const said = read.map((meeting) => meetingWords(meeting, telling));
  return tell({ say: [...said, ...(open ? [`Not read yet: ${saySide(state, open.sides[0])}, and what follows.`] : [])].join(' '), screen });
}

/** 'Joint one will close: its widest gap is …' */
export function meetingWords({ sides: [first], mating, closes, forceN }: Meeting, telling: Telling): string {
  if (!mating) return '';
  const { greatest: { gap }, rocks } = mating;
  const joint = `joint ${telling.number(first.board ?? 1)}`;
  const gapes = closes ? `${joint} will close: its widest gap is ${telling.amount(gap)}` : `${joint} gapes by ${telling.amount(gap)}, more than a glue line bears`;
  return [sentence(gapes), ...(rocks.length === 0 ? [] : [`It rocks ${rocks.join(' and ')} on a high place: plane that first.`]),
    ...(forceN === undefined || rocks.length > 0 ? [] : [`To pull it shut takes some ${telling.number(Math.round(forceN / NEWTONS_PER_POUND / 10) * 10)} pounds over its length.`])].join(' ');
}
