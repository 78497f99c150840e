/** The recogniser's word for anything it does not know. */
export const UNKNOWN_WORD = '[unk]';

/** Every different word of some phrases, and of the address. */
export function wordsOf(phrases: readonly string[], addressWord: string): readonly string[] {
  return [...new Set([addressWord, ...phrases.flatMap(splitWords)])];
}

/**
 * The list the recogniser is given. It makes of it a table of which word follows which, so a phrase with a word that the model does not know is handed
 * over as the pieces around that word; left to itself the engine would close the gap, and learn that the words on either side follow each other.
 */
export function grammarPhrases(phrases: readonly string[], addressWord: string, unknownWords: ReadonlySet<string>): readonly string[] {
  const known = new Set<string>([addressWord]);
  for (const phrase of phrases) for (const piece of knownPieces(splitWords(phrase), unknownWords)) known.add(piece);
  return [...known, UNKNOWN_WORD];
}

function splitWords(phrase: string): readonly string[] {
  return phrase.toLowerCase().split(/[\s-]+/).filter((word) => word !== '');
}

function knownPieces(words: readonly string[], unknownWords: ReadonlySet<string>): readonly string[] {
  const pieces: string[][] = [[]];
  for (const word of words) {
    if (unknownWords.has(word)) pieces.push([]);
    else pieces.at(-1)?.push(word);
  }
  return pieces.filter((piece) => piece.length > 0).map((piece) => piece.join(' '));
}
