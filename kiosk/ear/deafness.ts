/** Lets the ear hear again; calling it more than once changes nothing. */
export type Release = () => void;

/** After the last sound of the mouth, the room still carries it for about this long. */
export const TAIL_MS = 300;

/**
 * Counts who wants the ear deaf: the mouth while it speaks, a signal while it sounds. The ear hears only when nobody does, and then a moment
 * later, so that it does not hear the tail of its own voice. Each holder can let go only of its own hold, and only once.
 */
export class Deafness {
  readonly #tailMs: number;
  readonly #changed: (deaf: boolean) => void;
  readonly #holders = new Set<symbol>();
  #waking: ReturnType<typeof setTimeout> | undefined;

  /** `changed` is called with true when the ear goes deaf and with false when it hears again. */
  constructor(changed: (deaf: boolean) => void, tailMs = TAIL_MS) {
    this.#changed = changed;
    this.#tailMs = tailMs;
  }

  get deaf(): boolean {
    return this.#holders.size > 0 || this.#waking !== undefined;
  }

  deafen(): Release {
    const holder = Symbol('holder');
    const wasDeaf = this.deaf;
    this.#stopWaking();
    this.#holders.add(holder);
    if (!wasDeaf) this.#changed(true);
    return () => {
      if (this.#holders.delete(holder) && this.#holders.size === 0) this.#wakeSoon();
    };
  }

  #wakeSoon(): void {
    this.#waking = setTimeout(() => {
      this.#waking = undefined;
      this.#changed(false);
    }, this.#tailMs);
  }

  #stopWaking(): void {
    clearTimeout(this.#waking);
    this.#waking = undefined;
  }
}
