import type { End } from '../faces/face.ts';
import { withLiking, NO_LIKES } from '../faces/likes.ts';
import { assertNever } from '../result.ts';
import { ownMap, type Draft } from './draft.ts';
import type { AssignedLeg, Entry } from './entry.ts';
import { placeKey } from './progress.ts';

type FaceEntry = Extract<Entry, { kind: 'faces liked' | 'end liked' | 'faces ordered' | 'board liked' | 'legs assigned' }>;

/** Writes what was told of faces, and where copies go, into the draft of a state. */
export function applyFaces(draft: Draft, entry: FaceEntry): void {
  switch (entry.kind) {
    case 'faces liked': {
      const { part, copy, faces, as } = entry;
      const key = placeKey(part, copy);
      const likes = ownMap(draft, 'likes');
      likes.set(key, withLiking(likes.get(key) ?? NO_LIKES, { faces, as }));
      return;
    }
    case 'end liked':
      likeEnd(draft, entry);
      return;
    case 'faces ordered':
      ownMap(draft, 'faceOrders').set(entry.part, entry.order);
      return;
    case 'board liked':
      if (entry.arch === 'either') ownMap(draft, 'arches').delete(placeKey(entry.part, entry.board));
      else ownMap(draft, 'arches').set(placeKey(entry.part, entry.board), entry.arch);
      return;
    case 'legs assigned':
      for (const leg of entry.legs) assign(draft, entry.part, leg);
      return;
    default:
      assertNever(entry);
  }
}

function likeEnd(draft: Draft, { part, copy, what, end }: Extract<FaceEntry, { kind: 'end liked' }>): void {
  const key = placeKey(part, copy);
  const likes = ownMap(draft, 'likes');
  const before = likes.get(key) ?? NO_LIKES;
  const others = { faces: before.faces, ...(what === 'arch' ? given('up', before.up) : given('arch', before.arch)) };
  likes.set(key, end === 'either' ? others : { ...others, [what]: end });
}

function given<Key extends 'up' | 'arch'>(key: Key, end: End | undefined): Partial<Record<Key, End>> {
  return end === undefined ? {} : { [key]: end } as Record<Key, End>;
}

/** Two copies of a part cannot stand in one place: the one that stood there has none now. */
function assign(draft: Draft, part: string, { copy, place, turn }: AssignedLeg): void {
  const places = ownMap(draft, 'places');
  const turns = ownMap(draft, 'turns');
  for (const [key, taken] of places) {
    if (taken !== place || key.slice(0, key.lastIndexOf('/')) !== part) continue;
    places.delete(key);
    turns.delete(key);
  }
  places.set(placeKey(part, copy), place);
  if (turn === undefined) turns.delete(placeKey(part, copy));
  else turns.set(placeKey(part, copy), turn);
}
