import { UNKNOWN_WORD } from './grammar.ts';

/** What the ear makes of what it heard. */
export type Noticed =
  /** Words meant for the bench, without the address word. */
  | { readonly kind: 'heard'; readonly words: string }
  /** The address word was said. `settled` when nothing followed it: the maker waits to be listened to. */
  | { readonly kind: 'address'; readonly settled: boolean };

/** How long the bench stays attentive, in milliseconds of hearing (time while it is deaf does not count). */
export interface AttentionTimes {
  /** After the address word alone. */
  readonly afterAddressMs: number;
  /** After the listen key. */
  readonly afterKeyMs: number;
  /** While someone is in the middle of a sentence, attention lasts at least this much longer. */
  readonly whileSpeakingMs: number;
  /** But never longer than this in all: a radio could keep it awake for ever. */
  readonly longestMs: number;
}

export const ATTENTION_TIMES: AttentionTimes = { afterAddressMs: 6_000, afterKeyMs: 8_000, whileSpeakingMs: 2_500, longestMs: 30_000 };

/** So many guesses in a row must begin with the address word before it is taken notice of. */
const STEADY_GUESSES = 3;

/**
 * Decides whether words are meant for the bench. It acts on nothing unless it was addressed: by its word at the start of what was said, by the
 * listen key, or by its own question. Times are milliseconds on a clock that never goes back, given with each call.
 */
export class Attention {
  readonly #times: AttentionTimes;
  #addressWord: string;
  #opened = 0;
  #until = 0;
  /** Set while deaf: what was left of the window then. */
  #left: number | undefined;
  /** Guesses in a row at the present utterance that begin with the address word. */
  #addressGuesses = 0;
  /** It was seen in enough of them, and told. */
  #glimpsed = false;

  constructor(addressWord: string, times: AttentionTimes = ATTENTION_TIMES) {
    this.#addressWord = addressWord;
    this.#times = times;
  }

  set addressWord(word: string) {
    this.#addressWord = word;
  }

  /** True while it would act on words without the address word, or is being spoken to by it. */
  attending(now: number): boolean {
    return this.#left === undefined ? this.#glimpsed || now < this.#until : this.#left > 0;
  }

  /** When the window that is open now ends, or undefined when none is. */
  get until(): number | undefined {
    return this.#left === undefined && this.#until > 0 ? this.#until : undefined;
  }

  /** The maker pressed the listen key. */
  listen(now: number): void {
    this.#openWindow(this.#times.afterKeyMs, now);
  }

  /** The bench asked something and waits `ms` for the answer, counted from when it can hear again. */
  awaitAnswer(ms: number, now: number): void {
    this.#openWindow(ms, now);
  }

  /** Attention ends: the answer came by another way. */
  leave(): void {
    this.#until = 0;
    this.#glimpsed = false;
    this.#addressGuesses = 0;
    if (this.#left !== undefined) this.#left = 0;
  }

  /** The mouth began to speak: the window's time stands still. */
  deafened(now: number): void {
    if (this.#left === undefined) this.#left = Math.max(0, this.#until - now);
    this.#glimpsed = false;
    this.#addressGuesses = 0;
  }

  /** It hears again: the window goes on with the time it had left. */
  woke(now: number): void {
    if (this.#left === undefined) return;
    this.#until = this.#left > 0 ? now + this.#left : 0;
    this.#opened = now;
    this.#left = undefined;
  }

  /** A guess at what is being said: keeps an open window open, and gives early notice of the address word. */
  guess(text: string, now: number): Noticed | undefined {
    if (this.#left !== undefined) return undefined;
    if (now < this.#until) {
      const stretched = Math.max(this.#until, now + this.#times.whileSpeakingMs);
      this.#until = Math.min(stretched, Math.max(this.#until, this.#opened + this.#times.longestMs));
      return undefined;
    }
    if (this.#glimpsed) return undefined;
    // One guess may flicker ('next' begins much like 'bench'); those that follow each other with more said do not.
    this.#addressGuesses = this.#afterAddress(text) === undefined ? 0 : this.#addressGuesses + 1;
    if (this.#addressGuesses < STEADY_GUESSES) return undefined;
    this.#glimpsed = true;
    return { kind: 'address', settled: false };
  }

  /** What was said, once it is over. */
  words(text: string, now: number): Noticed | undefined {
    this.#glimpsed = false;
    this.#addressGuesses = 0;
    if (this.#left !== undefined) return undefined;
    const addressed = this.#afterAddress(text);
    // A radio that happens to begin with the word goes on and on, in words that are none of ours: nobody waits for an answer to that.
    if (addressed !== undefined && now >= this.#until && isTalk(text)) return undefined;
    if (addressed === '') {
      this.#openWindow(this.#times.afterAddressMs, now);
      return { kind: 'address', settled: true };
    }
    const words = addressed ?? (now < this.#until ? withoutUnknownEnds(text.split(' ')).join(' ') : '');
    if (words === '') return undefined;
    this.leave();
    return { kind: 'heard', words };
  }

  /** The utterance is over, whether it gave words or not: a guess that came to nothing is forgotten. */
  fellQuiet(): void {
    this.#glimpsed = false;
    this.#addressGuesses = 0;
  }

  #openWindow(ms: number, now: number): void {
    if (this.#left !== undefined) {
      this.#left = ms;
      return;
    }
    this.#opened = now;
    this.#until = now + ms;
  }

  /** The words after the address word: '' when there are none, undefined when it was not addressed. */
  #afterAddress(text: string): string | undefined {
    const words = withoutUnknownEnds(text.split(' '));
    if (words[0] !== this.#addressWord) return undefined;
    // Said twice, it is still only the address; later in the sentence it may be the name of a part.
    const command = words.findIndex((word) => word !== this.#addressWord);
    return command < 0 ? '' : withoutUnknownEnds(words.slice(command)).join(' ');
  }
}

/** The longest request has a dozen words. */
const MOST_WORDS = 18;
/** A cough before the command and a tap after it are forgiven, and one word that was not caught is asked for again; more strangers than that are a conversation. */
const MOST_STRANGERS = 3;

function isTalk(text: string): boolean {
  const words = text.split(' ');
  const strangers = words.filter((word, at) => word === UNKNOWN_WORD && words[at - 1] !== UNKNOWN_WORD).length;
  return words.length > MOST_WORDS || strangers > MOST_STRANGERS;
}

/** A cough or a tap before and after a sentence comes as '[unk]'; inside one it stays, and the sentence is then not understood. */
function withoutUnknownEnds(words: readonly string[]): readonly string[] {
  const known = (word: string) => word !== UNKNOWN_WORD && word !== '';
  const first = words.findIndex(known);
  return first < 0 ? [] : words.slice(first, words.findLastIndex(known) + 1);
}
