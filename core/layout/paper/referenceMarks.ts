import type { Length } from '../../length/length.ts';
import { spot, type Item, type Spot } from './sheet.ts';

type Point = readonly [right: number, down: number];

/** The trade's face mark as it is pencilled, a loop whose tail runs on to the edge: cubic curves in a box of 24 by 24. */
const LOOP: readonly (readonly [Point, Point, Point, Point])[] = [
  [[3, 21], [9, 17], [13, 11], [13, 7]], [[13, 7], [13, 3.5], [11.4, 2.5], [10, 2.5]], [[10, 2.5], [7.8, 2.5], [6.6, 5], [6.6, 8]], [[6.6, 8], [6.6, 13], [11, 18], [20, 21]],
];
const BOX = 24;
const STEPS = 6;

/** Stands with its middle there, so high. */
export function faceMark({ x, y }: Spot, height: Length): readonly Item[] {
  const points = LOOP.flatMap((curve) => Array.from({ length: STEPS + 1 }, (_, step) => onCurve(curve, step / STEPS)));
  const place = ([right, down]: Point): Spot => spot(x + Math.round(((right - BOX / 2) * height) / BOX), y + Math.round(((down - BOX / 2) * height) / BOX));
  return [{ kind: 'stroke', look: 'mark', of: 'face mark', points: points.map(place) }];
}

function onCurve([a, b, c, d]: (typeof LOOP)[number], t: number): Point {
  const at = (axis: 0 | 1): number => a[axis] * (1 - t) ** 3 + 3 * b[axis] * t * (1 - t) ** 2 + 3 * c[axis] * t ** 2 * (1 - t) + d[axis] * t ** 3;
  return [at(0), at(1)];
}

/** A V with its point on the edge. */
export function edgeMark({ x, y }: Spot, height: Length): readonly Item[] {
  const half = Math.round(height / 2);
  return [{ kind: 'stroke', look: 'mark', of: 'edge mark', points: [spot(x - half, y + height), spot(x, y), spot(x + half, y + height)] }];
}
