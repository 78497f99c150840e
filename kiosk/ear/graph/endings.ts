import { PHONES } from './phones.ts';
import type { Pronunciation } from './phones.ts';

/**
 * The endings of the teens and of the tens, which the shipped model hears as sounds of their own, so that fifteen and fifty differ by more than a last N.
 * They stand behind the garbage sound, which keeps the place that it has without them.
 */
export const ENDINGS = { teen: PHONES.length + 1, ty: PHONES.length + 2 } as const;

const TEEN = /^(thir|four|fif|six|seven|eigh|nine)teen(s|th|ths)?$/;
const TY = /^(twen|thir|for|fif|six|seven|eigh|nine)t(y|ies|ieth|ieths)$/;
const [T = -1, D = -1, IY = -1, N = -1] = ['T', 'D', 'IY', 'N'].map((name) => PHONES.indexOf(name));

/** The sounds of a number word with its ending as one sound; every other word's as they are. */
export function withEndings(word: string, sounds: Pronunciation): Pronunciation {
  if (TEEN.test(word)) {
    const at = sounds.findIndex((sound, index) => sound === T && sounds[index + 1] === IY && sounds[index + 2] === N);
    return at < 0 ? sounds : [...sounds.slice(0, at), ENDINGS.teen, ...sounds.slice(at + 3)];
  }
  if (TY.test(word)) {
    const at = sounds.lastIndexOf(IY);
    const before = sounds[at - 1];
    return at < 1 ? sounds : [...sounds.slice(0, before === T || before === D ? at - 1 : at), ENDINGS.ty, ...sounds.slice(at + 1)];
  }
  return sounds;
}
