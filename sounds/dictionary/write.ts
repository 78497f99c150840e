import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { writeDictionary } from '../../kiosk/ear/words/dictionary.ts';
import { align } from './align.ts';
import { learnRules, measureRules } from './learn.ts';
import { cmuDictionary, letterNames, readWordList } from './sources.ts';
import type { Pronouncing } from './sources.ts';
import { chooseWords } from './words.ts';

/** Makes dictionary.txt.gz again: `npm run dictionary` (a minute or two). README.md tells from what. */

/** An exception to the rules must be used by so many letters of the dictionary's words; with 1 the rules would be a tenth better and the file a third larger. */
const RAREST_EXCEPTION = 2;
const MOST_WAYS = 3;
/** Of so many words one is held out to measure the rules by. */
const HELD_OUT_OF = 20;

const cmu = cmuDictionary();
measure(cmu);
const [trade, talk] = [readWordList(read('trade.txt')), readWordList(read('talk.txt'))];
const names = [...readWordList(read('names.txt')).keys()];
const { words, benchWords, unsayable } = chooseWords(cmu, { trade, talk, names });
if (unsayable.length > 0) throw new Error(`trade.txt or talk.txt: give the phones of these words, which the CMU Pronouncing Dictionary lacks: ${unsayable.join(', ')}`);
const rules = rulesFrom(cmu);
const ways = new Map([...words, ...letterNames()].map(([word, entries]) => [word, entries.slice(0, MOST_WAYS).map(({ sounds }) => sounds)] as const));
const text = writeDictionary(ways, rules, benchWords);
const packed = gzipSync(text, { level: 9 });
writeFileSync(join(import.meta.dirname, 'dictionary.txt.gz'), packed);
console.log(`${words.size} words, ${benchWords.length} of them the bench's; ${text.length} bytes, ${packed.length} packed`);

function read(name: string): string {
  return readFileSync(join(import.meta.dirname, name), 'utf8');
}

function rulesFrom(dictionary: Pronouncing): ReturnType<typeof learnRules> {
  const firstWays = [...dictionary.values()].flatMap(([first]) => (first === undefined ? [] : [first]));
  return learnRules(align(firstWays), RAREST_EXCEPTION);
}

function measure(dictionary: Pronouncing): void {
  const heldOut = new Map([...dictionary].filter((_, index) => index % HELD_OUT_OF === 7));
  const learned = rulesFrom(new Map([...dictionary].filter(([word]) => !heldOut.has(word))));
  const { phoneErrorRate, wordErrorRate } = measureRules(learned, heldOut);
  console.log(`letter-to-sound rules on ${heldOut.size} words that they were not learned from: `
    + `${(100 * phoneErrorRate).toFixed(1)} % of phones wrong, ${(100 * wordErrorRate).toFixed(1)} % of words with any error`);
}
