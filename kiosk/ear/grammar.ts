import { singularsOf } from './words/plural.ts';

/** The recogniser's word for anything it does not know. */
export const UNKNOWN_WORD = '[unk]';

export interface Grammar {
  /** What the recogniser is given. */
  readonly phrases: readonly string[];
  /** Words that the model cannot hear, and that nothing can stand in for. */
  readonly unheard: readonly string[];
  /** What a word that is heard stands for: itself, unless it is here. */
  readonly meant: ReadonlyMap<string, string>;
}

/** Every word that the model must know for a grammar of these phrases; of those that it does not, the singulars may do. */
export function wordsToAsk(phrases: readonly string[], addressWord: string): readonly string[] {
  return wordsOf(phrases, addressWord);
}

/**
 * The grammar for some phrases, the address word, and a model that does not know some words. The engine makes of its phrases a table of which word
 * follows which, so:
 * - each phrase is given once alone and once after the address word, for nothing else would tell it that the two go together (in noise of 10 dB it then
 *   heard the address word in 96 of 96 sentences instead of 74, and the whole sentence in 76 instead of 62);
 * - a plural that the model does not know is listened for as its singular, which differs by one hiss at the end;
 * - a phrase with a word that the model does not know at all is given as the pieces around that word; left to itself the engine would close the gap, and
 *   learn that the words on either side follow each other.
 */
export function makeGrammar(phrases: readonly string[], addressWord: string, unknownWords: ReadonlySet<string>): Grammar {
  const words = wordsOf(phrases, addressWord);
  const standIns = new Map<string, string>();
  for (const word of words.filter((each) => unknownWords.has(each))) {
    const singular = singularsOf(word).find((each) => !unknownWords.has(each));
    if (singular !== undefined) standIns.set(word, singular);
  }
  const unheard = words.filter((word) => unknownWords.has(word) && !standIns.has(word));
  // Where the singular is said for itself too, there is no telling which was meant, and it stays as it was heard.
  const said = new Set(words);
  const meant = new Map([...standIns].filter(([, singular]) => !said.has(singular)).map(([word, singular]) => [singular, word]));
  // There are thousands, and a model that listens by sentences needs none of them.
  return { get phrases() { return phraseList(phrases, addressWord, standIns, new Set(unheard)); }, unheard, meant };
}

function phraseList(phrases: readonly string[], addressWord: string, standIns: ReadonlyMap<string, string>, unheard: ReadonlySet<string>): readonly string[] {
  const list = new Set<string>(unheard.has(addressWord) ? [] : [addressWord]);
  for (const phrase of phrases) {
    const words = splitWords(phrase).map((word) => standIns.get(word) ?? word);
    const [start = '', ...rest] = aroundUnknown(words, unheard);
    for (const piece of [start, ...rest]) if (piece !== '') list.add(piece);
    if (start !== '' && !unheard.has(addressWord)) list.add(`${addressWord} ${start}`);
  }
  return [...list, UNKNOWN_WORD];
}

function wordsOf(phrases: readonly string[], addressWord: string): readonly string[] {
  // All of them at once, which is quicker by far than one after the other.
  return [...new Set([addressWord, ...splitWords(phrases.join(' '))])];
}

function splitWords(phrase: string): readonly string[] {
  return phrase.toLowerCase().replace(/[^\S ]|-/g, ' ').split(' ').filter((word) => word !== '' && word !== UNKNOWN_WORD);
}

/** The known stretches of a phrase; the first is empty when the phrase begins with an unknown word. */
function aroundUnknown(words: readonly string[], unknownWords: ReadonlySet<string>): readonly string[] {
  const pieces: string[][] = [[]];
  for (const word of words) {
    if (unknownWords.has(word)) pieces.push([]);
    else pieces.at(-1)?.push(word);
  }
  return pieces.map((piece) => piece.join(' '));
}

/** What was meant by what was heard. */
export function asMeant(heard: string, meant: ReadonlyMap<string, string>): string {
  return heard.split(' ').map((word) => meant.get(word) ?? word).join(' ');
}
