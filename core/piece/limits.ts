import type { Length } from '../length/length.ts';
import { nanometres, NANOMETRES_PER_INCH, NANOMETRES_PER_MILLIMETRE } from '../length/length.ts';
import type { Owner } from './declared.ts';
import { writeExact } from './writeExact.ts';

/** What no size of a piece of furniture goes beyond; common practice, no source. */
export interface SizeLimits {
  /** Of what is wood: parts, layers, tenons, mortises. */
  readonly thinnest: Length;
  readonly longest: Length;
}

export const SIZE_LIMITS: SizeLimits = {
  thinnest: nanometres(NANOMETRES_PER_INCH / 64),
  longest: nanometres(20_000 * NANOMETRES_PER_MILLIMETRE),
};

/** Sizes that are wood or a hole in it, and so cannot be nothing; a setback or an allowance can. */
const SOLID_KEYS = /^(?:length|width|thickness|shoulders|stock|layerThickness|blankThickness|boardWidth|rough[A-Z]\w*|tenon\w*|mortise\w*|tongue\w*|haunch\w*|gap|horn|lowerHorn|groove(?:Width|Depth)|chisel\d+|clamp\d+)$/u;

export interface Absurdity {
  readonly expected: string;
  readonly message: string;
}

/** What is absurd about a size, in words; undefined when nothing is. */
export function absurdity(owner: Owner, key: string, length: Length, limits: SizeLimits): Absurdity | undefined {
  if (length > limits.longest) return { expected: `at most ${writeExact(limits.longest)}`, message: 'No piece of furniture is so long: look at the units.' };
  const solid = owner.kind !== 'parameter' && owner.kind !== 'allowance' && SOLID_KEYS.test(key);
  if (!solid && length < 0) return { expected: 'nothing or more', message: 'A size cannot be less than nothing: write it the other way round and take it away where it is used.' };
  if (solid && length <= 0) return { expected: 'more than nothing', message: 'What it is worked out from leaves nothing over.' };
  if (solid && length < limits.thinnest) return { expected: `at least ${writeExact(limits.thinnest)}`, message: 'Too thin to be wood: look at the units.' };
  return undefined;
}
