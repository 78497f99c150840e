/**
 * The colours of the kiosk, one table for each theme. Ink on paper; `now` is the one strong colour, for what the maker is on;
 * `due` is a pair, drawn as stripes, so that it is a pattern as well as a colour.
 */
export interface Tokens {
  readonly paper: string;
  /** Keys and cards: paper one shade apart from the sheet. */
  readonly card: string;
  /** A key while it is held down. */
  readonly pressed: string;
  readonly ink: string;
  /** Captions, units and thin lines that must still be read. */
  readonly pencil: string;
  readonly now: string;
  readonly onNow: string;
  readonly due: string;
  readonly dueStripe: string;
  readonly onDue: string;
}

export const LIGHT: Tokens = {
  paper: '#fbf9f3', card: '#ffffff', pressed: '#dfe6ee', ink: '#14171a', pencil: '#3b4147',
  now: '#00408a', onNow: '#ffffff', due: '#ffc62e', dueStripe: '#ffe391', onDue: '#14171a',
};

export const DARK: Tokens = {
  paper: '#0f1214', card: '#1b2024', pressed: '#22384d', ink: '#f4f0e6', pencil: '#c3c8cc',
  now: '#8fd0ff', onNow: '#0b1a26', due: '#ffc62e', dueStripe: '#f0ae00', onDue: '#14171a',
};

/** Every pair that is ever drawn one on the other; each is 7:1 or better (WCAG 2.2, 1.4.6). */
export const PAIRS: readonly (readonly [keyof Tokens, keyof Tokens])[] = [
  ['ink', 'paper'], ['ink', 'card'], ['ink', 'pressed'],
  ['pencil', 'paper'], ['pencil', 'card'], ['pencil', 'pressed'],
  ['now', 'paper'], ['now', 'card'], ['now', 'pressed'], ['onNow', 'now'],
  ['onDue', 'due'], ['onDue', 'dueStripe'],
];

/** Contrast ratio of two `#rrggbb` colours, 1 … 21. WCAG 2.2, definitions of contrast ratio and relative luminance. */
export function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

function luminance(colour: string): number {
  const channel = (at: number): number => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}
