import { phrasesFor } from '../../../core/talk/grammar.ts';
import { TALKATIVE } from '../../core/talk/benches.ts';
import { randomNumbers } from '../../voice/sound.ts';
import { cardSentences, HELD_OUT_VOICES, pocketsphinxRecording, promptNames, under } from './sounds.ts';
import type { Noise, SoundFolder } from './sounds.ts';

/** Recordings that are heard with one grammar. */
export interface HearingSet {
  readonly name: string;
  readonly grammar: readonly string[];
  /** What was said; undefined where nothing should be acted on. */
  readonly items: readonly { readonly said: string | undefined; readonly sound: Float32Array }[];
}

const ONES = 'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');
const TEENS = 'thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'thirty forty fifty sixty seventy eighty ninety'.split(' ');
const ORDINALS = ('first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth '
  + 'eighteenth nineteenth twentieth').split(' ');
const NUMBERS = [...ONES, ...TEENS, 'twenty', ...TENS, ...ORDINALS, 'hundred', 'thousand'];
const TALK = ['thank you very much', 'see you tomorrow', 'not now', 'what a day', 'come in', 'i am nearly done here', 'where did i put it', 'good morning', 'the kettle is on',
  'who was that', 'hold the door', 'it is raining again', 'call me later', 'that was close', 'oh dear', 'turn the heater on', 'my hands are cold', 'never again', 'how was school',
  'five more people came', 'dinner is ready', 'ouch', 'the phone is ringing', 'tell her i will be late', 'nice piece of wood', 'where is the broom', 'mind the cat', 'on the shelf'];

/** Phrases that the bench understands at the moment, spread evenly over all there are. */
function requests(count: number): readonly string[] {
  const all = phrasesFor(TALKATIVE).filter((phrase) => phrase.split(' ').length > 1);
  return Array.from({ length: count }, (_, at) => all[Math.floor((at * all.length) / count)] ?? '');
}

/** Synthetic voices that were never trained on. `share` from 0 to 1 makes every set smaller. */
export function heldOutSets(folder: SoundFolder, share: number): readonly HearingSet[] {
  const phrases = phrasesFor(TALKATIVE);
  const some = requests(Math.max(8, Math.round(75 * share)));
  const said = (noise: Noise, db: number) => HELD_OUT_VOICES.flatMap((voice) => some.map((words) => ({ said: words, sound: under(folder.spoken(words, voice), noise, db) })));
  const few = (noise: Noise, db: number) => said(noise, db).filter((_, at) => at % 2 === 0);
  const each = (words: readonly string[]) => HELD_OUT_VOICES.flatMap((voice) => words.map((word) => ({ said: word, sound: folder.spoken(word, voice) })));
  const remarks = HELD_OUT_VOICES.flatMap((voice) => TALK.slice(0, Math.max(7, Math.round(TALK.length * share))).map((words) => ({ said: undefined, sound: folder.spoken(words, voice) })));
  return [
    { name: 'requests, clean', grammar: phrases, items: said('clean', 0) },
    { name: 'requests, planing 10 dB', grammar: phrases, items: few('planing', 10) },
    { name: 'requests, blows 10 dB', grammar: phrases, items: few('blows', 10) },
    { name: 'requests, fan 10 dB', grammar: phrases, items: few('fan', 10) },
    { name: 'requests, fan 0 dB', grammar: phrases, items: few('fan', 0) },
    { name: 'teens and tens', grammar: NUMBERS, items: each([...TEENS, ...TENS]) },
    { name: 'ordinals and cardinals', grammar: NUMBERS, items: each([...ONES.slice(1), ...ORDINALS]) },
    { name: 'short remarks', grammar: phrases, items: remarks },
  ];
}

/** Recordings of people, in Debian's packages; never trained on. */
export function realSets(folder: SoundFolder, share: number): readonly HearingSet[] {
  const prompt = new Map<string, string>([...ONES, ...TEENS].map((word, at) => [word, `digits/${at}`]));
  ['twenty', ...TENS].forEach((word, at) => prompt.set(word, `digits/${20 + 10 * at}`));
  ORDINALS.forEach((word, at) => prompt.set(word, `digits/h-${at + 1}`));
  prompt.set('hundred', 'digits/hundred').set('thousand', 'digits/thousand').set('and', 'vm-and');
  const one = (words: string) => ({ said: words, sound: folder.prompted(words.split(' ').map((word) => prompt.get(word) ?? '')) });
  const fractions = fractionGrammar();
  const random = randomNumbers(9);
  const chosen = Array.from({ length: Math.max(20, Math.round(60 * share)) }, () => fractions[Math.floor(random() * fractions.length)] ?? '');
  const cards = 'ace two three four five six seven eight nine ten jack queen king'.split(' ').flatMap((rank) => 'hearts clubs spades diamonds'.split(' ').map((suit) => `${rank} of ${suit}`));
  const talk = promptNames().filter((name) => !/^(beep|ascending|descending|tt-|silence|letters|digits)/.test(name));
  const remarks = talk.filter((_, at) => at % Math.max(1, Math.round(3 / share)) === 0);
  return [
    { name: 'real teens and tens', grammar: NUMBERS, items: [...TEENS, ...TENS].map(one) },
    { name: 'real numbers', grammar: NUMBERS, items: NUMBERS.map(one) },
    { name: 'real numbers, planing 5 dB', grammar: NUMBERS, items: NUMBERS.map(one).map(({ said, sound }) => ({ said, sound: under(sound, 'planing', 5) })) },
    { name: 'real fractions, joined', grammar: fractions, items: chosen.map(one) },
    { name: 'real card names', grammar: cards, items: cardSentences().map(({ name, words }) => ({ said: words, sound: pocketsphinxRecording(`cards/${name}.wav`) })) },
    { name: 'real remarks', grammar: phrasesFor(TALKATIVE), items: remarks.map((name) => ({ said: undefined, sound: folder.prompted([name]) })) },
  ];
}

function fractionGrammar(): readonly string[] {
  const parts = [...ONES.slice(1), ...TEENS.slice(0, 3)].flatMap((count) => ['eighth', 'sixteenth'].map((part) => `${count} ${part}`));
  const wholes = [...ONES.slice(1), ...TEENS, 'twenty', ...TENS];
  return [...parts, ...wholes.flatMap((whole) => parts.map((part) => `${whole} and ${part}`))];
}
