import { add } from '../../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../length/length.ts';
import { quarterFor, type Quarter } from './quarters.ts';

/** How a part is made, for what it needs over its finished size. */
export const PART_KINDS = ['solid', 'layer', 'panel board', 'short part'] as const;
export type PartKind = (typeof PART_KINDS)[number];

interface Over {
  readonly length: Length;
  readonly width: Length;
}

/**
 * Over the finished size, in the rough. Common practice, no source: layers get more width, for they slide and are trued after gluing; a panel's boards are
 * trimmed to length together; a short part is planed and sawn from a longer piece, so that it can be held.
 */
const OVER: Readonly<Record<PartKind, Over>> = {
  solid: { length: inches(1, 1), width: inches(1, 4) },
  layer: { length: inches(3, 2), width: inches(3, 8) },
  'panel board': { length: inches(2, 1), width: inches(3, 8) },
  'short part': { length: inches(6, 1), width: inches(1, 4) },
};

export interface RoughSize {
  readonly length: Length;
  readonly width: Length;
  /** The board to buy; undefined when no single board is thick enough, and it must be laminated. */
  readonly quarter?: Quarter;
}

/** From finished to rough: length and width with their allowance, and the thinnest quarter that still has the thickness in it. */
export function roughFor(finished: { readonly length: Length; readonly width: Length; readonly thickness: Length }, kind: PartKind): RoughSize {
  const quarter = quarterFor(finished.thickness);
  return { length: add(finished.length, OVER[kind].length), width: add(finished.width, OVER[kind].width), ...(quarter ? { quarter } : {}) };
}

function inches(numerator: number, denominator: number): Length {
  return nanometres((NANOMETRES_PER_INCH * numerator) / denominator);
}
