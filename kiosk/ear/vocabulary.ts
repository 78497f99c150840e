import { buildModel, mustHave, readWords } from './engine.ts';
import type { Engine, EngineModel, Printed } from './engine.ts';
import { graphFiles } from './graph/graphFiles.ts';
import type { ModelFiles } from './graph/graphFiles.ts';
import { hasOurPhones } from './graph/layout.ts';
import type { Word } from './graph/lexicon.ts';
import type { Learned } from './messages.ts';
import type { Dictionary } from './words/dictionary.ts';
import { pronounce } from './words/pronounce.ts';

/** A model, and the words that it hears. */
export interface Vocabulary {
  /** Hears the words learned last; another one after each learning that brought new words. */
  readonly model: EngineModel;
  /** Makes the words hearable, as far as the model lets us. */
  learn(words: readonly string[]): Learned;
}

/**
 * The words of a model: what we give it if it has our phones and there is a dictionary, else what it came with.
 * @throws {LoadError} 'broken model'
 */
export function openVocabulary(engine: Engine, files: ModelFiles, dictionary: Dictionary | undefined, printed: Printed): Vocabulary {
  if (dictionary !== undefined && hasOurPhones(files.get('am/final.mdl') ?? new Uint8Array(0))) return new GivenWords(engine, files, dictionary, printed);
  mustHave(files, OWN_GRAPH);
  const words = readWords(files.get('graph/words.txt') ?? new Uint8Array(0));
  return {
    model: buildModel(engine, files, printed),
    learn: (wanted) => ({ unknown: wanted.filter((word) => !words.has(word)), guessed: [] }),
  };
}

/** Without these a model cannot hear a grammar of ours in words of its own. */
const OWN_GRAPH = ['graph/words.txt', 'graph/HCLr.fst', 'graph/Gr.fst'];
/** A larger graph is slower to load; past this, words that are no longer asked for are dropped. */
const MOST_WORDS = 3_000;

/**
 * Begins with the words of any bench. When a word comes that the graph lacks, it is built anew and the model with it: that takes a fraction of a second,
 * but the engine never gives back the memory of a model (8.5 MB each, measured), so it must not happen at every question.
 */
class GivenWords implements Vocabulary {
  readonly #engine: Engine;
  readonly #printed: Printed;
  readonly #dictionary: Dictionary;
  /** All but the graph. */
  readonly #files: ModelFiles;
  #words: ReadonlyMap<string, Word>;
  model: EngineModel;

  constructor(engine: Engine, files: ModelFiles, dictionary: Dictionary, printed: Printed) {
    this.#engine = engine;
    this.#printed = printed;
    this.#dictionary = dictionary;
    this.#files = new Map([...files].filter(([path]) => !path.startsWith('graph/')));
    this.#words = this.#said(dictionary.benchWords).words;
    this.model = this.#build(this.#words);
  }

  learn(wanted: readonly string[]): Learned {
    const { words, unknown, guessed } = this.#said(wanted);
    if ([...words.keys()].some((word) => !this.#words.has(word))) {
      const all = new Map([...this.#words, ...words]);
      const kept = all.size > MOST_WORDS ? words : all;
      this.model = this.#build(kept);
      this.#words = kept;
    }
    return { unknown, guessed };
  }

  #said(wanted: readonly string[]): Learned & { words: Map<string, Word> } {
    const words = new Map<string, Word>();
    const unknown: string[] = [];
    const guessed: string[] = [];
    for (const word of wanted) {
      const said = pronounce(word, this.#dictionary);
      if (said === undefined) unknown.push(word);
      else words.set(word, { word, pronunciations: said.pronunciations });
      if (said?.guessed === true) guessed.push(word);
    }
    return { words, unknown, guessed };
  }

  #build(words: ReadonlyMap<string, Word>): EngineModel {
    return buildModel(this.#engine, new Map([...this.#files, ...graphFiles([...words.values()])]), this.#printed);
  }
}
