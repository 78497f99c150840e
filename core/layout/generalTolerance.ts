import { nanometres, type Length } from '../length/length.ts';

/** A limit by size: up to this length (mm), so far off (µm). */
type Limits = readonly (readonly [upToMm: number, limitMicrometres: number])[];

/** ISO 2768-1 (1989), table 1, linear dimensions, ± the value. */
const LINEAR: Readonly<Record<'fine' | 'medium', Limits>> = {
  fine: [[6, 50], [30, 100], [120, 150], [400, 200], [1000, 300], [2000, 500]],
  medium: [[6, 100], [30, 200], [120, 300], [400, 500], [1000, 800], [2000, 1200], [4000, 2000]],
};
/** ISO 2768-2 (1989), table 2, class K, by the shorter side of the corner (from memory). */
const SQUARE_K: Limits = [[100, 400], [300, 600], [1000, 800], [3000, 1000]];

export const LINEAR_SOURCE = 'ISO 2768-1, table 1';
export const SQUARE_SOURCE = 'ISO 2768-2, table 2, class K (from memory)';

/** How far off a size may be, either way. Beyond the table its last row counts; 'fine' goes over to medium at 2 m, where the table has no fine. */
export function linearTolerance(size: Length, grade: 'fine' | 'medium'): Length {
  return limitAt(LINEAR[grade], size) ?? limitAt(LINEAR.medium, size) ?? nanometres(2_000_000);
}

/** How far out of square a corner may be, over its shorter side. Beyond the table its last row counts. */
export function squareTolerance(shorterSide: Length): Length {
  return limitAt(SQUARE_K, shorterSide) ?? nanometres(1_000_000);
}

function limitAt(limits: Limits, size: Length): Length | undefined {
  const row = limits.find(([upToMm]) => Math.abs(size) <= upToMm * 1_000_000);
  return row === undefined ? undefined : nanometres(row[1] * 1000);
}
