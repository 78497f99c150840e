import type { Bench } from '../bench/bench.ts';
import type { SideMeant } from '../bench/request.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import type { State } from '../journal/state.ts';
import { sizeOf } from '../piece/evaluate.ts';
import type { Part } from '../piece/file.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';
import { nextWanted, sideAsRead, type SideAsRead, type SideToTrue } from '../true/asRead.ts';
import { faceKey, isEdge, isOfBoard, keptWith, turnedTo, type BoardFace, type FaceReading, type TruedFace } from '../true/readings.ts';
import { flatnessLimit, type Purpose } from '../true/tolerance.ts';
import { TOLERANCES } from '../work/figures.ts';
import { currentStep } from '../work/progress.ts';
import type { Step } from '../work/step.ts';
import { craftOf } from './evening.ts';
import { toSay } from './toSay.ts';
import { sizesOf, stepsOf } from './views.ts';

/** How many layers or boards a part is glued up from; none when it is one piece of wood. */
export function boardsIn({ made }: Part): number {
  return made.kind === 'laminated' ? made.layers : made.kind === 'panel' ? made.boards : 0;
}

/** The side that is meant, with what was not said taken from the screen or the step; or the reason why it cannot be told. */
export function sideMeant(bench: Bench, meant: SideMeant): Result<BoardFace, string> {
  const { state } = bench;
  const here = sideHere(bench);
  const part = state.piece?.file.parts.find(({ id }) => id === (meant.part ?? here?.part));
  if (!part) return failure(state.piece ? `Which board? ${toSay('Tell me which part to read.', 'Say its part: read leg two.')}` : 'No piece is on the bench. Load one first.');
  const same = here?.part === part.id && (meant.copy === undefined || meant.copy === (here.copy ?? 1)) ? here : undefined;
  const copy = meant.copy ?? same?.copy;
  if (copy === undefined && part.count > 1) return failure(`Which ${part.name}? ${toSay('Tell me its number.', `Say its number: read ${part.name} two.`)}`);
  if (copy !== undefined && copy > part.count) return failure(`There is no ${part.name} ${sayNumber(copy)}: this piece has ${sayNumber(part.count)}.`);
  const boards = boardsIn(part);
  const board = meant.board ?? (same ? same.board : firstBoard(state, part, copy));
  if (board !== undefined && (board < 1 || board > boards)) return failure(boards === 0 ? `The ${part.name} is one piece of wood.` : `The ${part.name} has ${sayNumber(boards)} ${part.made.kind === 'panel' ? 'boards' : 'layers'}.`);
  const face = meant.face ?? (same && (meant.board === undefined || meant.board === same.board) ? same.face : 'face');
  return success({ part: part.id, ...(copy === undefined || part.count === 1 ? {} : { copy }), ...(board === undefined ? {} : { board }), face });
}

/** What is being asked about, lies on the screen, or is worked on at the step. */
export function sideHere({ state, conversation: { question, screen } }: Bench): BoardFace | undefined {
  if (question?.kind === 'surface reading') return question.of;
  if (screen.name === 'truing' && screen.of) return screen.of;
  const step = currentStep(stepsOf(state), state);
  return step && sideAtStep(state, step);
}

/** The side that a step of truing is about: of what is glued up the first board that is not read through yet. Undefined for other steps. */
export function sideAtStep(state: State, step: Step): BoardFace | undefined {
  const part = state.piece?.file.parts.find(({ id }) => id === step.part);
  if (!part) return undefined;
  const copy = part.count > 1 ? (step.copy ?? 1) : undefined;
  const whole = { part: part.id, ...(copy === undefined ? {} : { copy }) };
  const sides = sidesAt(step, part).flatMap((face): BoardFace[] => faceBoards(step, part).map((board) => ({ ...whole, ...(board === undefined ? {} : { board }), face })));
  return sides.find((of) => isWanting(state, of)) ?? sides[0];
}

function sidesAt({ operation }: Step, { made: { kind } }: Part): readonly TruedFace[] {
  switch (operation) {
    case 'face': return kind === 'laminated' ? ['face', 'other face'] : ['face'];
    case 'edge': return kind === 'panel' ? ['other edge', 'edge'] : ['edge'];
    case 'true again': return ['face', 'edge'];
    case 'thickness': return ['other face'];
    case 'width': return ['other edge'];
    case 'dry check': return kind === 'panel' ? ['other edge', 'edge'] : ['other face', 'face'];
    default: return [];
  }
}

/** Boards by their numbers where the step works on them singly. */
function faceBoards({ operation }: Step, part: Part): readonly (number | undefined)[] {
  const apart = operation === 'face' || operation === 'edge' || operation === 'dry check';
  return apart && boardsIn(part) > 0 ? Array.from({ length: boardsIn(part) }, (_, index) => index + 1) : [undefined];
}

function isWanting(state: State, of: BoardFace): boolean {
  const side = sideToTrue(state, of);
  return side !== undefined && nextWanted(side, of.face, side.taken) !== undefined;
}

/** Of what is still in boards, the first; undefined once it is glued up, and for one piece of wood. */
function firstBoard(state: State, part: Part, copy: number | undefined): number | undefined {
  if (boardsIn(part) === 0) return undefined;
  const glued = [...state.done].some((id) => id.includes(`${part.made.kind === 'panel' ? 'panel' : 'lamination'} glue-up/${part.id}`) && (copy === undefined || part.count === 1 || id.endsWith(`/${copy}`)));
  return glued ? undefined : 1;
}

/** All that is known of a side; undefined when the piece does not have it. In the rough as it lies on the bench: with the allowances still on. */
export function sideToTrue(state: State, of: BoardFace): SideToTrue | undefined {
  const part = state.piece?.file.parts.find(({ id }) => id === of.part);
  const sizes = sizesOf(state);
  if (!part || !sizes) return undefined;
  const size = (key: string): Length | undefined => sizeOf(sizes, `${part.id}.${key}`, of.copy)?.length;
  const whole = boardsIn(part) > 0 && of.board === undefined;
  const length = size('roughLength') ?? size('length') ?? ZERO_LENGTH;
  const width = whole ? size('width') : (size('ripWidth') ?? size('roughWidth') ?? size('width'));
  const thickness = whole ? (size('blankThickness') ?? size('thickness')) : (size('roughThickness') ?? size('thickness'));
  const edge = isEdge(of.face);
  const planned = edge ? undefined : sizeOf(sizes, `${part.id}.${part.made.kind === 'laminated' && !whole ? 'layerThickness' : 'thickness'}`)?.planned;
  const { shaving, stick, rounding: { unit } } = state.settings;
  return {
    size: { length, width: (edge ? thickness : width) ?? ZERO_LENGTH }, face: of.face, ...limitsOf(part, of, length), taken: takenOf(state, of), stick, shaving, unit,
    ...(planned === undefined ? {} : { planned }),
  };
}

/**
 * How true a side must be by what it is for: to be glued, to be seen, or to stand in joints; the last as the check of its step says, which is tighter than a general
 * tolerance. An edge must be square too.
 */
function limitsOf(part: Part, of: BoardFace, length: Length): Pick<SideToTrue, 'limit' | 'squareWithin'> {
  const purpose = purposeOf(part, of);
  const limit = purpose === 'joint' ? { limit: TOLERANCES.flat, source: 'the check of the step: 1/64 in, common practice' } : flatnessLimit(purpose, length);
  return { limit, ...(isEdge(of.face) ? { squareWithin: TOLERANCES.square } : {}) };
}

/** What a side is for. */
function purposeOf({ made: { kind } }: Part, { board, face }: BoardFace): Purpose {
  const edge = isEdge(face);
  if (board !== undefined && (kind === 'laminated' ? !edge : edge)) return 'glue';
  return kind === 'panel' && board === undefined && !edge ? 'show' : 'joint';
}

/** What was held against a side, and calipers of the board; they go with the face. */
export function takenOf(state: State, of: BoardFace): readonly FaceReading[] {
  const { surfaces } = craftOf(state);
  const own = surfaces.get(faceKey(of)) ?? [];
  const kept = keptWith(of, 'thickness');
  return of.face === 'other face' ? [...own, ...(surfaces.get(faceKey(kept)) ?? []).filter(({ what }) => isOfBoard(what))] : own;
}

/** What the readings of a side come to; kept for as long as the state is the same, for screens ask twice a second. */
const found = new WeakMap<State, Map<string, Result<SideAsRead, InputFault> | undefined>>();

export function readingsCome(state: State, of: BoardFace): Result<SideAsRead, InputFault> | undefined {
  const kept = found.get(state) ?? new Map<string, Result<SideAsRead, InputFault> | undefined>();
  found.set(state, kept);
  const key = faceKey(of);
  if (!kept.has(key)) {
    const side = sideToTrue(state, of);
    kept.set(key, side && sideAsRead(side));
  }
  return kept.get(key);
}

/** The two sides that meet at one joint of what is glued up: of a lamination the faces, of a panel the edges. */
export function meetingSides(part: Part, of: BoardFace, board: number): readonly [BoardFace, BoardFace] {
  const [upper, lower]: readonly [TruedFace, TruedFace] = part.made.kind === 'panel' ? ['other edge', 'edge'] : ['other face', 'face'];
  return [{ ...turnedTo(of, upper), board }, { ...turnedTo(of, lower), board: board + 1 }];
}
