import type { State } from './state.ts';

type Open<T> = { -readonly [Key in keyof T]: T[Key] };

/**
 * A state being folded: its fields may be set, and its collections are copied once, when first changed, so that folding
 * a hundred thousand records does not copy them a hundred thousand times, and what did not change keeps its identity.
 */
export interface Draft {
  readonly state: Open<State>;
  readonly own: Set<object>;
}

export function draftOf(state: State): Draft {
  return { state: { ...state }, own: new Set() };
}

export function ownSet(draft: Draft, key: 'done' | 'skipped'): Set<string> {
  return owned(draft, draft.state[key] as Set<string>, (set) => (draft.state[key] = new Set(set)));
}

type Maps = Pick<State, 'places' | 'turns' | 'likes' | 'faceOrders' | 'arches' | 'cautionsSaid'>;
type Own<Key extends keyof Maps> = Maps[Key] extends ReadonlyMap<string, infer Value> ? Map<string, Value> : never;

export function ownMap<Key extends keyof Maps>(draft: Draft, key: Key): Own<Key> {
  return owned(draft, draft.state[key] as unknown as Own<Key>, (map) => {
    const copy = new Map(map as ReadonlyMap<string, unknown>) as Own<Key>;
    draft.state[key] = copy as unknown as Draft['state'][Key];
    return copy;
  });
}

export function ownNotes(draft: Draft): State['notes'][number][] {
  return owned(draft, draft.state.notes as State['notes'][number][], (notes) => {
    const copy = [...notes];
    draft.state.notes = copy;
    return copy;
  });
}

function owned<Collection extends object>(draft: Draft, collection: Collection, copy: (collection: Collection) => Collection): Collection {
  if (draft.own.has(collection)) return collection;
  const mine = copy(collection);
  draft.own.add(mine);
  return mine;
}
