/** What one layout needs, by tool; layouts of a lower stage come first. */
export interface Need {
  readonly stage: number;
  readonly settings: readonly (readonly string[])[];
}

export interface Next {
  /** Which of the needs to see to first. */
  readonly job: number;
  /** By tool, the settings to have on the gauges after it. */
  readonly kept: readonly (readonly string[])[];
  /** Settings in all, to the end. */
  readonly settings: number;
}

interface Problem {
  readonly needs: readonly Need[];
  /** How many there are of each tool, one at least. */
  readonly gauges: readonly number[];
  readonly known: Map<string, Next>;
  readonly wanted: Map<number, readonly ReadonlySet<string>[]>;
}

/** By tool, the settings that its gauges hold. */
export type Hold = readonly (readonly string[])[];
/** The best first move for the needs that are left (bit 0 for the first) and what the gauges hold. */
export type Search = (left: number, hold: Hold) => Next;
const NOTHING_LEFT: Next = { job: -1, kept: [], settings: 0 };

/**
 * The first move of an order that takes the fewest settings, found by looking at every order and every choice of what to keep, each situation once
 * (dynamic programming over what is left to do and what the gauges hold). Left out is what cannot be better: setting a gauge before it is needed; giving
 * up a setting that could stay; putting off a layout for which every gauge already stands right; and what takes as many as the best so far even if
 * every setting that is wanted and not held were set only once. At most 30 needs.
 */
export function searchFor(needs: readonly Need[], gauges: readonly number[]): Search {
  const problem = { needs, gauges, known: new Map<string, Next>(), wanted: new Map<number, readonly ReadonlySet<string>[]>() };
  return (left, hold) => search(problem, left, hold);
}

function search(problem: Problem, left: number, hold: Hold): Next {
  if (left === 0) return NOTHING_LEFT;
  const wanted = stillWanted(problem, left);
  const holds = hold.map((settings, tool) => settings.filter((one) => wanted[tool]?.has(one)).sort());
  const key = `${left}|${holds.map((settings) => settings.join(',')).join('|')}`;
  const known = problem.known.get(key);
  if (known) return known;
  const open = openJobs(problem, left).map((job) => ({ job, loads: loadsOf(problem, job, holds) })).map((one) => ({ ...one, now: one.loads.reduce((sum, { length }) => sum + length, 0) }));
  const ready = open.filter(({ now }) => now === 0);
  const found = best(problem, left, ready.length > 0 ? ready.slice(0, 1) : open, holds);
  problem.known.set(key, found);
  return found;
}

interface Move { readonly job: number; readonly loads: readonly (readonly string[])[]; readonly now: number }

function best(problem: Problem, left: number, moves: readonly Move[], holds: Hold): Next {
  let found: Next = { job: -1, kept: [], settings: Infinity };
  const least = atLeast(problem, left, holds);
  for (const { job, loads, now } of moves) {
    const rest = left & ~(1 << job);
    const wanted = stillWanted(problem, rest);
    const choices = loads.map((load, tool) => keepChoices(holds[tool] ?? [], load, wanted[tool] ?? new Set(), problem.gauges[tool] ?? 1));
    for (const kept of product(choices)) {
      if (now + atLeast(problem, rest, kept) >= found.settings) continue;
      const settings = now + search(problem, rest, kept).settings;
      if (settings < found.settings) found = { job, kept, settings };
      if (found.settings === least) return found;
    }
  }
  return found;
}

/** Every setting that is wanted and not held has to be set once at the least. */
function atLeast(problem: Problem, left: number, hold: Hold): number {
  return stillWanted(problem, left).reduce((sum, wanted, tool) => sum + wanted.size - (hold[tool] ?? []).filter((one) => wanted.has(one)).length, 0);
}

function openJobs({ needs }: Problem, left: number): readonly number[] {
  const open = needs.flatMap((need, job) => ((left >> job) & 1 ? [{ job, stage: need.stage }] : []));
  const first = Math.min(...open.map(({ stage }) => stage));
  return open.filter(({ stage }) => stage === first).map(({ job }) => job);
}

function stillWanted({ needs, gauges, wanted }: Problem, left: number): readonly ReadonlySet<string>[] {
  const known = wanted.get(left);
  if (known) return known;
  const found = gauges.map((_, tool) => new Set(needs.flatMap(({ settings }, job) => ((left >> job) & 1 ? settings[tool] ?? [] : []))));
  wanted.set(left, found);
  return found;
}

function loadsOf({ needs }: Problem, job: number, holds: Hold): readonly (readonly string[])[] {
  return (needs[job]?.settings ?? []).map((settings, tool) => settings.filter((one) => holds[tool]?.includes(one) !== true));
}

/**
 * What may be left on the gauges: of the settings that are wanted later, as many as there is room for. Whatever is set now takes a gauge: of what was held,
 * one less than the gauges may stay.
 */
function keepChoices(held: readonly string[], loads: readonly string[], wanted: ReadonlySet<string>, gauges: number): readonly (readonly string[])[] {
  const old = held.filter((one) => wanted.has(one));
  const fresh = loads.filter((one) => wanted.has(one));
  const roomForOld = loads.length > 0 ? gauges - 1 : gauges;
  const choices: (readonly string[])[] = [];
  const size = Math.min(gauges, Math.min(old.length, roomForOld) + fresh.length);
  for (let ofOld = Math.min(old.length, roomForOld, size); ofOld >= 0 && size - ofOld <= fresh.length; ofOld--) {
    for (const kept of product([subsets(old, ofOld), subsets(fresh, size - ofOld)])) choices.push(kept.flat());
  }
  return choices;
}

function subsets(items: readonly string[], size: number): readonly (readonly string[])[] {
  if (size === 0) return [[]];
  return items.flatMap((item, index) => subsets(items.slice(index + 1), size - 1).map((rest) => [item, ...rest]));
}

/** Every way to take one of each. */
function product<Item>(choices: readonly (readonly Item[])[]): readonly (readonly Item[])[] {
  return choices.reduce<readonly (readonly Item[])[]>((ways, options) => ways.flatMap((way) => options.map((option) => [...way, option])), [[]]);
}
