import type { Dependence } from '../../core/talk/dependence.ts';
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
  /** The least sure word that the bench may ask about instead: the answer is the maker's, so nothing is done on a guess. */
  readonly leastAskedWord: number;
  /** Under this a word is doubtful: if it has a rival, it is asked about. */
  readonly clearWord: number;
}

export const TRUST_SETTINGS: TrustSettings = { leastWord: 0.6, leastWordOfFew: 0.75, leastAskedWord: 0.4, clearWord: 0.9 };
/** Under a steady noise about as loud as the voice, the recogniser is sure of much that nobody said: of four requests that it would act on, one is another. */
export const TRUST_IN_NOISE: TrustSettings = { leastWord: 0.85, leastWordOfFew: 0.95, leastAskedWord: 0.5, clearWord: 0.9 };
/** A voice that stands out by so much is trusted as in quiet, one that does not by less as in noise. */
const QUIET_FROM_DB = 13;
const NOISE_TO_DB = 9;

/** How sure it must be of a voice that stands out of the noise so far (see standsOut.ts); undefined is as in quiet. */
export function trustSettingsAt(standsOutDb: number | undefined): TrustSettings {
  const noise = standsOutDb === undefined ? 0 : Math.min(1, Math.max(0, (QUIET_FROM_DB - standsOutDb) / (QUIET_FROM_DB - NOISE_TO_DB)));
  const between = (setting: keyof TrustSettings) => TRUST_SETTINGS[setting] + noise * (TRUST_IN_NOISE[setting] - TRUST_SETTINGS[setting]);
  return { leastWord: between('leastWord'), leastWordOfFew: between('leastWordOfFew'), leastAskedWord: between('leastAskedWord'), clearWord: between('clearWord') };
}

const FEW = 2;

export interface Trusted {
  /** As they were heard; what follows the address word is the unknown word if it is not to be acted on. */
  readonly words: string;
  readonly doubtful: readonly string[];
}

/** How what the words ask for depends on the one at `at` (core/talk/dependence.ts). */
export type DependsOn = (words: readonly string[], at: number) => Dependence;

const ON_EVERY_WORD: DependsOn = () => 'wholly';
/** A word for which another would do as well shares its certainty with that one: so half as sure is as sure, if enough of the rest was heard surely. */
const SHARED = 0.5;

/** What may be acted on of what was heard; the address word alone must be sure too, for talk has much that is like it. @param sureness of each word, 0 to 1; a word without one is taken as sure */
export function trustedWords(heard: string, sureness: readonly number[], addressWord: string, dependsOn: DependsOn = ON_EVERY_WORD, settings: TrustSettings = TRUST_SETTINGS): Trusted {
  const words = heard.split(' ').map((word, at) => ({ word, sure: sureness[at] ?? 1 }));
  const said = words.filter(({ word }) => word !== UNKNOWN_WORD);
  const command = said.filter(({ word }) => word !== addressWord);
  const least = command.length <= FEW ? settings.leastWordOfFew : settings.leastWord;
  if (command.length === 0 && said.some(({ sure }) => sure < least)) return { words: UNKNOWN_WORD, doubtful: [] };
  if (command.length > 0 && command.length <= FEW && isBesideUnknown(heard, addressWord)) return refused(said, addressWord);
  const spoken = command.map(({ word }) => word);
  const enough = command.filter(({ sure }) => sure >= least).length > FEW;
  const unsure = command.flatMap(({ word, sure }, at) => (sure < least && (!enough || sure < least * SHARED || dependsOn(spoken, at) !== 'not') ? [{ word, sure, at }] : []));
  const [only] = unsure;
  if (only === undefined) return { words: heard, doubtful: [...new Set(command.filter(({ sure }) => sure < settings.clearWord).map(({ word }) => word))] };
  if (unsure.length === 1 && only.sure >= settings.leastAskedWord && dependsOn(spoken, only.at) === 'asked') return { words: heard, doubtful: [only.word] };
  return refused(said, addressWord);
}

function refused(said: readonly { readonly word: string }[], addressWord: string): Trusted {
  return { words: said[0]?.word === addressWord ? `${addressWord} ${UNKNOWN_WORD}` : UNKNOWN_WORD, doubtful: [] };
}

/** Something that was not understood stands among the words, before the address word set aside. One or two words in it are a scrap of talk: a blow or a tap beside a request is not heard as a word. */
function isBesideUnknown(heard: string, addressWord: string): boolean {
  const words = heard.split(' ');
  return words.slice(words.indexOf(addressWord) + 1).includes(UNKNOWN_WORD);
}
