/**
 * The choices of a question without the word that all of them end with: 'long rail' of 'long rail mortise' and 'short rail mortise'. Empty when they end otherwise, or one of
 * them is nothing but that word.
 */
export function shortChoices(choices: readonly { readonly say: string }[]): readonly string[] {
  const words = choices.map(({ say }) => say.replaceAll(',', '').split(/\s+/));
  const [first] = words;
  const alike = words.length > 1 && words.every((one) => one.length > 1 && one.at(-1) === first?.at(-1));
  return alike ? words.map((one) => one.slice(0, -1).join(' ')) : [];
}
