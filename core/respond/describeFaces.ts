import { sayArch, sayQuality, sayUp } from '../faces/sayLikes.ts';
import type { Entry } from '../journal/entry.ts';
import type { State } from '../journal/state.ts';
import { sayNumber } from '../length/sayNumber.ts';
import { assertNever } from '../result.ts';

type FaceEntry = Extract<Entry, { kind: 'faces liked' | 'end liked' | 'faces ordered' | 'board liked' | 'legs assigned' }>;

/** What was told of faces, or where copies went, in words; the part by its name as long as the piece is on the bench. */
export function describeFaces({ piece }: State, entry: FaceEntry): string {
  const part = piece?.file.parts.find(({ id }) => id === entry.part)?.name ?? entry.part;
  switch (entry.kind) {
    case 'faces liked': return `${part} ${sayNumber(entry.copy)}, ${sayQuality(entry.as, entry.faces)}`;
    case 'end liked': return `${part} ${sayNumber(entry.copy)}, ${entry.what === 'up' ? sayUp(entry.end) : sayArch(entry.end)}`;
    case 'faces ordered': return `what counts for the ${part}`;
    case 'board liked': return `${part}, board ${sayNumber(entry.board)}, ${entry.arch === 'either' ? 'either way' : `arch ${entry.arch}`}`;
    case 'legs assigned': return entry.legs.map(({ copy, place, turn }) => `${part} ${sayNumber(copy)} ${place}${turn === undefined ? '' : `, face ${turn.front} to the front`}`).join('; ');
    default: return assertNever(entry);
  }
}
