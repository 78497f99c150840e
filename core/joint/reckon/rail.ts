import { ZERO_LENGTH, type Length } from '../../length/length.ts';
import type { Fields, Figure, ValuesOf } from '../../reckoning/reckoning.ts';
import { telling, type Telling } from '../../reckoning/telling.ts';
import type { Proportion } from '../proportion.ts';
import type { JointPlan, RailInLeg } from '../railInLeg.ts';

/** The inputs that every joint of a rail and a leg is reckoned from. */
export const RAIL_FIELDS = {
  'rail.width': { kind: 'length', say: 'rail, top edge to bottom edge' },
  'rail.thickness': { kind: 'length', say: 'rail thickness' },
  'leg.into': { kind: 'length', say: 'leg, in the direction of the tenon' },
  'leg.across': { kind: 'length', say: 'leg, across the tenon; as the other way when not given', optional: true },
  'leg.length': { kind: 'length', say: 'length of the leg', default: '30 in' },
  setback: { kind: 'length', say: 'outer face of the rail from the outer face of the leg', default: '1/4 in', mayBeNegative: true },
  fromTop: { kind: 'length', say: 'top end of the leg to the top edge of the rail', default: '0 in', mayBeNegative: true },
  chisels: { kind: 'lengths', say: 'chisels owned, as measured', default: '1/4 in, 3/8 in, 1/2 in' },
  joint: { kind: 'choice', options: ['blind', 'through'], say: 'whether the tenon is seen on the far side', default: 'blind' },
  haunch: { kind: 'choice', options: ['square', 'sloped', 'horn', 'none'], say: 'what holds the rail where it is level with the leg', default: 'square' },
  clearance: { kind: 'length', say: 'end of the tenon to the bottom of the mortise', default: '1/16 in', mayBeNegative: true },
  widestTenon: { kind: 'length', say: 'a wider tenon is made in two (common practice, no source)', default: '5 in' },
  step: { kind: 'length', say: 'tenons are cut to a whole number of these', default: '1/16 in' },
} as const satisfies Fields;

export function railOf(values: ValuesOf<typeof RAIL_FIELDS>): RailInLeg {
  const { setback, fromTop, chisels, joint, haunch, clearance, widestTenon, step } = values;
  return {
    rail: { width: values['rail.width'], thickness: values['rail.thickness'] },
    leg: { into: values['leg.into'], across: values['leg.across'] ?? values['leg.into'], length: values['leg.length'] },
    setback, fromTop, chisels, joint, haunch, clearance, widestTenon, step,
  };
}

export function figuresOfPlan(plan: JointPlan): readonly Figure[] {
  const sizes: Readonly<Record<string, Length>> = {
    chisel: plan.chisel, mortiseWidth: plan.chisel, mortiseDepth: plan.mortiseDepth,
    tenonThickness: plan.chisel, tenonLength: plan.tenonLength, longestTenon: plan.longest,
    outerShoulder: plan.outerShoulder, innerShoulder: plan.innerShoulder, topShoulder: plan.topShoulder, bottomShoulder: plan.bottomShoulder,
    outerWall: plan.outerWall, innerWall: plan.innerWall, floor: plan.floor, woodAbove: plan.woodAbove, woodBelow: plan.woodBelow, horn: plan.horn ?? ZERO_LENGTH,
  };
  return [
    ...Object.entries(sizes).map(([key, length]) => ({ key, length })),
    { key: 'tenonWidths', lengths: plan.tenons.map(({ width }) => width) },
    { key: 'mortisesFromTop', lengths: plan.mortises.map(({ from }) => from) },
    { key: 'mortiseLengths', lengths: plan.mortises.map(({ length }) => length) },
    { key: 'tenonsFromTopEdge', lengths: plan.tenons.map(({ fromTopEdge }) => fromTopEdge) },
    ...(plan.gap === undefined ? [] : [{ key: 'gapBetweenTwins', length: plan.gap }]),
    ...haunchFigures(plan),
  ];
}

function haunchFigures({ haunch }: JointPlan): readonly Figure[] {
  if (!haunch) return [{ key: 'haunch', text: 'none' }];
  return [{ key: 'haunch', text: haunch.shape }, { key: 'haunchWidth', length: haunch.width }, { key: 'haunchLength', length: haunch.length }, { key: 'haunchFromTopEdge', length: haunch.fromTopEdge }];
}

/** One sentence a proportion: what was chosen, what is published, and why. */
export function howOfPlan({ proportions }: JointPlan): readonly Telling[] {
  return proportions.map((proportion) => [...pieces(telling`${proportion.of}: ${proportion.chosen}. ${proportion.because} Published: `), ...publishedOf(proportion), '.']);
}

function publishedOf({ published }: Proportion): Exclude<Telling, string> {
  return published.flatMap(({ source, says }, index) => [index === 0 ? '' : '; ', { length: says }, ` (${source})`]);
}

function pieces(told: Telling): Exclude<Telling, string> {
  return typeof told === 'string' ? [told] : told;
}

export function sourcesOfPlan({ proportions }: JointPlan): readonly string[] {
  return [...new Set(proportions.flatMap(({ published }) => published.map(({ source }) => source.split(':')[0] ?? source)))];
}
