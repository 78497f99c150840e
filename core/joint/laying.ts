import type { Length } from '../length/length.ts';
import type { ReadSize, Which } from '../piece/cavity.ts';
import type { Part } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';

/** What a distance is measured from: a number without it is half a mark. */
export interface Reference {
  readonly kind: 'end' | 'face' | 'edge';
  /** As it is said: 'the top end', 'the outer face'. */
  readonly say: string;
}

type MarkingTool = 'marking knife' | 'mortise gauge' | 'marking gauge' | 'depth flag';

/** One line on one part. */
export interface Mark {
  readonly part: string;
  readonly copy?: number;
  /** The joint that it belongs to; absent for a foot bevel or a horn. */
  readonly joint?: string;
  /** Of twin tenons. */
  readonly which?: Which;
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
  | 'mortise start' | 'mortise end' | 'mortise near side' | 'mortise far side' | 'mortise depth' | 'haunch start' | 'haunch depth'
  | 'first shoulder' | 'second shoulder' | 'outer cheek' | 'inner cheek' | 'tenon top' | 'tenon bottom' | 'haunch end' | 'haunch top' | 'mitre' | 'step' | 'short end'
  | 'groove top' | 'groove bottom' | 'groove depth' | 'foot bevel' | 'foot bevel inwards' | 'horn' | 'lower horn';

/** What is laid out: the joints of one part, or of one copy of it. */
export interface Laying {
  readonly piece: LoadedPiece;
  readonly part: Part;
  readonly copy: number | undefined;
  readonly read: ReadSize;
}

type Marking = (kind: MarkKind, say: string, from: Reference, at: Length | undefined, within: Length | undefined, tool: MarkingTool) => readonly Mark[];

/** Turns a list of what differs into whole marks. */
export function marker({ part, copy }: Laying, about: { readonly joint?: string; readonly which?: Which }, on: string): Marking {
  return (kind, say, from, at, within, tool) => at === undefined || within === undefined ? []
    : [{ part: part.id, ...(copy === undefined ? {} : { copy }), ...about, kind, say, on, from, at, within, tool }];
}

/** A size of the part itself, of the copy that is laid out. */
export function ownSize({ part, copy, read }: Laying, key: string): Length | undefined {
  return read(`${part.id}.${key}`, copy);
}
