/**
 * The choices of a question without the word that all of them end with, 'long rail' of 'long rail mortise' and 'short rail mortise', or the letters of faces by themselves, 'B' of 'face B'
 * and 'face D'. Empty when they have no such word in common, or one of them is nothing but that word.
 */
export function shortChoices(choices: readonly { readonly say: string }[]): readonly string[] {
  const words = choices.map(({ say }) => say.replaceAll(',', '').split(/\s+/));
  const [first] = words;
  const alike = words.length > 1 && words.every((one) => one.length > 1 && one.at(-1) === first?.at(-1));
  if (words.length > 1 && words.every((one) => one.length === 2 && one[0] === first?.[0] && one[1]?.length === 1)) return words.map((one) => one[1] ?? '');
  return alike ? words.map((one) => one.slice(0, -1).join(' ')) : [];
}
