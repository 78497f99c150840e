import type { Bench } from '../bench/bench.ts';
import type { Response } from '../bench/reply.ts';
import type { JointRequest } from '../bench/request.ts';
import type { Screen } from '../bench/screen.ts';
import type { FaceView } from '../layout/paper/faceView.ts';
import { facesOf, type Laid } from '../layout/paper/faces.ts';
import { sayNumber, sayOrdinal } from '../length/say.ts';
import type { Part } from '../piece/file.ts';
import { marksFor, type Mark } from '../joint/marks.ts';
import { currentStep } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import type { Jointing } from './jointing.ts';
import { tellAll } from './inTurn.ts';
import { marksTold } from './jointMarks.ts';
import { copyAtStep } from './legMaps.ts';
import { refuse } from './plain.ts';
import { sentence } from './saying.ts';
import { toSay } from './toSay.ts';
import { stepsOf } from './views.ts';
import { wrongHand } from './wrongHand.ts';

type LayoutFaceRequest = Extract<JointRequest, { kind: 'layout face' }>;
type LayoutScreen = Extract<Screen, { name: 'layout' }>;

/** A part as it is laid out, or one copy of it. */
interface About { readonly part: string; readonly copy?: number }

/** One face of a part with its marks, drawn, and said from its references; nothing is written down. */
export function tellLayoutFace(bench: Bench, jointing: Jointing, request: LayoutFaceRequest): Response {
  const about = aboutOf(bench, jointing, request);
  if (typeof about === 'string') return refuse(about);
  const part = jointing.piece.file.parts.find(({ id }) => id === about.part);
  if (!part) return refuse('This piece has no such part.');
  const laid = laidIn(jointing);
  const views = facesOf(laid, about.part, about.copy);
  if (!views.ok) return refuse(views.fault);
  const shown = shownOn(bench, about);
  const number = faceNumber(views.value, { shown, first: atHand(jointing, about, views.value) }, request.to);
  if (typeof number === 'string') return refuse(number);
  const view = views.value[number - 1];
  return view === undefined ? refuse(`The ${part.name} has no such face.`) : tellFace(jointing, part, about, { view, number, of: views.value.length });
}

/** What is drawn and said stands on this. */
export function laidIn({ state: { places, turns }, piece, sizes }: Jointing): Laid {
  return { piece, sizes, places, turns };
}

function tellFace(jointing: Jointing, part: Part, { copy }: About, { view, number, of }: { readonly view: FaceView; readonly number: number; readonly of: number }): Response {
  const hand = wrongHand(jointing.state, part.id, copy);
  const marks = marksIn(view);
  const head = `${copy === undefined || part.count === 1 ? part.name : `${part.name} ${sayNumber(copy)}`}, ${view.name}${of > 1 ? `, ${sayOrdinal(number)} of ${sayNumber(of)} faces` : ''}`;
  const edge = view.gaugeFrom === 'top' ? view.topIs : view.bottomIs ?? view.topIs;
  const lies = /^(?:rough )?top end$/.test(view.leftIs) ? sentence(`${view.leftIs} to the left, ${edge} ${view.gaugeFrom === 'top' ? 'above' : 'below'}`) : '';
  return tellAll({
    say: [hand, sentence(head), lies].filter(Boolean).join(' '),
    ...(hand === '' ? {} : { note: hand, signal: 'wrong' as const }),
    screen: { name: 'layout', part: part.id, face: number, ...(copy === undefined ? {} : { copy }) },
  }, 'to mark', marksTold(jointing, part.id, marks));
}

/** Each mark of a face once, its depths with it. */
function marksIn({ lines, depths }: FaceView): readonly Mark[] {
  return [...new Set([...lines.map(({ mark }) => mark), ...depths])];
}

/** The copy on the screen, or the part named, or what the step lays out; a sentence when it is none of them. */
function aboutOf(bench: Bench, jointing: Jointing, { part, copy, to }: LayoutFaceRequest): About | string {
  const { screen } = bench.conversation;
  if (part !== undefined && to === 'next copy') return screen.name === 'layout' && screen.part === part ? nextCopy(jointing, screen) : { part, copy: 1 };
  if (part !== undefined) return { part, ...(copy === undefined ? {} : { copy }) };
  const { state } = jointing;
  if (screen.name === 'layout') return to === 'next copy' ? nextCopy(jointing, screen) : { part: screen.part, ...(screen.copy === undefined ? {} : { copy: screen.copy }) };
  const step = currentStep(stepsOf(state), state);
  const here = step?.part;
  if (step !== undefined && here !== undefined && marksFor(jointing.piece, jointing.sizes, here).length > 0) return { part: here, ...ownCopy(jointing, step, here) };
  const mortised = [...new Set(jointing.piece.file.joints.flatMap((joint) => (joint.kind === 'mortise and tenon' ? [joint.mortiseIn] : [])))];
  const [only, ...more] = mortised;
  return only !== undefined && more.length === 0 ? { part: only } : toSay('Say whose layout you want to see.', 'Say whose layout: for one, the layout of leg two.');
}

/** At a step for all copies the first that stands its own way, for nobody lays out a leg in general. */
function ownCopy({ state, piece }: Jointing, step: Step, part: string): { readonly copy?: number } {
  const count = piece.file.parts.find(({ id }) => id === part)?.count ?? 1;
  const copy = copyAtStep(state, step) ?? Array.from({ length: count }, (_, index) => index + 1).find((one) => state.places.has(`${part}/${one}`));
  return copy === undefined ? {} : { copy };
}

/** After the last comes the first again. */
function nextCopy({ piece }: Jointing, { part, copy = 0 }: LayoutScreen): About {
  const count = piece.file.parts.find(({ id }) => id === part)?.count ?? 1;
  return { part, copy: (copy % count) + 1 };
}

/** The face that lies open, when this is the copy on the screen. */
function shownOn({ conversation: { screen } }: Bench, { part, copy }: About): number | undefined {
  return screen.name === 'layout' && screen.part === part && screen.copy === copy ? screen.face : undefined;
}

/** At a step that lays out or cuts a joint of this part, the face that bears it; else the first. */
function atHand({ state }: Jointing, { part }: About, views: readonly FaceView[]): number {
  const step = currentStep(stepsOf(state), state);
  const found = step?.part === part && step.joint !== undefined ? views.findIndex(({ lines }) => lines.some(({ mark }) => mark.joint === step.joint)) : -1;
  return Math.max(0, found) + 1;
}

function faceNumber(views: readonly FaceView[], { shown, first }: { readonly shown: number | undefined; readonly first: number }, to: LayoutFaceRequest['to']): number | string {
  switch (to) {
    case undefined: case 'next copy': return first;
    case 'next': return shown === undefined ? first : (shown % views.length) + 1;
    case 'back': return shown === undefined || shown <= 1 ? views.length : shown - 1;
    default: {
      const found = views.findIndex(({ face }) => face === to);
      if (found >= 0) return found + 1;
      const lettered = views.flatMap(({ face }) => face ?? []);
      return lettered.length === 0 ? 'Which way it faces is not settled yet, so its faces have no letters.' : `Nothing is marked on face ${to}; there is on ${lettered.join(' and ')}.`;
    }
  }
}
