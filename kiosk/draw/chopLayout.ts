import type { ChopDrawing } from '../../core/joint/chopStages.ts';
import type { Length } from '../../core/length/length.ts';
import type { Box, Line, Point } from './partLayout.ts';

/** A stage of the chopping laid out: the part cut open along the mortise, its face up, the top end to the left. */
export interface ChopLayout {
  /** Drawing units per nanometre. */
  readonly scale: number;
  /** As much of the part as is shown. */
  readonly wood: Box;
  /** Whether the part ends here, or goes on beyond the drawing. */
  readonly ends: boolean;
  /** What is out already. */
  readonly cut: Box | null;
  /** What is taken now. */
  readonly waste: Box | null;
  readonly marks: readonly { readonly line: Line; readonly length: Length; readonly figure: Point }[];
  readonly chisels: readonly ChopChisel[];
  /** The depth of this stage, from the face. */
  readonly depth: { readonly line: Line; readonly length: Length; readonly figure: Point } | null;
  /** How far the cheeks of a slot are sawn; empty when they are not, or it is no slot. */
  readonly sawn: readonly Point[];
  /** Where levering is allowed, over the face. */
  readonly lever: Line | null;
}

export interface ChopChisel {
  /** From the edge round to the handle's end. */
  readonly outline: readonly Point[];
  /** The flag on the blade, when there is one. */
  readonly flag: Box | null;
}

/** How thick a mortise chisel is drawn and how steep its bevel, of its own thickness (about 25 degrees; common practice, no source). */
const THICK = 11;
const BEVEL = 2.1;
const HEAD = 64;
/** Below the wood: the figures of the marks, and what they are from. */
const FOOT = 2.9;

/** Lays a stage out within `width` × `height` drawing units, figures of height `letter`. */
export function layChop(drawing: ChopDrawing, width: number, height: number, letter: number): ChopLayout {
  const { startMark, endMark, wood, flag, chisels } = drawing;
  const above = Math.max(0, ...chisels.map(({ down }) => (flag ?? 0) - down));
  const beyond = (endMark - startMark) * 0.3;
  const from = Math.max(0, startMark - beyond);
  const room = { width: width - letter * 4.8, height: height - HEAD - letter * FOOT };
  const scale = Math.min(room.width / (endMark + beyond - from), room.height / (wood + above));
  const [left, face] = [letter * 0.4 + (room.width - (endMark + beyond - from) * scale) / 2, HEAD + above * scale];
  const x = (at: number): number => left + (at - from) * scale;
  const y = (down: number): number => face + down * scale;
  const box = (a: number, b: number, top: number, bottom: number): Box => ({ x: x(a), y: y(top), width: (b - a) * scale, height: (bottom - top) * scale });
  const bottom = y(wood);
  const right = x(endMark + beyond);
  const deep = drawing.waste?.bottom ?? flag;
  return {
    scale, wood: { x: left, y: face, width: right - left, height: wood * scale }, ends: startMark <= beyond,
    cut: drawing.cut ? box(drawing.cut.from, drawing.cut.to, 0, drawing.cut.down) : null,
    waste: drawing.waste ? box(drawing.waste.from, drawing.waste.to, drawing.waste.top, drawing.waste.bottom) : null,
    sawn: (drawing.slot?.sawn ?? []).map(({ along, down }) => ({ x: x(along), y: y(drawing.face === 'second' ? wood - down : down) })),
    marks: (drawing.slot === undefined ? [startMark, endMark] : [endMark]).map((length) => ({ length, line: { x1: x(length), y1: face - 8, x2: x(length), y2: bottom }, figure: { x: x(length), y: bottom + letter * 1.1 } })),
    chisels: chisels.map(({ at, down, bevel }) => chiselAt(x(at), y(down), bevel === 'towards the start' ? -1 : 1, flag === undefined ? null : flag * scale)),
    depth: deep === undefined ? null : { length: deep, line: { x1: right + letter * 0.8, y1: face, x2: right + letter * 0.8, y2: y(deep) }, figure: { x: right + letter * 2.8, y: (face + y(deep)) / 2 } },
    lever: drawing.lever ? { x1: x(drawing.lever.from), y1: face - 12, x2: x(drawing.lever.to), y2: face - 12 } : null,
  };
}

/** The flat back upright over its place, the bevel on the `side` it looks to; its handle goes out of the drawing above. */
function chiselAt(x: number, y: number, side: -1 | 1, flagged: number | null): ChopChisel {
  const thick = side * THICK;
  return {
    outline: [{ x, y }, { x: x + thick, y: y - THICK * BEVEL }, { x: x + thick, y: 2 }, { x, y: 2 }],
    flag: flagged === null ? null : { x: Math.min(x, x + thick) - 5, y: y - flagged - 5, width: THICK + 10, height: 5 },
  };
}
