import { add, subtract } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { Part } from '../piece/file.ts';

export const SIDES = ['length', 'width', 'thickness'] as const;
export type Side = (typeof SIDES)[number];
export type Over = Readonly<Record<Side, Length>>;

/** Over the rough sizes, by how a part is made: layers slide when they are glued, a panel's boards are trimmed together. */
export interface RoughExtras {
  readonly layer: Over;
  readonly panel: Over;
}

/** What the maker wants of one part in the rough. */
export interface PartRough {
  /** Left on besides what is left on every part. */
  readonly longer?: Length;
  readonly wider?: Length;
  readonly thicker?: Length;
  /** One of its faces is hidden in the finished piece: what shows on one face of the board may lie in it. */
  readonly mayHideDefect?: boolean;
}

/** One of the lengths that a rough size is put together from. */
export interface RoughTerm {
  readonly what: string;
  readonly length: Length;
}

const NOTHING_OVER: Over = { length: ZERO_LENGTH, width: ZERO_LENGTH, thickness: ZERO_LENGTH };
export const NO_EXTRAS: RoughExtras = { layer: NOTHING_OVER, panel: NOTHING_OVER };

/**
 * What a rough size of a part is put together from: the finished size, horns, what the file's rough size has over them, what its kind and the part itself
 * has besides. Adds up to the blank's size exactly; nothing that is not there is listed but the finished size.
 */
export function roughTerms(part: Part, sizes: Sizes, side: Side, extras: RoughExtras, own: PartRough): readonly RoughTerm[] {
  const size = (name: string): Length | undefined => sizeOf(sizes, `${part.id}.${name}`)?.length;
  const finished = size(finishedName(part, side)) ?? ZERO_LENGTH;
  const rough = (side === 'length' ? size('roughLength') : side === 'width' ? size('ripWidth') ?? size('roughWidth') : size('roughThickness')) ?? finished;
  const horns = side === 'length' ? [size('horn') ?? ZERO_LENGTH, size('lowerHorn') ?? ZERO_LENGTH].reduce((sum, horn) => add(sum, horn)) : ZERO_LENGTH;
  const kind = part.made.kind === 'laminated' ? ['as a layer', extras.layer[side]] as const : part.made.kind === 'panel' ? ['as a board of a panel', extras.panel[side]] as const : ['', ZERO_LENGTH] as const;
  const mine = { length: own.longer, width: own.wider, thickness: own.thicker }[side] ?? ZERO_LENGTH;
  const more: RoughTerm[] = [{ what: 'horns', length: horns }, { what: 'allowance', length: subtract(subtract(rough, finished), horns) }, { what: kind[0], length: kind[1] }, { what: 'for this part', length: mine }];
  return [{ what: 'finished', length: finished }, ...more.filter(({ length }) => length !== 0)];
}

export function roughSize(terms: readonly RoughTerm[]): Length {
  return add(...terms.map(({ length }) => length));
}

/** A lamination is sawn by its layers, a panel by its boards. */
function finishedName({ made }: Part, side: Side): string {
  if (side === 'width' && made.kind === 'panel') return 'boardWidth';
  return side === 'thickness' && made.kind === 'laminated' ? 'layerThickness' : side;
}
