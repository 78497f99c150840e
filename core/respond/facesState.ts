import type { Bench } from '../bench/bench.ts';
import { arranged, bestPlacing, USUAL_ORDER, type Found, type Placing } from '../faces/assign.ts';
import type { PartNames } from '../faces/explain.ts';
import type { Placed } from '../faces/facts.ts';
import { NO_LIKES, type CopyLikes } from '../faces/likes.ts';
import { standOf } from '../faces/stand.ts';
import { placeKey } from '../journal/progress.ts';
import type { State } from '../journal/state.ts';
import type { Part } from '../piece/file.ts';
import { sizeOf } from '../piece/evaluate.ts';
import { success, type Result } from '../result.ts';
import { pluralOf } from '../work/names.ts';
import { currentStep } from '../work/progress.ts';
import { sizesOf, stepsOf } from './views.ts';

/** A part whose copies can be placed by their faces, with what was told of them. */
export interface FacedPart {
  readonly part: Part;
  readonly names: PartNames;
  readonly problem: Placing;
}

export function likesOf(state: State, part: string, copy: number): CopyLikes {
  return state.likes.get(placeKey(part, copy)) ?? NO_LIKES;
}

/** What is to be placed, or a sentence why that part cannot be. */
export function facedPart(state: State, part: Part): Result<FacedPart, string> {
  if (!state.piece) return { ok: false, fault: 'No piece is on the bench' };
  const sizes = sizesOf(state);
  const planned = (size: string): number | undefined => sizes === null ? undefined : sizeOf(sizes, `${part.id}.${size}`)?.planned;
  const stand = standOf(state.piece.file, part, planned('width') === planned('thickness'));
  if (!stand.ok) return stand;
  const likes = Array.from({ length: part.count }, (_, index) => likesOf(state, part.id, index + 1));
  return success({
    part, names: { one: part.name, many: pluralOf(part) },
    problem: { stand: stand.value, likes, order: state.faceOrders.get(part.id) ?? USUAL_ORDER, now: standing(state, part, stand.value.places) },
  });
}

/** The copies that have a place and a turn, in the order of the places. */
function standing(state: State, part: Part, places: Placing['stand']['places']): readonly Placed[] {
  const placed = Array.from({ length: part.count }, (_, index): Placed[] => {
    const key = placeKey(part.id, index + 1);
    const place = places.find(({ name }) => name === state.places.get(key));
    const turn = state.turns.get(key);
    return place && turn ? [{ copy: index + 1, place, turn }] : [];
  }).flat();
  return places.flatMap((place) => placed.find((one) => one.place === place) ?? []);
}

const kept = new WeakMap<State['likes'], { readonly key: readonly unknown[]; readonly found: Found }>();

/** The best placing and what comes after it; worked out once for as long as nothing that it stands on changes. */
export function foundFor(state: State, { part, problem }: FacedPart): Found {
  const key = [part, state.places, state.turns, state.faceOrders];
  const known = kept.get(state.likes);
  if (known && known.key.every((one, index) => one === key[index])) return known.found;
  const found = bestPlacing(problem);
  kept.set(state.likes, { key, found });
  return found;
}

/** How the copies stand now, when all of them do. */
export function standsNow({ problem }: FacedPart): Found['best'] | undefined {
  const now = problem.now ?? [];
  return now.length === problem.likes.length ? arranged(problem, now) : undefined;
}

/** The part meant: named, else the one on the screen, else that of the step, else the only upright one; all that it could be when none. */
export function facesAbout({ state, conversation: { screen } }: Bench, named: string | undefined): readonly Part[] {
  const parts = state.piece?.file.parts ?? [];
  const one = (id: string | undefined): readonly Part[] => parts.filter((part) => part.id === id);
  if (named !== undefined) return one(named);
  const shown = screen.name === 'faces' || screen.name === 'part' || screen.name === 'layout' ? one(screen.part) : [];
  if (shown.length > 0) return shown;
  const able = parts.filter((part) => facedPart(state, part).ok);
  const step = currentStep(stepsOf(state), state);
  const here = able.filter(({ id }) => id === step?.part);
  if (here.length > 0) return here;
  const upright = able.filter(({ id }) => state.piece?.file.joints.some((joint) => joint.kind === 'mortise and tenon' && joint.mortiseIn === id));
  return upright.length > 0 ? upright : able;
}
