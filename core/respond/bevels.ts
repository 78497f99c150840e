import type { Response } from '../bench/reply.ts';
import type { JointRequest } from '../bench/request.ts';
import type { Screen } from '../bench/screen.ts';
import type { State } from '../journal/state.ts';
import { bevelOf, USUAL_SHAVING, type Bevel, type BevelInput } from '../joint/bevel.ts';
import type { Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import { sayNumber } from '../length/say.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { Part } from '../piece/file.ts';
import { renderTelling } from '../reckoning/telling.ts';
import { CAUTIONS } from '../work/cautions.ts';
import { sayTolerance, writeTolerance } from '../work/wording.ts';
import type { Jointing } from './jointing.ts';
import { refuse, tell } from './plain.ts';
import { sentence, spoken, written } from './saying.ts';

type Asked = Extract<JointRequest, { kind: 'bevel' }>;
const MOST_DEGREES = 90;

/** A chamfer or bevel by its two setbacks: how it leans, how wide its face comes out, and in how many shavings. */
export function respondToBevel(state: State, { setback, otherSetback, shaving }: Asked): Response {
  const found = bevelOf({ setback, otherSetback: otherSetback ?? setback, shaving: shaving ?? USUAL_SHAVING, across: 'long grain' });
  if (!found.ok) return refuse(renderTelling(found.fault.message, (length) => spoken(state, length)));
  return tell({
    say: `${sentence(`gauge ${spoken(state, setback)} from the arris on one face${otherSetback === undefined ? ' and on the other' : `, and ${spoken(state, otherSetback)} on the other`}`)} ${sayFace(state, found.value)} ${sayShavings(state, found.value, shaving)} Plane along the grain, right through; across end grain stop at the middle, and come in from the other side.`,
    screen: screenOf(`bevel, ${written(state, setback)} by ${written(state, otherSetback ?? setback)}`, found.value, [{ label: 'on one face', length: setback }, { label: 'on the other', length: otherSetback ?? setback }], { note: CAUTIONS.plane.say, shaving, unit: state.settings.rounding.unit }),
    lengths: [found.value.faceWidth, setback],
  });
}

/** The lines of a foot bevel, and where the plane has to stop. */
export function tellFootBevel(jointing: Jointing, partId: string | undefined, shaving: Length | undefined): Response {
  const { state, piece } = jointing;
  const part = piece.file.parts.find((one) => (partId === undefined || one.id === partId) && one.footBevel !== undefined);
  if (!part) return refuse(partId === undefined ? 'No part of this piece has a bevelled foot.' : 'That part has no bevelled foot.');
  const input = footOf(jointing, part, shaving);
  if (input === undefined) return refuse(`The piece file does not say enough of the ${part.name}.`);
  const found = bevelOf(input);
  if (!found.ok) return refuse(renderTelling(found.fault.message, (length) => spoken(state, length)));
  return tellFoot(state, part, input, found.value, shaving);
}

function footOf({ sizes }: Jointing, part: Part, shaving: Length | undefined): BevelInput | undefined {
  const size = (key: string): Length | undefined => sizeOf(sizes, `${part.id}.${key}`)?.length;
  const [setback, inwards, width, thickness] = ['footBevel', 'footBevelInwards', 'width', 'thickness'].map(size);
  if (setback === undefined || width === undefined || thickness === undefined) return undefined;
  return { setback, otherSetback: inwards ?? setback, shaving: shaving ?? USUAL_SHAVING, across: 'end grain', section: { width, thickness } };
}

function tellFoot(state: State, { name }: Part, { setback, otherSetback }: BevelInput, bevel: Bevel, shaving: Length | undefined): Response {
  const half = bevel.stops[0]?.at ?? setback;
  const inwards = otherSetback === setback ? 'as far in' : `${spoken(state, otherSetback)} in`;
  const unusual = bevel.warnings.map((told) => renderTelling(told, (length) => written(state, length)));
  return tell({
    say: `${sentence(`${name}, foot bevel, ${spoken(state, setback)} from the bottom end on all sides, and ${inwards} from each arris on the end`)} ${sayFace(state, bevel)} ${sayShavings(state, bevel, shaving)} It is end grain: plane from each corner to the middle, ${spoken(state, half)}, and come in from the other side.`,
    screen: screenOf(`foot bevel, ${name}`, bevel, [{ label: 'up the sides', length: setback }, { label: 'in on the end', length: otherSetback }, { label: 'stop at', length: half }], { note: [...unusual, CAUTIONS.chisel.say].join(' '), shaving, unit: state.settings.rounding.unit }),
    lengths: [setback, bevel.faceWidth, half],
  });
}

function sayFace(state: State, { angleDegrees, faceWidth }: Bevel): string {
  const degrees = Math.round(Math.min(angleDegrees, MOST_DEGREES));
  return `Its face measures ${spoken(state, faceWidth)} across, at ${sayNumber(degrees)} degrees.`;
}

function sayShavings(state: State, { shavings }: Bevel, shaving: Length | undefined): string {
  return `That is about ${sayNumber(shavings)} shavings of ${sayTolerance(shaving ?? USUAL_SHAVING, state.settings.rounding.unit)}.`;
}

function screenOf(question: string, { faceWidth, angleDegrees, shavings }: Bevel, lines: readonly { readonly label: string; readonly length: Length }[], { note, shaving, unit }: { readonly note: string; readonly shaving: Length | undefined; readonly unit: Rounding['unit'] }): Extract<Screen, { name: 'reckoning' }> {
  return { name: 'reckoning', result: { question, answers: [...lines, { label: 'face', length: faceWidth }], note: `${Math.round(angleDegrees)}°, about ${shavings} shavings of ${writeTolerance(shaving ?? USUAL_SHAVING, unit)}. ${note}` } };
}
