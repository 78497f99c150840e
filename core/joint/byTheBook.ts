import { absolute, add, subtract } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../length/length.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import type { Telling } from '../reckoning/telling.ts';
import { success, type Result } from '../result.ts';
import { planBridle, planDrawerRail } from './otherJoints.ts';
import type { Proportion } from './proportion.ts';
import { planJoint } from './railInLeg.ts';

/** What the wood and the chisels of a piece would make of a joint, beside what its file plans. */
export interface ByTheBook {
  readonly chisel: Length;
  /** What the chisel is the nearest to: of the wood, a third, or of twins side by side a fifth. */
  readonly share: 'a third' | 'a fifth';
  /** The sizes that follow, in the order in which they are told; the longest tenon last. */
  readonly sizes: readonly { readonly of: string; readonly length: Length }[];
  readonly proportions: readonly Proportion[];
  readonly warnings: readonly Telling[];
  /** Sizes that the file plans otherwise, by more than a sixty-fourth. */
  readonly differs: readonly { readonly of: string; readonly planned: Length; readonly book: Length }[];
}

const NOTICEABLE = NANOMETRES_PER_INCH / 64;
const USUAL_CLEARANCE = nanometres(NANOMETRES_PER_INCH / 16);
const WIDEST_TENON = nanometres(NANOMETRES_PER_INCH * 5);

interface Wood {
  readonly rail: { readonly width: Length; readonly thickness: Length };
  readonly leg: { readonly into: Length; readonly across: Length; readonly length: Length };
  readonly chisels: readonly Length[];
  /** A size of the joint as it stands. */
  readonly of: (key: string) => Length;
  readonly horned: boolean;
}

/** By the rules for its shape: a rail in a leg, twins of a rail that lies flat, or the corner of a frame. */
export function byTheBook(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): Result<ByTheBook, InputFault> {
  const wood = woodOf(piece, sizes, joint);
  const found = joint.shape === 'bridle' ? bridle(wood) : joint.tenons === 'side by side' ? twins(wood) : rail(wood, joint);
  if (!found.ok) return found;
  const { wanted, ...book } = found.value;
  const differs = wanted.flatMap(([key, of, length]) => {
    const planned = sizeOf(sizes, `${joint.id}.${key}`)?.length;
    return planned === undefined || absolute(subtract(planned, length)) <= NOTICEABLE ? [] : [{ of, planned, book: length }];
  });
  return success({ ...book, differs });
}

function woodOf(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): Wood {
  const read = (name: string): Length => sizeOf(sizes, name)?.length ?? ZERO_LENGTH;
  const into = joint.mortiseInto ?? 'width';
  return {
    rail: { width: read(`${joint.tenonOn}.width`), thickness: read(`${joint.tenonOn}.thickness`) },
    leg: { into: read(`${joint.mortiseIn}.${into}`), across: read(`${joint.mortiseIn}.${into === 'width' ? 'thickness' : 'width'}`), length: read(`${joint.mortiseIn}.length`) },
    chisels: piece.file.tools.chisels.map((_, index) => read(`tools.chisel${index + 1}`)),
    of: (key) => read(`${joint.id}.${key}`),
    horned: read(`${joint.mortiseIn}.horn`) > 0,
  };
}

type Found = Omit<ByTheBook, 'differs'> & { readonly wanted: readonly (readonly [key: string, of: string, length: Length])[] };

function rail({ rail, leg, chisels, of, horned }: Wood, joint: MortiseAndTenon): Result<Found, InputFault> {
  const plan = planJoint({
    rail: joint.lies === 'flat' ? { width: rail.thickness, thickness: rail.width } : rail, leg, chisels,
    setback: of('setback'), fromTop: subtract(of('fromTop'), of('topShoulder')),
    joint: joint.shape === 'through' || of('mortiseDepth') >= leg.into ? 'through' : 'blind', haunch: horned ? 'horn' : joint.haunch ?? 'square',
    clearance: USUAL_CLEARANCE, widestTenon: WIDEST_TENON, step: USUAL_CLEARANCE,
  });
  if (!plan.ok) return plan;
  const { chisel, topShoulder, bottomShoulder, outerShoulder, longest, haunch, gap, proportions, warnings } = plan.value;
  return success({
    chisel, share: 'a third', proportions, warnings,
    sizes: [
      { of: 'top shoulder', length: topShoulder }, { of: 'bottom shoulder', length: bottomShoulder },
      ...(haunch ? [{ of: 'haunch', length: haunch.length }] : []), ...(gap === undefined ? [] : [{ of: 'gap between twins', length: gap }]), { of: 'longest tenon', length: longest },
    ],
    wanted: [
      ['mortiseWidth', 'mortise width', chisel], ['topShoulder', 'top shoulder', topShoulder], ['bottomShoulder', 'bottom shoulder', bottomShoulder], ['outerShoulder', 'outer shoulder', outerShoulder],
      ...(haunch ? [['haunchLength', 'haunch', haunch.length] as const] : []), ...(gap === undefined ? [] : [['gap', 'gap between twins', gap] as const]),
    ],
  });
}

function twins({ rail, leg, chisels, of }: Wood): Result<Found, InputFault> {
  const plan = planDrawerRail({ rail, legInto: leg.into, legAcross: leg.across, setback: of('setback'), chisels, clearance: USUAL_CLEARANCE, step: USUAL_CLEARANCE });
  if (!plan.ok) return plan;
  const { chisel, tenons: [first, second], edgeShoulder, tenonLength } = plan.value;
  const outer = first?.fromFront ?? ZERO_LENGTH;
  const gap = subtract(second?.fromFront ?? ZERO_LENGTH, add(outer, chisel));
  return success({
    chisel, share: 'a fifth', proportions: [], warnings: [],
    sizes: [{ of: 'outer shoulder', length: outer }, { of: 'gap between twins', length: gap }, { of: 'top shoulder', length: edgeShoulder }, { of: 'longest tenon', length: tenonLength }],
    wanted: [['mortiseWidth', 'mortise width', chisel], ['outerShoulder', 'outer shoulder', outer], ['gap', 'gap between twins', gap], ['topShoulder', 'top shoulder', edgeShoulder]],
  });
}

function bridle({ rail, leg, chisels }: Wood): Result<Found, InputFault> {
  const plan = planBridle({ rail, stile: { width: leg.into, thickness: leg.across }, chisels, proud: ZERO_LENGTH });
  if (!plan.ok) return plan;
  const { chisel, outerShoulder, tenonLength, slotDepth } = plan.value;
  return success({
    chisel, share: 'a third', proportions: [], warnings: [],
    sizes: [{ of: 'outer shoulder', length: outerShoulder }, { of: 'slot depth', length: slotDepth }, { of: 'tenon length', length: tenonLength }],
    wanted: [['mortiseWidth', 'slot width', chisel], ['outerShoulder', 'outer shoulder', outerShoulder], ['mortiseLength', 'slot depth', slotDepth], ['tenonLength', 'tenon length', tenonLength]],
  });
}
