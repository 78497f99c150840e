import type { Length } from '../length/length.ts';
import type { Place, Surface, SurfacePoint } from './surface.ts';

/** What to plane first, then next: each stage brings its places down to where the next stage begins. */
export interface PlaningStage {
  readonly places: readonly { readonly place: Place; readonly from: Length; readonly to: Length }[];
  readonly shavings: number;
}

export interface PlaningPlan {
  /** Of the surface's points, in their order: how many shavings each wants. */
  readonly shavings: readonly number[];
  readonly most: number;
  readonly stages: readonly PlaningStage[];
}

/** More stages than that are not kept in mind at the bench. */
const MOST_STAGES = 4;

/**
 * The high places first, until they are level with the next: a plane set for one shaving takes what stands proud, and the last stage takes the whole face in full
 * shavings. A shaving that is begun is counted whole.
 */
export function planingPlan(surface: Surface, depths: readonly Length[], shaving: Length): PlaningPlan {
  const shavings = depths.map((depth) => Math.ceil(depth / shaving));
  const most = Math.max(...shavings);
  const levels = levelsOf(shavings, most);
  const stages = levels.slice(1).map((level, index): PlaningStage => {
    const above = levels[index] ?? most;
    return { shavings: above - level, places: stretchesOf(surface, shavings.map((count) => count > level)) };
  });
  return { shavings, most, stages };
}

/** From the most shavings down to none: the counts that occur, thinned out to a few stages of about the same work. */
function levelsOf(shavings: readonly number[], most: number): readonly number[] {
  if (most === 0) return [];
  const counts = [...new Set(shavings)].filter((count) => count > 0 && count < most).sort((a, b) => b - a);
  const wanted = MOST_STAGES - 1;
  const kept = counts.length <= wanted ? counts
    : Array.from({ length: wanted }, (_, index) => nearest(counts, most * (1 - (index + 1) / MOST_STAGES)));
  return [most, ...new Set(kept), 0];
}

function nearest(counts: readonly number[], to: number): number {
  return counts.reduce((best, count) => (Math.abs(count - to) < Math.abs(best - to) ? count : best));
}

/** Neighbouring stations of one row run together. */
function stretchesOf({ points }: Surface, chosen: readonly boolean[]): PlaningStage['places'] {
  const stretches: { place: Place; from: Length; to: Length; lastStation: number }[] = [];
  for (const [index, point] of points.entries()) {
    if (chosen[index] !== true) continue;
    const open = stretches.find(({ place, lastStation }) => place === point.place && lastStation === point.station - 1);
    if (open) Object.assign(open, { to: point.fromEnd, lastStation: point.station });
    else stretches.push(stretchFrom(point));
  }
  return stretches.map(({ place, from, to }) => ({ place, from, to }));
}

function stretchFrom({ place, fromEnd, station }: SurfacePoint): { place: Place; from: Length; to: Length; lastStation: number } {
  return { place, from: fromEnd, to: fromEnd, lastStation: station };
}
