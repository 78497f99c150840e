import type { Bench } from '../bench/bench.ts';
import type { Pattern, PatternNode, Row } from './pattern.ts';
import type { Slot, SlotName, SlotValues } from './slot.ts';
import { slots } from './slots.ts';
import { splitWords } from './words.ts';

type PlainNode = Exclude<PatternNode, { kind: 'choice' }>;
type Way = readonly PlainNode[];

/** Phrases of a pattern whose slots another pattern has already gone through. */
const FEW = 2;

/** An example of what a slot may hold, and what it is read as. */
interface Sample { readonly text: string; readonly value?: unknown }

/** Examples of every slot, read once, and which slots have been gone through so that no other pattern needs to. */
export interface Examples {
  readonly bench: Bench;
  readonly covered: Set<Slot<unknown>>;
  readonly read: Map<Slot<unknown>, readonly Sample[]>;
}

export function examplesFor(bench: Bench): Examples {
  return { bench, covered: new Set(), read: new Map() };
}

/**
 * Phrases of a row: enough ways to say it to show every pair of words in it, its slots filled with examples that make
 * sense together; 'how deep is the leg' is left out when legs have no depth.
 */
export function rowPhrases(row: Row, examples: Examples): string[] {
  return row.patterns.flatMap((pattern) => tellingWays(pattern).flatMap((way) => fill(row, way, examples)));
}

/** Ways through the choices that show two words side by side which no way before them has shown. */
function tellingWays(pattern: Pattern): readonly Way[] {
  const shown = new Set<string>();
  return waysThrough(pattern).filter((way) => {
    const words = ['', ...way.map((node) => (node.kind === 'slot' ? `{${node.slot}}` : node.spelled)), ''];
    const pairs = words.slice(1).map((word, index) => `${words[index] ?? ''} ${word}`);
    const telling = pairs.some((pair) => !shown.has(pair));
    for (const pair of pairs) shown.add(pair);
    return way.length > 0 && telling;
  });
}

function waysThrough(pattern: Pattern): readonly Way[] {
  let ways: readonly Way[] = [[]];
  for (const node of pattern) {
    const options = node.kind === 'choice' ? node.options.flatMap(waysThrough) : [[node]];
    ways = ways.flatMap((way) => options.map((option) => [...way, ...option]));
  }
  return ways;
}

function fill(row: Row, way: Way, examples: Examples): string[] {
  const lists = way.map((node) => (node.kind === 'slot' ? samplesOf(node.slot, examples) : [{ text: node.spelled }]));
  const named = way.flatMap((node) => (node.kind === 'slot' ? [slots[node.slot] as Slot<unknown>] : []));
  if (lists.some((list) => list.length === 0)) return [];
  const most = Math.max(...lists.map((list) => list.length));
  const count = named.length === 0 ? 1 : named.every((slot) => examples.covered.has(slot)) ? Math.min(FEW, most) : most;
  for (const slot of named) examples.covered.add(slot);
  return Array.from({ length: count }, (_, index) => lists.map((list, place) => list[sampleIndex(index, count, list.length, place)] ?? { text: '' }))
    .filter((samples) => makesSense(row, way, samples, examples.bench))
    .map((samples) => samples.map(({ text }) => text).join(' '));
}

/** Spread over all samples when only few are taken, and out of step between slots, so that pairs differ. */
function sampleIndex(index: number, count: number, samples: number, place: number): number {
  return count >= samples ? (index + place) % samples : Math.floor((index * samples) / count + place) % samples;
}

/** Whether the row makes a request of these samples, be it one that has to wait for its moment. */
function makesSense(row: Row, way: Way, samples: readonly Sample[], bench: Bench): boolean {
  const bound: Partial<SlotValues> = Object.fromEntries(way.flatMap((node, place) => (node.kind === 'slot' ? [[node.slot, samples[place]?.value]] : [])));
  const built = row.build(bound, bench);
  return built !== undefined && ('kind' in built || built.notNow === true);
}

function samplesOf(name: SlotName, { bench, read }: Examples): readonly Sample[] {
  const slot: Slot<unknown> = slots[name];
  const known = read.get(slot);
  if (known) return known;
  const samples = slot.samples(bench).flatMap((text): Sample[] => {
    const reading = slot.read(splitWords(text), bench).find((one) => 'value' in one);
    return reading ? [{ text, value: reading.value }] : [];
  });
  read.set(slot, samples);
  return samples;
}
