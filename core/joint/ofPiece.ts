import { subtract } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import type { Result } from '../result.ts';
import { planChopping, type ChopPlan } from './chopping.ts';
import { deepestMortise } from './depth.ts';
import { marksFor, type Mark, type MarkKind } from './marks.ts';
import { chooseWay, longestBeside, waysToMeet, type Comer, type Meeting, type MeetingLimits } from '../tenon/meeting.ts';
import { LEFT } from './proportion.ts';
import { rackingOf, type Racking } from './racking.ts';
import { longest, shortest } from '../tenon/solid.ts';
import { strengthOf } from '../wood/woodStrength.ts';

/** Woods that a chisel goes into more easily; common practice, no source. */
const SOFT = /pine|poplar|tulip|cedar|fir\b|spruce|basswood|lime|butternut|redwood|larch|hemlock|willow|aspen/iu;

export function hardnessOf(species: string): 'hard' | 'soft' {
  return SOFT.test(species) ? 'soft' : 'hard';
}

/** How a joint's mortise is chopped, at the sizes as they stand. */
export function choppingOf(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon, copy?: number): Result<ChopPlan, InputFault> {
  const size = sizeReader(sizes, joint);
  const host = piece.file.parts.find(({ id }) => id === joint.mortiseIn);
  return planChopping({
    from: size('fromTop'), length: size('mortiseLength'), width: size('mortiseWidth'), depth: size('mortiseDepth'),
    wood: lengthOf(sizes, `${joint.mortiseIn}.${joint.mortiseInto ?? 'width'}`, copy), hardness: hardnessOf(host?.species ?? ''),
  });
}

/** The chisel for a mortise: the owned one that is as wide, or else the nearest. */
export function chiselOf(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): { readonly width: Length; readonly chisel?: Length; readonly off: Length } {
  const width = sizeReader(sizes, joint)('mortiseWidth');
  const owned = piece.file.tools.chisels.map((_, index) => lengthOf(sizes, `tools.chisel${index + 1}`));
  const [chisel] = owned.sort((one, other) => Math.abs(one - width) - Math.abs(other - width));
  return chisel === undefined ? { width, off: ZERO_LENGTH } : { width, chisel, off: subtract(chisel, width) };
}

/** How long a tenon could be, beside those that come into the same part. */
export interface TenonRoom {
  readonly planned: Length;
  /** With square ends, the neighbours as they are planned. */
  readonly square: Length;
  /** With mitred ends, on the longer cheek and the shorter; absent when it meets nothing. */
  readonly mitred?: readonly [longer: Length, shorter: Length];
  readonly neighbours: readonly MortiseAndTenon[];
}

export function roomFor(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): TenonRoom | undefined {
  const self = comerOf(piece, sizes, joint);
  if (!self) return undefined;
  const limits: MeetingLimits = { clearance: clearanceOf(sizes, joint), web: LEFT.web };
  const met = neighboursOf(piece, joint).flatMap((other) => {
    const comer = comerOf(piece, sizes, other);
    const ways = comer ? waysToMeet(self, comer, limits) : [];
    return comer && ways[0]?.way !== 'clear of each other' ? [{ other, comer, mitred: chooseWay(ways.filter(({ way }) => way === 'mitred'), 'mitred') }] : [];
  });
  const square = met.reduce<Length>((least, { other, comer }) => lesser(least, longestBeside(self, comer, sizeReader(sizes, other)('tenonLength'), limits)), self.most);
  const mitred = met.map((one) => one.mitred).filter((way): way is Meeting => way !== undefined);
  return {
    planned: sizeReader(sizes, joint)('tenonLength'), square, neighbours: met.map(({ other }) => other),
    ...(mitred.length === 0 || mitred.length < met.length ? {} : { mitred: [least(mitred, longest), least(mitred, shortest)] as const }),
  };
}

function least(ways: readonly Meeting[], of: (steps: Meeting['first']) => Length): Length {
  return ways.map(({ first }) => of(first)).reduce(lesser);
}

function lesser(one: Length, other: Length): Length {
  return one < other ? one : other;
}

/** Joints in the same part whose mortises come in from the side, in a place that both have. */
function neighboursOf({ file }: LoadedPiece, joint: MortiseAndTenon): readonly MortiseAndTenon[] {
  return file.joints.filter((other): other is MortiseAndTenon => other.kind === 'mortise and tenon' && other.mortiseIn === joint.mortiseIn
    && (other.mortiseInto ?? 'width') !== (joint.mortiseInto ?? 'width')
    && (joint.places === undefined || other.places === undefined || joint.places.some((place) => other.places?.includes(place))));
}

function comerOf(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): Comer | undefined {
  const marks = marksFor(piece, sizes, joint.mortiseIn).filter((mark) => mark.joint === joint.id);
  const find = (kind: MarkKind): Mark | undefined => marks.find((mark) => mark.kind === kind);
  const [start, end, near, far, depth] = [find('mortise start'), find('mortise end'), find('mortise near side'), find('mortise far side'), find('mortise depth')];
  if (!start || !end || !near || !far || !depth) return undefined;
  const into = depth.within;
  return { into, near: near.at, thickness: subtract(far.at, near.at), top: start.at, bottom: end.at, most: subtract(deepestMortise(into).depth, clearanceOf(sizes, joint)) };
}

function clearanceOf(sizes: Sizes, joint: MortiseAndTenon): Length {
  const size = sizeReader(sizes, joint);
  const clearance = subtract(size('mortiseDepth'), size('tenonLength'));
  return clearance > 0 ? clearance : ZERO_LENGTH;
}

/** Guidance by plain statics for a push of 300 newtons along the top of the piece; undefined for a wood that is not in the table. */
export const USUAL_PUSH_NEWTONS = 300;

export function rackingOfJoint(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): Racking | undefined {
  const rail = piece.file.parts.find(({ id }) => id === joint.tenonOn);
  const wood = strengthOf(rail?.species ?? '');
  const size = sizeReader(sizes, joint);
  const [length, width, thickness] = [size('tenonLength'), size('tenonWidth'), size('tenonThickness')];
  if (!wood || length <= 0 || width <= 0 || thickness <= 0) return undefined;
  const heightMm = lengthOf(sizes, `${joint.mortiseIn}.length`) / 1e6;
  return rackingOf([{ top: ZERO_LENGTH, bottom: width, length }], thickness, wood, { newtons: USUAL_PUSH_NEWTONS, heightMm });
}

function sizeReader(sizes: Sizes, joint: MortiseAndTenon): (key: string) => Length {
  return (key) => lengthOf(sizes, `${joint.id}.${key}`);
}

function lengthOf(sizes: Sizes, name: string, copy?: number): Length {
  return sizeOf(sizes, name, copy)?.length ?? ZERO_LENGTH;
}
