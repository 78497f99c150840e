import { subtract } from '../length/arithmetic.ts';
import { nanometres, NANOMETRES_PER_INCH, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { MortiseAndTenon, PieceFile } from '../piece/file.ts';

/** Within this, a chisel is as wide as its mortise (common practice, no source). */
export const SAME_WIDTH = nanometres(NANOMETRES_PER_INCH / 64);

/** What a mortise is chopped with. */
export interface OwnedChisel {
  /** Of the mortise. */
  readonly width: Length;
  /** Absent when the file names none. */
  readonly chisel?: Length;
  /** As the file writes it: '1/2 in'. */
  readonly named?: string;
  /** Chisel less mortise. */
  readonly off: Length;
}

/** The maker's own chisel for a joint: the nearest of those that go into its mortise, or else the narrowest of all. */
export function ownedChisel(file: PieceFile, read: (name: string) => Length | undefined, joint: MortiseAndTenon): OwnedChisel {
  const width = read(`${joint.id}.mortiseWidth`) ?? ZERO_LENGTH;
  const owned = file.tools.chisels.flatMap((source, index) => {
    const chisel = read(`tools.chisel${index + 1}`);
    return chisel === undefined ? [] : [{ chisel, named: typeof source === 'string' ? source : source.say ?? source.is }];
  });
  const off = ({ chisel }: { readonly chisel: Length }): number => Math.abs(chisel - width);
  const entering = owned.filter(({ chisel }) => chisel <= width + SAME_WIDTH);
  const [best] = entering.length > 0 ? [...entering].sort((one, other) => off(one) - off(other)) : [...owned].sort((one, other) => one.chisel - other.chisel);
  return best === undefined ? { width, off: ZERO_LENGTH } : { width, ...best, off: subtract(best.chisel, width) };
}
