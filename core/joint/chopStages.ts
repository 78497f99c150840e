import { add, subtract } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { telling, type Telling } from '../reckoning/telling.ts';
import type { ChopCuts, MortiseToChop } from './chopCuts.ts';

/** One thing to do at a mortise, with what the eye needs to see of it. */
export interface ChopStage {
  readonly kind: 'mark' | 'flag' | 'saw' | 'pass' | 'strop' | 'turn over' | 'pare the ends' | 'clear the bottom';
  /** A pass, counted from 1. */
  readonly pass?: number;
  /** Short, for the ear with a mallet in the hand. */
  readonly say: Telling;
  /** In full, for the eye. */
  readonly show: Telling;
  readonly drawing: ChopDrawing;
}

/** The mortise cut open along its length: `along` from the end of the part, `down` from the face that is chopped. */
export interface ChopDrawing {
  readonly face: 'first' | 'second';
  /** How thick the part is in the direction of the mortise. */
  readonly wood: Length;
  readonly startMark: Length;
  readonly endMark: Length;
  /** How deep it is by now, between these places; absent while nothing is cut. */
  readonly cut?: { readonly from: Length; readonly to: Length; readonly down: Length };
  /** What is taken now, hatched. */
  readonly waste?: { readonly from: Length; readonly to: Length; readonly top: Length; readonly bottom: Length };
  readonly chisels: readonly { readonly at: Length; readonly down: Length; readonly bevel: 'towards the start' | 'towards the end' }[];
  /** Levering only between these. */
  readonly lever?: { readonly from: Length; readonly to: Length };
  readonly flag?: Length;
  /** An open mortise: which end of the part it runs out of (`along` is from there), and how far its cheeks are sawn. */
  readonly slot?: { readonly end: 'top' | 'bottom'; readonly sawn: readonly { readonly along: Length; readonly down: Length }[] };
}

/** The stages in their order; a through mortise is turned over and done again from the other face. */
export function stagesOf(plan: ChopCuts, mortise: MortiseToChop): readonly ChopStage[] {
  const first = facePasses(plan, mortise, 'first');
  const end: readonly ChopStage[] = [pareEnds(plan, mortise), clearBottom(plan, mortise)];
  const opening = [markStage(plan, mortise), flagStage(plan, mortise)];
  if (!plan.through) return [...opening, ...first, ...end];
  return [...opening, ...first, turnOver(plan, mortise), ...facePasses(plan, mortise, 'second'), ...end];
}

function basic({ startMark, endMark }: ChopCuts, { wood }: MortiseToChop, face: ChopDrawing['face']): ChopDrawing {
  return { face, wood, startMark, endMark, chisels: [] };
}

function markStage(plan: ChopCuts, mortise: MortiseToChop): ChopStage {
  const both = plan.through ? ' Square both lines round to the far face, and gauge it there too.' : '';
  return {
    kind: 'mark', drawing: basic(plan, mortise, 'first'),
    say: telling`Knife the ends at ${plan.startMark} and ${plan.endMark} from the end. Gauge it ${mortise.width} wide${plan.through ? ', on both faces' : ''}.`,
    show: telling`Knife the ends at ${plan.startMark} and ${plan.endMark} from the end, gauge both sides to the chisel, ${mortise.width} apart, and hatch the waste.${both}`,
  };
}

function flagStage(plan: ChopCuts, mortise: MortiseToChop): ChopStage {
  const last = plan.flags.at(-1) ?? mortise.depth;
  return {
    kind: 'flag', drawing: { ...basic(plan, mortise, 'first'), chisels: [{ at: plan.middle, down: ZERO_LENGTH, bevel: 'towards the start' }], flag: last },
    say: telling`Flag the chisel at ${last}.`,
    show: plan.through
      ? telling`Flag the chisel at ${last}, a little past the middle: half is chopped from each face.`
      : telling`Flag the chisel at ${last} from its edge: that is the depth.`,
  };
}

function facePasses(plan: ChopCuts, mortise: MortiseToChop, face: ChopDrawing['face']): readonly ChopStage[] {
  return plan.flags.flatMap((down, index) => {
    const pass = index + 1;
    const stage = passStage(plan, mortise, face, pass, down);
    return plan.stropAfter.includes(pass) ? [stage, stropStage(plan, mortise, face, down)] : [stage];
  });
}

function passStage(plan: ChopCuts, mortise: MortiseToChop, face: ChopDrawing['face'], pass: number, down: Length): ChopStage {
  const [from, to] = inner(plan);
  const top = plan.flags[pass - 2] ?? ZERO_LENGTH;
  const lever = pass > 1 ? { lever: { from, to } } : {};
  return {
    kind: 'pass', pass,
    drawing: {
      ...basic(plan, mortise, face), ...(pass > 1 ? { cut: { from, to, down: top } } : {}), waste: { from, to, top, bottom: down }, ...lever, flag: down,
      chisels: [{ at: to, down, bevel: 'towards the start' }, { at: from, down, bevel: 'towards the end' }],
    },
    say: pass === 1
      ? telling`Pass one, to ${down}. From the middle to the far end, turn the bevel, to the near end. No levering.`
      : telling`Pass ${sayNumber(pass)}, to ${down}, the same way.${pass === 2 ? ' Now lever the waste out.' : ''}`,
    show: pass === 1
      ? telling`Pass one, to ${down}. Start in the middle, at ${plan.middle} from the end, and step ${plan.advance} at a time to the far end with the bevel to the middle; turn the bevel, and go from the middle to the near end. Stay ${plan.stayOff} off both lines, and do not lever yet: the edges would crush.`
      : telling`Pass ${{ count: pass }}, to ${down}. The same way: far end, turn the bevel, near end. Lever the chips out against the waste, never against an end.`,
  };
}

function stropStage(plan: ChopCuts, mortise: MortiseToChop, face: ChopDrawing['face'], down: Length): ChopStage {
  const [from, to] = inner(plan);
  return { kind: 'strop', drawing: { ...basic(plan, mortise, face), cut: { from, to, down } }, say: 'Strop, and empty the mortise.', show: 'Stop and strop the chisel; empty the mortise meanwhile.' };
}

function turnOver(plan: ChopCuts, mortise: MortiseToChop): ChopStage {
  return { kind: 'turn over', drawing: basic(plan, mortise, 'second'), say: 'Clear the bench of chips and turn the part over. The same from the second face, until they meet.', show: 'Turn the part over and clear the bench of chips, so that the face is not bruised. Do the same from the second face, until the two meet.' };
}

function pareEnds(plan: ChopCuts, mortise: MortiseToChop): ChopStage {
  const [from, to] = inner(plan);
  const face = plan.through ? 'second' : 'first';
  const down = plan.through ? mortise.wood : mortise.depth;
  return {
    kind: 'pare the ends',
    drawing: {
      ...basic(plan, mortise, face), cut: { from, to, down },
      chisels: [{ at: plan.endMark, down: ZERO_LENGTH, bevel: 'towards the start' }, { at: plan.startMark, down: ZERO_LENGTH, bevel: 'towards the end' }],
    },
    say: plan.through ? 'Strop. Pare both ends upright, from both faces. No levering.' : 'Strop. Chop both ends down to the line, upright. No levering.',
    show: plan.through
      ? telling`Strop. Pare the last ${plan.stayOff} at each end, upright, from both faces to the middle. No levering here.`
      : telling`Strop. Chop the last ${plan.stayOff} at each end down to the line, upright, the bevel to the inside, and lift the chips out. No levering here: it would round the end over.`,
  };
}

function clearBottom(plan: ChopCuts, mortise: MortiseToChop): ChopStage {
  const down = plan.through ? mortise.wood : mortise.depth;
  return {
    kind: 'clear the bottom', drawing: { ...basic(plan, mortise, plan.through ? 'second' : 'first'), cut: { from: plan.startMark, to: plan.endMark, down } },
    say: plan.through ? 'Look through it, and pare the middle away.' : telling`Level the bottom: ${mortise.depth} deep all along.`,
    show: plan.through ? 'Look through it against the light, and pare away what stands up in the middle.' : telling`Scrape the bottom level, and try the depth all along: ${mortise.depth}, and nowhere less.`,
  };
}

/** Between the cuts nearest to both ends. */
function inner({ startMark, endMark, stayOff }: ChopCuts): readonly [Length, Length] {
  return [add(startMark, stayOff), subtract(endMark, stayOff)];
}
