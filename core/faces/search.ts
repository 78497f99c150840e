/** A way to put one copy into one place: what it is worth by itself, and what its neighbours see of it. */
export interface Choice<Turned> {
  readonly copy: number;
  readonly turned: Turned;
  readonly value: number;
  /** What is matched with the neighbour before and after it, from 1; 0 matches nothing. */
  readonly before: number;
  readonly after: number;
  /** How near it is to a placing that is compared with: 1 for what stands just as there. */
  readonly near: number;
  /** It stands in another place than there. */
  readonly moved: boolean;
}

export interface Ring<Turned> {
  /** The choices for each place, round the piece; the copies count from 0. */
  readonly places: readonly (readonly Choice<Turned>[])[];
  /** What it is worth when a place and the next match; the last with the first. */
  readonly match: readonly number[];
}

/** All placings of one value: the one of them that is nearest, and how many there are. */
export interface Reached<Turned> {
  readonly value: number;
  readonly near: number;
  readonly ways: number;
  readonly choices: readonly Choice<Turned>[];
}

interface Cell<Turned> {
  readonly value: number;
  readonly near: number;
  ways: number;
  readonly choice: Choice<Turned>;
  readonly came: Cell<Turned> | null;
}

const VALUES_KEPT = 2;
/** What is matched is one of fewer than this. */
const KINDS = 4;

/**
 * The best value of all placings, each copy in one place, and the next best; for those that move a copy and those that only turn some. Exact: goes
 * round the places and keeps for each set of copies used, each sight of the last and of the first, the two best values (dynamic programming). A placing
 * of the second value overall is never lost: were its beginning only third among its like, the two before it would, with the same end, both be better.
 */
export function searchRing<Turned>({ places, match }: Ring<Turned>): { readonly still: readonly Reached<Turned>[]; readonly moved: readonly Reached<Turned>[] } {
  let layer = new Map<number, Cell<Turned>[]>();
  for (const choice of reduced(places[0] ?? [])) offer(layer, keyOf(1 << choice.copy, choice.after, choice.before, choice.moved), { value: choice.value, near: choice.near, ways: 1, choice, came: null });
  for (let at = 1; at < places.length; at++) {
    const next = new Map<number, Cell<Turned>[]>();
    const choices = reduced(places[at] ?? []);
    for (const [key, cells] of layer) extend(next, key, cells, choices, match[at - 1] ?? 0);
    layer = next;
  }
  return { still: closed(layer, false, match.at(-1) ?? 0, places.length), moved: closed(layer, true, match.at(-1) ?? 0, places.length) };
}

function keyOf(mask: number, last: number, first: number, moved: boolean): number {
  return ((mask * KINDS + last) * KINDS + first) * 2 + Number(moved);
}

function extend<Turned>(next: Map<number, Cell<Turned>[]>, key: number, cells: readonly Cell<Turned>[], choices: readonly Choice<Turned>[], match: number): void {
  const moved = key % 2 === 1;
  const first = Math.floor(key / 2) % KINDS;
  const last = Math.floor(key / 2 / KINDS) % KINDS;
  const mask = Math.floor(key / 2 / KINDS / KINDS);
  for (const choice of choices) {
    if ((mask >> choice.copy) & 1) continue;
    const worth = choice.value + (last !== 0 && last === choice.before ? match : 0);
    const to = keyOf(mask | (1 << choice.copy), choice.after, first, moved || choice.moved);
    for (const cell of cells) offer(next, to, { value: cell.value + worth, near: cell.near + choice.near, ways: cell.ways, choice, came: cell });
  }
}

/** Keeps the best values, each by its nearest; of equally near ones the first that was found. */
function offer<Turned>(layer: Map<number, Cell<Turned>[]>, key: number, cell: Cell<Turned>): void {
  const cells = layer.get(key);
  if (cells === undefined) {
    layer.set(key, [cell]);
    return;
  }
  const index = cells.findIndex(({ value }) => value <= cell.value);
  const same = cells[index];
  if (same?.value === cell.value) cells[index] = { ...(cell.near > same.near ? cell : same), ways: same.ways + cell.ways };
  else if (index >= 0) cells.splice(index, 0, cell);
  else cells.push(cell);
  if (cells.length > VALUES_KEPT) cells.length = VALUES_KEPT;
}

/** Closes the ring: the last place and the first are neighbours too. */
function closed<Turned>(layer: ReadonlyMap<number, readonly Cell<Turned>[]>, moved: boolean, match: number, places: number): readonly Reached<Turned>[] {
  const ends = new Map<number, Cell<Turned>[]>();
  for (const [key, cells] of layer) {
    const first = Math.floor(key / 2) % KINDS;
    const last = Math.floor(key / 2 / KINDS) % KINDS;
    if ((key % 2 === 1) !== moved) continue;
    const worth = last !== 0 && last === first && places > 1 ? match : 0;
    for (const cell of cells) offer(ends, 0, { ...cell, value: cell.value + worth });
  }
  return (ends.get(0) ?? []).map((cell) => ({ value: cell.value, near: cell.near, ways: cell.ways, choices: walkBack(cell) }));
}

function walkBack<Turned>(cell: Cell<Turned>): readonly Choice<Turned>[] {
  const choices: Choice<Turned>[] = [];
  for (let at: Cell<Turned> | null = cell; at !== null; at = at.came) choices.unshift(at.choice);
  return choices;
}

/** Of choices that look the same to the neighbours, only the two best values can be in the best or second best placing. */
function reduced<Turned>(choices: readonly Choice<Turned>[]): readonly Choice<Turned>[] {
  const values = new Map<string, number[]>();
  const likeOf = ({ copy, before, after }: Choice<Turned>): string => `${copy} ${before} ${after}`;
  for (const choice of choices) values.set(likeOf(choice), [...(values.get(likeOf(choice)) ?? []), choice.value]);
  const kept = new Map([...values].map(([like, all]) => [like, [...new Set(all)].sort((one, other) => other - one).slice(0, VALUES_KEPT)]));
  return choices.filter((choice) => kept.get(likeOf(choice))?.includes(choice.value));
}
