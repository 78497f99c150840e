import { ArcsByLabel } from './arcsByLabel.ts';
import { Lists, withRoom } from './lists.ts';
import { NO_END, NUMBERS_AN_ARC } from './wordGraph.ts';

/** The states that there are from the beginning: behind the last word, and where nothing can be said at all. */
export const [THE_END, NOWHERE] = [0, 1];
/** In the place of a label: an option that may begin as its state may. */
export const ANY = 0;
const NONE = -1;

/**
 * The states of word graphs, each known by all that it is: what ending there costs, then for each arc label, target and cost, in the order of the labels. And how
 * several of them are joined to one, which is asked again and again.
 */
export class Joins {
  readonly states = new Lists();
  /** States with what each owes: what was paid on the way to it beyond what the cheapest of them paid. */
  readonly #owing = new Lists();
  readonly #joined: number[] = [];
  /** What the last join owes at least: its second result, in the place of an object for each. */
  #owed = 0;
  /** What is being worked on lies here, and behind it what that asked for. */
  #work = new Int32Array(1 << 12);
  #top = 0;
  readonly #byLabel = new ArcsByLabel();

  constructor() {
    this.#work.set([0, NO_END]);
    this.states.numberOf(this.#work, 0, 1);
    this.states.numberOf(this.#work, 1, 2);
  }

  /** The state from which a word leads to `next`; a word without a label leads nowhere. */
  word(label: number, next: number): number {
    if (label === 0) return NOWHERE;
    const from = this.room(1 + NUMBERS_AN_ARC);
    this.#work[from] = NO_END;
    this.option(from + 1, label, next, 0);
    this.#top = from;
    return this.states.numberOf(this.#work, from, from + 1 + NUMBERS_AN_ARC);
  }

  /** Room for options, three numbers for each; it is given back by `either`. */
  room(numbers: number): number {
    const from = this.#top;
    this.#top += numbers;
    this.#work = withRoom(this.#work, this.#top);
    return from;
  }

  /** Puts an option in a room: a word and the state behind it, or a state and ANY in the place of a word; and what it costs. */
  option(place: number, label: number, state: number, cost: number): void {
    this.#work[place] = label;
    this.#work[place + 1] = state;
    this.#work[place + 2] = cost;
  }

  /** One state for all options in that room. Here nothing is paid yet, so that what is to be paid has to stay in the state: on its arcs. */
  either(options: number): number {
    const end = this.#top;
    let ends = Infinity;
    this.#byLabel.clear();
    for (let at = options; at < end; at += NUMBERS_AN_ARC) {
      if (this.#work[at] !== ANY) this.#byLabel.take(this.#work, at, at + NUMBERS_AN_ARC, 0);
      else ends = Math.min(ends, this.#gatherState(this.#work[at + 1] ?? 0, this.#work[at + 2] ?? 0));
    }
    const state = this.#joinGathered(ends);
    this.#top = options;
    return state;
  }

  /** One state for several that are reached by the same words: those from here on, each with what it owes. What all of them owe is in `#owed` then. */
  #join(from: number): number {
    const to = this.#cheapestOfEach(from);
    this.#top = from;
    if (to === from + 2) return this.#work[from] ?? NOWHERE;
    const owing = this.#owing.numberOf(this.#work, from, to);
    if (owing === this.#joined.length) this.#joined.push(NONE);
    const known = this.#joined[owing] ?? NONE;
    if (known !== NONE) return known;
    const owed = this.#owed;
    this.#top = to;
    const state = this.#joinAll(from, to);
    this.#joined[owing] = state;
    this.#top = from;
    this.#owed = owed;
    return state;
  }

  /** Orders a room by states, each once with the least that it owes beyond the least of all. @returns where it ends then */
  #cheapestOfEach(from: number): number {
    let to = from;
    let least = Infinity;
    for (let at = from; at < this.#top; at += 2) {
      const cost = this.#work[at + 1] ?? 0;
      if (cost < least) least = cost;
      to = this.#insert(from, to, this.#work[at] ?? 0, cost);
    }
    for (let at = from; at < to; at += 2) this.#owes(at, this.#work[at] ?? 0, (this.#work[at + 1] ?? 0) - least);
    this.#owed = least;
    return to;
  }

  #insert(from: number, to: number, state: number, cost: number): number {
    let at = to;
    while (at > from && (this.#work[at - 2] ?? 0) > state) at -= 2;
    if (at > from && this.#work[at - 2] === state) {
      this.#owes(at - 2, state, Math.min(cost, this.#work[at - 1] ?? 0));
      return to;
    }
    for (let each = to - 1; each >= at; each -= 1) this.#work[each + 2] = this.#work[each] ?? 0;
    this.#owes(at, state, cost);
    return to + 2;
  }

  /** One state for all that was gathered. */
  #joinGathered(ends: number): number {
    const state = this.room(1);
    const arcs = this.room(this.#byLabel.length);
    this.#work[state] = ends === Infinity ? NO_END : ends;
    this.#byLabel.write(this.#work, arcs);
    let filled = arcs;
    for (let at = arcs, end = this.#top; at < end; ) {
      const next = this.#endOfLabel(at, end);
      if (next === at + NUMBERS_AN_ARC) this.option(filled, this.#work[at] ?? 0, this.#work[at + 1] ?? 0, this.#work[at + 2] ?? 0);
      else this.option(filled, this.#work[at] ?? 0, this.#joinArcs(at, next), this.#owed);
      filled += NUMBERS_AN_ARC;
      at = next;
    }
    return this.states.numberOf(this.#work, state, filled);
  }

  #joinAll(from: number, to: number): number {
    let ends = Infinity;
    this.#byLabel.clear();
    for (let at = from; at < to; at += 2) ends = Math.min(ends, this.#gatherState(this.#work[at] ?? 0, this.#work[at + 1] ?? 0));
    return this.#joinGathered(ends);
  }

  /** Takes the arcs of a state, each with what was owed before. @returns what ending in it costs, or Infinity */
  #gatherState(state: number, owed: number): number {
    const start = this.states.start(state);
    const ending = this.states.numbers[start] ?? NO_END;
    this.#byLabel.take(this.states.numbers, start + 1, this.states.end(state), owed);
    return ending === NO_END ? Infinity : ending + owed;
  }

  #endOfLabel(at: number, end: number): number {
    let next = at + NUMBERS_AN_ARC;
    while (next < end && this.#work[next] === this.#work[at]) next += NUMBERS_AN_ARC;
    return next;
  }

  #joinArcs(from: number, to: number): number {
    const options = this.room((to - from) / NUMBERS_AN_ARC * 2);
    for (let at = from, place = options; at < to; at += NUMBERS_AN_ARC, place += 2) this.#owes(place, this.#work[at + 1] ?? 0, this.#work[at + 2] ?? 0);
    return this.#join(options);
  }

  #owes(place: number, state: number, cost: number): void {
    this.#work[place] = state;
    this.#work[place + 1] = cost;
  }
}
