import { divideHalfAway, fractionOf, subtract, timesWhole } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling, type Telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';

/** An arris to be bevelled: how far the bevel runs back on each of the two faces, which meet at a right angle. */
export interface BevelInput {
  /** Up the side of a foot; on the wide face of an edge. */
  readonly setback: Length;
  /** On the end of a foot; on the other face of an edge. */
  readonly otherSetback: Length;
  /** One shaving of the plane, for the count. */
  readonly shaving: Length;
  readonly across: 'end grain' | 'long grain';
  /** The section that the bevel runs round, when it runs round an end. */
  readonly section?: { readonly width: Length; readonly thickness: Length };
}

export interface Bevel {
  /** Between the bevel and the face that `setback` lies on. 45 for equal setbacks. */
  readonly angleDegrees: number;
  /** Across the finished bevel, to the nearest nanometre. */
  readonly faceWidth: Length;
  /** From the arris square down to the bevel, to the nearest nanometre: what the plane has to take off. */
  readonly depth: Length;
  /** Shavings from the arris to the lines, when each is as thick as it says and all lie as the bevel does. */
  readonly shavings: number;
  /** Where the lines go, each from its reference. */
  readonly lines: readonly { readonly on: string; readonly from: string; readonly at: Length }[];
  /** On end grain: how far to plane from one corner before coming in from the other. */
  readonly stops: readonly { readonly side: 'width' | 'thickness'; readonly at: Length }[];
  /** What is left flat of the end, when the bevel runs round it. */
  readonly flat?: { readonly width: Length; readonly thickness: Length };
  readonly warnings: readonly Telling[];
}

/** A fine shaving of a block plane, for the count (two to six thousandths are usual; common practice, no source). */
export const USUAL_SHAVING = nanometres((NANOMETRES_PER_INCH * 4) / 1000);

/** Common practice, no source: a foot bevel between these does not split out when the piece is dragged, and is hardly seen. */
const FOOT: readonly [least: Length, most: Length] = [nanometres(NANOMETRES_PER_INCH / 4), nanometres((NANOMETRES_PER_INCH * 3) / 8)];

/** Plane geometry of a right-angled arris: tan(angle) = other / setback, width = √(setback² + other²), depth = setback · other / width. */
export function bevelOf(input: BevelInput): Result<Bevel, InputFault> {
  const fault = faultOf(input);
  if (fault) return failure(fault);
  const { setback, otherSetback, shaving, across, section } = input;
  const hypotenuse = Math.hypot(setback, otherSetback);
  return success({
    angleDegrees: (Math.atan2(otherSetback, setback) * 180) / Math.PI,
    faceWidth: nanometres(Math.round(hypotenuse)),
    depth: nanometres(Math.round((setback * (otherSetback / hypotenuse)))),
    shavings: shavingsFor(setback, otherSetback, shaving),
    lines: linesOf(input),
    stops: across === 'long grain' || !section ? [] : [
      { side: 'width', at: fractionOf(section.width, 1, 2) }, { side: 'thickness', at: fractionOf(section.thickness, 1, 2) },
    ],
    ...(section ? { flat: flatOf(section, otherSetback) } : {}),
    warnings: warningsOf(input),
  });
}

function faultOf({ setback, otherSetback, shaving, section }: BevelInput): InputFault | undefined {
  if (setback <= 0) return { key: 'setback', message: 'A bevel runs back on both faces: the setback must be more than nothing.' };
  if (otherSetback <= 0) return { key: 'otherSetback', message: 'A bevel runs back on both faces: the other setback must be more than nothing.' };
  if (shaving <= 0) return { key: 'shaving', message: 'A shaving has some thickness: two to six thousandths of an inch are usual.' };
  if (!section) return undefined;
  const least = Math.min(section.width, section.thickness);
  if (timesWhole(otherSetback, 2) < least) return undefined;
  return { key: 'otherSetback', message: telling`Bevels of ${otherSetback} from both sides leave nothing of an end ${nanometres(least)} across. Set it back less than half of that.` };
}

/** The least whole number with number × shaving ≥ depth, exactly: number² · shaving² · (a² + b²) ≥ a² · b². */
function shavingsFor(setback: Length, other: Length, shaving: Length): number {
  const [a, b, s] = [BigInt(setback), BigInt(other), BigInt(shaving)];
  const enough = (count: bigint): boolean => count * count * s * s * (a * a + b * b) >= a * a * b * b;
  // From an estimate that is at most a few off.
  let count = BigInt(Math.max(1, Math.floor((setback * (other / Math.hypot(setback, other))) / shaving) - 2));
  while (enough(count) && count > 1n) count -= 1n;
  while (!enough(count)) count += 1n;
  return Number(count);
}

function linesOf({ setback, otherSetback, across, section }: BevelInput): Bevel['lines'] {
  if (!section) return [{ on: 'one face', from: 'the arris', at: setback }, { on: 'the other face', from: 'the arris', at: otherSetback }];
  const end = across === 'end grain' ? 'the end' : 'the edge';
  return [{ on: 'all four sides', from: end, at: setback }, { on: end, from: 'each of the four arrises', at: otherSetback }];
}

function flatOf({ width, thickness }: NonNullable<BevelInput['section']>, setback: Length): NonNullable<Bevel['flat']> {
  return { width: subtract(width, timesWhole(setback, 2)), thickness: subtract(thickness, timesWhole(setback, 2)) };
}

function warningsOf({ setback, across, section }: BevelInput): readonly Telling[] {
  if (across === 'long grain' || !section) return [];
  const [least, most] = FOOT;
  return setback < least || setback > most ? [telling`A foot bevel is usually from ${least} to ${most} up the side (common practice, no source); this one is ${setback}.`] : [];
}

/** The setback that gives a bevel of that width at 45 degrees, to the nearest nanometre: width / √2. */
export function setbackForFace(faceWidth: Length): Length {
  // √2 to 18 figures, as whole numbers.
  return nanometres(Number(divideHalfAway(BigInt(faceWidth) * 1_000_000_000_000_000_000n, 1_414_213_562_373_095_049n)));
}
