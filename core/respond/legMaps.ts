import { legMap, type LegMap } from '../faces/map.ts';
import { standOf } from '../faces/stand.ts';
import { placeKey } from '../journal/progress.ts';
import type { State } from '../journal/state.ts';
import type { Part } from '../piece/file.ts';
import type { Step } from '../work/step.ts';

/** The map of one copy, once it was told where it goes and how it is turned; only of parts that are mortised. */
export function mapOf({ piece, places, turns }: State, partId: string, copy: number | undefined): LegMap | undefined {
  const part = piece?.file.parts.find(({ id }) => id === partId);
  if (!piece || !part || copy === undefined) return undefined;
  const [place, turn] = [places.get(placeKey(partId, copy)), turns.get(placeKey(partId, copy))];
  // Square or not makes no difference to how it stands, only to how it may be turned.
  const stand = standOf(piece.file, part, true);
  return place === undefined || turn === undefined || !stand.ok || stand.value.kind !== 'upright' ? undefined : legMap(piece.file, part, place, turn);
}

/** The copy that a step is about: by its number, or by its place once somebody said who stands there. */
export function copyAtStep({ piece, places }: State, step: Step): number | undefined {
  if (step.copy !== undefined || step.part === undefined) return step.copy;
  const part: Part | undefined = piece?.file.parts.find(({ id }) => id === step.part);
  const place = part?.places?.find((name) => step.id.split('/').includes(name));
  if (place === undefined) return undefined;
  const key = [...places].find(([placed, where]) => where === place && placed.slice(0, placed.lastIndexOf('/')) === step.part)?.[0];
  return key === undefined ? undefined : Number(key.slice(key.lastIndexOf('/') + 1));
}
