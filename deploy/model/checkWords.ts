import type { Bench } from '../../core/bench/bench.ts';
import { EMPTY_STATE } from '../../core/journal/fold.ts';
import { ADDRESS_WORDS } from '../../core/journal/settings.ts';
import type { LoadedPiece } from '../../core/piece/loadedPiece.ts';
import { phrasesFor } from '../../core/talk/grammar.ts';
import { makeGrammar, wordsToAsk, type Grammar } from '../../kiosk/ear/grammar.ts';
import type { Dictionary } from '../../kiosk/ear/words/dictionary.ts';
import { singularsOf } from '../../kiosk/ear/words/plural.ts';
import { pronounce } from '../../kiosk/ear/words/pronounce.ts';
import type { ModelFault } from './fault.ts';

/** How a model stands to the words of the bench. */
export interface WordsFound {
  readonly faults: readonly ModelFault[];
  /** Every word that is listened for. */
  readonly asked: readonly string[];
  /** Words that cannot be heard at all: their phrases are listened for up to them and after them. */
  readonly unheard: readonly string[];
  /** Plurals that are listened for as their singulars. */
  readonly asSingular: readonly string[];
  /** Words that no dictionary has, listened for as they are probably said. */
  readonly guessed: readonly string[];
  /** What the kiosk would give the recogniser. */
  readonly grammar: Grammar;
}

/** More than this share of the bench's own words missing, and it is a model for another language or another purpose. */
const MOST_MISSING = 0.25;
const SHOWN = 8;

/**
 * Looks up every word that is listened for, without a piece and with each of these, in the model's dictionary.
 * @param words the model's own; undefined for one that is given its words from our dictionary
 */
export function checkWords(words: ReadonlySet<string> | undefined, dictionary: Dictionary, pieces: readonly LoadedPiece[]): WordsFound {
  const phrases = [...new Set([undefined, ...pieces].flatMap((piece) => phrasesFor(benchWith(piece))))];
  const asked = [...new Set([...ADDRESS_WORDS.flatMap((word) => wordsToAsk([], word)), ...wordsToAsk(phrases, 'bench')])];
  const knows = (word: string) => (words === undefined ? pronounce(word, dictionary) !== undefined : words.has(word));
  const unknown = new Set([...asked, ...asked.flatMap(singularsOf)].filter((word) => !knows(word)));
  const grammar = makeGrammar(phrases, 'bench', unknown);
  const unheard = [...new Set([...ADDRESS_WORDS.filter((word) => unknown.has(word)), ...grammar.unheard])];
  const guessed = words === undefined ? asked.filter((word) => pronounce(word, dictionary)?.guessed === true) : [];
  return { faults: faultsOf(asked, unheard, words), asked, unheard, asSingular: asked.filter((word) => unknown.has(word) && !unheard.includes(word)), guessed, grammar };
}

function benchWith(piece: LoadedPiece | undefined): Bench {
  const state = piece === undefined ? EMPTY_STATE : { ...EMPTY_STATE, piece, pieceName: piece.file.name };
  return { state, conversation: { screen: { name: 'step' }, lastReply: null, question: null }, records: [], acts: { standing: [], scratched: [], gone: new Set() } };
}

function faultsOf(asked: readonly string[], unheard: readonly string[], words: ReadonlySet<string> | undefined): readonly ModelFault[] {
  const where = 'graph/words.txt';
  if (words !== undefined && unheard.length > 0) {
    const capitals = unheard.filter((word) => words.has(word.toUpperCase())).length;
    if (capitals > unheard.length / 2) return [{ where, what: 'its words are in capitals, and the bench\'s are in small letters', todo: 'Take a model with words in small letters.' }];
  }
  if (unheard.length > asked.length * MOST_MISSING) {
    return [{ where, what: `${unheard.length} of the ${asked.length} words of the bench are not in its dictionary (${listed(unheard)})`, todo: 'Take a model for English with a general dictionary.' }];
  }
  const deaf = ADDRESS_WORDS.every((word) => unheard.includes(word));
  return deaf ? [{ where, what: `it knows none of the words that the bench can be called by (${ADDRESS_WORDS.join(', ')})`, todo: 'Take a model with a larger dictionary.' }] : [];
}

/** The first of some words, and how many more there are. */
export function listed(words: readonly string[], shown = SHOWN): string {
  return words.length > shown ? `${words.slice(0, shown).join(', ')} and ${words.length - shown} more` : words.join(', ');
}
