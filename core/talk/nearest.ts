import type { Bench } from '../bench/bench.ts';
import { phrasesFor } from './grammar.ts';
import { namesOf } from './names.ts';
import { FILLERS } from './words.ts';

/** Beyond this share of words changed a phrase is no help any more. */
const FARTHEST = 0.6;
/** A name whose letters are changed more than this is another name. */
const FARTHEST_NAME = 0.5;
const MOST_TRIED = 5;

/**
 * What could have been meant: the same words with one name of the piece put right, if that makes sense, or else the
 * phrase that is nearest by words put in, left out or changed; undefined when none is near.
 */
export function nearestPhrase(words: readonly string[], bench: Bench, makesSense: (words: readonly string[]) => boolean): string | undefined {
  const heard = words.filter((word) => !FILLERS.has(word));
  return withNamePutRight(heard, bench).find((phrase) => makesSense(phrase))?.join(' ') ?? nearestOf(heard, phrasesFor(bench));
}

/** The words with one stretch replaced by a name of as many words that is spelled or sounds much like it, the likest first. */
function withNamePutRight(heard: readonly string[], { state }: Bench): readonly (readonly string[])[] {
  const names = new Set(namesOf(state.piece).owners.map(({ say }) => say.toLowerCase()));
  const tries = [...names].flatMap((name) => {
    const named = name.split(' ');
    return heard.slice(named.length - 1).map((_, at) => {
      const put = [...heard.slice(0, at), ...named, ...heard.slice(at + named.length)];
      return { put, distance: letterDistance(heard.slice(at, at + named.length).join(' '), name) };
    });
  });
  return tries.filter(({ distance }) => distance > 0 && distance <= FARTHEST_NAME).sort((a, b) => a.distance - b.distance).slice(0, MOST_TRIED).map(({ put }) => put);
}

function nearestOf(heard: readonly string[], phrases: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = FARTHEST + 1e-9;
  const change = priceOfChange();
  for (const phrase of heard.length === 0 ? [] : phrases) {
    const said = phrase.split(' ').filter((word) => !FILLERS.has(word));
    const longer = Math.max(said.length, heard.length);
    if (Math.abs(said.length - heard.length) / longer >= least) continue;
    const distance = editDistance(heard, said, change) / longer;
    // It can be said, only not now: there is nothing nearer to offer.
    if (distance === 0) return undefined;
    if (distance < least) [best, least] = [phrase, distance];
  }
  return best;
}

/** The price of one word for another, from 0 to 1, kept because the same few words come again in every phrase. */
function priceOfChange(): (one: string, other: string) => number {
  const kept = new Map<string, number>();
  return (one, other) => {
    const pair = `${one} ${other}`;
    const price = kept.get(pair) ?? Math.min(1, 2 * letterDistance(one, other));
    kept.set(pair, price);
    return price;
  };
}

/** The share of letters that differ, from 0 to 1. */
function letterDistance(one: string, other: string): number {
  return one === other ? 0 : editDistance(one.split(''), other.split(''), (a, b) => (a === b ? 0 : 1)) / Math.max(one.length, other.length);
}

/** Levenshtein distance, with the price of a change given. */
function editDistance(a: readonly string[], b: readonly string[], change: (one: string, other: string) => number): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (const [i, one] of a.entries()) {
    const next = [i + 1];
    for (const [j, other] of b.entries()) {
      next.push(Math.min((next[j] ?? 0) + 1, (row[j + 1] ?? 0) + 1, (row[j] ?? 0) + change(one, other)));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
