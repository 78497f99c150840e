import type { Length } from '../length/length.ts';

/** A sentence with lengths in it, which are put into words only where the rounding that the maker chose is known. */
export type Telling = string | readonly (string | { readonly length: Length })[];

export function renderTelling(telling: Telling, put: (length: Length) => string): string {
  return typeof telling === 'string' ? telling : telling.map((item) => (typeof item === 'string' ? item : put(item.length))).join('');
}

/** For the template ``telling`A mortise ${width} wide` ``: text stays text, numbers are written, lengths stay lengths. */
export function telling(texts: TemplateStringsArray, ...values: readonly (Length | string | { readonly count: number })[]): Telling {
  return texts.flatMap((text, index) => {
    const value = values[index];
    if (value === undefined) return [text];
    return typeof value === 'string' ? [text, value] : typeof value === 'number' ? [text, { length: value }] : [text, String(value.count)];
  });
}
