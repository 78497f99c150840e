import type { Face } from '../../core/faces/face.ts';
import type { Length } from '../../core/length/length.ts';

/** What a part's drawing is made from; all of it exact. */
export interface PartShape {
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
  /** Shoulder to shoulder, when the part has tenons at both ends. */
  readonly shoulders?: Length;
  /** Tenon, across the width: its own width, and how far it starts from the reference edge. */
  readonly tenonWidth?: Length;
  readonly tenonFromEdge?: Length;
  /** Layers glued face to face; 1 when solid. */
  readonly layers: number;
  /** Boards glued edge to edge; 1 when solid. */
  readonly boards: number;
  /** The faces of one upright copy where it stands; absent of all others. */
  readonly faces?: PartFaces;
}

/** The letters of a copy as it is drawn, its top end to the left: the face towards the eye, what lies beyond its long edges, and the one behind. */
export interface PartFaces {
  readonly drawn: Face;
  readonly upper: Face;
  readonly lower: Face;
  readonly behind: Face;
  /** Of these four, the ones that show, and the ones that take mortises. */
  readonly outer: readonly Face[];
  readonly mortised: readonly Face[];
  /** Which long edge bears the edge mark. */
  readonly edge: 'upper' | 'lower';
}

export interface Box { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
export interface Point { readonly x: number; readonly y: number }
export interface Line { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }

/** A dimension: from one extension line to the other, the figure beside its middle. */
export interface Dimension {
  readonly key: string;
  readonly length: Length;
  readonly from: Point;
  readonly to: Point;
  /** Where the extension lines start, on the part. */
  readonly foot: { readonly from: Point; readonly to: Point };
  readonly figure: Point;
}

export interface PartLayout {
  /** Drawing units per nanometre, the same in both views. */
  readonly scale: number;
  /** Length across, width up: the reference face is towards the eye, the reference edge up. */
  readonly front: Box;
  /** Seen from the right end: the thickness across. */
  readonly end: Box;
  /** The front view is shortened in the middle, where nothing happens, by a break line. */
  readonly broken: boolean;
  readonly tenons: readonly Box[];
  readonly glueLines: readonly Line[];
  readonly dimensions: readonly Dimension[];
}

const SLENDER = 6;
const GAP = 34;

/** Lays a part out in two views within `width` × `height` drawing units, figures of height `letter`. With a size picked out, only that one
 * needs room for its figure. Third-angle projection. */
export function layPart(shape: PartShape, width: number, height: number, letter: number, picked = ''): PartLayout {
  const figure = (key: string): number => (picked === '' || picked === key ? 1 : 0);
  const margin = {
    left: letter * (1.4 + 2.8 * figure('width')), right: 8,
    top: shape.shoulders === undefined ? 8 : letter * (0.9 + 1.2 * figure('shoulders')), bottom: letter * (0.9 + 1.2 * Math.max(figure('length'), figure('thickness'))),
  };
  const room = { width: width - margin.left - margin.right - GAP, height: height - margin.top - margin.bottom };
  const endRoom = Math.max(letter * 3.6 * figure('thickness'), Math.min(room.width * 0.25, shape.thickness * (room.height / shape.width)));
  const frontRoom = room.width - endRoom;
  const whole = Math.min(frontRoom / shape.length, room.height / shape.width, endRoom / shape.thickness);
  const broken = shape.length / shape.width > SLENDER && whole * shape.width < room.height * 0.6;
  const scale = broken ? Math.min((room.height * 0.75) / shape.width, endRoom / shape.thickness) : whole;
  const frontWidth = broken ? Math.min(frontRoom, shape.length * scale) : shape.length * scale;
  const high = shape.width * scale;
  const across = shape.thickness * scale;
  const endWidth = Math.max(across, letter * 3.6 * figure('thickness'));
  const left = margin.left + (frontRoom + endRoom - frontWidth - endWidth) / 2;
  const front: Box = { x: left, y: margin.top + (room.height - high) / 2, width: frontWidth, height: high };
  const end: Box = { x: left + frontWidth + GAP + (endWidth - across) / 2, y: front.y, width: across, height: high };
  return {
    scale, front, end, broken,
    tenons: layTenons(shape, front, scale),
    glueLines: [...layerLines(shape.layers, end), ...boardLines(shape.boards, front, end)],
    dimensions: layDimensions(shape, front, end, scale, letter),
  };
}

function tenonLength(shape: PartShape, scale: number): number {
  return shape.shoulders === undefined ? 0 : ((shape.length - shape.shoulders) / 2) * scale;
}

function layTenons(shape: PartShape, front: Box, scale: number): Box[] {
  const long = tenonLength(shape, scale);
  if (long <= 0) return [];
  const high = (shape.tenonWidth ?? shape.width) * scale;
  const y = front.y + (shape.tenonFromEdge ?? Math.max(0, (shape.width - (shape.tenonWidth ?? shape.width)) / 2)) * scale;
  return [{ x: front.x, y, width: long, height: high }, { x: front.x + front.width - long, y, width: long, height: high }];
}

function layerLines(layers: number, end: Box): Line[] {
  return Array.from({ length: Math.max(0, layers - 1) }, (_, index) => {
    const x = end.x + (end.width * (index + 1)) / layers;
    return { x1: x, y1: end.y, x2: x, y2: end.y + end.height };
  });
}

function boardLines(boards: number, front: Box, end: Box): Line[] {
  return Array.from({ length: Math.max(0, boards - 1) }, (_, index) => (front.height * (index + 1)) / boards).flatMap((down) => [
    { x1: front.x, y1: front.y + down, x2: front.x + front.width, y2: front.y + down },
    { x1: end.x, y1: end.y + down, x2: end.x + end.width, y2: end.y + down },
  ]);
}

function layDimensions(shape: PartShape, front: Box, end: Box, scale: number, letter: number): Dimension[] {
  const below = front.y + front.height;
  const off = letter * 0.55;
  const level = (key: string, length: Length, x1: number, x2: number, y: number, footY: number): Dimension => ({
    key, length, from: { x: x1, y }, to: { x: x2, y }, foot: { from: { x: x1, y: footY }, to: { x: x2, y: footY } },
    figure: { x: (x1 + x2) / 2, y: y < footY ? y - letter * 0.85 : y + letter * 0.85 },
  });
  const dimensions = [
    level('length', shape.length, front.x, front.x + front.width, below + off, below),
    level('thickness', shape.thickness, end.x, end.x + end.width, below + off, below),
  ];
  const x = front.x - letter * 0.8;
  dimensions.push({
    key: 'width', length: shape.width, from: { x, y: front.y }, to: { x, y: below },
    foot: { from: { x: front.x, y: front.y }, to: { x: front.x, y: below } }, figure: { x: x - letter * 1.75, y: front.y + front.height / 2 },
  });
  if (shape.shoulders !== undefined) {
    const long = tenonLength(shape, scale);
    dimensions.push(level('shoulders', shape.shoulders, front.x + long, front.x + front.width - long, front.y - off, front.y));
  }
  return dimensions;
}
