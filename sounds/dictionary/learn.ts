import { EDGE, QUESTIONS, readSounds, soundsOf, writeSounds } from '../../kiosk/ear/words/letterToSound.ts';
import type { SoundRule } from '../../kiosk/ear/words/letterToSound.ts';
import type { Aligned, Entry } from './align.ts';

interface Example { readonly word: string; readonly at: number; readonly sounds: string }

/**
 * Learns letter-to-sound rules from aligned words.
 * @param rarest an exception that fewer letters of the words would use is not learned: it keeps the rules small
 */
export function learnRules(aligned: ReadonlyMap<Entry, Aligned>, rarest: number): SoundRule {
  const examples = [...aligned].flatMap(([{ word }, parts]) => parts.map((sounds, at) => ({ word, at, sounds: writeSounds(sounds) })));
  return ruleFor(examples, 0, rarest);
}

function ruleFor(examples: readonly Example[], depth: number, rarest: number): SoundRule {
  const usual = mostFrequent(examples);
  const unless = new Map<string, SoundRule>();
  const question = QUESTIONS[depth];
  if (question !== undefined && examples.some(({ sounds }) => sounds !== usual)) {
    for (const [letter, answered] of groupedBy(examples, ({ word, at }) => word[at + question] ?? EDGE)) {
      if (answered.length < rarest) continue;
      const rule = ruleFor(answered, depth + 1, rarest);
      if (writeSounds(rule.sounds) !== usual || rule.unless.size > 0) unless.set(letter, rule);
    }
  }
  return { sounds: readSounds(usual), unless };
}

function mostFrequent(examples: readonly Example[]): string {
  let best = '';
  let most = -1;
  for (const [sounds, each] of groupedBy(examples, (example) => example.sounds)) {
    if (each.length <= most) continue;
    best = sounds;
    most = each.length;
  }
  return best;
}

function groupedBy(examples: readonly Example[], key: (example: Example) => string): Map<string, Example[]> {
  const groups = new Map<string, Example[]>();
  for (const example of examples) {
    const group = groups.get(key(example));
    if (group === undefined) groups.set(key(example), [example]);
    else group.push(example);
  }
  return groups;
}

/** How far rules are from a dictionary: against the nearest of a word's pronunciations. */
export interface RuleErrors {
  /** Sounds wrong, missing or too many, per sound of the dictionary (0 to 1 and more). */
  readonly phoneErrorRate: number;
  /** Words with any error (0 to 1). */
  readonly wordErrorRate: number;
}

export function measureRules(rules: SoundRule, words: ReadonlyMap<string, readonly Entry[]>): RuleErrors {
  let errors = 0;
  let sounds = 0;
  let wrong = 0;
  for (const [word, entries] of words) {
    const guess = soundsOf(word, rules);
    const distances = entries.map((entry) => ({ distance: editDistance(guess, entry.sounds), length: entry.sounds.length }));
    const nearest = distances.reduce((best, each) => (each.distance < best.distance ? each : best));
    errors += nearest.distance;
    sounds += nearest.length;
    if (nearest.distance > 0) wrong += 1;
  }
  return { phoneErrorRate: errors / sounds, wordErrorRate: wrong / words.size };
}

/** Fewest changes, insertions and deletions between two lists (V. Levenshtein, 1966). */
export function editDistance(one: readonly number[], other: readonly number[]): number {
  let row = Array.from({ length: other.length + 1 }, (_, at) => at);
  one.forEach((each, index) => {
    const next = [index + 1];
    other.forEach((sound, at) => next.push(Math.min((row[at] ?? 0) + (sound === each ? 0 : 1), (row[at + 1] ?? 0) + 1, (next[at] ?? 0) + 1)));
    row = next;
  });
  return row.at(-1) ?? 0;
}
