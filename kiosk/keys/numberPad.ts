import { Instrument } from './instrument.ts';
import type { PadSymbol } from './keySpec.ts';
import { STUCK_MS } from './pressGuard.ts';

/** Where a key lies, whatever NumLock says: `code` names the place, so 7 is 7 with the lamp out as well. */
const BY_CODE: Readonly<Record<string, PadSymbol>> = {
  Numpad0: '0', Numpad1: '1', Numpad2: '2', Numpad3: '3', Numpad4: '4', Numpad5: '5', Numpad6: '6', Numpad7: '7', Numpad8: '8', Numpad9: '9',
  NumpadDecimal: '.', NumpadComma: '.', NumpadEnter: 'enter', NumpadEqual: 'enter', NumpadAdd: '+', NumpadSubtract: '-', NumpadMultiply: '*', NumpadDivide: '/',
  NumpadBackspace: 'take back', Backspace: 'take back',
};

/** What a pad that gives no place sends with NumLock off. */
const BY_NUMLOCK_OFF: Readonly<Record<string, PadSymbol>> = {
  Insert: '0', End: '1', ArrowDown: '2', PageDown: '3', ArrowLeft: '4', Clear: '5', ArrowRight: '6', Home: '7', ArrowUp: '8', PageUp: '9', Delete: '.',
};

/** The same signs on a full keyboard, and its keys for leafing and leaving. */
const BY_KEY: Readonly<Record<string, PadSymbol>> = {
  '0': '0', '1': '1', '2': '2', '3': '3', '4': '4', '5': '5', '6': '6', '7': '7', '8': '8', '9': '9', '.': '.', ',': '.', '+': '+', '-': '-', '*': '*', '/': '/',
  Enter: 'enter', PageDown: '+', PageUp: '-', Escape: '-',
};

const ON_THE_PAD = 3; // KeyboardEvent.DOM_KEY_LOCATION_NUMPAD

type KeyReading = Pick<KeyboardEvent, 'code' | 'key' | 'location'>;

/** Which key of the number pad this is; null for one that means nothing to the kiosk (Tab, letters, NumLock itself). */
export function padSymbolOf(event: KeyReading): PadSymbol | null {
  const placed = BY_CODE[event.code];
  if (placed !== undefined) return placed;
  if (event.location === ON_THE_PAD || event.code === '') {
    const off = BY_NUMLOCK_OFF[event.key];
    if (off !== undefined) return off;
  }
  return BY_KEY[event.key] ?? null;
}

export interface NumberPadListener {
  pressed(symbol: PadSymbol, atMs: number): void;
  /** A caliper or tape gauge that types as a keyboard sent a line. */
  read(text: string): void;
  stuck(symbol: PadSymbol): void;
}

/**
 * Drives the kiosk from a USB number pad or a keyboard: one act per press, however long the key is down. Text fields keep
 * their typing, and a key that was reached by Tab keeps its Enter.
 */
export class NumberPad {
  readonly #listener: NumberPadListener;
  readonly #instrument: Instrument;
  /** Since when each key has been down. */
  readonly #down = new Map<string, number>();
  readonly #reported = new Set<string>();

  constructor(listener: NumberPadListener) {
    this.#listener = listener;
    this.#instrument = new Instrument(listener);
  }

  attach(target: Pick<Window, 'addEventListener'>): void {
    target.addEventListener('keydown', this.#keydown);
    target.addEventListener('keyup', this.#keyup);
    target.addEventListener('blur', this.#forget);
  }

  detach(target: Pick<Window, 'removeEventListener'>): void {
    target.removeEventListener('keydown', this.#keydown);
    target.removeEventListener('keyup', this.#keyup);
    target.removeEventListener('blur', this.#forget);
  }

  readonly #keydown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const symbol = padSymbolOf(event);
    if (belongsToField(event)) return;
    if (!event.repeat && this.#instrument.take(characterOf(event, symbol), symbol, event.timeStamp)) {
      event.preventDefault();
      this.#down.set(event.code || event.key, event.timeStamp);
      return;
    }
    if (symbol === null) return;
    if (event.key === 'Enter' && event.code === 'Enter' && focusedKey(event)) return;
    event.preventDefault();
    const name = event.code || event.key;
    if (event.repeat) {
      this.#reportStuck(name, symbol, event.timeStamp);
      return;
    }
    this.#down.set(name, event.timeStamp);
    this.#listener.pressed(symbol, event.timeStamp);
  };

  readonly #keyup = (event: KeyboardEvent): void => {
    const name = event.code || event.key;
    this.#down.delete(name);
    this.#reported.delete(name);
  };

  readonly #forget = (): void => {
    this.#down.clear();
    this.#reported.clear();
  };

  #reportStuck(name: string, symbol: PadSymbol, atMs: number): void {
    const since = this.#down.get(name) ?? atMs;
    this.#down.set(name, since);
    if (atMs - since < STUCK_MS || this.#reported.has(name)) return;
    this.#reported.add(name);
    this.#listener.stuck(symbol);
  }
}

/** A number pad with NumLock off still types digits. */
function characterOf({ key }: KeyReading, symbol: PadSymbol | null): string {
  if (symbol === 'enter' || key === 'Tab') return symbol === 'enter' ? 'Enter' : key;
  return symbol !== null && /^[\d.+-]$/.test(symbol) && key !== ',' ? symbol : key;
}

function belongsToField(event: Event): boolean {
  const field = event.composedPath()[0];
  return (field instanceof HTMLInputElement && !['button', 'file', 'checkbox', 'radio'].includes(field.type)) || field instanceof HTMLTextAreaElement || field instanceof HTMLSelectElement;
}

function focusedKey(event: Event): boolean {
  const target = event.composedPath()[0];
  return target instanceof HTMLButtonElement || (target instanceof HTMLInputElement && target.type === 'file');
}
