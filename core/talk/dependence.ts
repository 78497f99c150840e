import type { Bench } from '../bench/bench.ts';
import { parseHeard } from './doubt.ts';
import { namesOf } from './names.ts';
import { understood } from './parse.ts';
import { canonical, splitWords } from './words.ts';

/** Small words that are taken for each other, for they are said with hardly any sound of their own; among them the numbers that sound like one. Common practice, no source. */
const TAKEN_FOR_EACH_OTHER: readonly (readonly string[])[] = [
  ['a', 'the', 'of', 'to', 'her'], ['and', 'in', 'an', 'on', 'end'], ['is', 'as', 'are', 'its'], ['it', 'at', 'a'], ['for', 'four'], ['to', 'two'], ['a', 'eight'], ['do', 'to'], ['does', 'is'],
];
const NUMBERS: ReadonlySet<string> = new Set(['four', 'two', 'eight']);
/** What may be left out or put in without being heard. */
const SMALL: ReadonlySet<string> = new Set(TAKEN_FOR_EACH_OTHER.flat().filter((word) => !NUMBERS.has(word)));

/** 'asked': it does, and the bench would ask which word it was ("fifteen, or fifty?") rather than take it as heard. */
export type Dependence = 'not' | 'asked' | 'wholly';

/**
 * How the request that the words make depends on the one at `at`: not, for a small word when none that sounds like it, nor leaving it out, would make
 * another request; nor for one of which only the singular or the plural is in doubt. Of words that make no request, wholly.
 */
export function dependsOn(words: readonly string[], at: number, bench: Bench): Dependence {
  if (!changesRequest(words, at, bench)) return 'not';
  return parseHeard(words.join(' '), [words[at] ?? ''], bench).kind === 'which' ? 'asked' : 'wholly';
}

function changesRequest(words: readonly string[], at: number, bench: Bench): boolean {
  const word = words[at] ?? '';
  const others = othersFor(word, bench);
  const request = others.length === 0 ? undefined : understood(words, bench);
  if (request === undefined) return true;
  const meant = JSON.stringify(request);
  const asOther = others.map((other) => understood([...words.slice(0, at), ...splitWords(other), ...words.slice(at + 1)], bench));
  if (SMALL.has(word)) return asOther.some((other) => other !== undefined && JSON.stringify(other) !== meant);
  return asOther.some((other) => JSON.stringify(other) !== meant);
}

/** How else the word may have been said; nothing for words that nothing stands in for. */
function othersFor(word: string, { state: { piece } }: Bench): readonly string[] {
  if (SMALL.has(word)) return ['', ...new Set(TAKEN_FOR_EACH_OTHER.filter((alike) => alike.includes(word)).flat().filter((other) => other !== word))];
  const singular = canonical(word);
  if (singular !== word) return [singular];
  return namesOf(piece).words.has(word) ? [`${word}s`] : [];
}
