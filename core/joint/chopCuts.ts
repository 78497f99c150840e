import type { Length } from '../length/length.ts';

/** A mortise that is marked out and waits for the chisel. */
export interface MortiseToChop {
  /** End of the part, along the grain, to the nearer end of the mortise. */
  readonly from: Length;
  readonly length: Length;
  /** As wide as the chisel. */
  readonly width: Length;
  readonly depth: Length;
  /** Of the part, in the direction of the mortise; a mortise that deep goes through, and is chopped from both faces. */
  readonly wood: Length;
  readonly hardness: 'hard' | 'soft';
}

/** Where the chisel goes, and how often. */
export interface ChopCuts {
  readonly startMark: Length;
  readonly endMark: Length;
  readonly through: boolean;
  /** Cuts keep this far inside both marks until the ends are pared. */
  readonly stayOff: Length;
  /** The first cut, halfway between the marks. */
  readonly middle: Length;
  /** From one cut to the next, along the mortise. */
  readonly advance: Length;
  /** Depth at the end of each pass, from the face; the last is the whole depth, or a little over half from each face. */
  readonly flags: readonly Length[];
  /** Cuts from the middle to the far end, in order; then, with the bevel turned, from the middle to the near end. */
  readonly cutsToFarEnd: readonly Length[];
  readonly cutsToNearEnd: readonly Length[];
  /** Passes, counted from 1, after which the edge is stropped; it is stropped before the ends are pared as well. */
  readonly stropAfter: readonly number[];
}
