import type { Care } from '../edge/upkeep.ts';
import { EDGES, type EdgeName } from '../journal/edges.ts';
import type { Slot } from './slot.ts';
import { nameKey } from './words.ts';

const EDGE_KEYS: ReadonlyMap<string, EdgeName> = new Map<string, EdgeName>([...EDGES.map((edge): [string, EdgeName] => [nameKey(edge.split(' ')), edge]), [nameKey(['marking', 'knife']), 'knife'], [nameKey(['smoother']), 'smoothing plane'], [nameKey(['jointer']), 'jointer plane']]);

/** 'mortise chisel', 'jack plane', 'smoother' */
export const edgeSlot: Slot<EdgeName> = {
  longest: 2,
  read: (words) => {
    const edge = EDGE_KEYS.get(nameKey(words));
    return edge ? [{ value: edge }] : [];
  },
  samples: () => [...EDGES, 'marking knife', 'smoother', 'jointer'],
};

const CARE_WORDS: ReadonlyMap<string, Care> = new Map([['stropped', 'stropped'], ['honed', 'honed'], ['sharpened', 'honed'], ['ground', 'ground']]);

export const careSlot: Slot<Care> = {
  longest: 1,
  read: ([word = '', ...more]) => {
    const care = more.length === 0 ? CARE_WORDS.get(word) : undefined;
    return care ? [{ value: care }] : [];
  },
  samples: () => [...CARE_WORDS.keys()],
};
