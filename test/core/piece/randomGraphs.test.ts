import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nanometres } from '../../../core/length/length.ts';
import { evaluate, sizeOf } from '../../../core/piece/evaluate.ts';
import { writePiece } from '../../../core/piece/load.ts';
import type { LoadedPiece } from '../../../core/piece/loadedPiece.ts';
import type { Measurement } from '../../../core/piece/measurement.ts';
import { whatMoved } from '../../../core/piece/moved.ts';
import { partOf, pieceOf } from './builder.ts';
import { loadSound } from './demo.ts';

/**
 * Random pieces whose sizes stand on each other in long chains, worked out by the graph (which keeps the plan and redoes what moved) and by a
 * second, slow reckoner that knows nothing of it: it follows every size down from scratch, in bigints.
 */
interface Term {
  readonly times: number;
  /** Index of an earlier size, and the copy when one is named. */
  readonly size: number;
  readonly copy: number | undefined;
}
interface RandomSize {
  readonly part: number;
  readonly terms: readonly Term[];
  readonly divisor: number;
  readonly sixtyFourths: number;
}
interface RandomPiece {
  readonly counts: readonly number[];
  readonly sizes: readonly RandomSize[];
}

const randomPiece: fc.Arbitrary<RandomPiece> = fc.record({
  counts: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 6 }),
  raw: fc.array(fc.record({ part: fc.nat(), terms: fc.array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.nat(), fc.option(fc.nat(), { freq: 3 })), { maxLength: 3 }), sixtyFourths: fc.integer({ min: 1, max: 640 }), more: fc.nat(3) }), { minLength: 1, maxLength: 60 }),
}).map(({ counts, raw }) => {
  const parts = raw.map(({ part }) => part % counts.length);
  const sizes = raw.map(({ part, terms, sixtyFourths, more }, index): RandomSize => {
    const all = index === 0 ? [] : terms.map(([times, size, copy], place): Term => {
      // The last size before it more often than not, so that chains grow long.
      const under = place === 0 ? index - 1 : size % index;
      const count = counts[parts[under] ?? 0] ?? 1;
      return { times, size: under, copy: copy === null || index === 0 ? undefined : (copy % count) + 1 };
    });
    const names = new Map(all.map((term) => [`${term.size} ${term.copy ?? ''}`, term]));
    const kept = [...names.values()];
    return { part: part % counts.length, terms: kept, divisor: kept.reduce((sum, { times }) => sum + times, 0) + more + (kept.length === 0 ? 1 : 0), sixtyFourths };
  });
  return { counts, sizes };
});

function nameOf(piece: RandomPiece, size: number, copy?: number): string {
  return `part${piece.sizes[size]?.part ?? 0}.${copy === undefined ? '' : `${copy}.`}size${size}`;
}

function load(piece: RandomPiece): LoadedPiece {
  const expressionOf = ({ terms, divisor, sixtyFourths }: RandomSize): string =>
    `(${[...terms.map(({ times, size, copy }) => `${times} * ${nameOf(piece, size, copy)}`), `${sixtyFourths}/64 in`].join(' + ')}) / ${divisor}`;
  return loadSound(writePiece(pieceOf(piece.counts.map((count, part) => {
    const own = piece.sizes.flatMap((size, index) => (size.part === part ? [[`size${index}`, expressionOf(size)] as const] : []));
    return partOf(`part${part}`, count, Object.fromEntries(own));
  }))));
}

interface Taken {
  readonly size: number;
  readonly copy: number | undefined;
  readonly length: number;
}

/** The slow reckoner. */
function reckon(piece: RandomPiece, taken: readonly Taken[]): (size: number, copy: number | undefined) => number {
  const measured = piece.sizes.map((_, size) => {
    let all: number | undefined;
    const single = new Map<number, number>();
    for (const one of taken.filter((item) => item.size === size)) {
      if (one.copy === undefined || (piece.counts[piece.sizes[size]?.part ?? 0] ?? 1) === 1) { all = one.length; single.clear(); } else single.set(one.copy, one.length);
    }
    return { all, single };
  });
  const known = new Map<string, number>();
  const value = (size: number, copy: number | undefined): number => {
    const key = `${size} ${copy ?? ''}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const { terms = [], divisor = 1, sixtyFourths = 0, part = 0 } = piece.sizes[size] ?? {};
    const { all, single } = measured[size] ?? { all: undefined, single: new Map<number, number>() };
    const made = [...single.values(), ...(all !== undefined && single.size < (piece.counts[part] ?? 1) ? [all] : [])];
    const own = copy === undefined ? undefined : single.get(copy) ?? all;
    const worked = (): number => {
      const total = terms.reduce((sum, term) => {
        const inner = term.copy ?? (piece.sizes[term.size]?.part === part ? copy : undefined);
        return sum + BigInt(term.times) * BigInt(value(term.size, inner));
      }, BigInt(sixtyFourths) * 396_875n);
      return Number((2n * total + BigInt(divisor)) / (2n * BigInt(divisor)));
    };
    const result = own ?? (copy === undefined && made.length > 0 ? Math.max(...made) : worked());
    known.set(key, result);
    return result;
  };
  return value;
}

const withMeasurements = randomPiece.chain((piece) => fc.record({
  piece: fc.constant(piece),
  taken: fc.array(fc.tuple(fc.nat(piece.sizes.length - 1), fc.option(fc.nat()), fc.integer({ min: 396_875, max: 2_000_000_000 })), { maxLength: 8 }).map((all) =>
    all.map(([size, copy, length]): Taken => {
      const count = piece.counts[piece.sizes[size]?.part ?? 0] ?? 1;
      return { size, copy: copy === null ? undefined : (copy % count) + 1, length };
    })),
}));

function measurementsOf(piece: RandomPiece, taken: readonly Taken[]): readonly Measurement[] {
  return taken.map(({ size, copy, length }) => ({ size: nameOf(piece, size), length: nanometres(length), ...(copy === undefined ? {} : { copy }) }));
}

describe('random pieces, deep in sizes that stand on each other', () => {
  test('come out the same, worked out from the plan or from scratch, for the set and for every copy', () => {
    fc.assert(fc.property(withMeasurements, ({ piece, taken }) => {
      const sizes = evaluate(load(piece), measurementsOf(piece, taken));
      const expected = reckon(piece, taken);
      const all = piece.sizes.flatMap((size, index) => [undefined, ...Array.from({ length: piece.counts[size.part] ?? 1 }, (_, item) => item + 1)].map((copy) => [index, copy] as const));
      const named = (of: (index: number, copy: number | undefined) => number | undefined): readonly string[] => all.map(([index, copy]) => `${nameOf(piece, index, copy)} ${of(index, copy)}`);
      expect(named((index, copy) => sizeOf(sizes, nameOf(piece, index), copy)?.length)).toEqual(named(expected));
    }), { numRuns: 300 });
  }, 60_000);

  test('are back at the plan once every measurement is withdrawn, and what moved moves back', () => {
    fc.assert(fc.property(withMeasurements, ({ piece, taken }) => {
      const loaded = load(piece);
      const measurements = measurementsOf(piece, taken);
      const there = whatMoved(loaded, [], measurements);
      const back = whatMoved(loaded, measurements, []);
      expect(back.map(({ size, copy, from, to }) => [size, copy, to, from])).toEqual(there.map(({ size, copy, from, to }) => [size, copy, from, to]));
      const plan = evaluate(loaded, []);
      const off = piece.sizes.filter((_, index) => {
        const value = sizeOf(plan, nameOf(piece, index));
        return value?.basis !== 'planned' || value.length !== value.planned;
      });
      expect(off).toEqual([]);
    }), { numRuns: 150 });
  }, 60_000);
});

test('a chain of two thousand sizes is followed to its end, and closed to a circle it is found', () => {
  const chain = (last: string): Record<string, string> => Object.fromEntries(Array.from({ length: 2000 }, (_, index) => [`s${index}`, index === 1999 ? last : `s${index + 1} + 1/64 in`]));
  const loaded = loadSound(writePiece(pieceOf([partOf('slat', 1, {})], chain('1 in'))));
  expect(sizeOf(evaluate(loaded, []), 's0')?.length).toBe(25_400_000 + 1999 * 396_875);
  expect(() => loadSound(writePiece(pieceOf([partOf('slat', 1, {})], chain('s0'))))).toThrow(/the circle s0 → s1 → s2 .* → … → s0 \(2000 sizes\)/u);
}, 60_000);
