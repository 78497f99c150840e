import { absolute, subtract } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../length/length.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { success, type Result } from '../result.ts';
import { planJoint, type JointPlan } from './railInLeg.ts';

/** What the wood and the chisels of a piece would make of a joint, beside what its file plans. */
export interface ByTheBook {
  readonly plan: JointPlan;
  /** Sizes that the file plans otherwise, by more than a sixty-fourth. */
  readonly differs: readonly { readonly of: string; readonly planned: Length; readonly book: Length }[];
}

const NOTICEABLE = NANOMETRES_PER_INCH / 64;
const USUAL_CLEARANCE = nanometres(NANOMETRES_PER_INCH / 16);
const WIDEST_TENON = nanometres(NANOMETRES_PER_INCH * 5);

export function byTheBook(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): Result<ByTheBook, InputFault> {
  const read = (name: string): Length => sizeOf(sizes, name)?.length ?? ZERO_LENGTH;
  const of = (key: string): Length => read(`${joint.id}.${key}`);
  const into = joint.mortiseInto ?? 'width';
  const leg = { into: read(`${joint.mortiseIn}.${into}`), across: read(`${joint.mortiseIn}.${into === 'width' ? 'thickness' : 'width'}`), length: read(`${joint.mortiseIn}.length`) };
  const plan = planJoint({
    rail: { width: read(`${joint.tenonOn}.width`), thickness: read(`${joint.tenonOn}.thickness`) }, leg,
    setback: of('setback'), fromTop: subtract(of('fromTop'), of('topShoulder')),
    chisels: piece.file.tools.chisels.map((_, index) => read(`tools.chisel${index + 1}`)),
    joint: of('mortiseDepth') >= leg.into ? 'through' : 'blind', haunch: 'square', clearance: USUAL_CLEARANCE, widestTenon: WIDEST_TENON, step: USUAL_CLEARANCE,
  });
  if (!plan.ok) return plan;
  const book: Readonly<Record<string, readonly [string, Length]>> = {
    mortiseWidth: ['mortise width', plan.value.chisel], topShoulder: ['top shoulder', plan.value.topShoulder], bottomShoulder: ['bottom shoulder', plan.value.bottomShoulder], outerShoulder: ['outer shoulder', plan.value.outerShoulder],
  };
  const differs = Object.entries(book).flatMap(([key, [name, wanted]]) => {
    const planned = sizeOf(sizes, `${joint.id}.${key}`)?.length;
    return planned === undefined || absolute(subtract(planned, wanted)) <= NOTICEABLE ? [] : [{ of: name, planned, book: wanted }];
  });
  return success({ plan: plan.value, differs });
}
