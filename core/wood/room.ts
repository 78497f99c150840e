import { add, fractionOf, timesWhole } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { Seasons } from './seasons.ts';

/** What is left in hand beyond the reckoned movement, on each side. Common practice, no source. */
export const SPARE = nanometres(NANOMETRES_PER_INCH / 32);
/** What a tongue keeps in its groove in the driest month. Common practice, no source. */
export const HOLD = nanometres(NANOMETRES_PER_INCH / 4);

/** Both ways, at a given distance from the line where the part is held fast. */
export interface RoomBothWays {
  readonly inwards: Length;
  readonly outwards: Length;
}

/** Movement at a fixing that stands `distance` from the line held fast, in a panel `width` wide. */
export function roomAt({ shrinks, swells }: Pick<Seasons, 'shrinks' | 'swells'>, distance: Length, width: Length): RoomBothWays {
  const share = (whole: Length): Length => (width === 0 ? ZERO_LENGTH : fractionOf(whole, distance, width));
  return { inwards: share(shrinks), outwards: share(swells) };
}

/** A slot for a screw or pin, along the movement: its length, and where the shank stands in it, from the end towards the fixed line. */
export interface Slot {
  readonly length: Length;
  readonly shankFromInnerEnd: Length;
}

/** `shank` is the diameter; the slot leaves room both ways and a little in hand. */
export function slotFor({ inwards, outwards }: RoomBothWays, shank: Length): Slot {
  return { length: add(shank, inwards, outwards, timesWhole(SPARE, 2)), shankFromInnerEnd: add(inwards, SPARE, fractionOf(shank, 1, 2)) };
}

/** A button on a rail that runs with the grain: the top carries it away from the rail as it dries and towards it as it swells. */
export interface Button {
  /** Between the button's shoulder and the rail, as it is fitted now. */
  readonly gapNow: Length;
  /** From the shoulder of the button to the end of its tongue. */
  readonly tongue: Length;
  /** Depth of the groove or mortise in the rail. */
  readonly groove: Length;
}

export function buttonFor({ inwards, outwards }: RoomBothWays): Button {
  const gapNow = add(outwards, SPARE);
  const inGrooveNow = add(inwards, HOLD);
  return { gapNow, tongue: add(gapNow, inGrooveNow), groove: add(inGrooveNow, outwards, SPARE) };
}

/** A frame-and-panel groove, of each side, the panel held at its middle. */
export interface PanelGroove {
  /** What is left empty at the bottom of the groove now. */
  readonly gapNow: Length;
  /** How far the panel reaches into the groove now. */
  readonly tongueNow: Length;
  readonly depth: Length;
}

export function panelGrooveFor({ shrinks, swells }: Pick<Seasons, 'shrinks' | 'swells'>): PanelGroove {
  const [half, other] = [fractionOf(shrinks, 1, 2), fractionOf(swells, 1, 2)];
  const gapNow = add(other, SPARE);
  const tongueNow = add(half, HOLD);
  return { gapNow, tongueNow, depth: add(gapNow, tongueNow) };
}

/** A bread-board end, pegged fast in the middle: how the ends of it and the edges of the top stand to each other over the year. */
export interface BreadBoard {
  /** Slot for the outermost peg, at its distance from the middle. */
  readonly slot: Slot;
  /** How far each end of the bread-board end stands proud of the top in the driest month, when they are flush now. */
  readonly proudWhenDry: Length;
  /** How far each edge of the top stands proud of it in the dampest. */
  readonly topProudWhenDamp: Length;
}

export function breadBoardFor(seasons: Pick<Seasons, 'shrinks' | 'swells'>, width: Length, outermostPeg: Length, peg: Length): BreadBoard {
  return {
    slot: slotFor(roomAt(seasons, outermostPeg, width), peg),
    proudWhenDry: fractionOf(seasons.shrinks, 1, 2), topProudWhenDamp: fractionOf(seasons.swells, 1, 2),
  };
}
