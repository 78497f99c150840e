import { between } from '../clock/between.ts';
import type { Moment } from '../clock/moment.ts';
import { caredFor, cutFor, FRESH_EDGE, type Care, type EdgeWear } from '../edge/upkeep.ts';

/** The edges that are kept account of, by the names that they go by at the bench. */
export const EDGES = ['chisel', 'mortise chisel', 'paring chisel', 'jack plane', 'jointer plane', 'smoothing plane', 'block plane', 'spokeshave', 'knife'] as const;
export type EdgeName = (typeof EDGES)[number];

/** The entries of edges. */
export type EdgeEntry =
  | { readonly kind: 'cutting begun'; readonly edge: EdgeName }
  | { readonly kind: 'cutting ended' }
  | { readonly kind: 'edge cared for'; readonly edge: EdgeName; readonly care: Care };

/** The part of the state that these entries write. */
export interface EdgeState {
  readonly edges: ReadonlyMap<EdgeName, EdgeWear>;
  /** What is cutting now, and since when. */
  readonly cutting: { readonly edge: EdgeName; readonly since: Moment } | null;
}

export const NO_EDGE_STATE: EdgeState = { edges: new Map(), cutting: null };

/** No one chops for longer without a pause: then 'stopped' was forgotten, and no more than this is counted. */
const LONGEST_CUTTING_MINUTES = 30;

/** What such an entry makes of the state. An edge that is cared for while it cuts goes on cutting from then. */
export function applyEdge(state: EdgeState, entry: EdgeEntry, at: Moment): EdgeState {
  const counted = countedUntil(state, at);
  switch (entry.kind) {
    case 'cutting begun': return { ...counted, cutting: { edge: entry.edge, since: at } };
    case 'cutting ended': return { ...counted, cutting: null };
    case 'edge cared for': return { ...counted, edges: toldLast(counted.edges, entry.edge, caredFor(wearOf(counted, entry.edge), entry.care)) };
  }
}

/** The wear of all edges with what is cutting now counted up to a moment. */
export function countedUntil(state: EdgeState, at: Moment): EdgeState {
  if (!state.cutting) return state;
  const { edge, since } = state.cutting;
  return { edges: toldLast(state.edges, edge, cutFor(wearOf(state, edge), minutesBetween(since, at))), cutting: { edge, since: at } };
}

/** The edge that was told of last stands last. */
function toldLast(edges: EdgeState['edges'], edge: EdgeName, wear: EdgeWear): EdgeState['edges'] {
  return new Map([...[...edges].filter(([other]) => other !== edge), [edge, wear]]);
}

export function wearOf({ edges }: Pick<EdgeState, 'edges'>, edge: EdgeName): EdgeWear {
  return edges.get(edge) ?? FRESH_EDGE;
}

/** What a restart made unknown counts as nothing. */
function minutesBetween(since: Moment, at: Moment): number {
  const run = between(since, at);
  return run.by === 'unknown' ? 0 : Math.min(LONGEST_CUTTING_MINUTES, Math.max(0, run.ms / 60_000));
}
