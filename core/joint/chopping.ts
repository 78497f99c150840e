import { add, fractionOf, subtract, timesWhole } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';
import type { ChopCuts, MortiseToChop } from './chopCuts.ts';
import { stagesOf, type ChopStage } from './chopStages.ts';

export interface ChopPlan extends ChopCuts {
  readonly stages: readonly ChopStage[];
}

/** All common practice, no source. */
const PRACTICE = {
  /** A pass goes as deep as the mortise is wide, but no deeper than this; in hard wood three quarters of that. */
  deepestPass: NANOMETRES_PER_INCH / 2,
  hardShare: { numerator: 3, denominator: 4 },
  stayOff: NANOMETRES_PER_INCH / 8,
  /** A quarter of the chisel, within these: a wider step wedges, a narrower one only crumbles. */
  leastAdvance: NANOMETRES_PER_INCH / 16,
  mostAdvance: NANOMETRES_PER_INCH / 8,
  /** Past the middle from each face of a through mortise, so that the two meet. */
  past: NANOMETRES_PER_INCH / 16,
  cutsToStrop: { hard: 60, soft: 120 },
} as const;

/** How a mortise is chopped by hand: where, in how many passes, how deep each, and when to stop for the edge. */
export function planChopping(mortise: MortiseToChop): Result<ChopPlan, InputFault> {
  const fault = faultOf(mortise);
  if (fault) return failure(fault);
  const { from, length, width, depth, wood } = mortise;
  const through = depth >= wood;
  const [startMark, endMark] = [from, add(from, length)];
  const middle = add(from, fractionOf(length, 1, 2));
  const stayOff = nanometres(Math.min(PRACTICE.stayOff, Math.floor(length / 8)));
  const advance = nanometres(Math.min(PRACTICE.mostAdvance, Math.max(PRACTICE.leastAdvance, Math.floor(width / 4))));
  const flags = passDepths(mortise, through ? add(fractionOf(wood, 1, 2), nanometres(PRACTICE.past)) : depth);
  const cutsToFarEnd = cuts(middle, subtract(endMark, stayOff), advance);
  const cutsToNearEnd = cuts(middle, add(startMark, stayOff), advance).slice(1);
  const cutsInPass = cutsToFarEnd.length + cutsToNearEnd.length;
  const plan = { startMark, endMark, through, stayOff, middle, advance, flags, cutsToFarEnd, cutsToNearEnd, stropAfter: breaks(flags.length, cutsInPass, PRACTICE.cutsToStrop[mortise.hardness]) };
  return success({ ...plan, stages: stagesOf(plan, mortise) });
}

function faultOf({ from, length, width, depth, wood }: MortiseToChop): InputFault | undefined {
  if (from < 0) return { key: 'from', message: 'The mortise would start beyond the end of the part.' };
  if (width <= 0) return { key: 'width', message: 'A mortise is as wide as a chisel: more than nothing.' };
  if (length < width) return { key: 'length', message: telling`A mortise ${length} long is shorter than its chisel is wide, ${width}: there is no room to chop.` };
  if (depth <= 0) return { key: 'depth', message: 'A mortise has some depth: more than nothing.' };
  return depth > wood ? { key: 'depth', message: telling`A mortise ${depth} deep is deeper than the wood, ${wood}.` } : undefined;
}

/** Whole passes, and a last one to the depth exactly. */
function passDepths({ width, hardness }: MortiseToChop, depth: Length): readonly Length[] {
  const most = nanometres(Math.min(width, PRACTICE.deepestPass));
  const each = hardness === 'hard' ? fractionOf(most, PRACTICE.hardShare.numerator, PRACTICE.hardShare.denominator) : most;
  const whole = Array.from({ length: Math.ceil(depth / each) - 1 }, (_, index) => timesWhole(each, index + 1));
  return [...whole, depth];
}

/** From one place towards another, a step at a time, the last cut on it. */
function cuts(from: Length, to: Length, step: Length): readonly Length[] {
  const way = Math.sign(to - from);
  const count = Math.floor(Math.abs(to - from) / step);
  const places = Array.from({ length: count + 1 }, (_, index) => nanometres(from + way * index * step));
  return places.at(-1) === to ? places : [...places, to];
}

/** Passes after which the cuts since the last strop, with those of the pass to come, would be too many. */
function breaks(passes: number, cutsInPass: number, most: number): readonly number[] {
  const after: number[] = [];
  let since = 0;
  for (let pass = 1; pass < passes; pass++) {
    since += cutsInPass;
    if (since + cutsInPass <= most) continue;
    after.push(pass);
    since = 0;
  }
  return after;
}
