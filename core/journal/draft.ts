import type { Moment } from '../clock/moment.ts';
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

export function ownMap<Key extends 'places' | 'cautionsSaid'>(draft: Draft, key: Key): Map<string, Key extends 'places' ? string : Moment> {
  type Own = Map<string, Key extends 'places' ? string : Moment>;
  return owned(draft, draft.state[key] as Own, (map) => {
    const copy: Own = new Map(map);
    draft.state[key] = copy as Draft['state'][Key];
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
