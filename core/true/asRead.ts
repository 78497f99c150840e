import { absolute } from '../length/arithmetic.ts';
import { nanometres, type Length } from '../length/length.ts';
import type { Rounding } from '../length/rounding.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { failure, success, type Result } from '../result.ts';
import { trueBoard, type TruedBoard } from './board.ts';
import { readingsOf, thicknessesAt, type BoardSize } from './fromReadings.ts';
import { stationsFor, stillWanted, wantedOn, type Asked, type WantedReading } from './guide.ts';
import { planingPlan } from './planing.ts';
import { squareFace, thicknessLeft } from './plane.ts';
import { isEdge, type FaceReading, type TruedFace } from './readings.ts';
import { shapeOf, type FaceShape } from './shape.ts';
import { surfaceOf, type Surface } from './surface.ts';
import type { FlatnessLimit } from './tolerance.ts';

/** All that is known of one side of a board when it is asked about. */
export interface SideToTrue {
  readonly size: BoardSize;
  readonly face: TruedFace;
  /** How far a place may stand over the true face, and, of an edge, how much light may show under the square. */
  readonly limit: FlatnessLimit;
  readonly squareWithin?: Length;
  /** Of this side, and calipers of the board. */
  readonly taken: readonly FaceReading[];
  readonly stick: Length;
  readonly shaving: Length;
  readonly unit: Rounding['unit'];
  /** The thickness that is wanted in the end; of an edge there is none. */
  readonly planned?: Length;
}

/** What the readings of one side come to. */
export interface SideAsRead {
  readonly surface: Surface;
  readonly shape: FaceShape;
  readonly board: TruedBoard;
  /** How far the highest place stands over the true face that is to be. */
  readonly outOfFlat: Length;
  readonly trueEnough: boolean;
  /** Of an edge: the most light under the square, and where. */
  readonly outOfSquare?: { readonly gap: Length; readonly fromEnd: Length };
  /** How many of the readings of the guide are taken, of how many. */
  readonly read: number;
  readonly wanted: number;
  /** Where both diagonals were: which one is longer, by how much, and how far the ends are out of square over the width. */
  readonly diagonals?: { readonly longer: 'first' | 'second' | 'neither'; readonly by: Length; readonly endsOff: Length };
  /** Where thicknesses were read: the thinnest and the thickest place. */
  readonly calipers?: { readonly least: Length; readonly most: Length };
}

/**
 * Puts the readings of a side together and says what to plane. The other face is planed parallel to the first, at the planned thickness, where calipers were put to it;
 * any other side to the plane that takes the least. Fails with a sentence where the readings cannot be (sticks shorter than the board is wide, for one).
 */
export function sideAsRead(side: SideToTrue): Result<SideAsRead, InputFault> {
  const { size, face, limit: { limit }, squareWithin, taken, stick, shaving, unit, planned } = side;
  const guide = stationsFor(size.length, unit);
  const readings = readingsOf(size, stick, guide, taken);
  const surface = surfaceOf(readings);
  if (!surface.ok) return failure(surface.fault);
  const thicknesses = thicknessesAt(readings.stations, taken);
  const toGauge = face === 'other face' && thicknesses !== undefined && planned !== undefined;
  const board = toGauge ? toTheLine(surface.value, thicknesses, planned, shaving)
    : isEdge(face) ? squared(surface.value, shaving)
    : trueBoard(surface.value, shaving, face === 'face' ? thicknesses : undefined, planned);
  const outOfSquare = squarest(taken);
  const wanted = wantedOn(face, guide);
  return success({
    surface: surface.value, shape: shapeOf(surface.value), board, outOfFlat: board.first.greatest,
    trueEnough: board.first.greatest <= limit && (squareWithin === undefined || (outOfSquare?.gap ?? 0) <= squareWithin), ...(outOfSquare ? { outOfSquare } : {}),
    read: wanted.length - stillWanted(wanted, guide, taken).length, wanted: wanted.length,
    ...diagonalsOf(taken, size),
    ...(thicknesses ? { calipers: { least: nanometres(Math.min(...thicknesses)), most: nanometres(Math.max(...thicknesses)) } } : {}),
  });
}

/** Opposite sides taken as alike: first² − second² = 4 · length · e, where an end runs out by e over the width (parallelogram, law of cosines). */
function diagonalsOf(taken: readonly FaceReading[], { length }: BoardSize): Pick<SideAsRead, 'diagonals'> {
  const [first, second] = (['first diagonal', 'second diagonal'] as const).map((kind) => taken.find(({ what }) => what === kind)?.gap);
  if (first === undefined || second === undefined) return {};
  const endsOff = nanometres(Math.round((Math.abs(first - second) * (first + second)) / (4 * length)));
  return { diagonals: { longer: first > second ? 'first' : second > first ? 'second' : 'neither', by: nanometres(Math.abs(first - second)), endsOff } };
}

/** Of all that the square showed, the most. */
function squarest(taken: readonly FaceReading[]): SideAsRead['outOfSquare'] {
  const tried = taken.filter(({ what }) => what === 'square').map(({ gap, fromEnd }) => ({ gap: absolute(gap), fromEnd }));
  return tried.reduce<SideAsRead['outOfSquare']>((worst, one) => (worst === undefined || one.gap > worst.gap ? one : worst), undefined);
}

function squared(surface: Surface, shaving: Length): TruedBoard {
  const first = squareFace(surface);
  return { first, plan: planingPlan(surface, first.depths, shaving), laidForThickness: false };
}

/**
 * The other face, with the first one true: at each place what calipers say over the planned thickness comes off, and to the left and right of it what this face stands higher
 * there. Where that is less than nothing the wood does not reach, and the planned thickness cannot be had.
 */
function toTheLine(surface: Surface, thicknesses: readonly Length[], planned: Length, shaving: Length): TruedBoard {
  const over = surface.points.map(({ station, place, height }) => {
    const middle = surface.points.find((point) => point.station === station && point.place === 'middle')?.height ?? height;
    return (thicknesses[station] ?? planned) - planned + (place === 'middle' ? 0 : height - middle);
  });
  const most = nanometres(planned + Math.min(0, ...over));
  const depths = over.map((depth) => nanometres(Math.max(0, Math.round(depth))));
  const first = { depths, greatest: nanometres(Math.max(...depths)), mean: nanometres(Math.round(depths.reduce((sum, depth) => sum + depth, 0) / depths.length)) };
  return { first, plan: planingPlan(surface, depths, shaving), thickness: { afterLeastCut: thicknessLeft({ ...first, depths: over.map(() => nanometres(0)) }, [most]), most }, laidForThickness: false };
}

/** The next reading that the guide asks for on a side, or of the board's thickness; undefined when it has all. */
export function nextWanted(side: Pick<SideToTrue, 'size' | 'unit'>, about: Asked, taken: readonly FaceReading[], leftOut: readonly WantedReading[] = []): WantedReading | undefined {
  const guide = stationsFor(side.size.length, side.unit);
  return stillWanted(wantedOn(about, guide), guide, taken).find((one) => !leftOut.some(({ what, fromEnd }) => what === one.what && fromEnd === one.fromEnd));
}
