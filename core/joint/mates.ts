import type { MortiseAndTenon, Part, PieceFile } from '../piece/file.ts';

/** What a mortise is for: the part that comes into it, or the joint's own name where that part has several. */
export function mateOf({ parts, joints }: PieceFile, joint: MortiseAndTenon): string {
  const several = joints.filter((one) => one.kind === 'mortise and tenon' && one.tenonOn === joint.tenonOn).length > 1;
  return several ? joint.name : parts.find(({ id }) => id === joint.tenonOn)?.name ?? joint.name;
}

/** A joint may be in some places only ('back left'). Without a place, a copy stands in the order of the places; with null, it may yet stand anywhere. */
export function hasJoint(joint: MortiseAndTenon, part: Part, copy: number | undefined, place: string | null | undefined): boolean {
  if (joint.places === undefined || copy === undefined || place === null) return true;
  const stands = place ?? part.places?.[copy - 1];
  return stands === undefined || joint.places.includes(stands);
}
