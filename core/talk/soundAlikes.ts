/**
 * Words that sound the same, or that the recogniser was found to take for each other where it makes no difference which was
 * said: a wrong spelling of the right sounds. Numbers are never among each other here: fifteen is not fifty.
 */
const ALIKE: readonly (readonly [heard: string, meant: string])[] = [
  ['four', 'for'], ['for', 'four'], ['fore', 'four'], ['won', 'one'], ['ate', 'eight'],
  ['time are', 'timer'], ['start it', 'start a'], ['set it', 'set a'], ['tenant', 'tenon'], ['real', 'rail'], ['rale', 'rail'], ['bored', 'board'], ['wide are', 'wide is'],
  ['eight is', 'it is'], ['in the half', 'and a half'], ['in a half', 'and a half'], ['is a half', 'and a half'],
];

const MOST_CHANGES = 2;
/** A sentence with more ways to be spelt than that was no sentence. */
const MOST_VARIANTS = 32;

/** The same words with up to two of them spelt as something that sounds alike; nearest first, without the words as they were heard. */
export function soundingAlike(words: readonly string[]): readonly (readonly string[])[] {
  let frontier: readonly (readonly string[])[] = [words];
  const found = new Map<string, readonly string[]>();
  for (let change = 0; change < MOST_CHANGES; change++) {
    frontier = frontier.flatMap(changedOnce).filter((variant) => !found.has(variant.join(' ')) && variant.join(' ') !== words.join(' '));
    for (const variant of frontier) found.set(variant.join(' '), variant);
  }
  return [...found.values()].slice(0, MOST_VARIANTS);
}

function changedOnce(words: readonly string[]): readonly (readonly string[])[] {
  return ALIKE.flatMap(([heard, meant]) => {
    const from = heard.split(' ');
    return words.flatMap((_, at) => from.every((word, offset) => words[at + offset] === word)
      ? [[...words.slice(0, at), ...meant.split(' '), ...words.slice(at + from.length)]]
      : []);
  });
}
