import { nanometres, type Length } from '../../length/length.ts';
import { mm, textWidth } from './sheet.ts';

const LINE = mm(5);

export interface Lane<Label> {
  readonly label: Label;
  /** 0 is the nearest to what is labelled. */
  readonly lane: number;
}

/**
 * Labels below the places that they belong to, each with a leader from its place down to its lane, its text to the right of the leader: further down
 * where the text would run across the leader of another. From right to left, so that no leader crosses a text.
 */
export function lanes<Label extends { readonly x: Length; readonly text: string }>(labels: readonly Label[], size: Length): readonly Lane<Label>[] {
  const set: Lane<Label>[] = [];
  for (const label of [...labels].sort((one, other) => other.x - one.x)) {
    const end = label.x + textWidth(label.text, size) + mm(3);
    const crossed = set.filter((other) => other.label.x < end).map(({ lane }) => lane);
    set.push({ label, lane: crossed.length === 0 ? 0 : Math.max(...crossed) + 1 });
  }
  return set.reverse();
}

export function lanesDepth(set: readonly Lane<unknown>[]): Length {
  return nanometres(set.reduce((most, { lane }) => Math.max(most, lane + 1), 0) * LINE);
}

/** Base line of a lane, below where the lanes begin. */
export function laneBase(lane: number): Length {
  return nanometres(Math.round((lane + 0.75) * LINE));
}

/** Places at least `apart` from each other and in their order, each as near to where it belongs as the ones before it allow. */
export function spread(places: readonly Length[], apart: Length): readonly Length[] {
  const set: Length[] = [];
  for (const place of places) set.push(nanometres(Math.max(place, (set.at(-1) ?? place - apart) + apart)));
  return set;
}
