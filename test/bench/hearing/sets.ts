import type { Bench } from '../../../core/bench/bench.ts';
import { phrasesFor } from '../../../core/talk/grammar.ts';
import { parseRequest } from '../../../core/talk/parse.ts';
import { all, either, optional } from '../../../core/talk/strict/expression.ts';
import type { Expression } from '../../../core/talk/strict/expression.ts';
import { sentencesFor } from '../../../core/talk/strict/sentences.ts';
import { bench, TALKATIVE } from '../../core/talk/benches.ts';
import { randomNumbers } from '../../voice/sound.ts';
import { REMARKS } from './remarks.ts';
import { cardSentences, HELD_OUT_VOICES, LEARNED_VOICES, pocketsphinxRecording, promptNames, under } from './sounds.ts';
import type { Noise, SoundFolder } from './sounds.ts';

export type Part = 'requests' | 'numbers' | 'real' | 'remarks' | 'learned';

/** Recordings that are heard with one grammar. */
export interface HearingSet {
  readonly part: Part;
  readonly name: string;
  /** What is listened for: as sentences, and as phrases for who cannot do better. */
  readonly sentences: Expression;
  readonly phrases: readonly string[];
  /** By what the words are understood; undefined where the words themselves are compared. */
  readonly bench: Bench | undefined;
  readonly items: readonly Item[];
}

export interface Item {
  /** What was said; undefined where nothing should be acted on. */
  readonly said: string | undefined;
  /** Made when it is needed: hours of sound do not fit in memory. */
  readonly sound: () => Float32Array;
}

const ONES = 'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');
const TEENS = 'thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'thirty forty fifty sixty seventy eighty ninety'.split(' ');
const ORDINALS = ('first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth '
  + 'eighteenth nineteenth twentieth').split(' ');
const NUMBERS = [...ONES, ...TEENS, 'twenty', ...TENS, ...ORDINALS, 'hundred', 'thousand'];
/** Prompts that say what is a request, word for word: "thank you" silences what is due, "no" is an answer. */
const REQUESTS_AMONG_PROMPTS: ReadonlySet<string> = new Set(['auth-thankyou', 'privacy-thankyou', 'vm-no']);
const WHOLE_BENCH = { sentences: sentencesFor(TALKATIVE), phrases: phrasesFor(TALKATIVE), bench: TALKATIVE };
const ONLY_NUMBERS = { sentences: either(...NUMBERS), phrases: NUMBERS, bench: undefined };
/** The bench has asked for a size. */
const ASKED = bench({ question: { kind: 'length', size: 'leg.width' }, screen: { name: 'record', size: 'leg.width' } });
const SIZE_ASKED = { sentences: sentencesFor(ASKED), phrases: [...phrasesFor(ASKED), ...TEENS, ...TENS], bench: ASKED };

/** So many phrases that the bench understands at the moment, spread evenly over all there are. */
export function requests(count: number): readonly string[] {
  const possible = WHOLE_BENCH.phrases.filter((phrase) => phrase.includes(' ') && !/\b(?:a|an|the) (?:a|an)\b/.test(phrase));
  return Array.from({ length: count }, (_, at) => possible[Math.floor((at * possible.length) / count)] ?? '');
}

/** Synthetic voices that were never trained on, one for each request in turn. `share` from 0 to 1 makes every set smaller. */
export function heldOutSets(folder: SoundFolder, share: number): readonly HearingSet[] {
  const said = (noise: Noise, db: number) => requestsBy(HELD_OUT_VOICES, 'requests', folder, share, noise, db);
  const each = (words: readonly string[]) => wordsBy(HELD_OUT_VOICES, words, folder);
  return [
    said('clean', 0), ...([10, 0] as const).flatMap((db) => (['planing', 'blows', 'fan'] as const).map((noise) => said(noise, db))),
    { part: 'numbers', name: 'teens and tens', ...ONLY_NUMBERS, items: each([...TEENS, ...TENS]) },
    { part: 'numbers', name: 'teens and tens as a size', ...SIZE_ASKED, items: each([...TEENS, ...TENS]) },
    { part: 'numbers', name: 'ordinals and cardinals', ...ONLY_NUMBERS, items: each([...ONES.slice(1), ...ORDINALS]) },
    { part: 'remarks', name: 'short remarks while addressed', ...WHOLE_BENCH, items: remarksBy(HELD_OUT_VOICES, folder, share) },
  ];
}

/** The same, by learned voices that were never trained on, made here when they are first wanted. @param gathered share/kokoro of what the recipe gathers */
export function learnedSets(folder: SoundFolder, gathered: string, share: number): readonly HearingSet[] {
  folder.speakLearned(gathered, [...inTurn(LEARNED_VOICES, requestsWanted(share)), ...byEach(LEARNED_VOICES, [...TEENS, ...TENS, ...remarksWanted(share)])]);
  const said = (noise: Noise, db: number) => requestsBy(LEARNED_VOICES, 'learned', folder, share, noise, db);
  return [
    said('clean', 0), said('planing', 10), said('fan', 10),
    { part: 'learned', name: 'teens and tens, learned voices', ...ONLY_NUMBERS, items: wordsBy(LEARNED_VOICES, [...TEENS, ...TENS], folder) },
    { part: 'learned', name: 'short remarks, learned voices', ...WHOLE_BENCH, items: remarksBy(LEARNED_VOICES, folder, share) },
  ];
}

function requestsBy(voices: readonly string[], part: Part, folder: SoundFolder, share: number, noise: Noise, db: number): HearingSet {
  const who = part === 'learned' ? 'requests, learned voices' : 'requests';
  return {
    part, name: noise === 'clean' ? `${who}, clean` : `${who}, ${noise} ${db} dB`, ...WHOLE_BENCH,
    items: inTurn(voices, requestsWanted(share)).map(({ words, voice }) => ({ said: words, sound: () => under(folder.spoken(words, voice), noise, db) })),
  };
}

function wordsBy(voices: readonly string[], words: readonly string[], folder: SoundFolder): readonly Item[] {
  return byEach(voices, words).map(({ words: said, voice }) => ({ said, sound: () => folder.spoken(said, voice) }));
}

function remarksBy(voices: readonly string[], folder: SoundFolder, share: number): readonly Item[] {
  return byEach(voices, remarksWanted(share)).map(({ words, voice }) => ({ said: undefined, sound: () => folder.spoken(words, voice) }));
}

interface Spoken { readonly words: string; readonly voice: string }

/** Each of the words by the next voice. */
function inTurn(voices: readonly string[], said: readonly string[]): readonly Spoken[] {
  return said.map((words, at) => ({ words, voice: voices[at % voices.length] ?? '' }));
}

/** All of the words by every voice. */
function byEach(voices: readonly string[], said: readonly string[]): readonly Spoken[] {
  return voices.flatMap((voice) => said.map((words) => ({ words, voice })));
}

function requestsWanted(share: number): readonly string[] {
  return requests(Math.max(8, Math.round(300 * share)));
}

function remarksWanted(share: number): readonly string[] {
  return REMARKS.filter((words) => parseRequest(words, TALKATIVE).kind === 'not understood').slice(0, Math.max(20, Math.round(REMARKS.length * share)));
}

/** Recordings of people, in Debian's packages; never trained on. */
export function realSets(folder: SoundFolder, share: number): readonly HearingSet[] {
  const prompt = prompts();
  const one = (words: string): Item => ({ said: words, sound: () => folder.prompted(words.split(' ').map((word) => prompt.get(word) ?? '')) });
  const fractions = fractionPhrases();
  const random = randomNumbers(9);
  const chosen = Array.from({ length: Math.max(20, Math.round(60 * share)) }, () => fractions[Math.floor(random() * fractions.length)] ?? '');
  const ranks = 'ace two three four five six seven eight nine ten jack queen king'.split(' ');
  const cards = [...ranks, ...ranks.flatMap((rank) => 'hearts clubs spades diamonds'.split(' ').map((suit) => `${rank} of ${suit}`))];
  const named = cardSentences();
  const talk = promptNames().filter((name) => !REQUESTS_AMONG_PROMPTS.has(name) && !/^(beep|ascending|descending|tt-|silence|letters|digits)/.test(name));
  const remarks = talk.filter((_, at) => at % Math.max(1, Math.round(1 / share)) === 0);
  return [
    { part: 'numbers', name: 'real teens and tens', ...ONLY_NUMBERS, items: [...TEENS, ...TENS].map(one) },
    { part: 'numbers', name: 'real teens and tens as a size', ...SIZE_ASKED, items: [...TEENS, ...TENS].map(one) },
    { part: 'real', name: 'real numbers', ...ONLY_NUMBERS, items: NUMBERS.map(one) },
    { part: 'real', name: 'real numbers, planing 5 dB', ...ONLY_NUMBERS, items: NUMBERS.map(one).map(({ said, sound }) => ({ said, sound: () => under(sound(), 'planing', 5) })) },
    { part: 'real', name: 'real fractions, joined', ...SIZE_ASKED, phrases: fractions, items: chosen.map(one) },
    { part: 'real', name: 'real card names', sentences: all(either(...cards), optional(all(either(...cards), optional(either(...cards))))), phrases: [...new Set([...cards, ...named.map(({ words }) => words)])], bench: undefined, items: named.map(({ name, words }) => ({ said: words, sound: () => pocketsphinxRecording(`cards/${name}.wav`) })) },
    { part: 'remarks', name: 'real remarks while addressed', ...WHOLE_BENCH, items: remarks.map((name) => ({ said: undefined, sound: () => folder.prompted([name]) })) },
  ];
}

function prompts(): ReadonlyMap<string, string> {
  const prompt = new Map<string, string>([...ONES, ...TEENS].map((word, at) => [word, `digits/${at}`]));
  ['twenty', ...TENS].forEach((word, at) => prompt.set(word, `digits/${20 + 10 * at}`));
  ORDINALS.forEach((word, at) => prompt.set(word, `digits/h-${at + 1}`));
  return prompt.set('hundred', 'digits/hundred').set('thousand', 'digits/thousand').set('and', 'vm-and');
}

function fractionPhrases(): readonly string[] {
  const parts = ([[8, 'eighth'], [16, 'sixteenth']] as const).flatMap(([division, part]) => [...ONES.slice(1), ...TEENS.slice(0, 3)].slice(0, division - 1).map((count) => `${count} ${part}`));
  const wholes = [...ONES.slice(1), ...TEENS, 'twenty', ...TENS];
  return [...parts, ...wholes.flatMap((whole) => parts.map((part) => `${whole} and ${part}`))];
}
