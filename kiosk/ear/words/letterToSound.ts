import type { Pronunciation } from '../graph/phones.ts';

/**
 * Letter-to-sound rules: for each letter a tree of questions about the letters around it, in a fixed order, with the sounds that it then most often
 * stands for (W. Daelemans, A. van den Bosch, "Language-independent data-oriented grapheme-to-phoneme conversion", 1996). The rules are learned from
 * the dictionary when it is made (sounds/dictionary/), and read here from their text.
 */
export interface SoundRule {
  readonly sounds: Pronunciation;
  /** What it is instead when the next question is answered by this letter. */
  readonly unless: ReadonlyMap<string, SoundRule>;
}

/** The letters asked about, in order: places from the letter itself. */
export const QUESTIONS: readonly number[] = [0, 1, -1, 2, -2, 3, -3, 4, -4];

/** Stands for what is before and after a word. */
export const EDGE = '#';

/** The sounds of a word of letters a to z and apostrophes; empty when the rules know none of its letters. */
export function soundsOf(word: string, rules: SoundRule): Pronunciation {
  return Array.from(word).flatMap((_, at) => soundsOfLetter(word, at, rules));
}

/** The sounds that the letter in this place of a word stands for. */
export function soundsOfLetter(word: string, at: number, rules: SoundRule): Pronunciation {
  let rule = rules;
  for (const question of QUESTIONS) {
    const next = rule.unless.get(word[at + question] ?? EDGE);
    if (next === undefined) return rule.sounds;
    rule = next;
  }
  return rule.sounds;
}

/** Phones are written as single letters in the files of the dictionary: A to Z, then a to m. */
const CODES = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklm';

export function writeSounds(sounds: Pronunciation): string {
  return sounds.map((phone) => CODES[phone] ?? '').join('');
}

/** @throws {Error} on a letter that is no phone */
export function readSounds(text: string): Pronunciation {
  return Array.from(text).map((code) => {
    const phone = CODES.indexOf(code);
    if (phone < 0) throw new Error(`"${code}" is no sound of the dictionary`);
    return phone;
  });
}

/** A rule as text: its sounds, then in brackets, for each answer, the letter and its rule: `A(b(c)dE)` would be A; but b: none; c within b … */
export function writeRule({ sounds, unless }: SoundRule): string {
  const exceptions = [...unless].map(([letter, rule]) => letter + writeRule(rule)).join('');
  return `${writeSounds(sounds)}${exceptions === '' ? '.' : `(${exceptions})`}`;
}

/** @throws {Error} when the text is not a whole rule */
export function readRule(text: string): SoundRule {
  let at = 0;
  const read = (): SoundRule => {
    const begin = at;
    while (at < text.length && text[at] !== '(' && text[at] !== '.') at += 1;
    const sounds = readSounds(text.slice(begin, at));
    const unless = new Map<string, SoundRule>();
    const opened = text[at] === '(';
    at += 1;
    if (!opened) return { sounds, unless };
    while (text[at] !== ')') {
      const letter = text[at];
      if (letter === undefined) throw new Error('the letter-to-sound rules end before their end: the file was cut short');
      at += 1;
      unless.set(letter, read());
    }
    at += 1;
    return { sounds, unless };
  };
  return read();
}
