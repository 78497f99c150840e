import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { JointRequest, Request } from '../bench/request.ts';
import { chiselOf } from '../joint/ofPiece.ts';
import { SAME_WIDTH } from '../joint/ownedChisel.ts';
import { mateOf } from '../joint/mates.ts';
import type { State } from '../journal/state.ts';
import { absolute } from '../length/arithmetic.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import { currentStep } from '../work/progress.ts';
import { respondToBevel, tellFootBevel } from './bevels.ts';
import { tellChopping, tellLongest, tellStrength } from './jointAdvice.ts';
import { tellChopStage } from './chopStage.ts';
import { tellByTheBook } from './jointByTheBook.ts';
import type { Jointing } from './jointing.ts';
import { tellJointMarks, tellMortisedFaces, tellPartMarks } from './jointMarks.ts';
import { tellLayoutFace } from './layoutFaces.ts';
import { noPiece, refuse, tell } from './plain.ts';
import { sayList, sentence, spoken, written } from './saying.ts';
import { sizesOf, stepsOf } from './views.ts';

/** Questions about joints: their marks, the chisel, the chopping, how long and how strong. Nothing is written down. */
export function respondToJoint(bench: Bench, request: JointRequest): Response {
  const { state } = bench;
  // Any arris will do: it needs no piece.
  if (request.kind === 'bevel') return respondToBevel(state, request);
  const sizes = sizesOf(state);
  if (!state.piece || !sizes) return noPiece();
  return inTheGuide(bench, request, answer(bench, { state, piece: state.piece, sizes }, request));
}

/** What is asked while a stage of the chopping is on the screen leaves it there: the answer is said, and stands below. */
function inTheGuide({ conversation: { screen } }: Bench, request: JointRequest, response: Response): Response {
  if (screen.name !== 'chopping' || request.kind === 'chop stage' || request.kind === 'layout face' || response.reply.question) return response;
  return { ...response, reply: { ...response.reply, screen, note: response.reply.note ?? response.reply.say } };
}

function answer(bench: Bench, jointing: Jointing, request: Exclude<JointRequest, { kind: 'bevel' }>): Response {
  switch (request.kind) {
    case 'marks':
      return marks(jointing, request);
    case 'marks of joint':
      return withJoint(jointing, request.joint, () => request, (joint) => tellJointMarks(jointing, joint, request.side, request.only));
    case 'layout face':
      return tellLayoutFace(bench, jointing, request);
    case 'how deep':
      return withJoint(jointing, request.joint ?? guided(bench), (joint) => ({ kind: 'how deep', joint }), (joint) => tellJointMarks(jointing, joint, 'mortise', 'depth'));
    case 'which chisel':
      return withJoint(jointing, request.joint ?? guided(bench), (joint) => ({ kind: 'which chisel', joint }), (joint) => tellChisel(jointing, joint));
    case 'how to chop':
      return withJoint(jointing, request.joint ?? guided(bench), (joint) => ({ kind: 'how to chop', joint }), (joint) => tellChopping(jointing, joint));
    case 'longest tenon':
      return withJoint(jointing, request.joint, () => request, (joint) => tellLongest(jointing, joint));
    case 'how strong':
      return withJoint(jointing, request.joint, () => request, (joint) => tellStrength(jointing, joint));
    case 'joint by the book':
      return withJoint(jointing, request.joint, () => request, (joint) => tellByTheBook(jointing, joint));
    case 'chop stage':
      return withJoint(jointing, request.joint ?? chopped(bench), (joint) => ({ kind: 'chop stage', to: request.to, joint }), (joint) => tellChopStage(bench, jointing, joint, request.to));
    case 'foot bevel':
      return tellFootBevel(jointing, request.part, request.shaving);
    default:
      return assertNever(request);
  }
}

/** The mortise whose chopping is on the screen. */
function guided({ conversation: { screen } }: Bench): string | undefined {
  return screen.name === 'chopping' ? screen.joint : undefined;
}

/** The mortise of the step at hand, else the one that was left last. */
function chopped(bench: Bench): string | undefined {
  const { state, conversation: { chopping } } = bench;
  const step = currentStep(stepsOf(state), state);
  return guided(bench) ?? (step?.operation === 'chop mortises' ? step.joint : chopping?.joint);
}

function stepNow(state: State): { readonly part?: string; readonly copy?: number; readonly joint?: string } | undefined {
  return currentStep(stepsOf(state), state);
}

/** The part named, else the one of the current step, else the only one that has mortises. */
function marks(jointing: Jointing, { part, copy, only: told }: Extract<JointRequest, { kind: 'marks' }>): Response {
  if (part !== undefined && told === 'faces') return tellMortisedFaces(jointing, part, copy);
  if (part !== undefined) return tellPartMarks(jointing, part, copy);
  const step = stepNow(jointing.state);
  const mortised = [...new Set(tenonJoints(jointing).map(({ mortiseIn }) => mortiseIn))];
  if (step?.part !== undefined && tenonJoints(jointing).some(({ mortiseIn, tenonOn }) => mortiseIn === step.part || tenonOn === step.part)) return tellPartMarks(jointing, step.part, step.copy);
  const [only, ...more] = mortised;
  if (only === undefined) return refuse('This piece has no mortises.');
  if (more.length === 0) return tellPartMarks(jointing, only, undefined);
  const choices = mortised.map((id) => ({ say: jointing.piece.file.parts.find((one) => one.id === id)?.name ?? id, request: { kind: 'marks', part: id } as const }));
  return tell({ say: `Which part: ${sayList(choices.map(({ say }) => say), 'or')}?`, question: { kind: 'which', choices } });
}

function tenonJoints({ piece }: Jointing): readonly MortiseAndTenon[] {
  return piece.file.joints.filter((joint) => joint.kind === 'mortise and tenon');
}

/** The joint named, else the one of the current step, else the only one; else the question which. */
function withJoint(jointing: Jointing, named: string | undefined, ask: (joint: string) => Request, then: (joint: MortiseAndTenon) => Response): Response {
  const joints = tenonJoints(jointing);
  const wanted = named ?? stepNow(jointing.state)?.joint;
  const [only, ...more] = joints;
  const joint = joints.find(({ id }) => id === wanted) ?? (named === undefined && more.length === 0 ? only : undefined);
  if (joint) return then(joint);
  if (only === undefined) return refuse('This piece has no mortise and tenon.');
  if (named !== undefined) return refuse('That is no mortise and tenon.');
  const choices = joints.map((one) => ({ say: `${mateOf(jointing.piece.file, one)} mortise`, request: ask(one.id) }));
  return tell({ say: `Which mortise: ${sayList(choices.map(({ say }) => say), 'or')}?`, question: { kind: 'which', choices } });
}

/** The chisel that the maker owns for it, as measured. */
function tellChisel({ state, piece, sizes }: Jointing, joint: MortiseAndTenon): Response {
  const { width, chisel, off } = chiselOf(piece, sizes, joint);
  const name = `${mateOf(piece.file, joint)} mortise`;
  const answers = [{ label: 'mortise width', length: width }, ...(chisel === undefined ? [] : [{ label: 'chisel', length: chisel }])];
  const screen = { name: 'reckoning', result: { question: `chisel for the ${name}`, answers } } as const;
  if (chisel === undefined) return tell({ say: `The ${name} is ${spoken(state, width)} wide. The piece file names no chisels; write yours down as measured.`, screen, lengths: [width] });
  if (absolute(off) > SAME_WIDTH) {
    return tell({ say: `No chisel of yours is ${spoken(state, width)} wide for the ${name}. The nearest is ${spoken(state, chisel)}: make mortise and tenon to that.`, note: `nearest: ${written(state, chisel)}`, screen, signal: 'wrong', lengths: [width, chisel] });
  }
  return tell({ say: sentence(`for the ${name}, the chisel that measures ${spoken(state, chisel)}; set the mortise gauge to it`), screen, lengths: [chisel] });
}
