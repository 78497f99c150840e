import { buildModel, mustHave, readWords } from './engine.ts';
import type { Engine, EngineModel, Printed } from './engine.ts';
import { FILLERS } from '../../core/talk/words.ts';
import { NEVER } from '../../core/talk/strict/expression.ts';
import type { Expression } from '../../core/talk/strict/expression.ts';
import { WordGraphs } from '../../core/talk/strict/wordGraphs.ts';
import type { Fst } from './graph/fst.ts';
import { graphFiles, UNKNOWN_WORD } from './graph/graphFiles.ts';
import type { ModelFiles } from './graph/graphFiles.ts';
import { GrammarRoom } from './graph/grammarRoom.ts';
import { sentenceGraph } from './graph/sentenceGraph.ts';
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
  /** Listens by these sentences and nothing else when no phrases are given; a model with a graph of its own cannot. No recogniser may be in use. */
  readonly follow?: (sentences: Expression, addressWord: string) => void;
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
 * Begins with the words of any bench, and makes the model when it is first needed: by then the words of the piece are there too. When a word comes that the graph
 * lacks, it is built anew and the model with it: that takes a fraction of a second, but the engine never gives back the memory of a model (8.5 MB each, measured),
 * so it must not happen at every question.
 */
class GivenWords implements Vocabulary {
  readonly #engine: Engine;
  readonly #printed: Printed;
  readonly #dictionary: Dictionary;
  /** All but the graph. */
  readonly #files: ModelFiles;
  #words: ReadonlyMap<string, Word>;
  /** Undefined when the words have changed since. */
  #made: Made | undefined;
  #marks = 0;

  constructor(engine: Engine, files: ModelFiles, dictionary: Dictionary, printed: Printed) {
    this.#engine = engine;
    this.#printed = printed;
    this.#dictionary = dictionary;
    this.#files = new Map([...files].filter(([path]) => !path.startsWith('graph/')));
    this.#words = this.#said(dictionary.benchWords).words;
  }

  get model(): EngineModel {
    this.#made ??= this.#make(NEVER, '');
    return this.#made.model;
  }

  learn(wanted: readonly string[]): Learned {
    const { words, unknown, guessed } = this.#said(wanted);
    if ([...words.keys()].some((word) => !this.#words.has(word))) {
      const all = new Map([...this.#words, ...words]);
      this.#words = all.size > MOST_WORDS ? words : all;
      this.#made = undefined;
    }
    return { unknown, guessed };
  }

  follow(sentences: Expression, addressWord: string): void {
    const { grammars, room } = this.#made ?? {};
    if (grammars !== undefined && room?.put(grammars.of(sentences, addressWord), this.#engine.HEAPU8) === true) return;
    this.#made = this.#make(sentences, addressWord);
  }

  /** A model that hears the words, with room for grammars. */
  #make(sentences: Expression, addressWord: string): Made {
    let room: GrammarRoom | undefined;
    let grammars = new Grammars(new Map());
    this.#marks += 1;
    const graph = graphFiles([...this.#words.values()], (numbers) => {
      grammars = new Grammars(numbers);
      room = new GrammarRoom(grammars.of(sentences, addressWord), this.#marks);
      return room.file;
    });
    const model = buildModel(this.#engine, new Map([...this.#files, ...graph]), this.#printed);
    return { model, grammars, room: room?.find(this.#engine.HEAPU8) === true ? room : undefined };
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
}

interface Made {
  readonly model: EngineModel;
  readonly grammars: Grammars;
  /** Undefined when its grammar was not found in the engine's memory: then each grammar needs a model of its own. */
  readonly room: GrammarRoom | undefined;
}

/** Grammars in the words of one model, by the numbers by which it knows them. */
class Grammars {
  readonly #numbers: ReadonlyMap<string, number>;
  readonly #graphs: WordGraphs;

  constructor(numbers: ReadonlyMap<string, number>) {
    this.#numbers = numbers;
    this.#graphs = new WordGraphs((word) => numbers.get(word));
  }

  of(sentences: Expression, addressWord: string): Fst {
    const fillers = new Set([...FILLERS].flatMap((word) => this.#numbers.get(word) ?? []));
    return sentenceGraph(this.#graphs.graphOf(sentences), { unknown: this.#numbers.get(UNKNOWN_WORD) ?? 0, address: this.#numbers.get(addressWord), fillers });
  }
}
