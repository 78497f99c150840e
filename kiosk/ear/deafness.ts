/** Lets the ear hear again, so many milliseconds later than usual; calling it more than once changes nothing. */
export type Release = (laterMs?: number) => void;

/** After the last sound of the mouth, the room still carries it for about this long. */
export const TAIL_MS = 300;
/** Nothing is said for so long, not even all the marks of a board at the slow pace, which takes five minutes: whoever holds the ear deaf that long has forgotten it. */
export const LONGEST_HOLD_MS = 1_200_000;
/** No loudspeaker lags behind by more, whatever the browser says. */
const MOST_LATER_MS = 2_000;

/**
 * Counts who wants the ear deaf: the mouth while it speaks, a signal while it sounds. The ear hears only when nobody does, and then a moment
 * later, so that it does not hear the tail of its own voice. Each holder can let go only of its own hold, and only once; a hold that is never let go ends by itself.
 */
export class Deafness {
  readonly #tailMs: number;
  readonly #changed: (deaf: boolean) => void;
  readonly #holders = new Map<symbol, ReturnType<typeof setTimeout>>();
  #waking: ReturnType<typeof setTimeout> | undefined;
  /** When the last tail ends, on the clock that never goes back. */
  #tailEnds = 0;

  /** `changed` is called with true when the ear goes deaf and with false when it hears again. */
  constructor(changed: (deaf: boolean) => void, tailMs = TAIL_MS) {
    this.#changed = changed;
    this.#tailMs = tailMs;
  }

  get deaf(): boolean {
    return this.#holders.size > 0 || this.#waking !== undefined;
  }

  /** @throws what `changed` throws; nobody holds it then */
  deafen(): Release {
    const holder = Symbol('holder');
    const wasDeaf = this.deaf;
    this.#stopWaking();
    this.#holders.set(holder, setTimeout(() => this.#release(holder, 0), LONGEST_HOLD_MS));
    try {
      if (!wasDeaf) this.#changed(true);
    } catch (error) {
      this.#release(holder, 0);
      throw error;
    }
    return (laterMs = 0) => this.#release(holder, laterMs);
  }

  #release(holder: symbol, laterMs: number): void {
    const forgotten = this.#holders.get(holder);
    if (forgotten === undefined) return;
    clearTimeout(forgotten);
    this.#holders.delete(holder);
    const later = Math.min(MOST_LATER_MS, Math.max(0, laterMs)) || 0;
    this.#tailEnds = Math.max(this.#tailEnds, performance.now() + this.#tailMs + later);
    if (this.#holders.size === 0) this.#wakeSoon();
  }

  #wakeSoon(): void {
    this.#waking = setTimeout(() => {
      this.#waking = undefined;
      this.#changed(false);
    }, Math.max(0, this.#tailEnds - performance.now()));
  }

  #stopWaking(): void {
    clearTimeout(this.#waking);
    this.#waking = undefined;
  }
}
