/** Which way the growth rings of a board arch, seen on its end: 'up' has the heart side down. */
export type Arch = 'up' | 'down';

const OTHER: Readonly<Record<Arch, Arch>> = { up: 'down', down: 'up' };

export interface ArchPlan {
  readonly arches: readonly Arch[];
  /** Boards, from 1, that arch the same way as the one before them, because the maker wants both so. */
  readonly alike: readonly number[];
}

/**
 * Which way each board of a glued-up panel arches: by turns, so that what cups cups against its neighbour (common practice, no source), but where the
 * maker has told a board's way. As few neighbours alike as those allow: between two told boards one pair is alike when they do not fit the turns, and
 * that pair is the last before the second. The first board, untold, arches up or as the first told one has it.
 */
export function planArches(boards: number, told: ReadonlyMap<number, Arch>): ArchPlan {
  const first = [...told.keys()].sort((one, other) => one - other)[0];
  const start = first === undefined ? 'up' : byTurns(told.get(first) ?? 'up', first - 1);
  const arches: Arch[] = [];
  for (let board = 1; board <= boards; board++) {
    const before = arches.at(-1);
    arches.push(told.get(board) ?? (before === undefined ? start : OTHER[before]));
  }
  return { arches, alike: arches.flatMap((arch, index) => (index > 0 && arches[index - 1] === arch ? [index + 1] : [])) };
}

function byTurns(arch: Arch, steps: number): Arch {
  return steps % 2 === 0 ? arch : OTHER[arch];
}
