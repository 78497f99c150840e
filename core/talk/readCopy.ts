import { sayOrdinal } from '../length/say.ts';
import { readSpokenNumber } from '../length/parseSpoken.ts';
import { NUMBER_WORDS } from '../length/spokenNumber.ts';
import type { State } from '../journal/state.ts';
import type { Names } from './names.ts';
import { FILLERS, nameKey } from './words.ts';

/** A name with what says which copy taken off: 'leg two', 'leg number two', 'second leg', 'front left leg'. */
export interface CopyMention {
  readonly name: string;
  readonly copy?: number;
  /** Where the copy stands, to be looked up once the part is known. */
  readonly place?: string;
}

const ORDINALS: ReadonlyMap<string, number> = new Map(Array.from({ length: 20 }, (_, index) => [sayOrdinal(index + 1), index + 1]));

/** Words that a name may have beside its own: fillers, numbers, ordinals, and the small ones between. */
export const COPY_WORDS: ReadonlySet<string> = new Set([...FILLERS, ...NUMBER_WORDS, ...ORDINALS.keys(), ...Array.from({ length: 100 }, (_, index) => String(index)), 'number', 'of', 'at', 'and']);

/** All ways to take a copy off the words, the plain name first. */
export function copyMentions(words: readonly string[], places: Names['places']): CopyMention[] {
  const mentions: CopyMention[] = [{ name: nameKey(words) }];
  for (let split = 1; split < words.length; split += 1) {
    const number = words[split] === 'number' ? words.slice(split + 1) : words.slice(split);
    const copy = number.length > 0 && number.length <= 2 ? readSpokenNumber(number) : undefined;
    if (copy?.ok) mentions.push({ name: nameKey(words.slice(0, split)), copy: copy.value });
  }
  const plain = words.filter((word) => word !== 'the');
  const ordinal = ORDINALS.get(plain[0] ?? '');
  if (ordinal !== undefined && plain.length > 1) mentions.push({ name: nameKey(plain.slice(1)), copy: ordinal });
  return [...mentions, ...placeMentions(nameKey(words), places)];
}

function placeMentions(name: string, places: Names['places']): CopyMention[] {
  return [...places].flatMap(([spoken, place]) => {
    if (name.startsWith(`${spoken} `)) return [{ name: name.slice(spoken.length + 1), place }];
    return name.endsWith(` ${spoken}`) ? [{ name: name.slice(0, -spoken.length - 1).replace(/ at$/, ''), place }] : [];
  });
}

/** Which copy of the part stands at that place, once that was said. */
export function copyAt(state: State, part: string, place: string): number | undefined {
  const key = [...state.places].find(([placed, where]) => where === place && placed.startsWith(`${part}/`))?.[0];
  return key === undefined ? undefined : Number(key.slice(part.length + 1));
}
