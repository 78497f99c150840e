import type { TemplateResult } from 'lit';
import type { Request } from '../../core/bench/request.ts';
import type { HostAct } from '../hostPort.ts';

/** The keys of a USB number pad, by what is printed on them; `take back` is the Backspace that some pads have. */
export const PAD_SYMBOLS = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', 'enter', '+', '-', '*', '/', 'take back'] as const;
export type PadSymbol = (typeof PAD_SYMBOLS)[number];

/** What a key does: asks the bench, tells the host, or changes what is being typed or leafed through here. */
export type Does =
  | { readonly request: Request }
  | { readonly act: HostAct }
  | { readonly here: () => void };

/** One key of a screen, as data: what the screen draws, what the number pad presses, what the key card prints. */
export interface KeySpec {
  /** What can be said for it, and what is drawn on it unless `face` is given. */
  readonly label: string;
  /** A drawing in place of the label. */
  readonly face?: TemplateResult;
  /** For a face without words: what it is called by a screen reader, with what is drawn in it. */
  readonly name?: string;
  /** The number pad's key that presses it, drawn small in the corner. */
  readonly pad?: PadSymbol;
  readonly does: Does;
  /** `now` marks the main act of the screen, `due` what a due timer waits for. */
  readonly tone?: 'now' | 'due';
  readonly disabled?: boolean;
  /** Chosen among its neighbours: a setting, a tab. */
  readonly chosen?: boolean;
  /** A key that types may be pressed twice quickly; all others may not. */
  readonly typing?: boolean;
}

/** How a pad symbol is printed in a key's corner. */
export function padLabel(symbol: PadSymbol): string {
  switch (symbol) {
    case 'enter': return '⏎';
    case 'take back': return '⌫';
    case '*': return '×';
    case '/': return '÷';
    case '-': return '−';
    default: return symbol;
  }
}
