import { nanometres, NANOMETRES_PER_INCH, type Length } from '../length/length.ts';
import { adhesiveInUse } from '../glue/adhesive.ts';
import type { Adhesive } from '../piece/file.ts';

/** How far off is still right. Each figure with its source; metric standards are named where a tighter shop figure rests on them. */
export const TOLERANCES = {
  /** Common practice, no source: rough cuts only have to keep the allowance. */
  roughCut: inches(1, 8),
  /** Common practice, no source: an edge to rip from needs no better. */
  edgeToRipFrom: inches(1, 32),
  /** Common practice, no source; tighter than ISO 2768-2 class K flatness, 0.6 mm for 300 to 1000 mm (from memory). */
  flat: inches(1, 64),
  /** Faces to be glued: best strength with 0.002 to 0.006 in between them (a university extension column); the looser end. */
  gluedGap: inches(6, 1000),
  /** Common practice, no source: the least light that shows under a try square; ISO 2768-2 class K allows 0.4 mm to 100 mm (from memory). */
  square: inches(4, 1000),
  /** A bare 1/64 in: ISO 2768-1 medium, 0.3 mm for 30 to 120 mm. */
  thickness: inches(1, 64),
  /** ISO 2768-1 medium, 0.8 mm for 400 to 1000 mm; half of it, common practice, so that pairs agree. */
  length: inches(1, 64),
  /** ISO 2768-1 fine, 0.3 mm for 400 to 1000 mm, for shoulders that must agree in pairs. */
  shoulders: inches(1, 100),
  /** Common practice, no source: what a mortise wall or a tenon cheek may lean and still be pared. */
  mortise: inches(1, 64),
  /** Tenon in mortise: clearance 0.002 to 0.006 in gives the best strength (a university extension column). */
  tenonFit: inches(6, 1000),
  /** ISO 2768-1 medium, 0.8 mm for 400 to 1000 mm. */
  diagonals: inches(1, 32),
  /** Common practice, no source: a frame that rocks less than this stands still under its own weight. */
  rock: inches(1, 64),
  /** Common practice, no source: an arris that looks even along its length. */
  easing: inches(1, 64),
} as const satisfies Readonly<Record<string, Length>>;

function inches(numerator: number, denominator: number): Length {
  return nanometres((NANOMETRES_PER_INCH * numerator) / denominator);
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/** A duration in milliseconds and where it comes from. */
export interface Duration {
  readonly durationMs: number;
  readonly basis: string;
}

/** Common practice, no source: overnight to a week; no standard figure is published. The shortest is asked for, and the readings rule. */
export const REST: Duration = { durationMs: 24 * HOUR_MS, basis: 'common practice, a day at least' };

/** Common practice, no source: a minute's chopping between looks at the edge. */
export const CHOPPING: Duration = { durationMs: MINUTE_MS, basis: 'common practice' };

/** Open, clamp and cure time of the piece's adhesive: the file's own figures, else common practice for its class. */
export function glueTimes(adhesive: Adhesive): Readonly<Record<'open' | 'clamp' | 'cure', Duration>> {
  const { label, basis } = adhesiveInUse(adhesive);
  return {
    open: { durationMs: Math.round(label.openMinutes * MINUTE_MS), basis: basis.openMinutes },
    clamp: { durationMs: Math.round(label.clampMinutes * MINUTE_MS), basis: basis.clampMinutes },
    cure: { durationMs: Math.round(label.fullCureHours * HOUR_MS), basis: basis.fullCureHours },
  };
}

/** Time between coats, as the piece file says. */
export function recoatTime(hours: number): Duration {
  return { durationMs: Math.round(hours * HOUR_MS), basis: 'your piece file' };
}
