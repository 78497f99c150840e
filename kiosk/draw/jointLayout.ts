import { nanometres } from '../../core/length/length.ts';
import type { Length } from '../../core/length/length.ts';
import type { Box, Dimension, Point } from './partLayout.ts';

/** What the drawing of a mortise and tenon is made from. The mortised part stands upright, its top end up; the outer face is left. */
export interface JointShape {
  readonly railWidth: Length;
  readonly railThickness: Length;
  /** The mortised part: across the face that the mortise opens in, and the size that it goes into. */
  readonly legAcross: Length;
  readonly legInto: Length;
  readonly tenonLength: Length;
  readonly tenonWidth: Length;
  readonly tenonThickness: Length;
  /** From the rail's top edge to the tenon, and from the rail's outer face to the tenon. */
  readonly topShoulder: Length;
  readonly outerShoulder: Length;
  readonly mortiseLength: Length;
  readonly mortiseWidth: Length;
  readonly mortiseDepth: Length;
  /** From the outer face of the mortised part to the rail's. */
  readonly setback: Length;
  readonly fromTop: Length;
  /** From one twin to the other, down the rail or across it; nothing for a single tenon. */
  readonly pitchDown: Length;
  readonly pitchAcross: Length;
  readonly gap: Length;
  /** At a bridle the mortise runs out of that end of its part. */
  readonly open?: 'top' | 'bottom';
  /** Above the tenon; absent when it has none. */
  readonly haunch?: { readonly width: Length; readonly length: Length; readonly sloped: boolean };
}

export interface JointLayout {
  readonly scale: number;
  readonly outlines: readonly Box[];
  /** What is cut away: the mortise, seen from its face and in section. */
  readonly waste: readonly Box[];
  /** Where a slot runs out of its part: no line closes it there. */
  readonly openings: readonly { readonly from: Point; readonly to: Point }[];
  /** Where the rail lies against the mortised part; thin. */
  readonly shadow: Box | null;
  /** A sloped haunch. */
  readonly slopes: readonly { readonly from: Point; readonly to: Point }[];
  readonly breaks: readonly { readonly box: Box; readonly at: number; readonly lies: 'upright' | 'across' }[];
  readonly dimensions: readonly Dimension[];
}

const MORTISE_SIZES = ['mortiseLength', 'mortiseWidth', 'mortiseDepth', 'setback', 'fromTop'];
const GAP = 46;
/** Above this many mortise lengths, the part over the mortise is broken. */
const LONG_ABOVE = 1.5;

/** Lays out the half of the joint that the picked size belongs to: the rail's end with its tenon, or the mortised part. */
export function layJoint(shape: JointShape, picked: string, width: number, height: number, letter: number): JointLayout {
  return MORTISE_SIZES.includes(picked) ? layMortise(shape, width, height, letter) : layTenon(shape, width, height, letter);
}

function layTenon(shape: JointShape, width: number, height: number, letter: number): JointLayout {
  const stub = shape.railWidth * 0.6;
  const room = { width: width - letter * 5 - GAP, height: height - letter * 4.4 };
  const scale = Math.min(room.width / (stub + shape.tenonLength + shape.railThickness), room.height / shape.railWidth);
  const [x, y] = [8, letter * 2.2 + (room.height - shape.railWidth * scale) / 2];
  const body: Box = { x, y, width: stub * scale, height: shape.railWidth * scale };
  const tenon: Box = { x: x + body.width, y: y + shape.topShoulder * scale, width: shape.tenonLength * scale, height: shape.tenonWidth * scale };
  const end: Box = { x: tenon.x + tenon.width + letter * 3.6 + GAP * 0.5, y, width: shape.railThickness * scale, height: body.height };
  const face: Box = { x: end.x + shape.outerShoulder * scale, y: tenon.y, width: shape.tenonThickness * scale, height: tenon.height };
  const beside = tenon.x + tenon.width + letter * 0.7;
  const bottomShoulder = nanometres(shape.railWidth - shape.topShoulder - shape.pitchDown - shape.tenonWidth);
  const [twins, faces] = [twin(shape, tenon, scale, 'side'), twin(shape, face, scale, 'end')];
  const low = y + body.height - bottomShoulder * scale;
  const { haunch } = shape;
  return {
    scale, outlines: [...twins, body, end, ...faces, ...(haunch && !haunch.sloped ? [haunchOver(haunch, tenon, scale)] : [])], waste: [], openings: [], shadow: null,
    slopes: haunch?.sloped === true ? [{ from: { x: tenon.x, y: tenon.y - haunch.width * scale }, to: { x: tenon.x + haunch.length * scale, y: tenon.y } }] : [],
    breaks: [{ box: body, at: x + 8, lies: 'upright' }],
    dimensions: [
      level('tenonLength', shape.tenonLength, tenon.x, tenon.x + tenon.width, tenon.y + tenon.height, y + body.height + letter * 0.5, letter),
      upright('tenonWidth', shape.tenonWidth, tenon.y, tenon.y + tenon.height, tenon.x + tenon.width, beside, letter),
      upright('topShoulder', shape.topShoulder, y, tenon.y, tenon.x, beside, letter),
      upright('bottomShoulder', bottomShoulder, low, y + body.height, tenon.x, beside, letter),
      ...gapIn(shape, tenon, face, { beside, below: y + body.height + letter * 0.5, letter }),
      ...(haunch ? [
        level('haunchLength', haunch.length, tenon.x, tenon.x + haunch.length * scale, tenon.y, y - letter * 0.5, letter),
        upright('haunchWidth', haunch.width, tenon.y - haunch.width * scale, tenon.y, tenon.x, beside, letter),
      ] : []),
      level('tenonThickness', shape.tenonThickness, face.x, face.x + face.width, face.y + face.height, y + body.height + letter * 0.5, letter),
      level('outerShoulder', shape.outerShoulder, end.x, face.x, y, y - letter * 0.5, letter),
    ],
  };
}

function layMortise(shape: JointShape, width: number, height: number, letter: number): JointLayout {
  const long = shape.fromTop > shape.mortiseLength * LONG_ABOVE;
  const above = long ? shape.mortiseLength * 0.9 : shape.fromTop;
  const tall = above + shape.pitchDown + shape.mortiseLength * (shape.open === 'bottom' ? 1 : 1.5);
  const room = { width: width - letter * 3.6 - GAP - 14, height: height - letter * 2.2 - 14 };
  const scale = Math.min(room.width / (shape.legAcross + shape.legInto), room.height / tall);
  const [x, y] = [letter * 3.6, letter * 2.2];
  const front: Box = { x, y, width: shape.legAcross * scale, height: tall * scale };
  const section: Box = { x: x + front.width + GAP, y, width: shape.legInto * scale, height: front.height };
  const left = shape.setback + shape.outerShoulder;
  const mortise: Box = { x: x + left * scale, y: y + above * scale, width: shape.mortiseWidth * scale, height: shape.mortiseLength * scale };
  const deep: Box = { x: section.x, y: mortise.y, width: shape.mortiseDepth * scale, height: mortise.height };
  const rail: Box = { x: x + shape.setback * scale, y: mortise.y - Math.min(above, shape.topShoulder) * scale, width: shape.railThickness * scale, height: (shape.topShoulder + shape.pitchDown + shape.tenonWidth) * scale };
  const beside = x - letter * 0.7;
  const top = y - letter * 0.5;
  return {
    scale, outlines: [front, section], shadow: rail, openings: shape.open === undefined ? [] : [mortise, deep].map((box) => openEnd(box, shape.open === 'top' ? box.y : box.y + box.height)),
    waste: [...twin(shape, mortise, scale, 'end'), ...twin(shape, deep, scale, 'side'), ...(shape.haunch && !shape.haunch.sloped ? socketOver(shape.haunch, mortise, deep, y, scale) : [])],
    slopes: shape.haunch?.sloped === true ? [{ from: { x: deep.x, y: Math.max(y, deep.y - shape.haunch.width * scale) }, to: { x: deep.x + shape.haunch.length * scale, y: deep.y } }] : [],
    breaks: [front, section].flatMap((box) => [...(shape.open === 'bottom' ? [] : [{ box, at: y + box.height - 8, lies: 'across' as const }]), ...(long ? [{ box, at: y + (above * scale) / 2, lies: 'across' as const }] : [])]),
    dimensions: [
      upright('fromTop', shape.fromTop, y, mortise.y, x, beside, letter),
      upright('mortiseLength', shape.mortiseLength, mortise.y, mortise.y + mortise.height, mortise.x, beside, letter),
      level('setback', shape.setback, x, rail.x, y, top, letter),
      level('mortiseWidth', shape.mortiseWidth, mortise.x, mortise.x + mortise.width, mortise.y, top, letter),
      level('mortiseDepth', shape.mortiseDepth, deep.x, deep.x + deep.width, deep.y, top, letter),
    ],
  };
}

/** From side to side, within the lines of the sides. */
function openEnd({ x, width }: Box, y: number): { readonly from: Point; readonly to: Point } {
  return { from: { x: x + 1.2, y }, to: { x: x + width - 1.2, y } };
}

/** The same once more where there are twins, seen from the side of the rail or from its end. */
function twin({ pitchDown, pitchAcross }: JointShape, box: Box, scale: number, seen: 'side' | 'end'): readonly Box[] {
  const across = seen === 'end' ? pitchAcross : 0;
  return pitchDown > 0 || across > 0 ? [box, { ...box, x: box.x + across * scale, y: box.y + pitchDown * scale }] : [box];
}

function haunchOver({ width, length }: NonNullable<JointShape['haunch']>, tenon: Box, scale: number): Box {
  return { x: tenon.x, y: tenon.y - width * scale, width: length * scale, height: width * scale };
}

/** Up to the end of the part, and no further. */
function socketOver({ width, length }: NonNullable<JointShape['haunch']>, mortise: Box, deep: Box, end: number, scale: number): readonly Box[] {
  const top = Math.max(end, mortise.y - width * scale);
  return [{ ...mortise, y: top, height: mortise.y - top }, { ...deep, y: top, width: length * scale, height: mortise.y - top }];
}

function gapIn({ gap, pitchDown, pitchAcross, tenonWidth, tenonThickness }: JointShape, tenon: Box, face: Box, { beside, below, letter }: { readonly beside: number; readonly below: number; readonly letter: number }): readonly Dimension[] {
  const scale = tenon.height / tenonWidth;
  if (pitchDown > 0) return [upright('gap', gap, tenon.y + tenon.height, tenon.y + pitchDown * scale, tenon.x + tenon.width, beside, letter)];
  const from = face.x + tenonThickness * scale;
  return pitchAcross > 0 ? [level('gap', gap, from, from + gap * scale, face.y + face.height, below, letter)] : [];
}

/** A dimension lying at height `y`, its extension lines from `footY`; the figure on the far side. */
function level(key: string, length: Length, x1: number, x2: number, footY: number, y: number, letter: number): Dimension {
  const at = (x: number, height: number): Point => ({ x, y: height });
  return { key, length, from: at(x1, y), to: at(x2, y), foot: { from: at(x1, footY), to: at(x2, footY) }, figure: { x: (x1 + x2) / 2, y: y < footY ? y - letter : y + letter } };
}

/** A dimension standing at `x`, its extension lines from `footX`; the figure on the far side. */
function upright(key: string, length: Length, y1: number, y2: number, footX: number, x: number, letter: number): Dimension {
  const at = (across: number, y: number): Point => ({ x: across, y });
  return { key, length, from: at(x, y1), to: at(x, y2), foot: { from: at(footX, y1), to: at(footX, y2) }, figure: { x: x < footX ? x - letter * 1.5 : x + letter * 1.7, y: (y1 + y2) / 2 } };
}
