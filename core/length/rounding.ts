import type { Length } from './length.ts';

/** How sizes are rounded once, at the lips or the screen: to an inch fraction, or to a step of millimetres. */
export type Rounding =
  | { readonly unit: 'inch'; readonly denominator: 8 | 16 | 32 | 64 }
  | { readonly unit: 'millimetre'; readonly step: Length };
