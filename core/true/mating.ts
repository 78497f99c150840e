import { subtract } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_MILLIMETRE, type Length } from '../length/length.ts';
import { solveLinearProgram } from './linearProgram.ts';
import type { Surface } from './surface.ts';

/** Two faces laid together, the second one turned over on to the first about its long axis, marked ends together. */
export interface Mating {
  /** Of the first surface's points, in their order. */
  readonly gaps: readonly Length[];
  readonly greatest: { readonly gap: Length; readonly fromEnd: Length; readonly fromLeft: Length };
  /** Where it sees no support: it can be tipped that way by hand. */
  readonly rocks: readonly ('end to end' | 'side to side' | 'corner to corner')[];
}

/** Faces that touch by less than this are taken as touching. */
const TOUCH = nanometres(NANOMETRES_PER_MILLIMETRE / 100);

/** What the widest gap counts beside how low it rests: a board that may tip is held evenly, so that the support is seen. */
const EVENLY = 1e-6;

/**
 * The second board rests where it sinks lowest at its middle without going into the first: the plane over the sum of both heights that is lowest at the middle, by
 * linear programming. What is left open under it are the gaps. Both surfaces are read at the same stations.
 */
export function mate(first: Surface, second: Surface): Mating {
  const sums = first.points.map((point) => {
    const mirrored = second.points.find(({ station, place }) => station === point.station && place === turnedOver(point.place));
    return { ...point, row: [1, point.fromEnd / first.length, point.fromLeft / first.width], sum: (point.height + (mirrored?.height ?? 0)) / NANOMETRES_PER_MILLIMETRE };
  });
  const solved = solveLinearProgram({ minimise: [1, 0.5, 0.5, EVENLY], atLeast: sums.flatMap(({ row, sum }) => [
    { coefficients: [...row, 0], bound: sum },
    { coefficients: [...row.map((value) => -value), 1], bound: -sum },
  ]) });
  if (!solved.ok) throw new Error(`a board always comes to rest (${solved.fault}): its readings must reach on both sides of its middle`);
  const over = sums.map(({ row, sum }) => row.reduce((all, value, index) => all + value * (solved.value[index] ?? 0), 0) - sum);
  const gaps = over.map((gap) => nanometres(Math.max(0, Math.round(gap * NANOMETRES_PER_MILLIMETRE))));
  const widest = gaps.reduce((best, gap, index) => (gap > (gaps[best] ?? 0) ? index : best), 0);
  const at = first.points[widest];
  return {
    gaps,
    greatest: { gap: gaps[widest] ?? nanometres(0), fromEnd: at?.fromEnd ?? nanometres(0), fromLeft: at?.fromLeft ?? nanometres(0) },
    rocks: rocking(first, gaps),
  };
}

function turnedOver(place: 'left' | 'middle' | 'right'): 'left' | 'middle' | 'right' {
  return place === 'left' ? 'right' : place === 'right' ? 'left' : 'middle';
}

/** Support that reaches over less than a third of the length, or of the width, lets it tip; two opposite corners alone let it turn about their diagonal. */
function rocking({ points, length, width }: Surface, gaps: readonly Length[]): Mating['rocks'] {
  const touching = points.filter((_, index) => (gaps[index] ?? 0) <= TOUCH);
  const reach = (positions: readonly Length[]): Length => subtract(nanometres(Math.max(...positions)), nanometres(Math.min(...positions)));
  const endToEnd = reach(touching.map(({ fromEnd }) => fromEnd)) * 3 < length;
  const sideToSide = reach(touching.map(({ fromLeft }) => fromLeft)) * 3 < width;
  if (endToEnd || sideToSide) return [...(endToEnd ? ['end to end' as const] : []), ...(sideToSide ? ['side to side' as const] : [])];
  return onOneDiagonal(touching.map(({ fromEnd, fromLeft }) => [fromEnd / length - 0.5, fromLeft / width - 0.5] as const)) ? ['corner to corner'] : [];
}

/** All on a line through the middle that runs from corner to corner. */
function onOneDiagonal(touching: readonly (readonly [along: number, across: number])[]): boolean {
  return [1, -1].some((way) => touching.every(([along, across]) => Math.abs(along - way * across) < 0.17));
}
