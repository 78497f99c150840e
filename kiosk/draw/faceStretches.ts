import type { FaceView } from '../../core/layout/paper/faceView.ts';
import type { Length } from '../../core/length/length.ts';

/** The length of a face cut up at its marks: each stretch at the scale of the drawing, or broken and shorter where it is long. */
export interface Stretches {
  readonly scale: number;
  readonly width: number;
  /** From a length along the face to drawing units from its left end. */
  readonly place: (at: number) => number;
  /** Middles of the broken stretches, from the left end. */
  readonly breaks: readonly number[];
  /** For each mortise or tenon, where its figures stand: from this place on, to the right or to the left. */
  readonly beside: readonly { readonly from: number; readonly side: 'left' | 'right' }[];
}

interface Stretch { readonly from: Length; readonly to: Length; readonly cut: boolean }

interface Room { readonly width: number; readonly height: number; /** Of the widest figure. */ readonly figure: number }

/** A stretch that is cut away is shown no longer than this many times the height of the face; an empty one not longer than its figures need. */
const LONGEST_CUT = 1.6;
const BARE = 46;
/** From a break to the end of its stretch, where figures stand in the rest of it. */
const BREAK = 26;
const STEPS = 40;

/** At the largest scale at which everything fits. */
export function stretchesOf(view: FaceView, groups: readonly { readonly from: Length; readonly to: Length }[], room: Room): Stretches {
  const all = stretchesIn(view);
  const labelled = labelledBy(all, groups);
  const most = (stretch: Stretch, index: number): number => (stretch.cut ? room.height * LONGEST_CUT : labelled.some((one) => one?.index === index) ? room.figure + BREAK * 2.4 : BARE);
  const widths = (scale: number): readonly number[] => all.map((stretch, index) => Math.min((stretch.to - stretch.from) * scale, most(stretch, index)));
  const sum = (parts: readonly number[]): number => parts.reduce((total, one) => total + one, 0);
  let [low, high] = [0, room.height / view.across];
  if (sum(widths(high)) > room.width) {
    for (let step = 0; step < STEPS; step++) {
      const middle = (low + high) / 2;
      if (sum(widths(middle)) > room.width) high = middle;
      else low = middle;
    }
  } else low = high;
  return placed(all, filled(all, widths(low), low, room.width), low, labelled);
}

function stretchesIn({ lines, waste, along }: FaceView): readonly Stretch[] {
  const places = [...new Set([0 as Length, along, ...lines.filter(({ lies }) => lies === 'across').map(({ at }) => at), ...waste.flatMap(({ from, to }) => [from, to])])].sort((one, other) => one - other);
  return places.slice(1).map((to, index): Stretch => {
    const from = places[index] ?? to;
    return { from, to, cut: waste.some((one) => one.from <= from && one.to >= to && one.to - one.from < along) };
  });
}

/** The empty stretch after each mortise, else the one before it, else the longest; each its own where there are enough. */
function labelledBy(all: readonly Stretch[], groups: readonly { readonly from: Length; readonly to: Length }[]): readonly ({ readonly index: number; readonly side: 'left' | 'right' } | undefined)[] {
  const taken = new Set<number>();
  const long = (index: number): number => { const one = all[index]; return one === undefined || one.cut ? 0 : one.to - one.from; };
  return groups.map(({ from, to }) => {
    const [after, before] = [all.findIndex((one) => one.from === to), all.findIndex((one) => one.to === from)];
    const longest = all.reduce((best, _, index) => (long(index) > long(best) ? index : best), 0);
    const enough = long(longest) / 8;
    const found = [{ index: after, side: 'right' as const }, { index: before, side: 'left' as const }].find(({ index }) => index >= 0 && long(index) >= enough && !taken.has(index)) ?? { index: longest, side: 'right' as const };
    taken.add(found.index);
    return found;
  });
}

/** What room is left goes to the broken stretches that are empty, in equal parts, as far as they are long. */
function filled(all: readonly Stretch[], widths: readonly number[], scale: number, room: number): readonly number[] {
  const grown = [...widths];
  for (let pass = 0; pass < all.length; pass++) {
    const left = room - grown.reduce((total, one) => total + one, 0);
    const open = all.flatMap(({ from, to, cut }, index) => (!cut && (grown[index] ?? 0) < (to - from) * scale - 1e-6 ? [index] : []));
    if (left < 1e-6 || open.length === 0) break;
    for (const index of open) grown[index] = Math.min((grown[index] ?? 0) + left / open.length, ((all[index]?.to ?? 0) - (all[index]?.from ?? 0)) * scale);
  }
  return grown;
}

function placed(all: readonly Stretch[], widths: readonly number[], scale: number, labelled: ReturnType<typeof labelledBy>): Stretches {
  const starts = widths.map((_, index) => widths.slice(0, index).reduce((total, one) => total + one, 0));
  const width = (starts.at(-1) ?? 0) + (widths.at(-1) ?? 0);
  const place = (at: number): number => {
    const index = Math.max(0, all.findIndex(({ to }) => at <= to));
    const { from, to } = all[index] ?? { from: 0, to: 1 };
    return (starts[index] ?? 0) + ((at - from) / (to - from)) * (widths[index] ?? 0);
  };
  return {
    scale, width, place,
    breaks: all.flatMap(({ from, to }, index) => ((widths[index] ?? 0) < (to - from) * scale - 1e-3 ? [(starts[index] ?? 0) + breakAt(index, widths[index] ?? 0, labelled)] : [])),
    beside: labelled.map((one) => ({ side: one?.side ?? 'right', from: one === undefined ? 0 : (starts[one.index] ?? 0) + (one.side === 'right' ? 6 : (widths[one.index] ?? 0) - 6) })),
  };
}

/** Clear of the figures: beyond them, not under them. */
function breakAt(index: number, width: number, labelled: ReturnType<typeof labelledBy>): number {
  const one = labelled.find((each) => each?.index === index);
  if (one === undefined) return width / 2;
  return one.side === 'right' ? width - BREAK : BREAK;
}
