import fc from 'fast-check';
import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../../core/length/length.ts';
import type { Rounding } from '../../../core/length/rounding.ts';

/** From a number of inches that is a whole number of 64ths or thousandths. */
export function inches(count: number): Length {
  return nanometres(Math.round(count * NANOMETRES_PER_INCH));
}

export const SIXTY_FOURTH = nanometres(NANOMETRES_PER_INCH / 64);
export const TWENTY_FEET = nanometres(240 * NANOMETRES_PER_INCH);

export const INCH_ROUNDINGS: readonly Rounding[] = ([8, 16, 32, 64] as const).map((denominator) => ({ unit: 'inch', denominator }));
export const METRIC_ROUNDINGS: readonly Rounding[] = [1_000_000, 500_000, 100_000, 50_000].map((step) => ({ unit: 'millimetre', step: nanometres(step) }));
export const ROUNDINGS = [...INCH_ROUNDINGS, ...METRIC_ROUNDINGS];

/** Any length at the bench, to the nanometre, taken away or given. */
export const anyLength = fc.integer({ min: -240 * NANOMETRES_PER_INCH, max: TWENTY_FEET }).map(nanometres);
export const anySize = fc.integer({ min: SIXTY_FOURTH, max: TWENTY_FEET }).map(nanometres);
export const anyRounding = fc.constantFrom(...ROUNDINGS);

/** Every 64th from 1/64 in to 20 ft. */
export function* everySixtyFourth(): Generator<Length> {
  for (let size = SIXTY_FOURTH as number; size <= TWENTY_FEET; size += SIXTY_FOURTH) yield nanometres(size);
}
