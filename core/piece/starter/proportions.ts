import type { Length } from '../../length/length.ts';
import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../../length/length.ts';
import type { StarterInput } from './fields.ts';

/** The sizes that the starter chooses, worked out from what it was told. */
export interface Proportions {
  readonly layerThickness: Length;
  readonly leg: Length;
  readonly railThickness: Length;
  readonly railWidth: Length;
  readonly topThickness: Length;
  readonly stretcherWidth: Length;
  readonly stretcherHeight: Length;
  readonly chisels: readonly Length[];
  readonly mortise: Length;
  readonly tenonLength: Length;
  readonly setback: Length;
  readonly topShoulder: Length;
  readonly groove: { readonly fromTop: Length; readonly width: Length; readonly depth: Length };
  readonly boards: number;
  readonly buttons: { readonly long: number; readonly short: number };
}

const INCH = NANOMETRES_PER_INCH;
const MILLIMETRE = NANOMETRES_PER_MILLIMETRE;

/** Each with its source beside it; the rest is common practice, no source. */
export function proportionsOf(input: StarterInput): Proportions {
  const metric = input['stock.rail'] % (INCH / 64) !== 0;
  const layerThickness = surfaced(input['stock.layer']);
  // An eighth comes off a lamination when it is trued again, and the leg is left at an even eighth.
  const leg = input.legs === 'solid' ? surfaced(input['stock.leg']) : downTo(input.layers * layerThickness - INCH / 8, metric ? MILLIMETRE : INCH / 8);
  const railThickness = surfaced(input['stock.rail']);
  // A tenth of what it spans, and never so deep that it takes the knees' room.
  const railWidth = downTo(clamp(input['inside.length'] / 10, 3 * INCH, Math.min(6 * INCH, input.height / 4)), step(metric, 4));
  const chisels = metric ? METRIC_CHISELS : INCH_CHISELS;
  const mortise = nearest(chisels, railThickness / 3);
  // A quarter of an inch of shadow on a stout leg, half as much on a slight one.
  const setback = nanometres(leg >= 2.5 * INCH ? INCH / 4 : INCH / 8);
  const topShoulder = nanometres(railWidth >= 3.5 * INCH ? INCH : (3 * INCH) / 4);
  return {
    layerThickness, leg, railThickness, railWidth, chisels, mortise, setback, topShoulder,
    topThickness: surfaced(input['stock.top']),
    stretcherWidth: downTo(Math.max((railWidth * 2) / 3, 2 * INCH), step(metric, 4)),
    stretcherHeight: downTo(input.height / 6, step(metric, 4)),
    tenonLength: tenonLength(leg, setback, railThickness, mortise, metric),
    groove: grooveIn(railThickness, topShoulder, downTo((railThickness - mortise) / 2, metric ? MILLIMETRE : INCH / 16)),
    ...countsOf(input, leg),
  };
}

/** Boards of about six inches cup little; buttons a foot apart hold a top down. */
function countsOf(input: StarterInput, leg: Length): Pick<Proportions, 'boards' | 'buttons'> {
  const width = input['inside.width'] + 2 * leg + 2 * input['overhang.sides'];
  const along = (span: Length): number => Math.max(2, Math.ceil(span / (12 * INCH)));
  return { boards: Math.max(2, Math.ceil(width / (6 * INCH))), buttons: { long: along(input['inside.length']), short: along(input['inside.width']) } };
}

/** As measured they differ a little: the maker puts the true widths in. */
const INCH_CHISELS = [1 / 4, 3 / 8, 1 / 2, 3 / 4, 1].map((width) => nanometres(width * INCH));
const METRIC_CHISELS = [6, 8, 10, 12, 16, 20, 25].map((width) => nanometres(width * MILLIMETRE));

/**
 * What a rough board planes to: 3/16 in less up to 6/4, 1/4 in less above. Standard thickness of surfaced hardwood lumber (National Hardwood
 * Lumber Association grading rules, S2S: 13/16 in from 4/4, 1 1/16 from 5/4, 1 5/16 from 6/4, 1 3/4 from 8/4).
 */
export function surfaced(rough: Length): Length {
  const thinner = rough - (rough <= 1.5 * INCH ? (3 * INCH) / 16 : INCH / 4);
  return downTo(thinner, rough % (INCH / 64) === 0 ? INCH / 16 : MILLIMETRE / 2);
}

/**
 * As long as the other rail's mortise allows: an eighth of wood is left between the two, and the mortise is a sixteenth deeper than the tenon (Noyes,
 * Handwork in Wood, 1910: slightly deeper), but no deeper than three quarters of the leg.
 */
function tenonLength(leg: Length, setback: Length, rail: Length, mortise: Length, metric: boolean): Length {
  const otherMortise = setback + (rail + mortise) / 2;
  const depth = Math.min(leg - otherMortise - INCH / 8, (leg * 3) / 4);
  return downTo(depth - INCH / 16, metric ? MILLIMETRE : INCH / 16);
}

/** A groove above the tenon, not past the middle of the rail. */
function grooveIn(rail: Length, topShoulder: Length, behind: Length): Proportions['groove'] {
  const stout = topShoulder >= INCH;
  return {
    fromTop: nanometres(stout ? INCH / 2 : (3 * INCH) / 8),
    width: nanometres(stout ? (3 * INCH) / 8 : INCH / 4),
    depth: nanometres(Math.min(behind, rail >= INCH ? (7 * INCH) / 16 : INCH / 4)),
  };
}

/** A third of the rail, by the nearest chisel (Joyce, The Technique of Furniture Making). */
function nearest(chisels: readonly Length[], wanted: number): Length {
  return chisels.reduce((best, chisel) => (Math.abs(chisel - wanted) < Math.abs(best - wanted) ? chisel : best));
}

function step(metric: boolean, division: number): number {
  return metric ? 5 * MILLIMETRE : INCH / division;
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

function downTo(value: number, step: number): Length {
  return nanometres(Math.floor(value / step) * step);
}
