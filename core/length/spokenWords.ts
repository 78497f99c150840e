import { NUMBER_WORDS, DECIMAL_POINT, ZERO_WORDS } from './spokenNumber.ts';
import { sayOrdinal } from './sayNumber.ts';

/**
 * Division words, singular and plural. Thirds, fifths and the others that no rule has are known too, so that they
 * can be refused by name.
 */
export const DIVISION_WORDS: ReadonlyMap<string, number> = new Map([
  ['half', 2], ['halves', 2], ['quarter', 4], ['quarters', 4], ['fourth', 4], ['fourths', 4],
  ['thou', 1000], ['hundredth', 100], ['hundredths', 100], ['thousandth', 1000], ['thousandths', 1000],
  ...[3, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 30, 32, 64].flatMap((division) => {
    const singular = sayOrdinal(division).replace('-', ' ');
    return [[singular, division], [`${singular}s`, division]] as const;
  }),
]);

/** Every word that a spoken length may hold, for the recogniser's grammar. */
export const SPOKEN_LENGTH_WORDS: readonly string[] = [...new Set([
  ...NUMBER_WORDS, ...ZERO_WORDS, DECIMAL_POINT, 'an', 'of', 'minus', 'full', 'scant',
  ...[2, 4, 8, 10, 16, 32, 64, 100, 1000].flatMap((division) => [...DIVISION_WORDS].filter(([, value]) => value === division).flatMap(([words]) => words.split(' '))),
  'inch', 'inches', 'foot', 'feet',
  ...['millimet', 'centimet', 'met'].flatMap((stem) => [`${stem}re`, `${stem}res`, `${stem}er`, `${stem}ers`]),
])];
