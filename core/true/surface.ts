import { negate } from '../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { telling } from '../reckoning/telling.ts';
import { failure, success, type Result } from '../result.ts';

/**
 * What a maker reads on one face. The board lies with that face up and its marked end near; left and right are as seen from there. Whatever was not
 * read is taken as true.
 */
export interface FaceReadings {
  readonly length: Length;
  readonly width: Length;
  /** Where the readings were taken, from the marked end, in order. */
  readonly stations: readonly Length[];
  /** Under a straightedge that lies along the middle of the face: the gap at each station, nothing where it touches. */
  readonly along?: readonly Length[];
  /** One stick stays at the first station: how much higher the left end of the other one stands at each station, over the sticks' whole length; less than nothing where the right end is high. */
  readonly sticks?: { readonly length: Length; readonly leftHigh: readonly Length[] };
  /** A straightedge across, at each station: the gap in the middle; less than nothing where the face is crowned and the gap is at both edges. */
  readonly across?: readonly Length[];
}

export type Place = 'left' | 'middle' | 'right';
export const PLACES: readonly Place[] = ['left', 'middle', 'right'];

/** One point of the face and its height over the straight line that the readings were taken from. */
export interface SurfacePoint {
  readonly station: number;
  readonly place: Place;
  readonly fromEnd: Length;
  /** From the left edge. */
  readonly fromLeft: Length;
  readonly height: Length;
}

/** A face as a map of heights: three points across at each station. */
export interface Surface {
  readonly length: Length;
  readonly width: Length;
  readonly points: readonly SurfacePoint[];
}

const MOST_STATIONS = 60;

/**
 * Puts the three kinds of reading together: height(station, place) = −gap along + tilt × distance left of the middle, and the edges above or below the middle by what
 * the straightedge across shows. The sticks magnify: over the width w they show w / L of what their tips of length L do (similar triangles).
 */
export function surfaceOf(readings: FaceReadings): Result<Surface, InputFault> {
  const fault = faultOf(readings);
  if (fault) return failure(fault);
  const { length, width, stations } = readings;
  return success({ length, width, points: stations.flatMap((fromEnd, station) => PLACES.map((place) => pointAt(readings, station, fromEnd, place))) });
}

function pointAt({ width, along, sticks, across }: FaceReadings, station: number, fromEnd: Length, place: Place): SurfacePoint {
  const middle = negate(along?.[station] ?? ZERO_LENGTH);
  const toLeft = place === 'left' ? 0.5 : place === 'right' ? -0.5 : 0;
  const lift = sticks ? (toLeft * width * (sticks.leftHigh[station] ?? 0)) / sticks.length : 0;
  const rise = place === 'middle' ? 0 : (across?.[station] ?? 0);
  return { station, place, fromEnd, fromLeft: nanometres(Math.round(width * (0.5 - toLeft))), height: nanometres(Math.round(middle + lift + rise)) };
}

function faultOf({ length, width, stations, along, sticks, across }: FaceReadings): InputFault | undefined {
  if (length <= 0) return { key: 'length', message: 'A board has a length: give it from end to end.' };
  if (width <= 0) return { key: 'width', message: 'A board has a width: give it across the face.' };
  if (stations.length < 2) return { key: 'stations', message: 'Read at two places at the least: near each end.' };
  if (stations.length > MOST_STATIONS) return { key: 'stations', message: `That is more than ${MOST_STATIONS} places. Every hand's breadth is enough.` };
  const wrong = stations.findIndex((at, index) => at < 0 || at > length || at <= (stations[index - 1] ?? -1));
  if (wrong >= 0) return { key: 'stations', message: telling`The places go from the marked end on, each further than the one before, none past the length of ${length}: ${stations[wrong] ?? length} does not.` };
  const rows: readonly (readonly [string, readonly Length[] | undefined])[] = [['along', along], ['sticks', sticks?.leftHigh], ['across', across]];
  for (const [key, row] of rows) if (row && row.length !== stations.length) return { key, message: `There are ${stations.length} places and ${row.length} readings here. Give one for each place; 0 where nothing shows.` };
  if (sticks && sticks.length < width) return { key: 'stick', message: telling`Winding sticks of ${sticks.length} do not reach across a face of ${width}. Longer ones show more, too.` };
  return along?.some((gap) => gap < 0) ? { key: 'along', message: 'A gap under the straightedge is nothing or more. Where the face is crowned, let it rest on the crown and read the gaps towards the ends.' } : undefined;
}
