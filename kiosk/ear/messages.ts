import type { Expression } from '../../core/talk/strict/expression.ts';

/**
 * What the page and the recogniser's worker say to each other. Every ask carries a number and is answered exactly once, with
 * 'done' or 'failed', so that the page can put a deadline on each; sound is the one thing that is sent without waiting.
 */

/** The recogniser hears at this rate and no other: another rate would rebuild it inside the engine and leak the old one. */
export const SAMPLE_RATE_HZ = 16_000;

/** Sentences to listen for and nothing else, where the model lets us. */
export interface StrictGrammar {
  readonly sentences: Expression;
  readonly addressWord: string;
}

export type Ask =
  /** Loads the engine and the model; takes seconds. */
  | { readonly ask: 'load'; readonly engineUrl: string; readonly modelUrl: string; readonly dictionaryUrl: string }
  /** Swaps the grammar: a new recogniser is made first and the old one freed after, so that a bad grammar changes nothing. */
  | { readonly ask: 'grammar'; readonly phrases: readonly string[]; readonly strict?: StrictGrammar }
  /** Ends the utterance: what was heard comes as a 'words' event before the answer. */
  | { readonly ask: 'finish' }
  /** Forgets what was heard so far. */
  | { readonly ask: 'forget' }
  /** Makes these words hearable in the next grammar, and tells which are not. */
  | { readonly ask: 'learn words'; readonly words: readonly string[] }
  | { readonly ask: 'health' };

export type NumberedAsk = Ask & { readonly number: number };

/** 16 kHz mono, -1 to 1; its buffer is handed over, not copied. */
export interface Sound { readonly sound: Float32Array<ArrayBuffer> }

export type ToWorker = NumberedAsk | Sound;

/** Why a load failed: the model is not there, is not a Vosk model, or the engine itself did not start. */
export type LoadFault = 'no model' | 'broken model' | 'engine failed';

/** What came of learning words. */
export interface Learned {
  /** Those of the words that cannot be heard. */
  readonly unknown: readonly string[];
  /** Those that are listened for as they are probably said: the dictionary does not have them. */
  readonly guessed: readonly string[];
}

export interface Health {
  /** What the engine has taken from the browser; it never shrinks. */
  readonly heapBytes: number;
  /** Recognisers made and not yet freed: 1 once a grammar is set. */
  readonly recognisers: number;
}

/** What a model can do. */
export interface ModelKind {
  /** It listens by sentences when it is given any, and needs no phrases then. */
  readonly followsSentences: boolean;
}

export type FromWorker =
  | { readonly number: number; readonly done: true; readonly learned?: Learned; readonly health?: Health; readonly loaded?: ModelKind }
  | { readonly number: number; readonly failed: string; readonly fault?: LoadFault }
  /** A guess at what is being said; it may still change. */
  | { readonly event: 'partial'; readonly words: string }
  /** What was said, once the engine hears that it is over. */
  | { readonly event: 'words'; readonly words: string; /** How sure of each of them, 0 to 1. */ readonly sureness: readonly number[] }
  /** The engine threw while it listened: it is not to be trusted further. */
  | { readonly event: 'crashed'; readonly reason: string };
