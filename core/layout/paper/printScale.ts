import { absolute, fractionOf, subtract } from '../../length/arithmetic.ts';
import { nanometres, type Length } from '../../length/length.ts';
import { BARS } from './furniture.ts';

/** A bar may be off by this and still count as true: as near as a rule is read (common practice, no source). */
const READING = nanometres(200_000);

/** How true a print is in one direction. */
export interface PrintScale {
  /** What the bar should measure. */
  readonly bar: Length;
  readonly measured: Length;
  /** Too long by this over the bar; negative for too short. */
  readonly off: Length;
  /** Too long by this over the longest size on the sheets. */
  readonly offOverLongest: Length;
  readonly isTrue: boolean;
  /** By this the print must be made larger: bar / measured. */
  readonly factor: number;
}

/** What a bar can be taken for: more than a tenth away from both, it is neither. */
export function barMeant(measured: Length, unit: 'inch' | 'millimetre'): Length | undefined {
  const likely = unit === 'inch' ? BARS.inches : BARS.millimetres;
  return absolute(subtract(measured, likely)) * 10 <= likely ? likely : undefined;
}

/** Throws when the bar measures nothing: that is to be refused before. */
export function printScale(bar: Length, measured: Length, longest: Length): PrintScale {
  const off = subtract(measured, bar);
  return { bar, measured, off, offOverLongest: fractionOf(longest, off, bar), isTrue: absolute(off) <= READING, factor: bar / measured };
}

/** What a reading as near as a rule allows may still leave over the longest size. */
export function stillUnseen(longest: Length): Length {
  return fractionOf(longest, READING, BARS.millimetres);
}
