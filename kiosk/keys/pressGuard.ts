/** Two presses closer than this are one press of a cold hand, unless the key types. */
export const DOUBLE_PRESS_MS = 250;
/** A worn contact bounces within this; nobody types so fast. */
export const BOUNCE_MS = 40;
/** A key down for longer than this is stuck. */
export const STUCK_MS = 8_000;

/**
 * Decides whether a press counts. One for the whole kiosk: after 'done' the screen changes, and a second tap of the same finger
 * lands on another key.
 */
export class PressGuard {
  #last: { readonly key: string; readonly atMs: number; readonly typing: boolean } | null = null;

  /** `key` names the key pressed; `atMs` by any clock that does not step. */
  allows(key: string, atMs: number, typing: boolean): boolean {
    const last = this.#last;
    if (last !== null) {
      const since = atMs - last.atMs;
      if (last.key === key && since < BOUNCE_MS) return false;
      if (!(typing && last.typing) && since < DOUBLE_PRESS_MS) return false;
    }
    this.#last = { key, atMs, typing };
    return true;
  }

  /** Counts as a press: a screen that pops up by itself must not catch the press meant for the one before. */
  holdOff(atMs: number): void {
    this.#last = { key: '', atMs, typing: false };
  }

  forget(): void {
    this.#last = null;
  }
}

export const pressGuard = new PressGuard();
