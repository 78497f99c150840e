import { withEndings } from './endings.ts';
import { buildLexicon } from './lexicon.ts';
import type { Word } from './lexicon.ts';
import { anyWordsFile, lookaheadFile } from './openFst.ts';
import { UNUSED_TRANSITION, wordBoundaries } from './phones.ts';

/** What the recogniser writes for anything that is no word of its grammar. */
export const UNKNOWN_WORD = '[unk]';

/** A file of a model's folder. */
export type ModelFiles = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;

/** The file of a grammar, once it is known by which numbers the engine goes. */
export type MakeGrammarFile = (numbers: ReadonlyMap<string, number>) => Uint8Array<ArrayBuffer>;

/**
 * Everything of a model that depends on its words: with these files in the place of its own, a model with our phones hears these words and no others.
 * @param words at least one; each word once
 * @param grammar what the engine listens by unless it is given phrases; any word after any word, if nothing else
 */
export function graphFiles(words: readonly Word[], grammar: MakeGrammarFile = ({ size }) => anyWordsFile(size)): ModelFiles {
  const { bytes, renumbered } = lookaheadFile(buildLexicon(words.map(withItsEnding)));
  const names = [...words.map(({ word }) => word), UNKNOWN_WORD];
  const numbers = new Map(names.map((word, index) => [word, renumbered.get(index + 1) ?? 0]));
  const table = ['<eps> 0', ...[...numbers].map(([word, number]) => `${word} ${number}`), ''].join('\n');
  return new Map([
    ['graph/HCLr.fst', bytes],
    ['graph/Gr.fst', grammar(numbers)],
    ['graph/words.txt', text(table)],
    ['graph/disambig_tid.int', text(`${UNUSED_TRANSITION}\n`)],
    ['graph/phones/word_boundary.int', text(wordBoundaries())],
  ]);
}

function withItsEnding({ word, pronunciations }: Word): Word {
  return { word, pronunciations: pronunciations.map((sounds) => withEndings(word, sounds)) };
}

function text(lines: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(lines);
}
