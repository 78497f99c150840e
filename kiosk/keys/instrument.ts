import { looksLikeReading } from '../../core/length/parseReading.ts';
import type { PadSymbol } from './keySpec.ts';

/**
 * The longest time between two characters of an instrument that types as a keyboard, and so how long a press of a hand is held back until it is clear that no other
 * follows it at once. Instruments send one every 5 to 20 ms; a quick hand on a number pad needs 80 and more (common practice, no source).
 */
export const CHARACTER_MS = 40;
const SHORTEST = 2;
const LONGEST = 24;

interface Held {
  readonly character: string;
  readonly symbol: PadSymbol | null;
  readonly atMs: number;
}

export interface InstrumentListener {
  /** A whole line, typed at an instrument's speed, that reads as a number. */
  read(text: string): void;
  /** What was held back and was no reading after all. */
  pressed(symbol: PadSymbol, atMs: number): void;
}

/** Tells a caliper or tape gauge that types from a hand on the number pad, by the speed and the form of what is typed. Nothing that is typed is lost. */
export class Instrument {
  readonly #listener: InstrumentListener;
  #held: readonly Held[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(listener: InstrumentListener) {
    this.#listener = listener;
  }

  /** True when the press is dealt with here: held back for now, or the end of a reading. */
  take(character: string, symbol: PadSymbol | null, atMs: number): boolean {
    // An instrument holds it for a capital letter or a sign; it is no key of its own.
    if (character === 'Shift') return false;
    const last = this.#held.at(-1);
    const follows = last !== undefined && atMs - last.atMs <= CHARACTER_MS;
    if (character === 'Enter' || character === 'Tab') return this.#end(follows);
    if (!mayBePart(character, follows)) {
      this.letGo();
      return false;
    }
    if (!follows || this.#held.length >= LONGEST) this.letGo();
    this.#held = [...this.#held, { character, symbol, atMs }];
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.letGo(), CHARACTER_MS);
    return true;
  }

  /** Passes on what was held back, as the presses of a hand that it was. */
  letGo(): void {
    const held = this.#takeHeld();
    for (const { symbol, atMs } of held) if (symbol !== null) this.#listener.pressed(symbol, atMs);
  }

  #end(follows: boolean): boolean {
    const text = this.#held.map(({ character }) => character).join('');
    if (!follows || this.#held.length < SHORTEST || !looksLikeReading(text)) {
      this.letGo();
      return false;
    }
    this.#takeHeld();
    this.#listener.read(text.trim());
    return true;
  }

  #takeHeld(): readonly Held[] {
    const held = this.#held;
    this.#held = [];
    clearTimeout(this.#timer);
    return held;
  }
}

/** Digits, signs and points begin a reading; a unit, a blank or a stroke only goes on with one. */
function mayBePart(character: string, follows: boolean): boolean {
  return /^[\d.,+-]$/.test(character) || (follows && /^[a-z"'/ ]$/i.test(character));
}
