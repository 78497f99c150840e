import type { PadSymbol } from './keySpec.ts';

/** Presses the key under that root that bears this number-pad symbol; a pad for sizes or counts that lies open there takes all of them. False when there is none. */
export function pressWithin(root: ParentNode, symbol: PadSymbol, atMs: number): boolean {
  const pad = root.querySelector('fraction-pad') ?? root.querySelector('count-pad');
  if (pad !== null) return pad.pressSymbol(symbol, atMs);
  const key = [...root.querySelectorAll('bench-key')].find(({ spec }) => spec?.pad === symbol);
  key?.press(atMs);
  return key !== undefined;
}
