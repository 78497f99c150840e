import type { Request } from '../../bench/request.ts';
import type { Trouble } from '../../work/troubles.ts';
import type { OwnerMention } from '../names.ts';
import { rowsOf } from '../pattern.ts';
import type { Built } from '../slot.ts';
import { faultOf, misfitOf, type Half } from '../jointFaults.ts';

const row = rowsOf('handwork');

/** What went wrong under the hands, and what is asked of the handwork: nothing is written down by it. */
export const TROUBLE_ROWS = [
  row('what goes wrong', ['[it|something|what] went wrong', 'what goes wrong', 'something is wrong'], () => ({ kind: 'what goes wrong' })),
  row('what is wrong with a board', ['(it|[the|this] (board|face|edge)) is {warp}', '(it|[the|this] (board|face|edge)) has [a] {warp}'], ({ warp }) => trouble(warp)),
  row('what is wrong with the board of a part', ['[the] {part} is {warp}', '[the] {part} has [a] {warp}'], ({ part, warp }) => trouble(warp, { of: part })),
  row('a board that rocks', ['(it|[the] board) rocks [on the bench]'], () => trouble('wind')),
  row('torn grain', ['(it|[the] grain) tears out', 'i get tear out'], () => trouble('tear-out')),
  row('a hump', ['there is a hump [in the middle]'], () => trouble('hump')),
  row('a hollow', ['there is a hollow [in the middle]'], () => trouble('hollow')),
  row('wind', ['how do i (check|look|sight) for wind', 'how do i get [the] (wind|twist) out'], () => trouble('wind')),
  row('how to flatten', ['how do i (flatten|true) (it|[the] (face|board))', 'how do i get (it|[the] (face|board)) flat'], () => trouble('not flat')),
  row('how to square an edge', ['how do i (square|joint) [the] edge', 'how do i get [the] edge square'], () => trouble('edge out of square')),
  row('what is wrong with a joint', ['[the|my] {half} (is|came out) {misfit}', '[the] {joint} (is|came out) {misfit}', 'i (cut|made) [the] {half} {misfit}', 'i (cut|made) [the] {joint} {misfit}'], ({ half, joint, misfit }) => ofHalf(half, joint, (meant) => misfitOf(meant, misfit))),
  row('a fault of a joint', ['[the|my] {half} is {fault}', '[the] {joint} is {fault}'], ({ half, joint, fault }) => ofHalf(half, joint, (meant) => faultOf(meant, fault))),
  row('a joint that does not go together', ['[the] {half} (does not fit|will not go in)', '[the] {joint} (does not fit|will not go in)'], ({ half, joint }) => ofHalf(half, joint, (meant) => faultOf(meant, 'stuck'))),
  row('a joint that does not close', ['[the] {half} (does|will) not close', '[the] {half} has a gap', '[the] {joint} (does|will) not close'], ({ half, joint }) => ofHalf(half, joint, (meant) => faultOf(meant, 'open'))),
  row('a tenon that stands on the bottom', ['[the] {half} bottoms out'], ({ half }) => ofHalf(half, undefined, (meant) => faultOf(meant, 'on the bottom'))),
  row('a joint that split', ['[the] {half} (split|cracked)'], ({ half }) => ofHalf(half, undefined, (meant) => faultOf(meant, 'split'))),
  row('a joint at hand that is tight', ['it is too tight', 'it (does not fit|will not go in)'], () => trouble('tenon tight')),
  row('a joint at hand that is loose', ['it is [too] loose'], () => trouble('tenon loose')),
  row('an open shoulder', ['it (does|will) not close', 'there is a gap (at|in) the (shoulder|joint)'], () => trouble('shoulder open')),
  row('a mortise in the wrong face', ['i chopped [the|a] mortise (in|on) the wrong (face|side)', '[the] mortise is (in|on) the wrong (face|side)'], () => trouble('wrong face')),
  row('a broken end', ['i (blew|broke) out the (end|edge) [of the mortise]', 'the (end|edge) [of the mortise] (blew|broke) out'], () => trouble('end blown out')),
  row('a frame out of square', ['[the] frame is (not square|out of square|out)', '[the] frame is out of square by {gap}', '(it|[the] frame) is out [of square] by {gap}'], ({ gap }) => trouble('frame out of square', gap === undefined ? {} : { gap })),
  row('the side of the line', ['(which|what) side of the line [do i (saw|cut)]', 'do i (saw|cut) on the line', 'where do i saw the line'], () => trouble('side of the line')),
  row('the mortise or the tenon first', ['(what|which) comes first [the] mortise or [the] tenon', 'do i make the (mortise|tenon) first'], () => trouble('mortise or tenon first')),
  row('the reference sides', ['what is the reference (face|edge|side)', 'which [face|edge] is the reference [face|edge|side]'], () => ({ kind: 'reference sides' })),
  row('the reference sides of a part', ['what is the reference (face|edge) (of|on) [the] {part}', 'which (face|edge) of [the] {part} is [the] reference [face|edge]'], ({ part }) => ({ kind: 'reference sides', ...part })),
  row('how far the arrises are eased', ['break the (edges|corners|arrises)', 'how (much|big) [is|do i make] [the|a] chamfer', 'how much do i (ease|break|chamfer|round) [off] (it|the (edges|corners|arrises))', 'how much easing'], () => ({ kind: 'easing' })),
  row('how far the arrises of a part are eased', ['how much do i (ease|chamfer) [the] {parts}', '[how big is] [the] chamfer (of|on) [the] {parts}'], ({ parts: { part } }) => ({ kind: 'easing', part })),
];

function trouble(about: Trouble, more: Omit<Extract<Request, { kind: 'trouble' }>, 'kind' | 'about'> = {}): Request {
  return { kind: 'trouble', about, ...more };
}

/** Of a half by itself, or of a joint by its name, which ends with the half that is meant. */
function ofHalf(half: Half | undefined, joint: OwnerMention | undefined, about: (half: Half) => Trouble | undefined): Built {
  if (joint !== undefined && joint.owner.kind !== 'joint') return undefined;
  const meant = half ?? (/(?:mortise|slot)$/.test(joint?.say ?? '') ? 'mortise' : /tenon$/.test(joint?.say ?? '') ? 'tenon' : 'joint');
  const found = about(meant);
  return found === undefined ? undefined : trouble(found, joint === undefined ? {} : { joint: joint.owner.id });
}
