import type { Length } from '../length/length.ts';
import { nanometres } from '../length/length.ts';
import type { Basis, SizeValue, Sizes } from './evaluate.ts';
import { evaluate, sizeOf } from './evaluate.ts';
import type { LoadedPiece } from './loadedPiece.ts';
import type { Measurement } from './measurement.ts';
import type { SizeMention } from './sentence.ts';

/** A size that is not what it was. */
export interface Moved extends SizeMention {
  readonly from: Length;
  readonly to: Length;
  /** To less from: above zero when it grew. */
  readonly by: Length;
  /** 'measured': moved because it was measured; 'follows': because something it stands on was; 'planned': it came back to the plan. */
  readonly basis: Basis;
}

const ROUGH = /^(?:rough|rip)[A-Z]/u;

/**
 * What moved between two states of the measurements, in the order of the file. Copies are named when they did not all move alike; then the set,
 * which follows the largest of them, is not listed beside them. Sizes of tools are left out, and rough sizes too: they are the finished ones and
 * an allowance, and are told with those.
 */
export function whatMoved(piece: LoadedPiece, before: readonly Measurement[], after: readonly Measurement[]): readonly Moved[] {
  const [old, now] = [evaluate(piece, before), evaluate(piece, after)];
  return piece.graph.nodes.flatMap(({ name, owner, key, derived }, index) => {
    if (owner.kind === 'tool' || (derived && ROUGH.test(key))) return [];
    if (!old.copies.has(index) && !now.copies.has(index)) {
      // The quick look first: most sizes stay where they are.
      return old.set.lengths[index] === now.set.lengths[index] ? [] : compare(old, now, { size: name });
    }
    return moveOfCopies(old, now, name, owner.count);
  });
}

function moveOfCopies(old: Sizes, now: Sizes, size: string, count: number): readonly Moved[] {
  const moves = Array.from({ length: count }, (_, index) => compare(old, now, { size, copy: index + 1 })).flat();
  const [first] = moves;
  const alike = first !== undefined && moves.length === count && moves.every(({ from, to }) => from === first.from && to === first.to);
  return alike ? compare(old, now, { size }) : moves;
}

function compare(old: Sizes, now: Sizes, mention: SizeMention): readonly Moved[] {
  const from: SizeValue | undefined = sizeOf(old, mention.size, mention.copy);
  const to: SizeValue | undefined = sizeOf(now, mention.size, mention.copy);
  if (from === undefined || to === undefined || from.length === to.length) return [];
  return [{ ...mention, from: from.length, to: to.length, by: nanometres(to.length - from.length), basis: to.basis }];
}
