/** Ways of filling a length, each better than all that take less room: `item` was put in last, after `before`. */
export interface Step {
  readonly used: number;
  readonly value: number;
  readonly item: number;
  readonly before: Step | undefined;
}

export interface Filler {
  readonly item: number;
  readonly size: number;
  readonly value: number;
  readonly most: number;
}

const NOTHING: Step = { used: 0, value: 0, item: -1, before: undefined };

/** All worthwhile fillings of `room`, by room used. Exact for any sizes: only sums that occur are kept. */
export function staircase(fillers: readonly Filler[], room: number): Step[] {
  let steps: Step[] = [NOTHING];
  for (const filler of fillers) {
    if (filler.value <= 0) continue;
    const most = Math.min(filler.most, Math.floor(room / filler.size));
    let added = steps;
    for (let copy = 0; copy < most && added.length > 0; copy++) {
      added = added.filter(({ used }) => used + filler.size <= room).map((before) => ({ used: before.used + filler.size, value: before.value + filler.value, item: filler.item, before }));
      steps = merged(steps, added);
    }
  }
  return steps;
}

function merged(a: readonly Step[], b: readonly Step[]): Step[] {
  const steps: Step[] = [];
  let [i, j, best] = [0, 0, -1];
  while (i < a.length || j < b.length) {
    const [left, right] = [a[i], b[j]];
    const next = right === undefined || (left !== undefined && (left.used < right.used || (left.used === right.used && left.value >= right.value))) ? left : right;
    if (next === left) i++;
    else j++;
    if (next !== undefined && next.value > best) {
      steps.push(next);
      best = next.value;
    }
  }
  return steps;
}

/** The best filling of no more than `room`. */
export function bestWithin(steps: readonly Step[], room: number): Step {
  let [low, high] = [0, steps.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((steps[middle]?.used ?? Infinity) <= room) low = middle;
    else high = middle;
  }
  return steps[low] ?? NOTHING;
}

/** The items of a filling, in the order they were put in. */
export function itemsOf(step: Step): number[] {
  const items: number[] = [];
  for (let at: Step | undefined = step; at !== undefined && at.item >= 0; at = at.before) items.unshift(at.item);
  return items;
}
