import type { PackingProblem } from './packing/problem.ts';
import type { PlateProblem } from './guillotine/plate.ts';

export type Instance =
  | { readonly kind: 'one-dimensional'; readonly problem: PackingProblem }
  | { readonly kind: 'guillotine'; readonly problem: PlateProblem };

/**
 * Reads the OR-Library's texts (Beasley 1990): one-dimensional bin packing (number of items, capacity, sizes) and guillotine cutting
 * (number of pieces; length and width of the plate; then length, width, value of each, or length, width, most copies, value). Told apart by how
 * many numbers there are. Undefined when the numbers fit neither.
 */
export function readInstance(text: string): Instance | undefined {
  const numbers = text.trim().split(/\s+/).map(Number);
  const [count = 0, first = 0, second = 0] = numbers;
  if (!numbers.every((number) => Number.isSafeInteger(number) && number >= 0) || count < 1) return undefined;
  if (numbers.length === count + 2) {
    const sizes = numbers.slice(2);
    return sizes.every((size) => size > 0 && size <= first) ? { kind: 'one-dimensional', problem: { capacity: first, sizes } } : undefined;
  }
  const each = (numbers.length - 3) / count;
  if (each !== 3 && each !== 4) return undefined;
  const pieces = Array.from({ length: count }, (_, piece) => {
    const [length = 0, width = 0, third = 0, value = 0] = numbers.slice(3 + piece * each);
    return each === 3 ? { length, width, value: third } : { length, width, most: third, value };
  });
  return pieces.every(({ length, width }) => length > 0 && width > 0) && first > 0 && second > 0 ? { kind: 'guillotine', problem: { length: first, width: second, pieces } } : undefined;
}
