import { add, fractionOf, subtract } from '../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling, type Telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';
import { chooseChisel, THIRD } from './chisel.ts';
import { deepestMortise, downTo } from './depth.ts';
import { heightsOf, type HaunchKind, type Heights } from './heights.ts';
import type { Comer } from '../tenon/meeting.ts';
import { BOOKS, LEFT, type Proportion } from './proportion.ts';

/** A rail that meets a leg at a right angle. A stretcher is a rail that starts far down. */
export interface RailInLeg {
  readonly rail: { readonly width: Length; readonly thickness: Length };
  /** `into` in the direction of the tenon, `across` in the direction of the rail's thickness. */
  readonly leg: { readonly into: Length; readonly across: Length; readonly length: Length };
  /** Outer face of the rail from the outer face of the leg. */
  readonly setback: Length;
  /** Top end of the leg to the top edge of the rail. */
  readonly fromTop: Length;
  /** As measured. */
  readonly chisels: readonly Length[];
  readonly joint: 'blind' | 'through';
  readonly haunch: HaunchKind;
  readonly clearance: Length;
  readonly widestTenon: Length;
  /** Tenons are cut to a whole number of these. */
  readonly step: Length;
}

export interface JointPlan extends Heights {
  /** Also the thickness of the tenon and the width of the mortise. */
  readonly chisel: Length;
  readonly outerShoulder: Length;
  readonly innerShoulder: Length;
  /** Of leg, beside the mortise: towards the outer face, and towards the inside. */
  readonly outerWall: Length;
  readonly innerWall: Length;
  readonly tenonLength: Length;
  /** The longest that the leg allows, before it is brought to a whole number of steps. */
  readonly longest: Length;
  readonly mortiseDepth: Length;
  /** Of leg, under the mortise; nothing when it goes through. */
  readonly floor: Length;
  /** Each from the top end of the leg. */
  readonly mortises: readonly { readonly from: Length; readonly length: Length }[];
  readonly warnings: readonly Telling[];
}

/** All sizes of a mortise and tenon, from the wood and the chisels that there are. */
export function planJoint(input: RailInLeg): Result<JointPlan, InputFault> {
  const fault = faultOf(input);
  if (fault) return failure(fault);
  const chisel = chooseChisel(input.rail.thickness, input.chisels, THIRD);
  if (!chisel.ok) return chisel;
  const heights = heightsOf({
    railWidth: input.rail.width, fromTop: input.fromTop, legLength: input.leg.length, tenonThickness: chisel.value, haunch: input.haunch, widestTenon: input.widestTenon,
  });
  if (!heights.ok) return heights;
  return success(together(input, chisel.value, heights.value));
}

function together(input: RailInLeg, chisel: Length, heights: Heights): JointPlan {
  const { rail, leg, setback, fromTop, joint, clearance, step } = input;
  const outerShoulder = fractionOf(subtract(rail.thickness, chisel), 1, 2);
  const deepest = deepestMortise(leg.into);
  const longest = joint === 'through' ? leg.into : subtract(deepest.depth, clearance);
  const tenonLength = joint === 'through' ? longest : downTo(step, longest);
  const outerWall = add(setback, outerShoulder);
  const plan = {
    ...heights, chisel, outerShoulder, innerShoulder: subtract(rail.thickness, add(outerShoulder, chisel)),
    outerWall, innerWall: subtract(leg.across, add(outerWall, chisel)),
    longest, tenonLength,
    mortiseDepth: joint === 'through' ? leg.into : add(tenonLength, clearance),
    floor: joint === 'through' ? ZERO_LENGTH : subtract(leg.into, add(tenonLength, clearance)),
    mortises: heights.tenons.map(({ fromTopEdge, width }) => ({ from: add(fromTop, fromTopEdge), length: width })),
    proportions: [thicknessProportion(rail.thickness, chisel), ...heights.proportions, ...(joint === 'through' ? [] : [deepest.proportion])],
  };
  return { ...plan, warnings: warningsOf(plan) };
}

function faultOf({ rail, leg, setback, fromTop, clearance, joint, haunch }: RailInLeg): InputFault | undefined {
  const named = { 'rail.width': rail.width, 'rail.thickness': rail.thickness, 'leg.into': leg.into, 'leg.across': leg.across, 'leg.length': leg.length };
  for (const [key, length] of Object.entries(named)) if (length <= 0) return { key, message: 'A section has some size: more than nothing.' };
  if (setback < 0) return { key: 'setback', message: telling`The setback is ${setback}: the rail would stand proud of the leg's outer face. Give nothing for a rail that is flush.` };
  if (fromTop < 0) return { key: 'fromTop', message: 'The rail would stand above the end of the leg. Give nothing for one that is level with it.' };
  const proud = add(setback, rail.thickness) - leg.across;
  if (proud > 0) return { key: 'rail.thickness', message: telling`A rail ${rail.thickness} thick and set back ${setback} stands ${nanometres(proud)} proud of the inside of a leg ${leg.across} across. Thin the rail or set it back less.` };
  if (clearance < 0) return { key: 'clearance', message: 'The mortise cannot be shallower than the tenon is long: the clearance is nothing or more.' };
  if (joint === 'blind' && clearance >= deepestMortise(leg.into).depth) return { key: 'clearance', message: telling`A clearance of ${clearance} leaves no tenon in a leg ${leg.into} deep.` };
  return haunch === 'horn' && fromTop > 0 ? { key: 'haunch', message: 'A horn is for a rail level with the end of the leg; this one starts lower. Choose square, sloped or none.' } : undefined;
}

/** As a place in the leg, for another that comes in from the side. Twin tenons count from the top of the upper to the bottom of the lower. */
export function placeOfJoint(input: RailInLeg, plan: JointPlan): Comer {
  const [first] = plan.mortises;
  const last = plan.mortises.at(-1);
  return {
    into: input.leg.into, near: plan.outerWall, thickness: plan.chisel, most: plan.longest,
    top: first?.from ?? input.fromTop, bottom: last ? add(last.from, last.length) : input.fromTop,
  };
}

function thicknessProportion(thickness: Length, chosen: Length): Proportion {
  const third = fractionOf(thickness, 1, 3);
  return {
    of: 'tenon thickness',
    published: [
      { source: `${BOOKS.noyes}: a third of the wood`, says: third },
      { source: `${BOOKS.joyce}: the chisel nearest to a third`, says: chosen },
      { source: `${BOOKS.practice}: at least a quarter`, says: fractionOf(thickness, 1, 4) },
      { source: `${BOOKS.practice}: at most a half`, says: fractionOf(thickness, 1, 2) },
    ],
    chosen,
    because: 'A mortise is as wide as the chisel that chops it.',
  };
}

function warningsOf(plan: Omit<JointPlan, 'warnings'>): readonly Telling[] {
  const { outerWall, innerWall, woodAbove, woodBelow, haunch, horn, gap } = plan;
  return [
    ...(outerWall < LEFT.wall ? [telling`Only ${outerWall} of leg is left between the mortise and the outer face; ${LEFT.wall} is usual.`] : []),
    ...(innerWall < LEFT.wall ? [telling`Only ${innerWall} of leg is left on the inner side of the mortise; ${LEFT.wall} is usual.`] : []),
    ...(woodAbove < LEFT.end ? [telling`Only ${woodAbove} of leg is left above the mortise, and it may split out: leave a horn on the leg until the joint is glued.`] : []),
    ...(woodBelow < LEFT.end ? [telling`Only ${woodBelow} of leg is left below the mortise: leave a horn there until the joint is glued.`] : []),
    ...(haunch ? [telling`The haunch takes a socket ${haunch.width} high and ${haunch.length} deep above the mortise; chop it after the mortise.`] : []),
    ...(horn === undefined ? [] : [telling`Cut the leg ${horn} longer at the top, and saw the horn off when the joint is glued.`]),
    ...(gap === undefined ? [] : [telling`Twin tenons with ${gap} between them, so that the rail can move a little across its grain.`]),
  ];
}
