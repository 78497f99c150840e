import { nanometres, ZERO_LENGTH, type Length } from '../length/length.ts';
import { isNear } from './guide.ts';
import { isOfBoard, type FaceReading, type ReadingKind } from './readings.ts';
import type { FaceReadings } from './surface.ts';

/** A board as far as it matters to its readings. */
export interface BoardSize {
  readonly length: Length;
  /** Across the side that is read: of an edge, the thickness. */
  readonly width: Length;
}

/**
 * Scattered readings put together at every place that any of them was taken, and at the guide's where none is near. Between two readings of a kind it runs straight; beyond the last one it
 * stays as there, but that the straightedge along rests on the ends where nothing else was read, and the first stick shows nothing against itself.
 * An edge's square is a tilt of the edge over its own width.
 */
export function readingsOf({ length, width }: BoardSize, stick: Length, guide: readonly Length[], taken: readonly FaceReading[]): FaceReadings {
  const shaping = taken.filter(({ what, fromEnd }) => !isOfBoard(what) && fromEnd <= length);
  const stations = placesOf(guide, shaping, length);
  const [first, last] = [stations[0] ?? ZERO_LENGTH, stations.at(-1) ?? length];
  const along = rowOf(shaping, 'along', stations, [first, last]);
  const across = rowOf(shaping, 'across', stations, []);
  const square = rowOf(shaping, 'square', stations, []);
  const sticks = square ?? rowOf(shaping, 'sticks', stations, [first]);
  return {
    length, width, stations,
    ...(along ? { along } : {}), ...(across ? { across } : {}),
    ...(sticks ? { sticks: { length: square ? width : stick, leftHigh: sticks } } : {}),
  };
}

/** Where something was read, and the guide's places where nothing was read near by. */
function placesOf(guide: readonly Length[], taken: readonly FaceReading[], length: Length): readonly Length[] {
  const free = guide.filter((at) => !taken.some(({ fromEnd }) => isNear(fromEnd, at, guide)));
  return [...new Set([...free, ...taken.map(({ fromEnd }) => fromEnd)])].filter((at) => at >= 0 && at <= length).sort((one, other) => one - other);
}

/** Thickness at each of those places; undefined when it was not read at all. */
export function thicknessesAt(stations: readonly Length[], taken: readonly FaceReading[]): readonly Length[] | undefined {
  return rowOf(taken, 'thickness', stations, []);
}

/** The readings of one kind at every place; at `resting` it is nothing unless it was read there. */
function rowOf(taken: readonly FaceReading[], kind: ReadingKind, stations: readonly Length[], resting: readonly Length[]): readonly Length[] | undefined {
  const read = taken.filter(({ what }) => what === kind);
  if (read.length === 0) return undefined;
  const known = new Map<Length, Length>([...resting.map((at): [Length, Length] => [at, ZERO_LENGTH]), ...read.map(({ fromEnd, gap }): [Length, Length] => [fromEnd, gap])]);
  const places = [...known].sort(([one], [other]) => one - other);
  return stations.map((at) => between(places, at));
}

function between(places: readonly (readonly [at: Length, gap: Length])[], at: Length): Length {
  const after = places.findIndex(([place]) => place >= at);
  const [next, before] = [places[after], places[after < 0 ? places.length - 1 : after - 1]];
  if (!next || !before) return (next ?? before)?.[1] ?? ZERO_LENGTH;
  return nanometres(Math.round(before[1] + ((next[1] - before[1]) * (at - before[0])) / (next[0] - before[0])));
}
