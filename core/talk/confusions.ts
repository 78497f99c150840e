/** Of so many times that a number word was said, another was heard so many times. */
export interface Confusion {
  readonly said: string;
  readonly heard: string;
  readonly times: number;
  readonly of: number;
}

/**
 * Number words that the recogniser with the shipped model took for each other: `npm run bench -- hearing --only confusions`, 2026-11-26, four synthetic
 * voices that are in no other measurement, in quiet and in noise of 3 dB; said, heard, times, of.
 */
const MEASURED: readonly (readonly [said: string, heard: string, times: number, of: number])[] = [
  ['fifteenth', 'fifteen', 3, 8], ['fourteenth', 'fourteen', 3, 8], ['sixth', 'six', 3, 8], ['twelfth', 'twelve', 3, 8], ['eighth', 'eight', 2, 8],
  ['eleventh', 'eleven', 2, 8], ['ninety', 'nineteen', 2, 8], ['seventh', 'seven', 2, 8], ['sixteenth', 'sixteen', 2, 8], ['tenth', 'ten', 2, 8],
  ['thirteen', 'thirty', 2, 40], ['eleven', 'eleventh', 1, 40], ['fifteen', 'fifty', 1, 40], ['fifteenth', 'fifty', 1, 8], ['fifty', 'fifteen', 1, 8],
  ['first', 'thirty', 1, 8], ['fourteen', 'fourteenth', 1, 24], ['fourth', 'four', 1, 8], ['hundred', 'thirty', 1, 8], ['ninth', 'five', 1, 8],
  ['ninth', 'nine', 1, 8], ['seconds', 'second', 1, 68], ['seven', 'seventh', 1, 40], ['sixty', 'sixteen', 1, 8], ['thirteen', 'thirteenth', 1, 40],
  ['thirteenth', 'thirty', 1, 8],
];

export const CONFUSIONS: readonly Confusion[] = MEASURED.map(([said, heard, times, of]) => ({ said, heard, times, of }));

/** Pairs that people mishear too, whatever was measured: the teen and the ten, the ordinal and its number, letters that rhyme; common practice, no source. */
const ALWAYS: readonly (readonly [string, string])[] = [
  ...['thir', 'four', 'fif', 'six', 'seven', 'eigh', 'nine'].map((stem) => [`${stem}teen`, `${stem === 'four' ? 'for' : stem}ty`] as const),
  ['five', 'nine'], ['b', 'c'], ['b', 'd'], ['c', 'd'], ['sixteenth', 'sixteen'], ['sixteenths', 'sixteen'], ['sixth', 'six'], ['eighth', 'eight'], ['seventh', 'seven'], ['fourth', 'four'], ['tenth', 'ten'],
];

const RIVALS: ReadonlyMap<string, ReadonlySet<string>> = rivals();

/** The words that may have been said where this one was heard; none for most words. */
export function rivalsOf(heard: string): readonly string[] {
  return [...RIVALS.get(heard) ?? []];
}

function rivals(): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  const add = (heard: string, said: string) => { found.set(heard, (found.get(heard) ?? new Set()).add(said)); };
  for (const { said, heard } of CONFUSIONS) add(heard, said);
  for (const [one, other] of ALWAYS) {
    add(one, other);
    add(other, one);
  }
  return found;
}
