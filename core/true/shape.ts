import { absolute, subtract } from '../length/arithmetic.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../length/length.ts';
import type { Place, Surface } from './surface.ts';

/** What is the matter with a face, in the words of the trade. */
export interface FaceShape {
  /** How far one far corner stands over the other, seen against the near end, in the board itself; and which one. The sticks show more. */
  readonly wind: { readonly lift: Length; readonly highFarCorner: 'left' | 'right' | 'neither'; readonly degrees: number };
  /** Across: the greatest hollow (more than nothing) or crown (less). */
  readonly across: { readonly amount: Length; readonly at: Length };
  /** Along the middle: how far it is hollow (more than nothing) or crowned (less), against the line from end to end. */
  readonly along: { readonly amount: Length; readonly at: Length };
}

export function shapeOf(surface: Surface): FaceShape {
  return { wind: windOf(surface), across: acrossOf(surface), along: alongOf(surface) };
}

/** How much more the tips of sticks of that length show than the board has over its width: L / w. */
export function seenBySticks(lift: Length, stick: Length, width: Length): Length {
  return nanometres(Math.round((lift * stick) / width));
}

/** Between the first and the last station: they are where the sticks lie when a board is sighted. */
function windOf(surface: Surface): FaceShape['wind'] {
  const last = surface.points.at(-1)?.station ?? 0;
  const tilt = (station: number): Length => subtract(heightAt(surface, station, 'left'), heightAt(surface, station, 'right'));
  const lift = subtract(tilt(last), tilt(0));
  return {
    lift: absolute(lift),
    highFarCorner: lift > 0 ? 'left' : lift < 0 ? 'right' : 'neither',
    degrees: (Math.atan2(Math.abs(lift), surface.width) * 180) / Math.PI,
  };
}

function acrossOf(surface: Surface): FaceShape['across'] {
  let worst: FaceShape['across'] = { amount: ZERO_LENGTH, at: ZERO_LENGTH };
  for (const { station, fromEnd } of surface.points) {
    const edges = (heightAt(surface, station, 'left') + heightAt(surface, station, 'right')) / 2;
    const amount = nanometres(Math.round(edges - heightAt(surface, station, 'middle')));
    if (Math.abs(amount) > Math.abs(worst.amount)) worst = { amount, at: fromEnd };
  }
  return worst;
}

function alongOf({ points }: Surface): FaceShape['along'] {
  const middle = points.filter(({ place }) => place === 'middle');
  const [first, last] = [middle[0], middle.at(-1)];
  let worst: FaceShape['along'] = { amount: ZERO_LENGTH, at: ZERO_LENGTH };
  if (!first || !last) return worst;
  for (const { fromEnd, height } of middle) {
    const line = first.height + ((last.height - first.height) * (fromEnd - first.fromEnd)) / (last.fromEnd - first.fromEnd);
    const amount = nanometres(Math.round(line - height));
    if (Math.abs(amount) > Math.abs(worst.amount)) worst = { amount, at: fromEnd };
  }
  return worst;
}

function heightAt({ points }: Surface, station: number, place: Place): Length {
  return points.find((point) => point.station === station && point.place === place)?.height ?? ZERO_LENGTH;
}
