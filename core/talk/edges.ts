import type { Care } from '../edge/upkeep.ts';
import { EDGES, type EdgeName } from '../journal/edges.ts';
import type { Bench } from '../bench/bench.ts';
import type { Slot } from './slot.ts';
import { nameKey } from './words.ts';

const EDGE_KEYS: ReadonlyMap<string, EdgeName> = new Map<string, EdgeName>([...EDGES.map((edge): [string, EdgeName] => [nameKey(edge.split(' ')), edge]), [nameKey(['marking', 'knife']), 'knife'], [nameKey(['smoother']), 'smoothing plane'], [nameKey(['jointer']), 'jointer plane']]);

const PLANES: readonly EdgeName[] = EDGES.filter((edge) => edge.endsWith(' plane'));

/** 'mortise chisel', 'jack plane', 'smoother'; 'the plane' is the one that cuts or was told of last, else it is asked which. */
export const edgeSlot: Slot<EdgeName> = {
  longest: 3,
  read: (words, bench) => {
    // What is sharpened of a plane is its iron.
    const said = nameKey(words).replace(/(?<=plane|^smoother|^jointer) iron$/, '');
    const edge = EDGE_KEYS.get(said);
    if (edge) return [{ value: edge }];
    return said === 'plane' ? planesMeant(bench).map((value) => ({ value, labels: [value, value] as const })) : [];
  },
  samples: () => [...EDGES, 'marking knife', 'smoother', 'jointer', 'plane', 'plane iron'],
};

/** The plane that cuts or was told of last; else all of them. */
export function planesMeant({ state: { cutting, edges } }: Bench): readonly EdgeName[] {
  const last = [...edges.keys(), ...(cutting ? [cutting.edge] : [])].findLast((edge) => PLANES.includes(edge));
  return last === undefined ? PLANES : [last];
}

const CARE_WORDS: ReadonlyMap<string, Care> = new Map([['stropped', 'stropped'], ['honed', 'honed'], ['sharpened', 'honed'], ['ground', 'ground']]);

export const careSlot: Slot<Care> = {
  longest: 1,
  read: ([word = '', ...more]) => {
    const care = more.length === 0 ? CARE_WORDS.get(word) : undefined;
    return care ? [{ value: care }] : [];
  },
  samples: () => [...CARE_WORDS.keys()],
};
