import type { Bench } from '../../core/bench/bench.ts';
import { phrasesFor, grammarWords } from '../../core/talk/grammar.ts';
import { parseRequest } from '../../core/talk/parse.ts';
import { DEMO_TEXT, loadSound } from '../core/piece/demo.ts';
import { bench, TALKATIVE } from '../core/talk/benches.ts';

/** How long it takes to make the recogniser's phrases of a piece, and to understand or refuse what was heard. */

const rounds = 5;

function milliseconds(work: () => void): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}

function print(about: string, times: readonly number[]): void {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0).toFixed(2);
  console.log(`${about.padEnd(52)} middle ${at(0.5)} ms, 95 in 100 under ${at(0.95)} ms, worst ${at(1)} ms`);
}

/** The demo piece loaded anew, so that nothing made for it before is kept. */
function freshBench(): Bench {
  return bench({ state: { piece: loadSound(DEMO_TEXT) } });
}

print('phrases of a piece just loaded', Array.from({ length: rounds }, freshBench).map((fresh) => milliseconds(() => phrasesFor(fresh))));
print('phrases again, at another question', Array.from({ length: 50 }, () => milliseconds(() => phrasesFor(TALKATIVE))));

const phrases = phrasesFor(TALKATIVE);
print(`understanding each of ${phrases.length} phrases`, phrases.map((phrase) => milliseconds(() => parseRequest(phrase, TALKATIVE))));

const words = grammarWords(phrases);
const salad = Array.from({ length: 300 }, (_, index) => Array.from({ length: 3 + (index % 12) }, (__, place) => words[(index * 131 + place * 71) % words.length] ?? '').join(' '));
print('refusing word salad, with the nearest phrase', salad.map((heard) => milliseconds(() => parseRequest(heard, TALKATIVE))));

const longest = Array.from({ length: 60 }, (_, index) => ['record', 'leg', 'two', 'width', 'three', 'and', 'plus', 'less', 'of', 'half', 'in', 'divide'][index % 12] ?? '').join(' ');
print('refusing sixty words', Array.from({ length: rounds }, () => milliseconds(() => parseRequest(longest, TALKATIVE))));
console.log(`memory in use: ${(process.memoryUsage().heapUsed / 2 ** 20).toFixed(0)} MB; ${words.length} different words`);
