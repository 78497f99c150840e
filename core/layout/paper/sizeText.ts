import type { Length } from '../../length/length.ts';
import type { Rounding } from '../../length/rounding.ts';
import { writeLength } from '../../length/write.ts';

const UNBROKEN = '\u00a0';

/** A size as it stands on the sheets: '1 13/16 in', which no line end tears apart. */
export function sizeText(length: Length, rounding: Rounding): string {
  return writeLength(length, rounding).replaceAll(' ', UNBROKEN);
}

/** '32 1/4 × 3 1/4 × 3 1/4 in': the unit once, but for sizes that are full or scant. */
export function sizesText(lengths: readonly Length[], rounding: Rounding): string {
  const texts = lengths.map((length) => sizeText(length, rounding));
  return texts.map((text, index) => (index < texts.length - 1 ? text.replace(/\u00a0(?:in|mm)$/, '') : text)).join(' × ');
}

/** A run of letters in one setting: the two halves of a fraction are set small, the upper one raised. */
export interface Run {
  readonly text: string;
  readonly as: 'plain' | 'numerator' | 'denominator';
}

/** Size of the halves of a fraction to the type around them, and how far up the numerator stands, both of the type's height. */
export const FRACTION_TYPE = { size: 0.72, raised: 0.32 } as const;

/** Takes a text apart so that '1 1/4' is never read as '11/4'. */
export function runsOf(text: string): readonly Run[] {
  const runs: Run[] = [];
  let at = 0;
  for (const { 0: whole, 1: numerator = '', 2: denominator = '', index } of text.matchAll(/(\d+)\/(\d+)/g)) {
    if (index > at) runs.push({ text: text.slice(at, index), as: 'plain' });
    runs.push({ text: numerator, as: 'numerator' }, { text: '/', as: 'plain' }, { text: denominator, as: 'denominator' });
    at = index + whole.length;
  }
  if (at < text.length) runs.push({ text: text.slice(at), as: 'plain' });
  return runs;
}
