import type { Bench } from '../bench/bench.ts';
import { readSpokenNumber } from '../length/parseSpoken.ts';
import { phrasesFor } from './grammar.ts';
import { namesOf } from './names.ts';
import { FILLERS } from './words.ts';

/** Beyond this share of words changed a phrase is no help any more. */
const FARTHEST = 0.5;
/** A phrase whose words are all small ones must be nearer. */
const FARTHEST_SMALL = 0.34;
/** A name whose letters are changed more than this is another name; a word, more than that, another word. */
const FARTHEST_NAME = 0.5;
const FARTHEST_WORD = 0.45;
/** Of shorter words one letter makes another word: 'put' and 'cut'. */
const SHORTEST_LIKE = 4;
const MOST_TRIED = 5;
/** So many words that carry meaning may have been heard without being in the phrase. */
const MOST_UNANSWERED = 1;

/** Words that carry no meaning by themselves: a phrase is no nearer for having them. */
const SMALL = new Set('how what which where when why who is are am was be been do does did can may must should will would has have had i you it this that they we me my of for to in on at and so not now here there long big wide thick deep high tall much many'.split(' '));
/** The words that a question begins with; two that ask alike are one. */
const QUESTIONS: ReadonlyMap<string, string> = new Map([['how', 'how'], ['what', 'what'], ['which', 'what'], ['where', 'where'], ['when', 'when'], ['why', 'why'], ['who', 'who']]);
/** An article with nothing behind it that it could belong to: 'the in full'. */
const NO_SENTENCE = /\b(?:an?|the)(?: (?:in|on|of|for|to|at|is|are|from|and|an?|the)\b|$)/;

type MakesSense = (words: readonly string[]) => boolean;

/**
 * What could have been meant: the same words with one name of the piece put right, if that makes sense, or else the phrase that is nearest by words put in,
 * left out or changed; undefined when none is near. What a phrase is about must have been heard: rather no help than a far-fetched one.
 */
export function nearestPhrase(words: readonly string[], bench: Bench, makesSense: MakesSense): string | undefined {
  const heard = words.filter((word) => !FILLERS.has(word));
  return withNamePutRight(heard, bench).find((phrase) => makesSense(phrase))?.join(' ') ?? nearestOf(heard, phrasesFor(bench), makesSense);
}

/** The words with one stretch replaced by a name of as many words that is spelled or sounds much like it, the likest first. */
function withNamePutRight(heard: readonly string[], { state }: Bench): readonly (readonly string[])[] {
  const names = new Set(namesOf(state.piece).owners.map(({ say }) => say.toLowerCase()));
  const tries = [...names].flatMap((name) => {
    const named = name.split(' ');
    return heard.slice(named.length - 1).map((_, at) => {
      const after = heard.slice(at + named.length);
      const put = [...heard.slice(0, at), ...articleFor(heard[at - 1], after[0]), ...named, ...after];
      return { put, distance: letterDistance(heard.slice(at, at + named.length).join(' '), name) };
    });
  });
  return tries.filter(({ distance }) => distance > 0 && distance <= FARTHEST_NAME).sort((a, b) => a.distance - b.distance).slice(0, MOST_TRIED).map(({ put }) => put);
}

/** 'How long is the long rail', but 'how long is leg two', and 'long rail width' as it is said. */
function articleFor(before: string | undefined, after: string | undefined): readonly string[] {
  return before !== undefined && SMALL.has(before) && !(after !== undefined && readSpokenNumber([after]).ok) ? ['the'] : [];
}

function nearestOf(heard: readonly string[], phrases: readonly string[], makesSense: MakesSense): string | undefined {
  let best: string | undefined;
  let least = FARTHEST + 1e-9;
  const [change, isAbout] = [priceOfChange(), aboutThat(heard)];
  for (const phrase of heard.length === 0 ? [] : phrases) {
    const said = phrase.split(' ').filter((word) => !FILLERS.has(word));
    const longer = Math.max(said.length, heard.length);
    if (Math.abs(said.length - heard.length) / longer >= least || !isAbout(said)) continue;
    const distance = editDistance(heard, said, change) / longer;
    // It can be said, only not now: there is nothing nearer to offer.
    if (distance === 0) return undefined;
    if ((distance < least || (distance === least && isFuller(phrase, best))) && (distance < FARTHEST_SMALL || said.some(carriesMeaning)) && !NO_SENTENCE.test(phrase) && agrees(phrase) && makesSense(phrase.split(' '))) [best, least] = [phrase, distance];
  }
  return best;
}

/** Whether a phrase asks the same question as what was heard, all that it is about was heard, or something much like it, and nearly all that was heard is in the phrase. */
function aboutThat(heard: readonly string[]): (said: readonly string[]) => boolean {
  const fits = new Map<string, boolean>();
  const wasHeard = (word: string): boolean => {
    const known = fits.get(word) ?? (!carriesMeaning(word) || isAmong(word, heard));
    fits.set(word, known);
    return known;
  };
  const [asked, meant] = [QUESTIONS.get(heard[0] ?? ''), heard.filter(carriesMeaning)];
  return (said) => {
    const question = QUESTIONS.get(said[0] ?? '');
    if (question !== undefined && asked !== undefined && question !== asked) return false;
    return said.every(wasHeard) && meant.filter((word) => !isAmong(word, said)).length <= MOST_UNANSWERED;
  };
}

/** A number in a phrase is an example of one. */
function carriesMeaning(word: string): boolean {
  return !SMALL.has(word) && !readSpokenNumber([word]).ok;
}

function isAmong(word: string, others: readonly string[]): boolean {
  return others.some((other) => other === word || (Math.min(word.length, other.length) >= SHORTEST_LIKE && letterDistance(word, other) <= FARTHEST_WORD));
}

/** The same with its articles. */
function isFuller(phrase: string, than: string | undefined): boolean {
  const plain = (text: string) => text.split(' ').filter((word) => !FILLERS.has(word)).join(' ');
  return than !== undefined && phrase.length > than.length && plain(phrase) === plain(than);
}

/** What is, or are, of such a size: up to what follows the name. */
const OF_WHAT = /^(?:how (?:long|big|much|wide|broad|thick|deep|high|tall) (?=(?:is|are) )|(?:how|what|which)(?: [a-z]+)*? (?=(?:is|are) the ))(is|are) (?:the )?((?:(?!of |on |for |from |in |to |at |made )[a-z']+ ?)+)/;

/** Rows take one and several alike, people do not: neither 'are the leg width' nor 'is the legs'. */
function agrees(phrase: string): boolean {
  const [, verb, named = ''] = OF_WHAT.exec(phrase) ?? [];
  return verb === undefined || (verb === 'are') === /[^s]s$/.test(named.trim());
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
