import { UNKNOWN_WORD } from './grammar.ts';

/**
 * How sure the recogniser must be. Its confidence in a word is the share of all likely readings of the sound, talk that is no sentence among them, that
 * have this word there: so it tells something only because the strict grammar has a competitor. Measured: see test/bench/hearing/README.md.
 */
export interface TrustSettings {
  /** The least sure word of a sentence. */
  readonly leastWord: number;
  /** The same of a sentence of one or two words, for which there is less to go by. */
  readonly leastWordOfFew: number;
  /** Under this a word is doubtful: if it has a rival, it is asked about. */
  readonly clearWord: number;
}

export const TRUST_SETTINGS: TrustSettings = { leastWord: 0.6, leastWordOfFew: 0.75, clearWord: 0.9 };

const FEW = 2;

export interface Trusted {
  /** As they were heard; what follows the address word is the unknown word if it is not to be acted on. */
  readonly words: string;
  readonly doubtful: readonly string[];
}

/** What may be acted on of what was heard. @param sureness of each word, 0 to 1; a word without one is taken as sure */
export function trustedWords(heard: string, sureness: readonly number[], addressWord: string, settings: TrustSettings = TRUST_SETTINGS): Trusted {
  const words = heard.split(' ').map((word, at) => ({ word, sure: sureness[at] ?? 1 }));
  const said = words.filter(({ word }) => word !== UNKNOWN_WORD);
  const command = said.filter(({ word }) => word !== addressWord);
  const least = command.length <= FEW ? settings.leastWordOfFew : settings.leastWord;
  if (command.some(({ sure }) => sure < least)) return { words: said[0]?.word === addressWord ? `${addressWord} ${UNKNOWN_WORD}` : UNKNOWN_WORD, doubtful: [] };
  return { words: heard, doubtful: [...new Set(command.filter(({ sure }) => sure < settings.clearWord).map(({ word }) => word))] };
}
