/** Of so many times that a number word was said, another was heard so many times. */
export interface Confusion {
  readonly said: string;
  readonly heard: string;
  readonly times: number;
  readonly of: number;
}

/**
 * Number words and letters of faces that the recogniser with the shipped model took for each other: `npm run bench -- hearing --only confusions`, 2026-11-27, four synthetic
 * voices that are in no other measurement, in quiet and under a fan, planing and blows at 3 dB; said, heard, times, of.
 */
const MEASURED: readonly (readonly [said: string, heard: string, times: number, of: number])[] = [
  ['seventy', 'seventeen', 9, 48], ['ninety', 'nineteen', 8, 48], ['fifty', 'fifteen', 7, 48], ['seventh', 'seven', 7, 16], ['sixty', 'sixteen', 6, 48],
  ['sixth', 'six', 6, 16], ['eleventh', 'eleven', 6, 16], ['twelfth', 'twelve', 6, 16], ['d', 'b', 5, 16], ['thirty', 'thirteen', 4, 176],
  ['eighty', 'eighteen', 4, 48], ['tenth', 'ten', 4, 16], ['fourteenth', 'fourteen', 4, 16], ['fifteenth', 'fifteen', 4, 16],
  ['thirteen', 'nineteen', 3, 96], ['forty', 'fourteen', 3, 48], ['sixteen', 'sixteenth', 3, 48], ['fourth', 'four', 3, 16], ['ninth', 'nine', 3, 16],
  ['sixteenth', 'sixteen', 3, 16], ['thirteen', 'nine', 3, 96], ['fourteen', 'forty', 3, 80], ['nineteen', 'ninety', 3, 48], ['eight', 'eighth', 2, 48],
  ['thirteen', 'eighteen', 2, 96], ['thirty', 'ninety', 2, 176], ['first', 'third', 2, 16], ['eighth', 'eight', 2, 16], ['thirteenth', 'thirteen', 2, 16],
  ['fifteen', 'fifty', 2, 96], ['seventeen', 'seventy', 2, 64], ['sixteen', 'sixty', 2, 48], ['nine', 'five', 1, 80], ['ten', 'third', 1, 48],
  ['eleven', 'eleventh', 1, 80], ['fourteen', 'fourteenth', 1, 80], ['fifteen', 'fifteenth', 1, 96], ['twenty', 'ten', 1, 16], ['hundred', 'thirty', 1, 16],
  ['minutes', 'eighteen', 1, 320], ['seconds', 'second', 1, 144], ['second', 'seven', 1, 16], ['third', 'nine', 1, 16], ['ninth', 'five', 1, 16],
  ['tenth', 'third', 1, 16], ['thirteenth', 'eighteen', 1, 16], ['three', 'eight', 1, 80], ['thirteen', 'thirty', 1, 96], ['thirty', 'eighty', 1, 176],
  ['fifteen', 'sixteen', 1, 96], ['fifty', 'sixteen', 1, 48], ['eighteen', 'eighty', 1, 48],
];

export const CONFUSIONS: readonly Confusion[] = MEASURED.map(([said, heard, times, of]) => ({ said, heard, times, of }));

/** Pairs that people mishear too, whatever was measured: the teen and the ten, five and nine, letters that rhyme; common practice, no source. */
const ALWAYS: readonly (readonly [string, string])[] = [
  ...['thir', 'four', 'fif', 'six', 'seven', 'eigh', 'nine'].map((stem) => [`${stem}teen`, `${stem === 'four' ? 'for' : stem}ty`] as const),
  ['five', 'nine'], ['b', 'c'], ['b', 'd'], ['c', 'd'], ['sixteenths', 'sixteen'],
];

/** What is left of an ordinal when the soft ending is lost; noise seldom makes one. Common practice, no source. */
const WITHOUT_ENDING: readonly (readonly [said: string, heard: string])[] = [
  ...['four', 'six', 'seven', 'ten', 'eleven', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'].map((number) => [`${number}th`, number] as const),
  ['fifth', 'five'], ['eighth', 'eight'], ['ninth', 'nine'], ['twelfth', 'twelve'],
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
  for (const [said, heard] of WITHOUT_ENDING) add(heard, said);
  for (const [one, other] of ALWAYS) {
    add(one, other);
    add(other, one);
  }
  return found;
}
