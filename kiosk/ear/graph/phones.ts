/**
 * The sounds that our speech model tells apart: the 39 phones of the CMU Pronouncing Dictionary without stress, a blank that stands between and beside
 * them (the model is trained by connectionist temporal classification), and one for everything that is no word of the grammar.
 */
export const PHONES: readonly string[] = ('AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG '
  + 'OW OY P R S SH T TH UH UW V W Y Z ZH').split(' ');

/** Places in PHONES, 0 to 38 (and what endings.ts adds), in the order in which they are said; never empty. */
export type Pronunciation = readonly number[];

/** Where in its word a phone stands: the engine reckons the times of words by it. */
export type Place = 'begin' | 'internal' | 'end' | 'singleton';
const PLACES: readonly Place[] = ['begin', 'internal', 'end', 'singleton'];

/** Silence and the blank inside a word are one sound, but must be two phones: only silence ends an utterance. */
export const SILENCE = 1;
export const BLANK = 2;
const FIRST_PHONE = 3;
/** Anything that is no word of the grammar. */
export const GARBAGE = FIRST_PHONE + PLACES.length * PHONES.length;
/** The garbage sound has the place after PHONES (three of its four numbers stay unused), and two sounds more (see endings.ts) come behind it. */
const SOUND_COUNT = PHONES.length + 3;
export const PHONE_COUNT = FIRST_PHONE + PLACES.length * SOUND_COUNT - 1;

/** The engine's number of a phone in a place, from 3. */
export function phoneNumber(phone: number, place: Place): number {
  return FIRST_PHONE + PLACES.length * phone + PLACES.indexOf(place);
}

/** Which output of the network a phone is heard by: the blank's is 0, the garbage's the one after PHONES. */
export function networkOutput(phoneNumber: number): number {
  if (phoneNumber < FIRST_PHONE) return 0;
  return 1 + Math.floor((phoneNumber - FIRST_PHONE) / PLACES.length);
}

/** The transition by which a phone is entered. With one state to a phone, each has two, numbered from 1. */
export function entering(phoneNumber: number): number {
  return 2 * phoneNumber;
}

/** The transition by which a phone goes on. */
export function staying(phoneNumber: number): number {
  return 2 * phoneNumber - 1;
}

/** A number that is no transition; the engine wants a list of numbers to erase, and an empty one is refused. */
export const UNUSED_TRANSITION = 2 * PHONE_COUNT + 1;

/** graph/phones/word_boundary.int: what each phone is within its word. */
export function wordBoundaries(): string {
  const lines = [`${SILENCE} nonword`, `${BLANK} internal`];
  for (let phone = FIRST_PHONE; phone <= PHONE_COUNT; phone += 1) {
    lines.push(`${phone} ${phone === GARBAGE ? 'singleton' : PLACES[(phone - FIRST_PHONE) % PLACES.length] ?? ''}`);
  }
  return [...lines, ''].join('\n');
}
