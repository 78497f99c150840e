import { nanometres, type Length } from '../length/length.ts';

/** What a face is for decides how true it must be. */
export const PURPOSES = ['glue', 'joint', 'show'] as const;
export type Purpose = (typeof PURPOSES)[number];

/** ISO 2768-2 (1989), table 1, class K, straightness and flatness by the longer side, mm and µm (from memory). */
const FLAT_K: readonly (readonly [upToMm: number, limitMicrometres: number])[] = [[10, 50], [30, 100], [100, 200], [300, 400], [1000, 600], [3000, 800]];
/** A PVA line is at its best from 0.05 to 0.15 mm thick (extension service column on glue joints); two faces share it. */
const GLUE_LINE = nanometres(150_000);
/** EN 13329: straightness of a flooring element, 0.30 mm in a metre; an outside yardstick for what the eye finds along a face. */
const SHOWN_PER_METRE = 300_000;

export interface FlatnessLimit {
  readonly limit: Length;
  readonly source: string;
}

/**
 * How far the highest point of a face may stand over a plane under it. `adhesiveGap` is the widest gap that the adhesive in use will bridge, when the maker gave one.
 */
export function flatnessLimit(purpose: Purpose, length: Length, adhesiveGap?: Length): FlatnessLimit {
  switch (purpose) {
    case 'glue': return adhesiveGap === undefined
      ? { limit: GLUE_LINE, source: 'glue line of 0.15 mm at most for PVA (extension service column on glue joints)' }
      : { limit: adhesiveGap, source: 'the gap given for this adhesive' };
    case 'joint': return { limit: nanometres((FLAT_K.find(([upToMm]) => length <= upToMm * 1_000_000) ?? [0, 800])[1] * 1000), source: 'ISO 2768-2, table 1, class K (from memory)' };
    case 'show': return { limit: nanometres(Math.max(100_000, Math.round((SHOWN_PER_METRE * length) / 1_000_000_000))), source: 'EN 13329, straightness 0.30 mm in a metre, as a yardstick for what shows' };
  }
}
