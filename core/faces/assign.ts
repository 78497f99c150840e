import { sameTurn, type Turn } from './face.ts';
import { factsOf, factsOfOne, figureTowards, neighbours, pairWorth, scoreOf, type Fact, type Placed } from './facts.ts';
import { LEVELS, valueOf, worths, type Level, type Score } from './levels.ts';
import { FIGURES, type CopyLikes, type Figure } from './likes.ts';
import { searchRing, type Choice, type Reached, type Ring } from './search.ts';
import type { Place, Stand } from './stand.ts';

/** What is to be placed, and by what. */
export interface Placing {
  readonly stand: Stand;
  /** What was told of each copy, copy one first; as many as there are places. */
  readonly likes: readonly CopyLikes[];
  /** What counts first. */
  readonly order: readonly Level[];
  /** How they stand now, as far as they do: of equally good placings the nearest to it is taken. */
  readonly now?: readonly Placed[];
}

/** One placing of all copies, round the piece. */
export interface Arrangement {
  readonly legs: readonly Placed[];
  readonly facts: readonly Fact[];
  readonly score: Score;
  readonly value: number;
}

export interface Found {
  readonly best: Arrangement;
  /** How many placings are as good as it, itself among them; every turn counts. */
  readonly ways: number;
  /** One that is as good and puts copies into other places; the one that moves the fewest. */
  readonly asGood?: Arrangement;
  /** Copies that may be turned where they stand without any loss. */
  readonly mayTurn: readonly number[];
  /** The best of all that are worse, and of those the one that changes the fewest copies; absent when all are as good. */
  readonly second?: Arrangement;
}

/** The best placing of all, its ties and its runner-up: exact, over every placing and every turn. */
export function bestPlacing(problem: Placing): Found {
  const first = searchRing(ringOf(problem, problem.now ?? []));
  const [top] = [first.still[0], first.moved[0]].filter((reached) => reached !== undefined).sort(betterFirst);
  if (top === undefined) throw new Error('a placing without copies');
  const best = arrangementOf(problem, top);
  const around = searchRing(ringOf(problem, best.legs));
  const [second] = [...around.still, ...around.moved].filter(({ value }) => value < top.value).sort(betterFirst);
  const [other] = around.moved.filter(({ value }) => value === top.value);
  return {
    best,
    ways: [...around.still, ...around.moved].filter(({ value }) => value === top.value).reduce((sum, { ways }) => sum + ways, 0),
    mayTurn: best.legs.filter((leg) => turnsAsGood(problem, best, leg).length > 0).map(({ copy }) => copy).sort((one, two) => one - two),
    ...(other === undefined ? {} : { asGood: arrangementOf(problem, other) }),
    ...(second === undefined ? {} : { second: arrangementOf(problem, second) }),
  };
}

function betterFirst(one: Reached<Turn>, other: Reached<Turn>): number {
  return other.value - one.value || other.near - one.near;
}

/** The turns that a copy may take in its place. */
export function turnsFor({ stand }: Placing, likes: CopyLikes): readonly Turn[] {
  return stand.turns.filter(({ up }) => stand.kind === 'lying' || likes.up === undefined || likes.up === up);
}

function ringOf(problem: Placing, near: readonly Placed[]): Ring<Turn> {
  const { stand, likes, order } = problem;
  const worth = worths(order, likes.length);
  const pairs = neighbours(stand.places);
  return {
    places: stand.places.map((place, at) => likes.flatMap((own, index) => {
      const there = near.find(({ copy }) => copy === index + 1);
      const [before, after] = [pairs.find(({ second }) => second === at)?.side, pairs.find(({ first }) => first === at)?.side];
      return turnsFor(problem, own).map((turn): Choice<Turn> => {
        const placed: Placed = { copy: index + 1, place, turn };
        const kind = (side: typeof before): number => kindOf(figureTowards(stand, placed, own, side));
        const stays = there?.place.name === place.name;
        return {
          copy: index, turned: turn, value: valueOf(scoreOf(factsOfOne(stand, placed, own, likes.length)), worth),
          before: kind(before), after: kind(after), near: stays && sameTurn(there.turn, turn) ? 1 : 0, moved: !stays,
        };
      });
    })),
    match: stand.places.map((_, at) => {
      const pair = pairs.find(({ first }) => first === at);
      return pair === undefined ? 0 : pairWorth(pair.side, likes.length) * worth.pairs;
    }),
  };
}

function kindOf(figure: Figure | undefined): number {
  return figure === undefined ? 0 : FIGURES.indexOf(figure) + 1;
}

function arrangementOf(problem: Placing, { choices }: Reached<Turn>): Arrangement {
  const none: Place = { name: '', sides: [] };
  return arranged(problem, choices.map(({ copy, turned }, at) => ({ copy: copy + 1, turn: turned, place: problem.stand.places[at] ?? none })));
}

/** What a placing comes to; the copies in the order of the places round the piece. */
export function arranged({ stand, likes, order }: Placing, legs: readonly Placed[]): Arrangement {
  const facts = factsOf(stand, legs, (copy) => likes[copy - 1] ?? { faces: {} });
  const score = scoreOf(facts);
  return { legs, facts, score, value: valueOf(score, worths(order, likes.length)) };
}

function turnsAsGood(problem: Placing, { legs, value }: Arrangement, leg: Placed): readonly Turn[] {
  const likes = problem.likes[leg.copy - 1];
  if (likes === undefined) return [];
  return turnsFor(problem, likes).filter((turn) => !sameTurn(turn, leg.turn)
    && arranged(problem, legs.map((one) => (one === leg ? { ...one, turn } : one))).value === value);
}

/** The usual order of what counts. */
export const USUAL_ORDER: readonly Level[] = LEVELS;
