import type { Length } from '../length/length.ts';
import { NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../length/length.ts';

const SIXTY_FOURTH = NANOMETRES_PER_INCH / 64;

/** A length as an expression that gives exactly it again: in inches and sixty-fourths where they fit, else in millimetres. */
export function writeExact(length: Length): string {
  const sign = length < 0 ? '-' : '';
  const size = Math.abs(length);
  return sign + (size % SIXTY_FOURTH === 0 ? inches(size) : millimetres(size));
}

function inches(size: number): string {
  const whole = Math.floor(size / NANOMETRES_PER_INCH);
  let [over, under] = [(size % NANOMETRES_PER_INCH) / SIXTY_FOURTH, 64];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  if (over === 0) return `${whole} in`;
  return whole === 0 ? `${over}/${under} in` : `${whole} ${over}/${under} in`;
}

function millimetres(size: number): string {
  const whole = Math.floor(size / NANOMETRES_PER_MILLIMETRE);
  const decimals = String(size % NANOMETRES_PER_MILLIMETRE).padStart(6, '0').replace(/0+$/u, '');
  return decimals === '' ? `${whole} mm` : `${whole}.${decimals} mm`;
}
