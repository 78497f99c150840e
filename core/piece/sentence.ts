import type { Length } from '../length/length.ts';
import type { SizeName } from './measurement.ts';

export interface SizeMention {
  readonly size: SizeName;
  readonly copy?: number;
}

/** A sentence with sizes in it, and with lengths worked out on the way; put into words at the rounding the maker chose. */
export type Sentence = readonly (string | SizeMention | { readonly length: Length })[];
