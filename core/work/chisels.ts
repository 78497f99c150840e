import { ownedChisel, SAME_WIDTH } from '../joint/ownedChisel.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import type { Ground } from './ground.ts';

/** The maker's own chisel for a joint, named as the file writes it; 'mortise chisel' when none goes into the mortise. */
export function chiselFor(ground: Ground, joint: MortiseAndTenon): string {
  const { named, off } = ownedChisel(ground.file, ground.planned, joint);
  return named === undefined || off > SAME_WIDTH ? 'mortise chisel' : `${named} chisel`;
}
