import { dictionary } from 'cmu-pronouncing-dictionary';
import { PHONES } from '../../kiosk/ear/graph/phones.ts';
import type { Pronunciation } from '../../kiosk/ear/graph/phones.ts';
import type { Entry } from './align.ts';

/** Words of letters and apostrophes, each with its ways to be said, without stress. */
export type Pronouncing = ReadonlyMap<string, readonly Entry[]>;

/** The CMU Pronouncing Dictionary. */
export function cmuDictionary(): Pronouncing {
  const words = new Map<string, Entry[]>();
  for (const [key, line] of Object.entries(dictionary)) {
    const word = key.replace(/\(\d+\)$/, '');
    if (!/^[a-z][a-z']*$/.test(word)) continue;
    add(words, word, readPhones(line.replace(/#.*$/, '')));
  }
  return words;
}

/** A list of words, each followed by its phones in capitals, or by none; what follows # says nothing. */
export function readWordList(text: string): Pronouncing {
  const words = new Map<string, Entry[]>();
  for (const [, word = '', phones = ''] of text.replace(/#.*$/gm, '').matchAll(/([a-z][a-z']*)((?:\s+[A-Z]+\b)*)/g)) {
    if (phones === '') words.set(word, words.get(word) ?? []);
    else add(words, word, readPhones(phones));
  }
  return words;
}

function add(words: Map<string, Entry[]>, word: string, sounds: Pronunciation): void {
  const entries = words.get(word) ?? [];
  words.set(word, entries);
  if (!entries.some((entry) => entry.sounds.join() === sounds.join())) entries.push({ word, sounds });
}

/** @throws {Error} on what is no phone of the dictionary */
function readPhones(text: string): Pronunciation {
  return text.trim().split(/\s+/).map((name) => {
    const phone = PHONES.indexOf(name.replace(/\d$/, ''));
    if (phone < 0) throw new Error(`"${name}" is no phone of the CMU Pronouncing Dictionary (in "${text}")`);
    return phone;
  });
}

/** The names of the letters, which the dictionary keeps with a full stop ('m.' as in 'p.m.'). */
export function letterNames(): Pronouncing {
  const names = new Map<string, Entry[]>();
  for (const letter of 'abcdefghijklmnopqrstuvwxyz') {
    const line = dictionary[`${letter}.`];
    if (line === undefined) throw new Error(`the CMU Pronouncing Dictionary has no "${letter}."`);
    add(names, `${letter}.`, readPhones(line));
  }
  return names;
}
