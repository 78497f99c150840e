import { fractionOf } from '../length/arithmetic.ts';
import type { Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';

/** How thick a tenon may be: one part in so many of the wood that it is cut from. */
export interface Share {
  readonly thinnest: number;
  readonly wanted: number;
  readonly thickest: number;
  /** Said of the bounds. */
  readonly say: string;
}

/** A third, by Noyes (1910, ch. VII) and Joyce, who takes the chisel nearest to it; a quarter and a half are common practice for the bounds, no source. */
export const THIRD: Share = { thinnest: 4, wanted: 3, thickest: 2, say: 'a quarter and a half of the thickness' };
/** Two tenons side by side and three spaces, all alike; the bounds are common practice, no source. */
export const FIFTH: Share = { thinnest: 8, wanted: 5, thickest: 4, say: 'an eighth and a quarter of the width' };

/** The owned chisel nearest to the wanted share; of two that are equally near the wider one (Joyce: a little over a third). */
export function chooseChisel(of: Length, chisels: readonly Length[], { thinnest, wanted, thickest, say }: Share): Result<Length, InputFault> {
  const off = (chisel: Length): number => Math.abs(wanted * chisel - of);
  const byNearness = [...chisels].sort((one, other) => off(one) - off(other) || other - one);
  const [closest] = byNearness;
  if (closest === undefined) return failure({ key: 'chisels', message: 'No chisel is given. Give the widths of your chisels as measured, not as stamped.' });
  const nearest = byNearness.find((chisel) => chisel * thinnest >= of && chisel * thickest <= of);
  if (nearest !== undefined) return success(nearest);
  return failure({
    key: 'chisels',
    message: telling`No chisel of yours is between ${fractionOf(of, 1, thinnest)} and ${fractionOf(of, 1, thickest)}, ${say}; the nearest is ${closest}. Use one within these, or wood of another thickness.`,
  });
}
