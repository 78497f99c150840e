import { add, fractionOf, shareOut, subtract } from '../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';
import { BOOKS, LEFT, type Proportion } from './proportion.ts';

/** What keeps a rail's top edge from twisting where its tenon is cut away below the end of the leg. */
export type HaunchKind = 'square' | 'sloped' | 'horn' | 'none';

export interface HeightsInput {
  readonly railWidth: Length;
  /** Top end of the leg to the top edge of the rail; nothing when they are level. */
  readonly fromTop: Length;
  readonly legLength: Length;
  readonly tenonThickness: Length;
  readonly haunch: HaunchKind;
  /** A single tenon is no wider than this; a wider one is made in two. */
  readonly widestTenon: Length;
}

export interface Heights {
  readonly topShoulder: Length;
  readonly bottomShoulder: Length;
  /** One, or two with a gap; each from the top edge of the rail. */
  readonly tenons: readonly { readonly fromTopEdge: Length; readonly width: Length }[];
  /** Between twin tenons, a haunch as long as the tenon is thick. */
  readonly gap?: Length;
  readonly haunch?: { readonly shape: 'square' | 'sloped'; readonly fromTopEdge: Length; readonly width: Length; readonly length: Length };
  /** Left on the leg's top end until the joint is glued, then sawn off. */
  readonly horn?: Length;
  /** Of leg, above the uppermost mortise; the horn counts. */
  readonly woodAbove: Length;
  readonly woodBelow: Length;
  readonly proportions: readonly Proportion[];
}

/** Where a tenon stands in the width of its rail: shoulders above and below, haunch or horn, and two tenons instead of one when it is wide. */
export function heightsOf(input: HeightsInput): Result<Heights, InputFault> {
  const { railWidth, fromTop, legLength, tenonThickness, haunch, widestTenon } = input;
  const below = subtract(legLength, add(fromTop, railWidth));
  if (below < 0) {
    return failure({ key: 'fromTop', message: telling`A rail ${railWidth} wide that starts ${fromTop} down does not fit on a leg ${legLength} long.` });
  }
  const usual = usualShoulder(railWidth);
  const topShoulder = haunch === 'horn' ? usual : shoulderAtEnd(usual, fromTop, railWidth);
  const bottomShoulder = shoulderAtEnd(usual, below, railWidth);
  const width = subtract(railWidth, add(topShoulder, bottomShoulder));
  if (width < tenonThickness) {
    return failure({ key: 'rail.width', message: telling`A rail ${railWidth} wide leaves a tenon of only ${nanometres(Math.max(0, width))} between its shoulders, less than it is thick. Use a wider rail, or set it further from the end of the leg.` });
  }
  const horn = haunch === 'horn' ? subtract(LEFT.end, nanometres(Math.min(LEFT.end, add(fromTop, topShoulder)))) : ZERO_LENGTH;
  const left = haunchIn(input, topShoulder, usual);
  return success({
    topShoulder, bottomShoulder,
    ...tenonsIn(topShoulder, width, widestTenon),
    ...(left ? { haunch: left } : {}),
    ...(horn > 0 ? { horn } : {}),
    woodAbove: add(fromTop, topShoulder, horn),
    woodBelow: add(below, bottomShoulder),
    proportions: [topProportion(railWidth, topShoulder, fromTop), bottomProportion(bottomShoulder)],
  });
}

/** A quarter of an inch, on narrow rails an eighth of their width. */
function usualShoulder(railWidth: Length): Length {
  return nanometres(Math.min(LEFT.edgeShoulder, fractionOf(railWidth, 1, 8)));
}

/** Near the end of the leg the shoulder grows until an inch of wood is left there, but never over half of the rail. */
function shoulderAtEnd(usual: Length, toEnd: Length, railWidth: Length): Length {
  const wanted = Math.min(subtract(LEFT.end, toEnd), fractionOf(railWidth, 1, 2));
  return nanometres(Math.max(usual, wanted));
}

/** Level with the end of the leg it is open above; lower down it starts under a shoulder of its own. */
function haunchIn({ haunch, fromTop, tenonThickness }: HeightsInput, topShoulder: Length, usual: Length): Heights['haunch'] {
  const fromTopEdge = fromTop === 0 ? ZERO_LENGTH : usual;
  const width = subtract(topShoulder, fromTopEdge);
  if (haunch === 'horn' || haunch === 'none' || topShoulder <= usual) return undefined;
  return { shape: haunch, fromTopEdge, width, length: tenonThickness };
}

function tenonsIn(top: Length, width: Length, widest: Length): Pick<Heights, 'tenons' | 'gap'> {
  if (width <= widest) return { tenons: [{ fromTopEdge: top, width }] };
  const [upper = width, gap = width, lower = width] = shareOut(width, 3);
  return { tenons: [{ fromTopEdge: top, width: upper }, { fromTopEdge: add(top, upper, gap), width: lower }], gap };
}

function topProportion(railWidth: Length, chosen: Length, fromTop: Length): Proportion {
  return {
    of: 'top shoulder',
    published: [
      { source: `${BOOKS.joyce}: a third of the rail for the haunch`, says: fractionOf(railWidth, 1, 3) },
      { source: `${BOOKS.noyes}: half of the rail, where it meets the end`, says: fractionOf(railWidth, 1, 2) },
      { source: `${BOOKS.practice}: an inch of wood above the mortise`, says: nanometres(Math.max(0, subtract(LEFT.end, fromTop))) },
    ],
    chosen,
    because: 'The inch above the mortise keeps it from splitting out; never over half of the rail, and never less than the usual shoulder.',
  };
}

function bottomProportion(chosen: Length): Proportion {
  return {
    of: 'bottom shoulder',
    published: [
      { source: `${BOOKS.joyce}: a bare sixteenth`, says: fractionOf(LEFT.end, 1, 16) },
      { source: `${BOOKS.practice}: a quarter to a half inch`, says: LEFT.edgeShoulder },
    ],
    chosen,
    because: 'A quarter inch hides a bruised end of the mortise, and takes little from the tenon.',
  };
}
