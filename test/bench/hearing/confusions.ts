import { either } from '../../../core/talk/strict/expression.ts';
import type { Listener } from './listener.ts';
import { under } from './sounds.ts';
import type { SoundFolder } from './sounds.ts';

/** Voices that are neither in the training of the model nor in any other set here: thresholds and tables are made with these, and reported with others. */
export const TUNING_VOICES = ['espeak-ng en-us+max', 'espeak-ng en-us-nyc+edward2', 'flite awb', 'espeak-ng en-us+iven3'] as const;
const NOISES = ['fan', 'planing', 'blows'] as const;
const DB = 3;
const STEMS = ['thir', 'four', 'fif', 'six', 'seven', 'eigh', 'nine'];
const TEENS_AND_TENS = STEMS.flatMap((stem) => [`${stem}teen`, `${stem === 'four' ? 'for' : stem}ty`]);
const ONES = 'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen'.split(' ');
const PHRASES = [...new Set([
  'zero', ...ONES, ...TEENS_AND_TENS, 'twenty', 'hundred', 'minutes', 'seconds', 'hours',
  ...'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth'.split(' '),
  ...ONES.flatMap((count) => [`${count} eighths`, `${count} sixteenths`]), ...['three', 'five', 'seven', 'nine', 'eleven', 'thirteen', 'fifteen', 'seventeen'].flatMap((count) => [`${count} thirty seconds`, `${count} minutes`]),
  ...TEENS_AND_TENS.flatMap((count) => [`${count} minutes`, `${count} and a half`]), ...'abcd'.split('').map((letter) => `face ${letter}`),
])];

/** Which number words, and letters of faces, were taken for which others, the most often first: the rows of core/talk/confusions.ts. */
export function measureConfusions(listener: Listener, folder: SoundFolder): readonly string[] {
  listener.listenFor(either(...PHRASES), PHRASES);
  const said = new Map<string, number>();
  const taken = new Map<string, number>();
  const count = (counts: Map<string, number>, key: string) => counts.set(key, (counts.get(key) ?? 0) + 1);
  for (const phrase of PHRASES) {
    for (const voice of TUNING_VOICES) {
      const speech = folder.spoken(phrase, voice);
      for (const sound of [speech, ...NOISES.map((noise) => under(speech, noise, DB))]) {
        const words = phrase.split(' ');
        const heard = listener.hear(sound).map((each) => each.words).join(' ').split(' ');
        for (const [place, word] of words.entries()) {
          count(said, word);
          const other = heard.length === words.length ? heard[place] : undefined;
          if (other !== undefined && other !== word && other !== '[unk]') count(taken, `${word} ${other}`);
        }
      }
    }
  }
  return [...taken].sort(([, one], [, other]) => other - one).map(([pair, times]) => `['${pair.replace(' ', "', '")}', ${times}, ${said.get(pair.split(' ')[0] ?? '') ?? 0}]`);
}
