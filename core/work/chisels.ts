import type { MortiseAndTenon } from '../piece/file.ts';
import { sizeName } from './draft.ts';
import type { Ground } from './ground.ts';

/** The maker's own chisel for a joint: the widest that goes into its mortise. Named as the file writes it; 'mortise chisel' when none fits. */
export function chiselFor(ground: Ground, joint: MortiseAndTenon): string {
  const mortise = ground.planned(sizeName(joint, 'mortiseWidth'));
  if (mortise === undefined) return 'mortise chisel';
  const fitting = ground.file.tools.chisels
    .map((source, index) => ({ source, width: ground.planned(`tools.chisel${index + 1}`) }))
    .filter((chisel) => chisel.width !== undefined && chisel.width <= mortise)
    .sort((one, other) => (other.width ?? 0) - (one.width ?? 0))[0];
  if (fitting === undefined) return 'mortise chisel';
  const { source } = fitting;
  return `${typeof source === 'string' ? source : source.say ?? source.is} chisel`;
}
