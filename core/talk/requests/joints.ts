import type { Bench } from '../../bench/bench.ts';
import type { Request } from '../../bench/request.ts';
import { lastPart, stepNow } from '../context.ts';
import { jointsAtHand } from '../jointsAtHand.ts';
import type { OwnerMention } from '../names.ts';
import { rowsOf } from '../pattern.ts';
import type { Built } from '../slot.ts';
import { NO_PIECE } from '../subjects.ts';

const row = rowsOf('joints');

/** Where the joints go, and how they are cut. */
export const JOINT_ROWS = [
  row('where the mortises go', ['where do [the] mortises go', 'where are [the] mortises', 'where are [the] marks', 'where do i mark [it|this|the mortises|the tenons]', 'how do i lay out the mortises', 'where do [the] (mortises|joints) go (on|in) [the] {part?}', '(what|where) [are the] marks (on|of) [the] {part?}', 'how do i mark [out] [the] {part?}'],
    ({ part }) => ({ kind: 'marks', ...part })),
  row('which faces are mortised', ['which (face|faces) of [the] {parts} (get|gets|have) [the|a] (mortise|mortises)', 'which (face|faces) (get|gets) [the|a] (mortise|mortises)'], ({ parts }, bench) => mortisedAtHand(bench, parts)),
  row('where a joint goes', ['where (is|are) [the] {joint}', 'where does [the] {joint} go', 'where do i (mark|chop|cut) [the] {joint}'], ({ joint: named }) => ofJoint(named, (joint) => ({ kind: 'marks of joint', joint, side: sideOf(named) }))),
  row('where a mortise starts', ['where does [the] {joint} (start|begin)', 'how far (down|from the (top|end)) is [the] {joint}', 'how far is [the] {joint} from the (top|end) [of [the] {parts}]'], ({ joint: named }) => ofJoint(named, (joint) => (isHaunch(named) ? socketOf(joint) : { kind: 'marks of joint', joint, side: sideOf(named), only: 'start' }))),
  row('how deep a haunch is', ['how deep (is|should) [the] {joint} [be]', '(what|how big) is [the] {joint}'], ({ joint: named }) => (isHaunch(named) ? socketOf(named.owner.id) : undefined)),
  row('where a mortise ends', ['where does [the] {joint} (end|stop)'], ({ joint: named }) => ofJoint(named, (joint) => ({ kind: 'marks of joint', joint, side: sideOf(named), only: 'end' }))),
  row('how deep to chop', ['how deep', 'how deep is (it|this [mortise])', 'how deep should (it|this) be', 'how deep (do|should|must) i (chop|go|cut) [it]', 'how much (deeper|more) do i (chop|go)', 'how much deeper', '(am i|is it) deep enough'], () => ({ kind: 'how deep' })),
  row('how deep to chop the mortise of a joint', ['how deep (do|should|must) i (chop|cut|make) [the] {joint}'], ({ joint: named }) => ofJoint(named, (joint) => (sideOf(named) === 'mortise' ? { kind: 'how deep', joint } : undefined))),
  row('which chisel', ['(which|what [size]) chisel', '(which|what [size]|how wide a) chisel do i (need|use|take)', 'how wide is the chisel'], () => ({ kind: 'which chisel' })),
  row('which chisel for a joint', ['(which|what [size]) chisel [do i (use|need)] for [the] {joint}'], ({ joint: named }) => ofJoint(named, (joint) => ({ kind: 'which chisel', joint }))),
  row('how to chop a mortise', ['how do i (chop|cut) (it|this|that)', 'how do i chop a mortise'], () => ({ kind: 'how to chop' })),
  row('how to chop the mortise of a joint', ['how do i (chop|cut) [the] {joint}'], ({ joint: named }) => ofJoint(named, (joint) => ({ kind: 'how to chop', joint }))),
  row('how long a tenon could be', ['how long (can|could) [the] {joint} be', 'what is the longest {joint}'], ({ joint: named }) => ofJoint(named, (joint) => ({ kind: 'longest tenon', joint }))),
  row('where a shoulder is', ['where (is|are|do i (mark|cut|saw)) the (shoulder|shoulders)'], (_, bench) => shoulderAtHand(bench)),
  row('whether tenons meet', ['do [the] (tenons|mortises) (meet|hit) [inside]', 'will the tenons (meet|hit)', 'do i (need|have) to miter the tenons'], (_, bench) => tenonAtHand(bench, (joint) => ({ kind: 'longest tenon', joint }))),
  row('how strong a joint is', ['how strong is [the] {joint}', 'will [the] {joint} hold'], ({ joint: named }) => ofJoint(named, (joint) => ({ kind: 'how strong', joint }))),
  row('a joint by the book', ['what should [the] {joint} be', 'is [the] {joint} right', 'check [the] {joint}'], ({ joint: named }) => ofJoint(named, (joint) => ({ kind: 'joint by the book', joint }))),
  row('how to bevel a foot', ['how do i bevel (it|the foot|the feet)'], () => ({ kind: 'foot bevel' })),
  row('how many shavings a foot takes', ['how many (shavings|strokes) (on|for) (it|the foot|the feet) at {gap}', 'how many (shavings|strokes) of {gap} (on|for) (it|the foot|the feet)'], ({ gap }) => ({ kind: 'foot bevel', shaving: gap })),
  row('a bevel by its two setbacks', ['[a] (bevel|chamfer) [of] {setback} by {otherSetback}', 'how wide is [a] (bevel|chamfer) of {setback} by {otherSetback}'], ({ setback, otherSetback }) => ({ kind: 'bevel', setback, otherSetback })),
  row('a chamfer', ['[a] (bevel|chamfer) of {setback}', '[a] {setback} (bevel|chamfer)', 'how wide is [a] (bevel|chamfer) of {setback}'], ({ setback }) => ({ kind: 'bevel', setback })),
  row('how many shavings a chamfer takes', ['how many (shavings|strokes) for [a] (bevel|chamfer) of {setback}'], ({ setback }) => ({ kind: 'bevel', setback })),
  row('how to bevel the foot of a part', ['how do i bevel [the] {parts}'], ({ parts: { part } }) => ({ kind: 'foot bevel', part })),
];

function ofJoint({ owner, say }: OwnerMention, build: (joint: string) => Built): Built {
  return owner.kind === 'joint' ? build(owner.id) : { fault: `${say} is no joint` };
}

/** Of the part named, last spoken of, or worked on; else of the one that is mortised. */
function mortisedAtHand(bench: Bench, named: { readonly part: string; readonly copy?: number } | undefined): Built {
  const joints = bench.state.piece?.file.joints.flatMap((joint) => (joint.kind === 'mortise and tenon' ? [joint.mortiseIn] : [])) ?? [];
  const part = named?.part ?? [lastPart(bench)?.owner, stepNow(bench)?.part, ...joints].find((id) => id !== undefined && joints.includes(id));
  if (part === undefined) return { fault: bench.state.piece ? 'this piece has no mortises' : NO_PIECE };
  return { kind: 'marks', part, ...(named?.copy === undefined ? {} : { copy: named.copy }), only: 'faces' };
}

/** From the end of the part that is worked on. */
function shoulderAtHand(bench: Bench): Built {
  return tenonAtHand(bench, (joint) => ({ kind: 'marks of joint', joint, side: 'tenon', only: 'shoulders' }));
}

/** Of the joint at hand; where there are several, it is asked of which. */
function tenonAtHand(bench: Bench, build: (joint: string) => Request): Built {
  const { piece } = bench.state;
  if (!piece) return { fault: NO_PIECE };
  const near = jointsAtHand(bench);
  const joints = piece.file.joints.flatMap((joint) => (joint.kind === 'mortise and tenon' && (near.length === 0 || near.includes(joint.id)) ? [{ say: joint.name, request: build(joint.id) }] : []));
  const [only, other] = joints;
  if (!only) return { fault: 'this piece has no mortise and tenon' };
  return other ? { kind: 'which', choices: joints } : only.request;
}

function isHaunch({ owner, say }: OwnerMention): boolean {
  return owner.kind === 'joint' && say.endsWith(' haunch');
}

function socketOf(joint: string): Request {
  return { kind: 'marks of joint', joint, side: 'mortise', only: 'haunch' };
}

/** A joint goes by its mortise and by its tenon. */
function sideOf({ say }: OwnerMention): 'mortise' | 'tenon' {
  return /(?:mortise|slot)$/.test(say) ? 'mortise' : 'tenon';
}
