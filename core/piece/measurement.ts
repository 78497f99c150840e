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

/** The measurements with one more: a newer one of the same size and copy takes the older one's place. */
export function withMeasurement(measurements: readonly Measurement[], added: Measurement): readonly Measurement[] {
  return [...withoutMeasurement(measurements, added.size, added.copy), added];
}

/** The measurements without that one. */
export function withoutMeasurement(measurements: readonly Measurement[], size: SizeName, copy: number | undefined): readonly Measurement[] {
  return measurements.filter((measured) => measured.size !== size || measured.copy !== copy);
}
