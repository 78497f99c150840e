import { add } from '../length/arithmetic.ts';
import { ZERO_LENGTH, type Length } from '../length/length.ts';
import type { ReadSize } from '../piece/cavity.ts';
import { sizeOf, type Sizes } from '../piece/evaluate.ts';
import type { MortiseAndTenon } from '../piece/file.ts';
import type { LoadedPiece } from '../piece/loadedPiece.ts';
import type { InputFault } from '../reckoning/reckoning.ts';
import { success, type Result } from '../result.ts';
import { planChopping, type ChopPlan } from './chopping.ts';
import type { ChopStage } from './chopStages.ts';
import { comersOf, limitsOf, neighboursOf } from './comers.ts';
import { ownedChisel, type OwnedChisel } from './ownedChisel.ts';
import { chooseWay, longestBeside, waysToMeet, type Meeting } from '../tenon/meeting.ts';
import { slotStages } from './slotStages.ts';
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

/** The stages of cutting it: of a bridle's slot, sawing; else those of chopping. */
export function stagesFor(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon, copy?: number): Result<readonly ChopStage[], InputFault> {
  if (joint.shape === 'bridle') {
    const size = sizeReader(sizes, joint);
    return slotStages({ deep: size('mortiseLength'), width: size('mortiseWidth'), wood: lengthOf(sizes, `${joint.mortiseIn}.${joint.mortiseInto ?? 'width'}`, copy), end: size('fromTop') > 0 ? 'bottom' : 'top' });
  }
  const planned = choppingOf(piece, sizes, joint, copy);
  return planned.ok ? success(planned.value.stages) : planned;
}

/** The chisel for a mortise at the sizes as they stand. */
export function chiselOf(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): OwnedChisel {
  return ownedChisel(piece.file, (name) => sizeOf(sizes, name)?.length, joint);
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

/** Of twins, the room of the one that has the least. */
export function roomFor(piece: LoadedPiece, sizes: Sizes, joint: MortiseAndTenon): TenonRoom | undefined {
  const read: ReadSize = (name, copy) => sizeOf(sizes, name, copy)?.length;
  const comers = comersOf(joint, read);
  const [first] = comers;
  if (!first) return undefined;
  const limits = limitsOf(joint, read);
  const met = comers.flatMap((self) => neighboursOf(piece.file, joint).flatMap((other) => comersOf(other, read).flatMap((comer) => {
    const ways = waysToMeet(self, comer, limits);
    return ways[0]?.way === 'clear of each other' ? [] : [{ self, other, comer, mitred: chooseWay(ways.filter(({ way }) => way === 'mitred'), 'mitred') }];
  })));
  const square = met.reduce<Length>((least, { self, other, comer }) => lesser(least, longestBeside(self, comer, sizeReader(sizes, other)('tenonLength'), limits)), first.most);
  const mitred = met.map((one) => one.mitred).filter((way): way is Meeting => way !== undefined);
  return {
    planned: sizeReader(sizes, joint)('tenonLength'), square, neighbours: [...new Set(met.map(({ other }) => other))],
    ...(mitred.length === 0 || mitred.length < met.length ? {} : { mitred: [least(mitred, longest), least(mitred, shortest)] as const }),
  };
}

function least(ways: readonly Meeting[], of: (steps: Meeting['first']) => Length): Length {
  return ways.map(({ first }) => of(first)).reduce(lesser);
}

function lesser(one: Length, other: Length): Length {
  return one < other ? one : other;
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
  return rackingOf(tenonsInRacking(joint, width, length, size('gap')), thickness, wood, { newtons: USUAL_PUSH_NEWTONS, heightMm });
}

/** Of twins one above the other both hold; of two side by side the one is reckoned alone, which is on the safe side. */
function tenonsInRacking({ tenons }: MortiseAndTenon, width: Length, length: Length, gap: Length): Parameters<typeof rackingOf>[0] {
  const one = { top: ZERO_LENGTH, bottom: width, length };
  return tenons === 'one above the other' ? [one, { top: add(width, gap), bottom: add(width, gap, width), length }] : [one];
}

function sizeReader(sizes: Sizes, joint: MortiseAndTenon): (key: string) => Length {
  return (key) => lengthOf(sizes, `${joint.id}.${key}`);
}

function lengthOf(sizes: Sizes, name: string, copy?: number): Length {
  return sizeOf(sizes, name, copy)?.length ?? ZERO_LENGTH;
}
