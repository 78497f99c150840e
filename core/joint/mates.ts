import type { MortiseAndTenon, Part, PieceFile } from '../piece/file.ts';

/** What a mortise is for: the part that comes into it, or the joint's own name where that part has several. */
export function mateOf({ parts, joints }: PieceFile, joint: MortiseAndTenon): string {
  const several = joints.filter((one) => one.kind === 'mortise and tenon' && one.tenonOn === joint.tenonOn).length > 1;
  return several ? joint.name : parts.find(({ id }) => id === joint.tenonOn)?.name ?? joint.name;
}

/** A joint may be in some places only ('back left'). A copy that has no place yet stands in the order of the places. */
export function hasJoint(joint: MortiseAndTenon, part: Part, copy: number | undefined, place: string | undefined): boolean {
  if (joint.places === undefined || copy === undefined) return true;
  const stands = place ?? part.places?.[copy - 1];
  return stands === undefined || joint.places.includes(stands);
}
