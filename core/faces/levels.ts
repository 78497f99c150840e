/**
 * What counts when the copies are placed, what comes first counting before all that follows: a placing is better than another when it is better
 * in the first of these in which they differ. Common practice, no source; the maker may change the order.
 */
export const LEVELS = ['hidden', 'best', 'shown', 'glue lines', 'pairs', 'arches', 'face marks'] as const;
export type Level = (typeof LEVELS)[number];

/** Each level in the words of the bench. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  hidden: 'faces to hide are hidden',
  best: 'the best faces come to the front, or show at least',
  shown: 'faces to show are shown',
  'glue lines': 'glue lines stay off the front',
  pairs: 'faces side by side match, across the front before elsewhere',
  arches: 'the arches point up',
  'face marks': 'face side and face edge are outside, where the gauge runs',
};

/** The order with one level put before another, or before all. */
export function putBefore(order: readonly Level[], level: Level, other: Level | undefined): readonly Level[] {
  const rest = order.filter((one) => one !== level);
  const at = other === undefined ? 0 : rest.indexOf(other);
  return [...rest.slice(0, at), level, ...rest.slice(at)];
}

/** What a placing comes to, level by level; more is better in each. */
export type Score = Readonly<Record<Level, number>>;

/** How far each level can reach for so many copies: from the least to the most of its sum. */
function reach(level: Level, copies: number): readonly [least: number, most: number] {
  switch (level) {
    case 'hidden': return [-2 * copies, 0];
    case 'best': return [0, copies * frontWeight(copies) + 2 * copies];
    case 'shown': case 'face marks': return [0, 2 * copies];
    case 'glue lines': return [-copies, 0];
    case 'pairs': return [0, copies * frontWeight(copies) + copies];
    case 'arches': return [0, copies];
  }
}

/** One to the front is worth more than all that can show elsewhere. */
export function frontWeight(copies: number): number {
  return 2 * copies + 1;
}

/**
 * What one of each level is worth, so that the sum of a placing is larger exactly when the placing is better: the levels are the digits of a number, each
 * with a base wide enough for all that it can come to. Exact: for twelve copies the whole stays far below 2^53.
 */
export function worths(order: readonly Level[], copies: number): Readonly<Record<Level, number>> {
  let worth = 1;
  const entries = [...order].reverse().map((level) => {
    const [least, most] = reach(level, copies);
    const mine = worth;
    worth *= most - least + 1;
    return [level, mine] as const;
  });
  return Object.fromEntries(entries) as Record<Level, number>;
}

export function valueOf(score: Partial<Score>, worth: Readonly<Record<Level, number>>): number {
  return LEVELS.reduce((sum, level) => sum + (score[level] ?? 0) * worth[level], 0);
}
