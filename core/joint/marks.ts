import { add } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import { hasJoint, type ReadSize } from '../piece/cavity.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { Fixing } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import { marker, ownSize, type Laying, type Mark, type Reference } from './laying.ts';
import { mortiseMarks } from './mortiseMarks.ts';
import { tenonMarks } from './tenonMarks.ts';

export type { Mark, MarkKind } from './laying.ts';

/**
 * Every mark of the joints on a part, each from its reference, in the order in which they are laid out. Of one copy, only the joints that it
 * has where it stands: `place` when the maker has said where, else the place that the file gives it; all that it may have with null, while nothing is
 * settled. Empty when there is no such part.
 */
export function marksFor(piece: LoadedPiece, sizes: Sizes, partId: string, copy?: number, place?: string | null): readonly Mark[] {
  const part = piece.file.parts.find(({ id }) => id === partId);
  if (part === undefined) return [];
  const read: ReadSize = (name, one) => sizeOf(sizes, name, one)?.length;
  const laying: Laying = { piece, part, copy, read };
  return [
    ...hornMarks(laying),
    ...piece.file.joints.flatMap((joint) => {
      if (joint.kind === 'fixing') return joint.to === partId ? grooveMarks(laying, joint) : [];
      if (joint.mortiseIn === partId) return hasJoint(joint, part, copy, place) ? mortiseMarks(laying, joint) : [];
      return joint.tenonOn === partId ? tenonMarks(laying, joint) : [];
    }),
    ...bevelMarks(laying),
  ];
}

/** Where the finished ends will be, while more is left on them. */
function hornMarks(laying: Laying): readonly Mark[] {
  const mark = marker(laying, {}, 'all four sides');
  const [length, horn, lower] = ['length', 'horn', 'lowerHorn'].map((key) => ownSize(laying, key));
  return [
    ...mark('horn', 'finished top end', { kind: 'end', say: 'the rough top end' }, horn, plus(length, horn), 'marking knife'),
    ...mark('lower horn', 'finished lower end', { kind: 'end', say: 'the rough lower end' }, lower, plus(length, lower), 'marking knife'),
  ];
}

function grooveMarks(laying: Laying, fixing: Fixing): readonly Mark[] {
  const size = (key: string): Length | undefined => laying.read(`${fixing.id}.${key}`);
  const [from, width] = [size('grooveFromTop'), size('grooveWidth')];
  const edge: Reference = { kind: 'edge', say: `the ${laying.part.referenceEdge ?? 'face edge'}` };
  const mark = marker(laying, { joint: fixing.id }, 'the inside face');
  return [
    ...mark('groove top', 'top of the groove', edge, from, ownSize(laying, 'width'), 'marking gauge'),
    ...mark('groove bottom', 'bottom of the groove', edge, plus(from, width), ownSize(laying, 'width'), 'marking gauge'),
    ...mark('groove depth', 'depth of the groove', { kind: 'face', say: 'the inside face' }, size('grooveDepth'), ownSize(laying, 'thickness'), 'depth flag'),
  ];
}

/** As far in on the end as up the sides, where the file does not say otherwise. */
function bevelMarks(laying: Laying): readonly Mark[] {
  const [up, inwards] = [ownSize(laying, 'footBevel'), ownSize(laying, 'footBevelInwards')];
  return [
    ...marker(laying, {}, 'all four sides')('foot bevel', 'foot bevel', { kind: 'end', say: 'the bottom end' }, up, ownSize(laying, 'length'), 'marking gauge'),
    ...marker(laying, {}, 'the bottom end')('foot bevel inwards', 'foot bevel on the end', { kind: 'face', say: 'each side' }, inwards, ownSize(laying, 'width'), 'marking gauge'),
  ];
}

function plus(one: Length | undefined, other: Length | undefined): Length | undefined {
  return one === undefined || other === undefined ? undefined : add(one, other);
}
