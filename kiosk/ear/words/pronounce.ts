import type { Pronunciation } from '../graph/phones.ts';
import { lookUp } from './dictionary.ts';
import type { Dictionary } from './dictionary.ts';
import { soundsOf } from './letterToSound.ts';
import { plainEndings, singularsOf } from './plural.ts';

export interface Pronounced {
  readonly pronunciations: readonly Pronunciation[];
  /** The dictionary does not have it: it was put together from parts or by letter-to-sound rules, and may be said otherwise. */
  readonly guessed: boolean;
}

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const VOWELS = /[aeiouy]/;
/** A part of a compound is no shorter, for short words are found in everything. */
const SHORTEST_PART = 3;
/** More ways than this to say one word only make it easier to mishear. */
const MOST_WAYS = 4;

/**
 * How a word of the grammar is said, in capitals or not, with or without accents. Letters of other scripts have no sounds here.
 * @returns undefined when nothing of the word can be said
 */
export function pronounce(word: string, dictionary: Dictionary): Pronounced | undefined {
  const plain = word.normalize('NFD').replace(/\p{M}/gu, '').replace(/[’‘]/gu, "'").toLowerCase();
  const known = lookUp(plain, dictionary);
  if (known.length > 0) return { pronunciations: known, guessed: false };
  // The name of a letter is no guess: faces are called A, B, C and D.
  const letter = plain.length === 1 ? lookUp(`${plain}.`, dictionary) : [];
  if (letter.length > 0) return { pronunciations: letter, guessed: false };
  const plural = ofSingular(plain, dictionary);
  if (plural.length > 0) return { pronunciations: plural.slice(0, MOST_WAYS), guessed: false };
  const guesses = guessWays(plain, dictionary).filter((way) => way.length > 0);
  return guesses.length === 0 ? undefined : { pronunciations: guesses.slice(0, MOST_WAYS), guessed: true };
}

function ofSingular(word: string, dictionary: Dictionary): readonly Pronunciation[] {
  for (const singular of singularsOf(word)) {
    const known = lookUp(singular, dictionary);
    if (known.length > 0) return known.flatMap((sounds) => plainEndings(sounds.at(-1)).map((ending) => [...sounds, ...ending]));
  }
  return [];
}

function guessWays(word: string, dictionary: Dictionary): readonly Pronunciation[] {
  const runs: readonly string[] = word.match(/[a-z']+|[0-9]/g) ?? [];
  if (runs.length !== 1) return [runs.flatMap((run) => firstWay(run, dictionary))];
  return [...compoundWays(word, dictionary), firstWay(runs[0] ?? '', dictionary)];
}

/** The best way to say a run of letters, or a digit. */
function firstWay(run: string, dictionary: Dictionary): Pronunciation {
  const digit = DIGITS[Number.parseInt(run, 10)];
  if (digit !== undefined) return lookUp(digit, dictionary)[0] ?? [];
  const known = lookUp(run, dictionary)[0];
  if (known !== undefined) return known;
  const read = VOWELS.test(run) && run.length > 1 ? soundsOf(run, dictionary.rules) : [];
  return read.length > 0 ? read : Array.from(run).flatMap((letter) => letterName(letter, dictionary));
}

/** Initials are said letter by letter: 'mdf'. The dictionary has the names of the letters as 'm.'; the article 'a' is another word. */
function letterName(letter: string, dictionary: Dictionary): Pronunciation {
  return lookUp(`${letter}.`, dictionary)[0] ?? [];
}

/** Two words of the dictionary in one, the longest first: 'gunstock'. */
function compoundWays(word: string, dictionary: Dictionary): readonly Pronunciation[] {
  for (let at = word.length - SHORTEST_PART; at >= SHORTEST_PART; at -= 1) {
    const [first] = lookUp(word.slice(0, at), dictionary);
    const [second] = [...lookUp(word.slice(at), dictionary), ...ofSingular(word.slice(at), dictionary)];
    if (first !== undefined && second !== undefined) return [[...first, ...second]];
  }
  return [];
}
