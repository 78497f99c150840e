import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../length/length.ts';

/** A rough thickness as it is sold, and what is left of it once it is surfaced. */
export interface Quarter {
  /** '4/4', '8/4'; thicknesses that are not sold in quarters by their inches: '3/8 in'. */
  readonly name: string;
  readonly rough: Length;
  /** One face surfaced; absent where the charts give none. */
  readonly oneFace?: Length;
  /** Both faces surfaced: the least that the grading standard allows. */
  readonly bothFaces: Length;
  /** From memory, not read in a chart. */
  readonly fromMemory?: true;
}

/** Grading-standard minimum for hardwood surfaced two sides; two published charts agree, but for 10/4, which is from memory. */
export const QUARTERS_SOURCE = 'hardwood grading standard, standard thickness of surfaced lumber (two published charts)';

export const QUARTERS: readonly Quarter[] = [
  { name: '3/8 in', rough: inches(3, 8), oneFace: inches(1, 4), bothFaces: inches(3, 16) },
  { name: '1/2 in', rough: inches(1, 2), oneFace: inches(3, 8), bothFaces: inches(5, 16) },
  { name: '5/8 in', rough: inches(5, 8), oneFace: inches(1, 2), bothFaces: inches(7, 16) },
  { name: '3/4', rough: inches(3, 4), oneFace: inches(5, 8), bothFaces: inches(9, 16) },
  { name: '4/4', rough: inches(1, 1), oneFace: inches(7, 8), bothFaces: inches(13, 16) },
  { name: '5/4', rough: inches(5, 4), oneFace: inches(9, 8), bothFaces: inches(17, 16) },
  { name: '6/4', rough: inches(3, 2), oneFace: inches(11, 8), bothFaces: inches(21, 16) },
  { name: '7/4', rough: inches(7, 4), bothFaces: inches(3, 2) },
  { name: '8/4', rough: inches(2, 1), oneFace: inches(29, 16), bothFaces: inches(7, 4) },
  { name: '10/4', rough: inches(5, 2), bothFaces: inches(9, 4), fromMemory: true },
  { name: '12/4', rough: inches(3, 1), oneFace: inches(45, 16), bothFaces: inches(11, 4) },
  { name: '14/4', rough: inches(7, 2), bothFaces: inches(13, 4) },
  { name: '16/4', rough: inches(4, 1), oneFace: inches(61, 16), bothFaces: inches(15, 4) },
];

export const QUARTER_NAMES: readonly string[] = QUARTERS.map(({ name }) => name);

/** By its name; undefined for one that is not sold. */
export function quarterCalled(name: string): Quarter | undefined {
  return QUARTERS.find((quarter) => quarter.name === name);
}

/** The thinnest rough board that still has `finished` in it when both faces are surfaced; undefined when none is thick enough. */
export function quarterFor(finished: Length): Quarter | undefined {
  return QUARTERS.find(({ bothFaces }) => bothFaces >= finished);
}

function inches(numerator: number, denominator: number): Length {
  return nanometres((NANOMETRES_PER_INCH * numerator) / denominator);
}
