import { add, timesWhole } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { MortiseAndTenon, PieceFile } from '../piece/file.ts';
import type { Rectangle } from './diagonals.ts';

/** Which of the frames that posts and rails make; 'frame' is the whole one seen from above. */
export type FrameName = 'frame' | 'end frame' | 'front frame';

/** A frame measured over the outsides of its posts, and between them. */
export interface Frame {
  readonly outside: Rectangle;
  readonly inside: Rectangle;
}

/** What the rails that go one way make of a frame. */
interface Span { readonly inside: Length; readonly outside: Length }

/**
 * A frame of the piece as its sizes stand now: posts are the part with four copies or more that rails are mortised into; those into its width run along
 * the front, those into its thickness along the ends. Undefined where the piece has no such posts, or rails one way only.
 */
export function frameOf(file: PieceFile, sizes: Sizes, name: FrameName): Frame | undefined {
  const joints = file.joints.filter((joint) => joint.kind === 'mortise and tenon');
  const post = file.parts.find(({ id, count }) => count >= 4 && joints.some(({ mortiseIn }) => mortiseIn === id));
  if (post === undefined) return undefined;
  const own = joints.filter(({ mortiseIn }) => mortiseIn === post.id);
  const front = spanOf(own.filter(({ mortiseInto = 'width' }) => mortiseInto === 'width'), sizes, sizeOf(sizes, `${post.id}.width`)?.length);
  const ends = spanOf(own.filter(({ mortiseInto }) => mortiseInto === 'thickness'), sizes, sizeOf(sizes, `${post.id}.thickness`)?.length);
  const height = sizeOf(sizes, `${post.id}.length`)?.length;
  switch (name) {
    case 'frame': return front && ends && between(front, ends);
    case 'front frame': return front && height !== undefined ? between(front, { inside: height, outside: height }) : undefined;
    case 'end frame': return ends && height !== undefined ? between(ends, { inside: height, outside: height }) : undefined;
  }
}

function between(along: Span, across: Span): Frame {
  return { outside: { along: along.outside, across: across.outside }, inside: { along: along.inside, across: across.inside } };
}

/** By the first of the rails, shoulder to shoulder: the others have to agree with it. */
function spanOf([joint]: readonly MortiseAndTenon[], sizes: Sizes, post: Length | undefined): Span | undefined {
  const inside = joint && sizeOf(sizes, `${joint.tenonOn}.shoulders`)?.length;
  return inside === undefined || post === undefined ? undefined : { inside, outside: add(inside, timesWhole(post, 2)) };
}
