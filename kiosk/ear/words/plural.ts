import { PHONES } from '../graph/phones.ts';
import type { Pronunciation } from '../graph/phones.ts';

const HISSES = new Set(['S', 'Z', 'SH', 'ZH', 'CH', 'JH'].map((name) => PHONES.indexOf(name)));
const VOICELESS = new Set(['P', 'T', 'K', 'F', 'TH'].map((name) => PHONES.indexOf(name)));
const [S, Z, IH, AH] = ['S', 'Z', 'IH', 'AH'].map((name) => PHONES.indexOf(name)) as [number, number, number, number];

/** The regular plural of a word, and every way to say it: 'tenons', 'benches' (with 'iz' or 'uhz'), 'assemblies'. */
export function pluralOf(word: string, sounds: Pronunciation): { readonly spelled: string; readonly sounds: Pronunciation }[] {
  const spelled = spellPlural(word);
  return plainEndings(sounds.at(-1)).map((ending) => ({ spelled, sounds: [...sounds, ...ending] }));
}

/** What a word may be the plural or the possessive of, the likeliest first: 'mortises' of 'mortise', then of 'mortis'. */
export function singularsOf(word: string): readonly string[] {
  if (/^.+('s|s')$/.test(word)) return [word.replace(/'s$|'$/, '')];
  if (word.length < 4 || !word.endsWith('s') || word.endsWith('ss')) return [];
  const singulars = word.endsWith('ies') ? [`${word.slice(0, -3)}y`] : [];
  return [...singulars, word.slice(0, -1), ...(word.endsWith('es') ? [word.slice(0, -2)] : [])];
}

/** The sounds that -s adds after this one. */
export function plainEndings(last: number | undefined): readonly Pronunciation[] {
  if (last === undefined) return [];
  if (HISSES.has(last)) return [[IH, Z], [AH, Z]];
  return [[VOICELESS.has(last) ? S : Z]];
}

/** How a word's regular plural is written. */
export function spellPlural(word: string): string {
  if (/[^aeiou]y$/.test(word)) return `${word.slice(0, -1)}ies`;
  return /(s|x|z|ch|sh)$/.test(word) ? `${word}es` : `${word}s`;
}
