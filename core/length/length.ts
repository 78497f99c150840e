/**
 * Lengths are whole numbers of nanometres, so that inch fractions, thousandths and millimetres
 * are all exact and add without error. 1/64 in is 396 875 nm; 1 mm is 1 000 000 nm.
 */
declare const lengthBrand: unique symbol;

/** A length in whole nanometres. Made only by the functions of this folder. */
export type Length = number & { readonly [lengthBrand]: 'nanometres' };

/** 1 in = 25.4 mm exactly (international inch, in effect since 1 July 1959; NIST SP 811, B.6). */
export const NANOMETRES_PER_INCH = 25_400_000;
export const NANOMETRES_PER_FOOT = 12 * NANOMETRES_PER_INCH;
export const NANOMETRES_PER_MILLIMETRE = 1_000_000;

export const ZERO_LENGTH = 0 as Length;

/** The only door from a number to a Length. Throws on anything but a safe whole number: that is a bug, not input. */
export function nanometres(count: number): Length {
  if (!Number.isSafeInteger(count)) throw new RangeError(`a length is a whole number of nanometres, not ${count}`);
  return (count === 0 ? 0 : count) as Length;
}
