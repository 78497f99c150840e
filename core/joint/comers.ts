import { subtract } from '../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../length/length.ts';
import { cavitiesOf, inOnePlace, type ReadSize } from '../piece/cavity.ts';
import type { MortiseAndTenon, PieceFile } from '../piece/file.ts';
import { waysToMeet, type Comer, type MeetingLimits } from '../tenon/meeting.ts';
import { squareTenon, type TenonSteps } from '../tenon/solid.ts';
import { deepestMortise } from './depth.ts';
import { LEFT } from './proportion.ts';

/** Tenons of one joint as they come into the mortised part, each with the longest that the part alone allows it: one, or two. */
export function comersOf(joint: MortiseAndTenon, read: ReadSize): readonly Comer[] {
  return cavitiesOf(joint, read).filter(({ kind }) => kind === 'mortise').map(({ deepest, near, far, top, bottom }) => ({
    into: deepest, near, thickness: subtract(far, near), top, bottom,
    most: (joint.shape ?? 'blind') === 'blind' ? subtract(deepestMortise(deepest).depth, clearanceOf(joint, read)) : deepest,
  }));
}

/** End of the tenon to the bottom of the mortise, as planned. */
export function clearanceOf({ id }: MortiseAndTenon, read: ReadSize): Length {
  return nanometres(Math.max(0, (read(`${id}.mortiseDepth`) ?? 0) - (read(`${id}.tenonLength`) ?? 0)));
}

export function limitsOf(joint: MortiseAndTenon, read: ReadSize): MeetingLimits {
  return { clearance: clearanceOf(joint, read), web: LEFT.web };
}

/** Joints in the same part whose mortises come in from the side, in a place that both have. */
export function neighboursOf({ joints }: PieceFile, joint: MortiseAndTenon): readonly MortiseAndTenon[] {
  return joints.filter((other): other is MortiseAndTenon => other.kind === 'mortise and tenon' && other.mortiseIn === joint.mortiseIn
    && (other.mortiseInto ?? 'width') !== (joint.mortiseInto ?? 'width') && inOnePlace(joint, other));
}

/** The end of a joint's tenons as they are to be cut, each from its top to its bottom: square, or mitred or stepped where the file wants it and a neighbour is met. */
export function plannedEnds(file: PieceFile, joint: MortiseAndTenon, read: ReadSize): readonly TenonSteps[] {
  const length = read(`${joint.id}.tenonLength`) ?? ZERO_LENGTH;
  return comersOf(joint, read).map((comer) => {
    const self = { ...comer, most: length };
    const shaped = neighboursOf(file, joint).filter(({ tenonEnds }) => tenonEnds === joint.tenonEnds).flatMap((other) => comersOf(other, read).flatMap((met) => {
      const most = read(`${other.id}.tenonLength`) ?? ZERO_LENGTH;
      return waysToMeet(self, { ...met, most }, limitsOf(joint, read)).filter(({ way }) => way === joint.tenonEnds).map(({ first }) => first);
    }));
    return shaped[0] ?? squareTenon(self, length);
  });
}
