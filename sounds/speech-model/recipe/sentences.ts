/**
 * Part of stage 1: what the bench understands, as sentences to train with. Walks at random through its own sentences, every pattern of a request as often
 * as every other, every slot filled anew.
 * tsx sounds/speech-model/recipe/sentences.ts PIECE.json COUNT > sentences.txt
 */
import { readFileSync } from 'node:fs';
import { NO_ACTS } from '../../../core/journal/acts.ts';
import { EMPTY_STATE } from '../../../core/journal/fold.ts';
import { loadPiece } from '../../../core/piece/load.ts';
import { assertNever } from '../../../core/result.ts';
import type { Expression } from '../../../core/talk/strict/expression.ts';
import { sentencesFor } from '../../../core/talk/strict/sentences.ts';

const SEED = 20261127;
const LONGEST_LETTERS = 80;

const [file = '', count = ''] = process.argv.slice(2);
if (file === '' || !(Number(count) > 0)) throw new Error('tsx sounds/speech-model/recipe/sentences.ts PIECE.json COUNT');
const text = readFileSync(file, 'utf8');
const loaded = loadPiece(text);
if (!loaded.ok) throw new Error(`${file} is no piece: ${JSON.stringify(loaded.fault[0])}`);
const sentences = sentencesFor({
  state: { ...EMPTY_STATE, piece: loaded.value, pieceText: text },
  conversation: { screen: { name: 'step' }, lastReply: null, question: null },
  records: [],
  acts: NO_ACTS,
});

const random = numbersFrom(SEED);
const said = new Set<string>();
while (said.size < Number(count)) {
  const sentence = walk(sentences);
  if (sentence !== null && sentence.length > 0 && sentence.join(' ').length <= LONGEST_LETTERS) said.add(sentence.join(' '));
}
console.log([...said].join('\n'));

/** Null where nothing can be said: a slot without an example. */
function walk(at: Expression): string[] | null {
  switch (at.kind) {
    case 'word': return [at.word];
    case 'all': {
      const parts = at.parts.map(walk);
      return parts.includes(null) ? null : parts.flatMap((part) => part ?? []);
    }
    case 'either': {
      const weights = at.options.map((option) => Math.exp(-option.cost / 100));
      let left = random() * weights.reduce((sum, weight) => sum + weight, 0);
      const chosen = at.options.find((_, index) => (left -= weights[index] ?? 0) <= 0);
      return chosen === undefined ? null : walk(chosen.expression);
    }
    default: return assertNever(at);
  }
}

/** Marsaglia's xorshift: the same numbers, 0 up to 1, every time. */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
