import type { Length } from '../length/length.ts';

/** `inside.length`, `longRail.shoulders`, `longRailTenon.tenonThickness`: owner and size joined by a dot. */
export type SizeName = string;

/** What the maker measured on a made part. */
export interface Measurement {
  readonly size: SizeName;
  /** Which copy, from 1; absent when it was said of all copies. */
  readonly copy?: number;
  readonly length: Length;
}
