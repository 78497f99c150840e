import type { Response } from '../bench/reply.ts';
import { bevelOf } from '../joint/bevel.ts';
import type { ChopPlan } from '../joint/chopping.ts';
import { mateOf } from '../joint/mates.ts';
import { choppingOf, rackingOfJoint, roomFor, USUAL_PUSH_NEWTONS } from '../joint/ofPiece.ts';
import { subtract } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH } from '../length/length.ts';
import { sayNumber } from '../length/say.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import { renderTelling } from '../reckoning/telling.ts';
import { CAUTIONS } from '../work/cautions.ts';
import type { Jointing } from './jointing.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence, spoken, written } from './saying.ts';

/** A fine shaving of a block plane, for the count (two to six thousandths are usual; common practice, no source). */
const SHAVING = nanometres((NANOMETRES_PER_INCH * 4) / 1000);
const GUIDANCE = 'This is guidance by plain statics, not an approval; local codes and a licensed engineer decide where it matters.';
/** Beyond this, more says nothing: glue, grain and use decide. */
const MOST_TIMES = 20;

/** How the mortise is chopped, short enough for the ear. */
export function tellChopping({ state, piece, sizes }: Jointing, joint: MortiseAndTenon): Response {
  const planned = choppingOf(piece, sizes, joint);
  if (!planned.ok) return refuse(renderTelling(planned.fault.message, (length) => spoken(state, length)));
  const plan = planned.value;
  const { startMark, endMark, middle, flags, stayOff, advance, through } = plan;
  const depth = flags.at(-1) ?? middle;
  const say = (length: typeof middle): string => spoken(state, length);
  const told = [
    sentence(`${mateOf(piece.file, joint)} mortise, from ${say(startMark)} to ${say(endMark)}, from the top end`),
    `Flag the chisel at ${say(depth)}${through ? ', a little past the middle, for each face' : ''}.`,
    `Start in the middle, at ${say(middle)}. ${passes(plan, say)}`,
    `In each, go ${say(advance)} at a time to the far end, turn the bevel, and then from the middle to the near end. Stay ${say(stayOff)} off both lines.`,
    'Lever from the second pass on, never against an end.',
    `Strop ${plan.stropAfter.length === 0 ? '' : `after ${plan.stropAfter.length === 1 ? 'pass' : 'passes'} ${sayList(plan.stropAfter.map((pass) => sayNumber(pass)))}, and `}before you pare the ends upright.`,
  ];
  const answers = [{ label: 'start mark', length: startMark }, { label: 'first cut', length: middle }, { label: 'end mark', length: endMark }, { label: 'depth flag', length: depth }];
  return tell({
    say: told.join(' '),
    screen: { name: 'reckoning', result: { question: `chop the ${mateOf(piece.file, joint)} mortise`, answers, note: `${flags.length} ${flags.length === 1 ? 'pass' : 'passes'}. ${CAUTIONS.chisel.say} ${CAUTIONS.mallet.say}` } },
    lengths: answers.map(({ length }) => length),
  });
}

function passes({ flags }: ChopPlan, say: (length: ChopPlan['middle']) => string): string {
  const [first, ...more] = flags;
  if (first === undefined || more.length === 0) return 'One pass takes it down.';
  return sentence(`${sayNumber(flags.length)} passes of ${say(first)}, the last to the flag`);
}

/** How long the tenon could be beside the others that come into the same part. */
export function tellLongest({ state, piece, sizes }: Jointing, joint: MortiseAndTenon): Response {
  const room = roomFor(piece, sizes, joint);
  if (!room) return refuse(`The piece file does not say enough of the ${joint.name}.`);
  const { planned, square, mitred, neighbours } = room;
  if (square <= 0) return refuse(sentence(`there is no room for the ${joint.name} beside the ${sayList(neighbours.map(({ name }) => name))}`));
  // A mitred tenon is measured on its longer cheek.
  const over = subtract(planned, joint.tenonEnds === 'mitred' && mitred && mitred[0] > square ? mitred[0] : square);
  const beside = neighbours.length === 0 ? 'it meets no other inside' : `beside the ${sayList(neighbours.map(({ name }) => name))} as planned`;
  const told = [
    sentence(`${joint.name}, from the shoulder, at the longest ${spoken(state, square)} with a square end; ${beside}`),
    ...(mitred ? [`With mitred ends, ${spoken(state, mitred[0])} on the outer cheek, ${spoken(state, mitred[1])} on the inner.`] : []),
    sentence(`it is planned ${spoken(state, planned)}${over > 0 ? `, and would hit: ${spoken(state, over)} too long` : ''}`),
  ];
  const answers = [{ label: 'square', length: square }, ...(mitred ? [{ label: 'mitred, outer cheek', length: mitred[0] }, { label: 'mitred, inner cheek', length: mitred[1] }] : []), { label: 'planned', length: planned }];
  return tell({ say: told.join(' '), screen: { name: 'reckoning', result: { question: `longest ${joint.name}`, answers } }, ...(over > 0 ? { signal: 'wrong' as const } : {}), lengths: answers.map(({ length }) => length) });
}

/** Racking, as a number of times what a usual push asks: never an approval. */
export function tellStrength({ piece, sizes }: Jointing, joint: MortiseAndTenon): Response {
  const found = rackingOfJoint(piece, sizes, joint);
  const species = piece.file.parts.find(({ id }) => id === joint.tenonOn)?.species ?? '';
  if (!found) return refuse(`I have no strength of ${species}, or not all sizes of the ${joint.name}, so I cannot say.`);
  const times = Math.floor(found.times);
  const said = times < 1 ? 'less than' : times > MOST_TIMES ? `more than ${sayNumber(MOST_TIMES)} times` : times === 1 ? 'about' : `about ${sayNumber(times)} times`;
  const weakest = found.glueNm < found.tenonNm ? 'the glue gives first' : 'the tenon breaks first';
  const note = `${Math.round(found.jointNm)} N·m against ${Math.round(found.askedNm)} N·m asked. ${GUIDANCE}`;
  return tell({ say: `${sentence(`${joint.name}, in racking, stands ${said} what a push of ${sayNumber(USUAL_PUSH_NEWTONS)} newtons along the top asks of each of four joints; ${weakest}`)} ${GUIDANCE}`, note, ...(times < 2 ? { signal: 'wrong' as const } : {}) });
}

/** The lines of a foot bevel, and where the plane has to stop. */
export function tellBevel({ state, piece, sizes }: Jointing, partId: string | undefined): Response {
  const part = piece.file.parts.find((one) => (partId === undefined || one.id === partId) && one.footBevel !== undefined);
  if (!part) return refuse(partId === undefined ? 'No part of this piece has a bevelled foot.' : 'That part has no bevelled foot.');
  const size = (key: string): typeof SHAVING | undefined => sizeOf(sizes, `${part.id}.${key}`)?.length;
  const [setback, width, thickness] = [size('footBevel'), size('width'), size('thickness')];
  if (setback === undefined || width === undefined || thickness === undefined) return refuse(`The piece file does not say enough of the ${part.name}.`);
  const found = bevelOf({ setback, otherSetback: setback, shaving: SHAVING, across: 'end grain', section: { width, thickness } });
  if (!found.ok) return refuse(renderTelling(found.fault.message, (length) => spoken(state, length)));
  const { faceWidth, shavings, stops, warnings } = found.value;
  const unusual = warnings.map((told) => renderTelling(told, (length) => written(state, length)));
  const half = stops[0]?.at ?? setback;
  return tell({
    say: `${sentence(`${part.name}, foot bevel, ${spoken(state, setback)} from the bottom end on all sides, and as far in from each arris on the end`)} Its face comes out ${spoken(state, faceWidth)} wide, after about ${sayNumber(shavings)} shavings. It is end grain: plane from each corner to the middle, ${spoken(state, half)}, and come in from the other side.`,
    screen: { name: 'reckoning', result: { question: `foot bevel, ${part.name}`, answers: [{ label: 'up the sides', length: setback }, { label: 'in on the end', length: setback }, { label: 'face', length: faceWidth }, { label: 'stop at', length: half }], note: [...unusual, CAUTIONS.chisel.say].join(' ') } },
    lengths: [setback, faceWidth, half],
  });
}
