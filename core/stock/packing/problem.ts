import { greatestCommonDivisor } from '../../length/arithmetic.ts';

/**
 * Cutting along one length: pieces of given sizes from as few bars of one length as possible. Sizes are whole numbers of any unit
 * (nanometres at the bench), from 1 up to the capacity. A saw kerf k is put into it by adding k to every size and to the capacity.
 */
export interface PackingProblem {
  readonly capacity: number;
  readonly sizes: readonly number[];
}

/** Pieces of one size, together: `size` in units of the greatest common divisor, `copies` the indices in the problem that they stand for. */
export interface SizeClass {
  readonly size: number;
  readonly copies: readonly number[];
}

/** A problem with equal pieces put together, largest first, and all lengths divided by what they share. */
export interface GroupedProblem {
  readonly capacity: number;
  readonly classes: readonly SizeClass[];
}

export interface Packing {
  /** Indices of the pieces in each bar. */
  readonly bars: readonly (readonly number[])[];
  /** No plan can do with fewer. */
  readonly bound: number;
  /** True when the plan is as good as the bound, so none is better. */
  readonly proven: boolean;
}

/** Told and asked while a search runs: whether to go on, and what was found. Core has no clock: the caller brings the patience. */
export interface Patience {
  readonly goOn: () => boolean;
}

/** Throws on sizes or a capacity that are no whole numbers from 1, or a size over the capacity: those are bugs, not input. */
export function grouped(problem: PackingProblem): GroupedProblem {
  const { capacity, sizes } = problem;
  if (![capacity, ...sizes].every((size) => Number.isSafeInteger(size) && size > 0)) throw new RangeError('sizes and capacity are whole numbers from 1');
  const bySize = new Map<number, number[]>();
  sizes.forEach((size, index) => {
    if (size > capacity) throw new RangeError(`a piece of ${size} is longer than the bar, ${capacity}`);
    const copies = bySize.get(size);
    if (copies === undefined) bySize.set(size, [index]);
    else copies.push(index);
  });
  const shared = [...bySize.keys()].reduce(greatestCommonDivisor, 0) || 1;
  const classes = [...bySize].map(([size, copies]) => ({ size: size / shared, copies })).sort((a, b) => b.size - a.size);
  return { capacity: Math.floor(capacity / shared), classes };
}
