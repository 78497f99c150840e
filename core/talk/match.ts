import { assertNever } from '../result.ts';
import type { Bench } from '../bench/bench.ts';
import type { Pattern, PatternNode } from './pattern.ts';
import type { Labels, Reading, Slot, SlotName, SlotValues } from './slot.ts';
import { slots } from './slots.ts';
import { canonical, FILLERS } from './words.ts';

/** An utterance being read; what its slots were read as is kept, for many patterns ask the same. */
export interface Utterance {
  readonly words: readonly string[];
  readonly canonical: readonly string[];
  readonly bench: Bench;
  readonly kept: Map<Slot<unknown>, Map<number, readonly Reading<unknown>[]>>;
}

/** One way in which a pattern takes in the whole utterance. */
export interface Match {
  readonly bound: Partial<SlotValues>;
  readonly labels: readonly Labels[];
  readonly loose: boolean;
  /** Why a slot could not be read, and how many words it had. */
  readonly faults: readonly { readonly fault: string; readonly words: number }[];
}

export function utterance(words: readonly string[], bench: Bench): Utterance {
  return { words, canonical: words.map(canonical), bench, kept: new Map() };
}

/** All ways in which the pattern takes in the utterance, from its first word to its last. */
export function matches(pattern: Pattern, heard: Utterance): readonly Match[] {
  if (!mayMatch(pattern, heard)) return [];
  const found: Match[] = [];
  walk(pattern, 0, { bound: {}, labels: [], loose: false, faults: [] }, heard, found);
  return found;
}

/** Whether the words that the pattern cannot do without are there at all: most patterns end here. */
function mayMatch(pattern: Pattern, heard: Utterance): boolean {
  return pattern.every((node) => {
    switch (node.kind) {
      case 'word': return heard.canonical.includes(node.word);
      case 'slot': case 'filler': return true;
      case 'choice': return node.options.some((option) => mayMatch(option, heard));
      default: return assertNever(node);
    }
  });
}

function walk(pattern: Pattern, at: number, match: Match, heard: Utterance, found: Match[]): void {
  const [node, ...rest] = pattern;
  if (node === undefined) {
    if (heard.canonical.slice(at).every((word) => FILLERS.has(word))) found.push(match);
    return;
  }
  if (node.kind === 'filler') {
    walk(rest, at, match, heard, found);
    return;
  }
  if (node.kind === 'choice') {
    for (const option of node.options) walk([...option, ...rest], at, match, heard, found);
    return;
  }
  for (let start = at; start < heard.words.length; start += 1) {
    take(node, rest, start, match, heard, found);
    if (!FILLERS.has(heard.canonical[start] ?? '') || (node.kind === 'slot' && node.slot === 'text')) return;
  }
}

function take(node: Exclude<PatternNode, { kind: 'choice' | 'filler' }>, rest: Pattern, start: number, match: Match, heard: Utterance, found: Match[]): void {
  if (node.kind === 'word') {
    if (heard.canonical[start] === node.word) walk(rest, start + 1, match, heard, found);
    return;
  }
  const last = Math.min(heard.words.length, start + slots[node.slot].longest);
  for (let end = start + 1; end <= last; end += 1) {
    for (const reading of readSlot(node.slot, start, end, heard)) walk(rest, end, bind(match, node.slot, reading, end - start), heard, found);
  }
}

function bind(match: Match, slot: SlotName, reading: Reading<unknown>, words: number): Match {
  if ('fault' in reading) return { ...match, faults: [...match.faults, { fault: reading.fault, words: reading.partly ? 0 : words }] };
  const { value, labels, loose = false } = reading;
  return { ...match, bound: { ...match.bound, [slot]: value }, labels: labels ? [...match.labels, labels] : match.labels, loose: match.loose || loose };
}

function readSlot(slot: SlotName, start: number, end: number, heard: Utterance): readonly Reading<unknown>[] {
  const reader: Slot<unknown> = slots[slot];
  const ofReader = heard.kept.get(reader) ?? new Map<number, readonly Reading<unknown>[]>();
  heard.kept.set(reader, ofReader);
  const span = start * heard.words.length + end - 1;
  const readings = ofReader.get(span) ?? reader.read(heard.words.slice(start, end), heard.bench);
  ofReader.set(span, readings);
  return readings;
}
