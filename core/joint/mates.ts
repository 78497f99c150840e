import type { MortiseAndTenon, PieceFile } from '../piece/file.ts';

/** What a mortise is for: the part that comes into it, or the joint's own name where that part has several. */
export function mateOf({ parts, joints }: PieceFile, joint: MortiseAndTenon): string {
  const several = joints.filter((one) => one.kind === 'mortise and tenon' && one.tenonOn === joint.tenonOn).length > 1;
  return several ? joint.name : parts.find(({ id }) => id === joint.tenonOn)?.name ?? joint.name;
}

/** 'mortise'; at a bridle it is open, and is called a slot. */
export function hollowOf({ shape }: MortiseAndTenon): 'mortise' | 'slot' {
  return shape === 'bridle' ? 'slot' : 'mortise';
}
