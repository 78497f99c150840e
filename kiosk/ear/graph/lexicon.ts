import { FstBuilder } from './fst.ts';
import type { Fst } from './fst.ts';
import { BLANK, entering, GARBAGE, phoneNumber, SILENCE, staying } from './phones.ts';
import type { Place, Pronunciation } from './phones.ts';

/** A word and every way to say it. */
export interface Word {
  readonly word: string;
  readonly pronunciations: readonly Pronunciation[];
}

/** What the unknown word costs, in natural logarithms, over a word of the grammar; as the shipped model was measured with. */
const UNKNOWN_WORD_COST = 2;

/**
 * What each frame of the unknown word costs. The model takes 0.9 from its garbage sound in each frame, this gives back 0.4 of it: what a sentence explains
 * worse than that, against the best free sounds, is refused. Measured: see test/bench/hearing/README.md.
 */
const UNKNOWN_FRAME_COST = -0.4;

/** A phone as it was entered, and the blank that may follow it: the next phone can be reached from both. */
interface Node { readonly phone: number; readonly blank: number; readonly next: Map<number, Node> }

/**
 * The transducer from the network's transitions to words: a tree of phones that words with the same beginning share. Labels are places in `words`
 * counted from 1; the unknown word comes after them.
 *
 * Two things here look as if they could be simpler, and cannot. The state after a silence has copies of all arcs that begin words, and never leads back
 * to the start: otherwise a long silence could be cut into silences in exponentially many ways of the same cost, and the engine hangs over them. For the
 * same reason the unknown word is a single sound that goes on, not a loop of phones.
 */
export function buildLexicon(words: readonly Word[]): Fst {
  const builder = new FstBuilder();
  const start = builder.state();
  const afterSilence = builder.state();
  builder.arc(start, afterSilence, entering(SILENCE));
  builder.arc(afterSilence, afterSilence, staying(SILENCE));
  const tree = new PhoneTree(builder, start);
  words.forEach(({ pronunciations }, index) => {
    for (const pronunciation of distinct(pronunciations)) tree.add(pronunciation, index + 1);
  });
  builder.arc(start, tree.wordEnd(GARBAGE), entering(GARBAGE), words.length + 1, UNKNOWN_WORD_COST);
  builder.copyArcs(start, afterSilence, (target) => target === afterSilence);
  builder.end(start);
  builder.end(afterSilence);
  return builder.done();
}

class PhoneTree {
  readonly #builder: FstBuilder;
  readonly #start: number;
  readonly #roots = new Map<number, Node>();
  /** The state after a word's last phone is shared by all words that end in it, and leads back to the start. */
  readonly #wordEnds = new Map<number, number>();

  constructor(builder: FstBuilder, start: number) {
    this.#builder = builder;
    this.#start = start;
  }

  add(pronunciation: Pronunciation, label: number): void {
    let sources = [this.#start];
    let next = this.#roots;
    for (const [index, phone] of pronunciation.slice(0, -1).entries()) {
      const node = this.#follow(sources, next, phoneNumber(phone, index === 0 ? 'begin' : 'internal'));
      sources = [node.phone, node.blank];
      next = node.next;
    }
    const place: Place = pronunciation.length === 1 ? 'singleton' : 'end';
    const last = phoneNumber(pronunciation.at(-1) ?? 0, place);
    for (const source of sources) this.#builder.arc(source, this.wordEnd(last), entering(last), label);
  }

  wordEnd(phone: number): number {
    const known = this.#wordEnds.get(phone);
    if (known !== undefined) return known;
    const state = this.#builder.state();
    this.#wordEnds.set(phone, state);
    this.#builder.arc(state, state, staying(phone), 0, phone === GARBAGE ? UNKNOWN_FRAME_COST : 0);
    this.#builder.arc(state, this.#start, 0);
    return state;
  }

  #follow(sources: readonly number[], next: Map<number, Node>, phone: number): Node {
    const known = next.get(phone);
    if (known !== undefined) return known;
    const node: Node = { phone: this.#builder.state(), blank: this.#builder.state(), next: new Map() };
    next.set(phone, node);
    for (const source of sources) this.#builder.arc(source, node.phone, entering(phone));
    this.#builder.arc(node.phone, node.phone, staying(phone));
    this.#builder.arc(node.phone, node.blank, entering(BLANK));
    this.#builder.arc(node.blank, node.blank, staying(BLANK));
    return node;
  }
}

function distinct(pronunciations: readonly Pronunciation[]): readonly Pronunciation[] {
  return [...new Map(pronunciations.map((each) => [each.join(' '), each])).values()];
}
