import type { Pronunciation } from '../graph/phones.ts';
import { readRule, readSounds, soundsOf, writeRule, writeSounds } from './letterToSound.ts';
import type { SoundRule } from './letterToSound.ts';

/** How words are said: those that are written down, and rules for the rest. */
export interface Dictionary {
  /** For each word, its ways to be said as the file has them. */
  readonly words: ReadonlyMap<string, string>;
  readonly rules: SoundRule;
  /** Words that any bench is likely to need: numbers, commands, parts, joints, tools. */
  readonly benchWords: readonly string[];
}

/**
 * The dictionary's file: a first line that tells what it is, the letter-to-sound rules in one line, the words of the bench in one line, then a line for
 * each word with its ways to be said.
 * A way that the rules find by themselves is written '=', and nothing is written when it is the only one: that makes the file half as large.
 */
const FIRST_LINE = 'pronunciations 1';
const AS_BY_RULE = '=';

export function writeDictionary(words: ReadonlyMap<string, readonly Pronunciation[]>, rules: SoundRule, benchWords: readonly string[]): string {
  const lines = [...words].sort(([one], [other]) => (one < other ? -1 : 1)).map(([word, ways]) => {
    const byRule = writeSounds(soundsOf(word, rules));
    const written = ways.map((way) => writeSounds(way)).map((way) => (way === byRule ? AS_BY_RULE : way)).join(' ');
    return written === AS_BY_RULE ? word : `${word} ${written}`;
  });
  return [FIRST_LINE, writeRule(rules), benchWords.join(' '), ...lines, ''].join('\n');
}

/** @throws {Error} when the text is not a whole dictionary */
export function readDictionary(text: string): Dictionary {
  const [first, rules = '', benchWords = '', ...lines] = text.split('\n');
  if (first !== FIRST_LINE) throw new Error(`a dictionary of pronunciations begins with "${FIRST_LINE}", but this file begins with "${(first ?? '').slice(0, 40)}"`);
  if (lines.pop() !== '') throw new Error('the dictionary ends within a line: the file was cut short');
  const words = new Map<string, string>();
  for (const line of lines) {
    const space = line.indexOf(' ');
    if (space < 0) words.set(line, AS_BY_RULE);
    else words.set(line.slice(0, space), line.slice(space + 1));
  }
  return { words, rules: readRule(rules), benchWords: benchWords.split(' ').filter((word) => words.has(word)) };
}

/** The ways in which the dictionary says a word; none when it does not know it. */
export function lookUp(word: string, { words, rules }: Pick<Dictionary, 'words' | 'rules'>): readonly Pronunciation[] {
  const ways = words.get(word);
  if (ways === undefined) return [];
  return ways.split(' ').map((way) => (way === AS_BY_RULE ? soundsOf(word, rules) : readSounds(way)));
}
