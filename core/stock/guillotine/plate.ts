/**
 * Cutting from a plate by straight cuts from edge to edge: pieces with a value each, from one plate, for the greatest value together.
 * Sizes are whole numbers of any unit; the pieces do not turn. A saw kerf is put into it by adding it to all sizes and to the plate.
 */
export interface PlateProblem {
  readonly length: number;
  readonly width: number;
  readonly pieces: readonly PlatePiece[];
}

export interface PlatePiece {
  readonly length: number;
  readonly width: number;
  readonly value: number;
  /** No more of them than this are of use; any number when absent. */
  readonly most?: number;
}

/** A plate or part of one: one piece and its waste, nothing but waste, or cut in two at a distance from the left or lower end. */
export type Layout =
  | { readonly kind: 'piece'; readonly piece: number }
  | { readonly kind: 'waste' }
  | { readonly kind: 'cut'; readonly across: 'length' | 'width'; readonly at: number; readonly first: Layout; readonly second: Layout };

export interface PlatePlan {
  readonly value: number;
  readonly layout: Layout;
  /** No plan is worth more. */
  readonly bound: number;
  readonly proven: boolean;
}

/** Throws on sizes that are no whole numbers from 1 and values that are none from 0: those are bugs, not input. */
export function checkPlate({ length, width, pieces }: PlateProblem): void {
  const sizes = [length, width, ...pieces.flatMap((piece) => [piece.length, piece.width])];
  const counts = pieces.flatMap(({ value, most }) => [value, most ?? 0]);
  if (!sizes.every((size) => Number.isSafeInteger(size) && size > 0)) throw new RangeError('sizes of plates and pieces are whole numbers from 1');
  if (!counts.every((count) => Number.isSafeInteger(count) && count >= 0)) throw new RangeError('values and counts are whole numbers from 0');
}

/** Every distance up to `limit` that pieces side by side can add up to, 0 with them (Herz 1972): where a cut can be of use. */
export function usefulDistances(limit: number, sizes: readonly { readonly size: number; readonly most: number }[]): Int32Array {
  const reached = new Uint8Array(limit + 1);
  reached[0] = 1;
  for (const { size, most } of sizes) {
    // How many of this size are needed to come here; 0 where the sizes before reach by themselves.
    const needed = Int32Array.from(reached, (is) => (is === 1 ? 0 : most + 1));
    for (let at = size; at <= limit; at++) {
      needed[at] = Math.min(needed[at] ?? 0, (needed[at - size] ?? 0) + 1);
      if ((needed[at] ?? 0) <= most) reached[at] = 1;
    }
  }
  return Int32Array.from([...reached.keys()].filter((at) => reached[at] === 1));
}

/** For every distance up to `limit`: the place in `points` of the last one that is no farther. */
export function lastPointUpTo(limit: number, points: Int32Array): Int32Array {
  const places = new Int32Array(limit + 1);
  for (let at = 0, place = 0; at <= limit; at++) {
    if (points[place + 1] === at) place++;
    places[at] = place;
  }
  return places;
}
