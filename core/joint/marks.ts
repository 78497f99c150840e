import { add, fractionOf, subtract } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { Fixing, MortiseAndTenon, Part } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { hasJoint, mateOf } from './mates.ts';

/** What a distance is measured from: a number without it is half a mark. */
export interface Reference {
  readonly kind: 'end' | 'face' | 'edge';
  /** As it is said: 'the top end', 'the outer face'. */
  readonly say: string;
}

export type MarkingTool = 'marking knife' | 'mortise gauge' | 'marking gauge' | 'depth flag';

/** One line on one part. */
export interface Mark {
  readonly part: string;
  readonly copy?: number;
  /** The joint that it belongs to; absent for a foot bevel. */
  readonly joint?: string;
  readonly kind: MarkKind;
  /** As it is said: 'start of the mortise'. */
  readonly say: string;
  /** Where the line is drawn: 'the face towards the long rail'. */
  readonly on: string;
  readonly from: Reference;
  readonly at: Length;
  /** The part's own size in that direction, which no mark goes beyond. */
  readonly within: Length;
  readonly tool: MarkingTool;
}

export type MarkKind =
  | 'mortise start' | 'mortise end' | 'mortise near side' | 'mortise far side' | 'mortise depth'
  | 'first shoulder' | 'second shoulder' | 'outer cheek' | 'inner cheek' | 'tenon top' | 'tenon bottom'
  | 'groove top' | 'groove bottom' | 'groove depth' | 'foot bevel';

interface Laying {
  readonly piece: LoadedPiece;
  readonly sizes: Sizes;
  readonly part: Part;
  readonly copy: number | undefined;
}

/**
 * Every mark of the joints on a part, each from its reference, in the order in which they are laid out. Of one copy, only the joints that it
 * has where it stands: `place` when the maker has said where, else the place that the file gives it; all that it may have with null, while nothing is
 * settled. Empty when there is no such part.
 */
export function marksFor(piece: LoadedPiece, sizes: Sizes, partId: string, copy?: number, place?: string | null): readonly Mark[] {
  const part = piece.file.parts.find(({ id }) => id === partId);
  if (part === undefined) return [];
  const laying: Laying = { piece, sizes, part, copy };
  return [
    ...piece.file.joints.flatMap((joint) => {
      if (joint.kind === 'fixing') return joint.to === partId ? grooveMarks(laying, joint) : [];
      if (joint.mortiseIn === partId) return hasJoint(joint, part, copy, place) ? mortiseMarks(laying, joint) : [];
      return joint.tenonOn === partId ? tenonMarks(laying, joint) : [];
    }),
    ...bevelMarks(laying),
  ];
}

/** Turns a list of what differs into whole marks. */
function marker({ part, copy }: Laying, joint: string | undefined, on: string): (kind: MarkKind, say: string, from: Reference, at: Length | undefined, within: Length | undefined, tool: MarkingTool) => readonly Mark[] {
  return (kind, say, from, at, within, tool) => at === undefined || within === undefined ? []
    : [{ part: part.id, ...(copy === undefined ? {} : { copy }), ...(joint === undefined ? {} : { joint }), kind, say, on, from, at, within, tool }];
}

function mortiseMarks(laying: Laying, joint: MortiseAndTenon): readonly Mark[] {
  const { into, across, length } = hostSizes(laying, joint);
  const { from, to, near, far, depth } = mortisePlace(laying, joint);
  const face: Reference = { kind: 'face', say: 'the outer face' };
  const mark = marker(laying, joint.id, `the face towards the ${mateOf(laying.piece.file, joint)}`);
  const end: Reference = { kind: 'end', say: 'the top end' };
  return [
    ...mark('mortise start', 'start of the mortise', end, from, length, 'marking knife'),
    ...mark('mortise end', 'end of the mortise', end, to, length, 'marking knife'),
    ...mark('mortise near side', 'near side of the mortise', face, near, across, 'mortise gauge'),
    ...mark('mortise far side', 'far side of the mortise', face, far, across, 'mortise gauge'),
    ...mark('mortise depth', 'depth of the mortise', { kind: 'face', say: 'the face that is chopped' }, depth, into, 'depth flag'),
  ];
}

interface MortisePlace {
  readonly from: Length | undefined;
  readonly to: Length | undefined;
  readonly near: Length;
  readonly far: Length | undefined;
  readonly depth: Length | undefined;
}

/** Along the leg from its top end, across it from the outer face; undefined where the piece does not say. */
function mortisePlace(laying: Laying, joint: MortiseAndTenon): MortisePlace {
  const size = (key: string): Length | undefined => lengthOf(laying, `${joint.id}.${key}`);
  const near = add(size('setback') ?? ZERO_LENGTH, outerShoulderOf(laying, joint));
  const from = size('fromTop');
  return { from, to: plus(from, size('mortiseLength')), near, far: plus(near, size('mortiseWidth')), depth: size('mortiseDepth') };
}

function plus(one: Length | undefined, other: Length | undefined): Length | undefined {
  return one === undefined || other === undefined ? undefined : add(one, other);
}

function hostSizes(laying: Laying, joint: MortiseAndTenon): { readonly into: Length | undefined; readonly across: Length | undefined; readonly length: Length | undefined } {
  const own = (key: string): Length | undefined => lengthOf(laying, `${joint.mortiseIn}.${key}`, laying.copy);
  const into = joint.mortiseInto ?? 'width';
  return { into: own(into), across: own(into === 'width' ? 'thickness' : 'width'), length: own('length') };
}

/** Where the file does not say, the tenon stands in the middle. */
function outerShoulderOf(laying: Laying, joint: MortiseAndTenon): Length {
  return lengthOf(laying, `${joint.id}.outerShoulder`) ?? middle(lengthOf(laying, `${joint.tenonOn}.thickness`), lengthOf(laying, `${joint.id}.tenonThickness`));
}

function middle(whole: Length | undefined, taken: Length | undefined): Length {
  return fractionOf(subtract(whole ?? ZERO_LENGTH, taken ?? ZERO_LENGTH), 1, 2);
}

function tenonMarks(laying: Laying, joint: MortiseAndTenon): readonly Mark[] {
  const { part, copy } = laying;
  const own = (key: string): Length | undefined => lengthOf(laying, `${part.id}.${key}`, copy);
  const of = (key: string): Length => lengthOf(laying, `${joint.id}.${key}`) ?? ZERO_LENGTH;
  const [length, width, thickness] = [own('length'), own('width'), own('thickness')];
  const end: Reference = { kind: 'end', say: 'one end' };
  const edge: Reference = { kind: 'edge', say: `the ${part.referenceEdge ?? 'face edge'}` };
  const face: Reference = { kind: 'face', say: `the ${part.referenceFace ?? 'face side'}` };
  const second = own('shoulders') === undefined ? subtract(length ?? ZERO_LENGTH, of('tenonLength')) : add(of('tenonLength'), own('shoulders') ?? ZERO_LENGTH);
  const outer = outerShoulderOf(laying, joint);
  const top = lengthOf(laying, `${joint.id}.topShoulder`) ?? middle(width, of('tenonWidth'));
  const around = marker(laying, joint.id, 'all four sides');
  const ends = marker(laying, joint.id, 'both ends, and back to the shoulders');
  return [
    ...around('first shoulder', 'first shoulder', end, of('tenonLength'), length, 'marking knife'),
    ...around('second shoulder', 'second shoulder', end, second, length, 'marking knife'),
    ...ends('outer cheek', 'outer cheek of the tenon', face, outer, thickness, 'mortise gauge'),
    ...ends('inner cheek', 'inner cheek of the tenon', face, add(outer, of('tenonThickness')), thickness, 'mortise gauge'),
    ...ends('tenon top', 'top of the tenon', edge, top, width, 'marking gauge'),
    ...ends('tenon bottom', 'bottom of the tenon', edge, add(top, of('tenonWidth')), width, 'marking gauge'),
  ];
}

function grooveMarks(laying: Laying, fixing: Fixing): readonly Mark[] {
  const size = (key: string): Length | undefined => lengthOf(laying, `${fixing.id}.${key}`);
  const [from, width] = [size('grooveFromTop'), size('grooveWidth')];
  const edge: Reference = { kind: 'edge', say: `the ${laying.part.referenceEdge ?? 'face edge'}` };
  const own = (key: string): Length | undefined => lengthOf(laying, `${laying.part.id}.${key}`, laying.copy);
  const mark = marker(laying, fixing.id, 'the inside face');
  return [
    ...mark('groove top', 'top of the groove', edge, from, own('width'), 'marking gauge'),
    ...mark('groove bottom', 'bottom of the groove', edge, plus(from, width), own('width'), 'marking gauge'),
    ...mark('groove depth', 'depth of the groove', { kind: 'face', say: 'the inside face' }, size('grooveDepth'), own('thickness'), 'depth flag'),
  ];
}

function bevelMarks(laying: Laying): readonly Mark[] {
  const own = (key: string): Length | undefined => lengthOf(laying, `${laying.part.id}.${key}`, laying.copy);
  return marker(laying, undefined, 'all four sides')('foot bevel', 'foot bevel', { kind: 'end', say: 'the bottom end' }, own('footBevel'), own('length'), 'marking gauge');
}

function lengthOf({ sizes }: Laying, name: string, copy?: number): Length | undefined {
  return sizeOf(sizes, name, copy)?.length;
}
