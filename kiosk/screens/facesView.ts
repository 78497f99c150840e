import type { Bench } from '../../core/bench/bench.ts';
import type { Screen } from '../../core/bench/screen.ts';
import type { Placed } from '../../core/faces/facts.ts';
import { faceLying, faceTowards, oppositeSide, RING, type Face, type Side } from '../../core/faces/face.ts';
import { legMap } from '../../core/faces/map.ts';
import { facedPart, facesAbout, foundFor, type FacedPart } from '../../core/respond/facesState.ts';
import type { StandingCopy } from '../draw/cornersLayout.ts';

/** What the screen of faces draws: the part, and where its copies go, now or as proposed. */
export interface Shown {
  readonly faced: FacedPart;
  readonly copies: readonly StandingCopy[];
  readonly what: string;
}

/** Undefined when no part of the piece can be placed by its faces. */
export function shownFaces(bench: Bench, screen: Extract<Screen, { name: 'faces' }>): Shown | undefined {
  const [part] = facesAbout(bench, screen.part);
  const faced = part && facedPart(bench.state, part);
  if (!faced?.ok) return undefined;
  const found = screen.shows === undefined ? undefined : foundFor(bench.state, faced.value);
  const proposed = screen.shows === 'second' ? found?.second ?? found?.best : found?.best;
  return {
    faced: faced.value, what: screen.shows === 'second' ? 'second best' : screen.shows === 'best' ? 'as proposed' : 'as they stand',
    copies: proposed ? proposed.legs.map((leg) => standing(bench, faced.value, leg)) : asTheyStand(bench, faced.value),
  };
}

/** Copies with a place but no turn are drawn without letters; those without a place are not drawn. */
function asTheyStand(bench: Bench, faced: FacedPart): readonly StandingCopy[] {
  const { part, problem: { stand } } = faced;
  return Array.from({ length: part.count }, (_, index) => index + 1).flatMap((copy) => {
    const place = stand.places.find(({ name }) => name === bench.state.places.get(`${part.id}/${copy}`));
    return place === undefined ? [] : [standing(bench, faced, { copy, place, turn: bench.state.turns.get(`${part.id}/${copy}`) })];
  });
}

type Standing = Omit<Placed, 'turn'> & { readonly turn: Placed['turn'] | undefined };

function standing({ state }: Bench, { part, problem: { stand, likes } }: FacedPart, { copy, place, turn }: Standing): StandingCopy {
  const own = { copy, place: place.name, sides: place.sides, told: likes[copy - 1]?.faces ?? {}, numberedEndDown: stand.kind === 'upright' && turn?.up === 'other', mortised: [] };
  if (turn === undefined || !state.piece) return own;
  if (stand.kind === 'upright') {
    const towards = Object.fromEntries(RING.map((side) => [side, faceTowards(turn, side)])) as Record<Side, Face>;
    return { ...own, towards, mortised: [...new Set(legMap(state.piece.file, part, place.name, turn).mortises.map(({ side }) => side))] };
  }
  // A rail is drawn by its outer face and the one opposite; what looks up stands beside its name.
  const [outside = 'front'] = place.sides;
  const towards = { [outside]: faceLying(turn, 'outside'), [oppositeSide(outside)]: faceLying(turn, 'inside') };
  return { ...own, towards, remark: `${faceLying(turn, 'top')} up` };
}
