import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { LayoutRequest, Measured } from '../bench/request.ts';
import type { State } from '../journal/state.ts';
import { checkDiagonals, diagonalOf, type DiagonalCheck, type Rectangle } from '../layout/diagonals.ts';
import { frameOf } from '../layout/frames.ts';
import { absolute, subtract } from '../length/arithmetic.ts';
import { sayLength } from '../length/say.ts';
import type { Length } from '../length/length.ts';
import { sizeOf } from '../piece/evaluate.ts';
import { renderTelling } from '../reckoning/telling.ts';
import { TOLERANCES } from '../work/figures.ts';
import { refuse, tell } from './plain.ts';
import { sentence, spoken, written } from './saying.ts';
import { sizesOf } from './views.ts';

/** Each way of seeing a frame has its own names for the corners, and a side that stays while the other is pushed. */
interface View {
  readonly first: string;
  readonly second: string;
  readonly farSide: string;
}
const FROM_ABOVE: View = { first: 'front left to back right', second: 'front right to back left', farSide: 'back' };
const UPRIGHT: View = { first: 'bottom left to top right', second: 'bottom right to top left', farSide: 'top' };
const FLAT: View = { first: 'near left to far right', second: 'near right to far left', farSide: 'far side' };

interface Subject {
  readonly name: string;
  readonly view: View;
  /** Where it may have been measured; the nearest is taken. */
  readonly candidates: readonly { readonly say: string; readonly rectangle: Rectangle }[];
}

/** From the two diagonals: how far out of square, which way to pull, and whether the sides agree. */
export function respondToDiagonals(bench: Bench, { of, first, second }: Extract<LayoutRequest, { kind: 'diagonals' }>): Response {
  const { state } = bench;
  const subject = subjectOf(state, of);
  if (typeof subject === 'string') return refuse(subject);
  const measured = checkDiagonals(first, second);
  if (!measured.ok) return refuse(renderTelling(measured.fault.message, (length) => spoken(state, length)));
  const { whenSquare } = measured.value;
  const off = (rectangle: Rectangle): Length => absolute(subtract(diagonalOf(rectangle), whenSquare));
  const [nearest] = [...subject.candidates].sort((one, other) => off(one.rectangle) - off(other.rectangle));
  if (nearest && off(nearest.rectangle) * 20 > whenSquare) {
    return refuse(`By its sides, a diagonal of ${subject.name} is ${spoken(state, diagonalOf(nearest.rectangle))}${nearest.say}. Measure again, corner to corner.`);
  }
  const check = nearest ? checkDiagonals(first, second, nearest.rectangle) : measured;
  if (!check.ok) return refuse(renderTelling(check.fault.message, (length) => spoken(state, length)));
  return answer(bench, subject, { first, second, check: check.value, where: nearest?.say ?? '' });
}

function subjectOf(state: State, of: Measured): Subject | string {
  const sizes = sizesOf(state);
  const { piece } = state;
  if ('part' in of) {
    const part = piece?.file.parts.find(({ id }) => id === of.part);
    const [along, across] = ['length', 'width'].map((size) => (sizes ? sizeOf(sizes, `${of.part}.${size}`)?.length : undefined));
    if (!part || along === undefined || across === undefined) return 'This piece has no such part.';
    return { name: `the ${part.name}`, view: FLAT, candidates: [{ say: '', rectangle: { along, across } }] };
  }
  const name = 'frame' in of ? of.frame : 'frame';
  const frame = piece && sizes ? frameOf(piece.file, sizes, name) : undefined;
  if (!frame) return 'unsaid' in of ? { name: 'it', view: FLAT, candidates: [] } : `This piece has no ${name} of legs and rails. Say which part, or only the two diagonals.`;
  return {
    name: `the ${name === 'front frame' ? 'front' : name}`, view: name === 'frame' ? FROM_ABOVE : UPRIGHT,
    candidates: [{ say: ', over the outsides of the legs', rectangle: frame.outside }, { say: ', between the legs', rectangle: frame.inside }],
  };
}

/** What both diagonals read when it is square, by its sides. */
export function tellDiagonals({ state }: Bench, { of }: Extract<LayoutRequest, { kind: 'what diagonals' }>): Response {
  const subject = subjectOf(state, of);
  if (typeof subject === 'string') return refuse(subject);
  if (subject.candidates.length === 0) return refuse('Measure both, corner to corner, and tell me: when it is square they agree.');
  const answers = subject.candidates.map(({ say, rectangle }) => ({ label: say === '' ? subject.name : say.slice(2), length: diagonalOf(rectangle) }));
  const said = subject.candidates.map(({ say, rectangle }) => `${spoken(state, diagonalOf(rectangle))}${say}`);
  return tell({
    say: `${sentence(`a diagonal of ${subject.name} is ${said.join('; ')}`)} Both alike, when it is square.`,
    screen: { name: 'reckoning', result: { question: `diagonals of ${subject.name}`, answers, note: `both alike; within ${written(state, TOLERANCES.diagonals)} is right (ISO 2768-1 medium)` } },
    lengths: answers.map(({ length }) => length),
  });
}

interface Found { readonly first: Length; readonly second: Length; readonly check: DiagonalCheck; readonly where: string }

function answer({ state }: Bench, { name, view }: Subject, { first, second, check, where }: Found): Response {
  const square = check.difference <= TOLERANCES.diagonals;
  const said = [square ? sayTrue(state, name, check) : sayPull(state, view, check), saySides(state, check, where)];
  const answers = [
    { label: 'difference', length: check.difference }, { label: 'both when square', length: check.whenSquare },
    ...(check.sides ? [{ label: `${view.farSide} to the ${check.sides.farSideRight < 0 ? 'left' : 'right'}`, length: absolute(check.sides.farSideRight) }] : []),
  ];
  return tell({
    say: said.filter((one) => one !== '').join(' '),
    screen: { name: 'reckoning', result: {
      question: `diagonals ${written(state, first)} and ${written(state, second)}`, answers,
      note: square ? 'square: ISO 2768-1 medium allows 0.8 mm at 400 to 1000 mm' : `clamp along ${longerOf(view, check)}; within ${written(state, TOLERANCES.diagonals)} is right (ISO 2768-1 medium)`,
    } },
    ...(square ? {} : { signal: 'wrong' as const }),
    lengths: [check.difference, check.whenSquare],
  });
}

function longerOf(view: View, { longer }: DiagonalCheck): string {
  return longer === 'second' ? view.second : view.first;
}

/** The allowance is said in sixty-fourths whatever the rounding: at a coarse one it would be nothing. */
function sayTrue(state: State, name: string, { difference }: DiagonalCheck): string {
  const allowed = state.settings.rounding.unit === 'inch' ? sayLength(TOLERANCES.diagonals, { unit: 'inch', denominator: 64 }) : spoken(state, TOLERANCES.diagonals);
  return difference === 0 ? `The diagonals agree: ${name} is square.` : `The diagonals differ by ${spoken(state, difference)}, within ${allowed}: ${name} is square. Leave the clamps.`;
}

function sayPull(state: State, view: View, check: DiagonalCheck): string {
  const { difference, whenSquare, sides } = check;
  const way = check.longer === 'first' ? 'right' : 'left';
  const shift = sides ? ` The ${view.farSide} stands too far to the ${way}, by ${spoken(state, absolute(sides.farSideRight))}.` : '';
  return `${sentence(`the diagonal ${longerOf(view, check)} is longer by ${spoken(state, difference)}`)}${shift} Pull the clamp along it, until both read ${spoken(state, whenSquare)}.`;
}

/** Square, and still not right: said when the two diagonals together are off what the sides make. */
function saySides(state: State, { sides, whenSquare }: DiagonalCheck, where: string): string {
  if (!sides || absolute(subtract(whenSquare, sides.diagonal)) <= 4 * TOLERANCES.diagonals) return '';
  return `By its sides they should be ${spoken(state, sides.diagonal)}${where}: one of the sides is off, or they were not measured corner to corner.`;
}
