/**
 * Words as the patterns and names are compared: lower case, contractions opened, hyphens as spaces, one spelling and one
 * number for each. Figures ('3-7/16"', "1'") stay as they were typed.
 */

const CONTRACTIONS: ReadonlyMap<string, string> = new Map([
  ["what's", 'what is'], ["that's", 'that is'], ["it's", 'it is'], ["where's", 'where is'], ["how's", 'how is'], ["there's", 'there is'], ["i'm", 'i am'],
  ["i've", 'i have'], ["don't", 'do not'], ["doesn't", 'does not'], ["didn't", 'did not'], ["isn't", 'is not'], ["can't", 'cannot'], ["who's", 'who is'],
]);

const SPELLINGS: ReadonlyMap<string, string> = new Map([
  ['mortice', 'mortise'], ['millimetre', 'millimeter'], ['centimetre', 'centimeter'], ['metre', 'meter'], ['mm', 'millimeter'], ['centre', 'center'], ['colour', 'color'],
  ['feet', 'foot'], ['halves', 'half'], ['ok', 'okay'], ['alright', 'okay'],
]);

/** Words that change nothing wherever they stand. */
export const FILLERS: ReadonlySet<string> = new Set(['the', 'a', 'an', 'please', 'um', 'uh', 'er']);

/** The words of an utterance or of a typed line, contractions opened. */
export function splitWords(text: string): string[] {
  return text.normalize('NFKC').toLowerCase().replace(/[\u2018\u2019]/g, "'").split(/\s+/).flatMap(splitToken).filter((word) => word !== '');
}

function splitToken(token: string): string[] {
  const figure = token.replace(/^[(]+|[?!;:,)]+$/g, '').replace(/(\d)\.$/, '$1');
  if (/[\d⁄]/.test(figure)) return figure.split(/(?<=\d)-(?=[a-z])/);
  const word = figure.replace(/[.?!;:,"()]+/g, '').replace(/^'+|'+$/g, '');
  return (CONTRACTIONS.get(word) ?? word).split(/[-\s]+/);
}

/** One spelling and the singular, so that 'long rails', 'the Long Rail' and 'long-rail' are alike. */
export function canonical(word: string): string {
  const singular = singularOf(word);
  return SPELLINGS.get(word) ?? SPELLINGS.get(singular) ?? singular;
}

/** The canonical words of a name in the piece or of a literal in a pattern, without fillers. */
export function canonicalWords(text: string): string[] {
  return splitWords(text).map(canonical).filter((word) => !FILLERS.has(word));
}

/** Canonical words joined: what maps of names are keyed by. */
export function nameKey(words: readonly string[]): string {
  return words.map(canonical).filter((word) => !FILLERS.has(word)).join(' ');
}

function singularOf(word: string): string {
  if (word.length <= 3 || /(?:ss|us|is)$/.test(word)) return word;
  // A possessive sounds like a plural, and its stem is what a dictionary has.
  if (/['’]s?$/.test(word)) return word.replace(/['’]s?$/, '');
  if (/(?:el|ea|al|ol)ves$/.test(word)) return `${word.slice(0, -3)}f`;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(?:ches|shes|sses|xes)$/.test(word)) return word.slice(0, -2);
  return word.endsWith('s') ? word.slice(0, -1) : word;
}
