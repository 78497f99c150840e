import type { Response } from '../bench/reply.ts';
import type { ChopPlan } from '../joint/chopping.ts';
import { mateOf } from '../joint/mates.ts';
import { choppingOf, rackingOfJoint, roomFor, USUAL_PUSH_NEWTONS } from '../joint/ofPiece.ts';
import { subtract } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { sayNumber } from '../length/say.ts';
import { cavitiesOf } from '../piece/cavity.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import { renderTelling } from '../reckoning/telling.ts';
import { CAUTIONS } from '../work/cautions.ts';
import type { Jointing } from './jointing.ts';
import { refuse, tell } from './plain.ts';
import { sayList, sentence, spoken } from './saying.ts';

const GUIDANCE = 'This is guidance by plain statics, not an approval; local codes and a licensed engineer decide where it matters.';
/** Beyond this, more says nothing: glue, grain and use decide. */
const MOST_TIMES = 20;

/** How the mortise is chopped, short enough for the ear. */
export function tellChopping({ state, piece, sizes }: Jointing, joint: MortiseAndTenon): Response {
  if (joint.shape === 'bridle') return tellSlot({ state, piece, sizes }, joint);
  const planned = choppingOf(piece, sizes, joint);
  if (!planned.ok) return refuse(renderTelling(planned.fault.message, (length) => spoken(state, length)));
  const plan = planned.value;
  const { startMark, endMark, middle, flags, stayOff, advance, through } = plan;
  const depth = flags.at(-1) ?? middle;
  const say = (length: typeof middle): string => spoken(state, length);
  const told = [
    sentence(`${mateOf(piece.file, joint)} mortise, from ${say(startMark)} to ${say(endMark)}, from the top end`),
    `Flag the chisel at ${say(depth)}${through ? ', for each face' : ''}. ${passes(plan, say)}`,
    `Each from the middle, ${say(middle)}, to the far end; turn the bevel; to the near end; ${say(advance)} a cut, ${say(stayOff)} off both lines.`,
    'Lever from the second pass on.',
    ...sayTwin({ state, piece, sizes }, joint),
    ...(joint.haunch === undefined ? [] : [`The socket of the haunch last, ${say(sizeOf(sizes, `${joint.id}.haunchLength`)?.length ?? depth)} deep.`]),
    `Strop ${plan.stropAfter.length === 0 ? '' : `after ${plan.stropAfter.length === 1 ? 'pass' : 'passes'} ${sayList(plan.stropAfter.map((pass) => sayNumber(pass)))}, and `}before the ends.`,
  ];
  const answers = [{ label: 'start mark', length: startMark }, { label: 'first cut', length: middle }, { label: 'end mark', length: endMark }, { label: 'depth flag', length: depth }];
  return tell({
    say: told.join(' '),
    screen: { name: 'reckoning', result: { question: `chop the ${mateOf(piece.file, joint)} mortise`, answers, note: `${flags.length} ${flags.length === 1 ? 'pass' : 'passes'}. Never lever against an end. ${CAUTIONS.chisel.say} ${CAUTIONS.mallet.say}` } },
    lengths: answers.map(({ length }) => length),
  });
}

/** A second mortise is chopped as the first. */
function sayTwin({ state, sizes }: Jointing, joint: MortiseAndTenon): readonly string[] {
  const [, second] = cavitiesOf(joint, (name, copy) => sizeOf(sizes, name, copy)?.length).filter(({ kind }) => kind === 'mortise');
  if (second === undefined) return [];
  return [second.which === 'inner' ? `The inner one beside it likewise, its near side ${spoken(state, second.near)} from the outer face.` : `The lower one likewise, from ${spoken(state, second.top)} to ${spoken(state, second.bottom)}.`];
}

/** The open mortise of a bridle joint is sawn. */
function tellSlot({ state, piece, sizes }: Jointing, joint: MortiseAndTenon): Response {
  const size = (key: string): Length => sizeOf(sizes, `${joint.id}.${key}`)?.length ?? ZERO_LENGTH;
  const [deep, wide] = [size('mortiseLength'), size('mortiseWidth')];
  const name = `${mateOf(piece.file, joint)} slot`;
  return tell({
    say: `${sentence(`${name}, ${spoken(state, deep)} deep from the end, and ${spoken(state, wide)} wide`)} Gauge it over the end and both edges, and knife its bottom. Saw both cheeks on the waste side, corner to corner from both edges, then straight down. Chop the bottom half from each edge, and pare the cheeks flat.`,
    screen: { name: 'reckoning', result: { question: `cut the ${name}`, answers: [{ label: 'depth from the end', length: deep }, { label: 'width', length: wide }], note: `${CAUTIONS.saw.say} ${CAUTIONS.chisel.say}` } },
    lengths: [deep, wide],
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
