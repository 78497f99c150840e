import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../../core/length/length.ts';

/** Inches and parts of an inch that are whole nanometres. */
export function inches(numerator: number, denominator = 1): Length {
  return nanometres((NANOMETRES_PER_INCH * numerator) / denominator);
}

export function millimetres(count: number): Length {
  return nanometres(count * 1_000_000);
}
