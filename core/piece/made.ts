import type { Length } from '../length/length.ts';
import type { Owner } from './declared.ts';
import type { SizeGraph } from './graph.ts';
import { splitCopy } from './graph.ts';
import type { Measurement } from './measurement.ts';

/** What was measured of one size. */
interface MadeSize {
  /** Said of all copies; those measured singly override it. */
  readonly all: Length | undefined;
  readonly copies: ReadonlyMap<number, Length>;
  /** Of what is made: what the set counts as. */
  readonly largest: Length;
  /** Given when copies were measured singly and are not all made alike: the copy that is the largest made one. */
  readonly largestCopy: number | undefined;
}

export interface Made {
  readonly byNode: ReadonlyMap<number, MadeSize>;
  /** Owners of which single copies were measured. */
  readonly split: ReadonlySet<Owner>;
  readonly stray: readonly Measurement[];
}

interface Gathered {
  all: Length | undefined;
  readonly copies: Map<number, Length>;
}

/** Sorts measurements by size, the newest last: a later one of all copies takes the place of earlier ones of single copies. */
export function readMeasurements(graph: SizeGraph, measurements: readonly Measurement[]): Made {
  const gathered = new Map<number, Gathered>();
  const split = new Set<Owner>();
  const stray: Measurement[] = [];
  for (const measurement of measurements) {
    const { index, copy } = find(graph, measurement);
    const owner = graph.nodes[index ?? -1]?.owner;
    if (index === undefined || owner === undefined || !isCopy(owner, copy)) { stray.push(measurement); continue; }
    const made = gathered.get(index) ?? { all: undefined, copies: new Map<number, Length>() };
    gathered.set(index, made);
    if (copy === undefined || owner.count === 1) { made.all = measurement.length; made.copies.clear(); } else made.copies.set(copy, measurement.length);
  }
  for (const [index, { copies }] of gathered) {
    const owner = graph.nodes[index]?.owner;
    if (copies.size > 0 && owner !== undefined) split.add(owner);
  }
  return { byNode: new Map([...gathered].map(([index, made]) => [index, summedUp(made, graph.nodes[index]?.owner.count ?? 1)])), split, stray };
}

function find(graph: SizeGraph, { size, copy }: Measurement): { readonly index: number | undefined; readonly copy: number | undefined } {
  const plain = graph.indexOf.get(size);
  if (plain !== undefined) return { index: plain, copy };
  const split = splitCopy(size);
  return { index: graph.indexOf.get(split.name), copy: split.copy ?? copy };
}

function isCopy(owner: Owner, copy: number | undefined): boolean {
  return copy === undefined || (Number.isInteger(copy) && copy >= 1 && copy <= owner.count);
}

function summedUp({ all, copies }: Gathered, count: number): MadeSize {
  const lengths = [...copies.values(), ...(all !== undefined && copies.size < count ? [all] : [])];
  const largest = lengths.reduce((most, length) => (length > most ? length : most));
  const differ = lengths.some((length) => length !== largest) || (all === undefined && copies.size < count);
  const largestCopy = differ ? [...copies].find(([, length]) => length === largest)?.[0] : undefined;
  return { all, copies, largest, largestCopy };
}
