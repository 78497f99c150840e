import { failure, success, type Result } from '../result.ts';
import { FACES, oppositeFace, type End, type Face } from './face.ts';

/** What grows on a face: what makes two faces side by side match. */
export const FIGURES = ['straight', 'flat', 'figured'] as const;
export type Figure = (typeof FIGURES)[number];

/** What can be told of a face. The first three are wishes, of which it has one; `plain` takes back all that was told of it. */
export const QUALITIES = ['show', 'hide', 'best', 'face side', 'face edge', 'glue lines', ...FIGURES, 'plain'] as const;
export type Quality = (typeof QUALITIES)[number];
export type Wish = Extract<Quality, 'show' | 'hide' | 'best'>;

/** What was told of one face. */
export interface FaceTold {
  readonly wish?: Wish;
  readonly mark?: 'face side' | 'face edge';
  readonly glueLines?: true;
  readonly figure?: Figure;
}

/** What was told of one copy. */
export interface CopyLikes {
  readonly faces: Readonly<Partial<Record<Face, FaceTold>>>;
  /** Which end is up, come what may. */
  readonly up?: End;
  /** To which end the arches of the figure point. */
  readonly arch?: End;
}

export const NO_LIKES: CopyLikes = { faces: {} };

/** One thing told of some faces. */
export interface Liking {
  readonly faces: readonly Face[];
  readonly as: Quality;
}

export function told(likes: CopyLikes, face: Face): FaceTold {
  return likes.faces[face] ?? {};
}

/** The faces of which that was told, in their order. */
export function facesLiked(likes: CopyLikes, as: Quality): readonly Face[] {
  return FACES.filter((face) => isTold(told(likes, face), as));
}

function isTold({ wish, mark, glueLines, figure }: FaceTold, as: Quality): boolean {
  return as === 'glue lines' ? glueLines === true : wish === as || mark === as || figure === as;
}

/** The likes with one more; there is one face side and one face edge, so a new one takes the mark from the old. */
export function withLiking(likes: CopyLikes, { faces, as }: Liking): CopyLikes {
  const changed = new Map(FACES.map((face) => [face, told(likes, face)]));
  const isMark = as === 'face side' || as === 'face edge';
  if (isMark) for (const face of facesLiked(likes, as)) changed.set(face, omit(told(likes, face), 'mark'));
  for (const face of faces) changed.set(face, withQuality(changed.get(face) ?? {}, as));
  return { ...likes, faces: Object.fromEntries([...changed].filter(([, one]) => Object.keys(one).length > 0)) };
}

function withQuality(before: FaceTold, as: Quality): FaceTold {
  switch (as) {
    case 'show': case 'hide': case 'best': return { ...before, wish: as };
    case 'face side': case 'face edge': return { ...before, mark: as };
    case 'glue lines': return { ...before, glueLines: true };
    case 'straight': case 'flat': case 'figured': return { ...before, figure: as };
    case 'plain': return {};
  }
}

function omit(before: FaceTold, key: keyof FaceTold): FaceTold {
  return Object.fromEntries(Object.entries(before).filter(([name]) => name !== key));
}

/** Why what is told now cannot be meant so; a sentence. `showing` is how many of its sides show: two of a leg, one of a rail. */
export function checkLikings(likes: CopyLikes, likings: readonly Liking[], showing: number): Result<CopyLikes, string> {
  const twice = FACES.find((face) => likings.filter(({ as, faces }) => isWish(as) && faces.includes(face)).length > 1);
  if (twice !== undefined) return failure(`face ${twice} is told twice: it can be shown, or hidden, or be the best, not two of them`);
  const marks = likings.find(({ as, faces }) => (as === 'face side' || as === 'face edge') && faces.length !== 1);
  if (marks) return failure(`there is one ${marks.as}: say which face it is`);
  const after = likings.reduce(withLiking, likes);
  const shown = FACES.filter((face) => ['show', 'best'].includes(told(after, face).wish ?? ''));
  const hidden = facesLiked(after, 'hide');
  if (shown.length > showing) return failure(`only ${showing === 1 ? 'one side shows' : 'two faces, side by side, show'}; faces ${listFaces(shown)} would have to. Say which may be hidden`);
  if (hidden.length > FACES.length - showing) return failure(`faces ${listFaces(hidden)} cannot all be hidden: ${showing === 1 ? 'one side shows' : 'two faces show'} whichever way it stands`);
  const [side, edge] = [facesLiked(after, 'face side')[0], facesLiked(after, 'face edge')[0]];
  if (side !== undefined && edge === oppositeFace(side)) return failure(`face ${edge} lies opposite the face side, ${side}: the face edge is next to it`);
  return success(after);
}

/** What the maker should know although it is written down: both faces of a pair that lie back to back. */
export function warnOf(likes: CopyLikes): string {
  const pair = (as: Quality): readonly Face[] => FACES.filter((face, index) => index < 2 && isTold(told(likes, face), as) && isTold(told(likes, oppositeFace(face)), as));
  const [shown] = FACES.filter((face, index) => index < 2 && [face, oppositeFace(face)].every((one) => ['show', 'best'].includes(told(likes, one).wish ?? '')));
  const [hidden] = pair('hide');
  if (shown !== undefined) return `${shown} and ${oppositeFace(shown)} lie back to back: only one of them can show`;
  return hidden === undefined ? '' : `${hidden} and ${oppositeFace(hidden)} lie back to back: one of them shows in a corner`;
}

function isWish(as: Quality): as is Wish {
  return as === 'show' || as === 'hide' || as === 'best';
}

export function listFaces(faces: readonly Face[]): string {
  return faces.length < 2 ? faces.join('') : `${faces.slice(0, -1).join(', ')} and ${faces.at(-1) ?? ''}`;
}
