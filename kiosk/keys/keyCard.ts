import { EVERYWHERE, KEY_TABLE } from './keyTable.ts';
import { padLabel } from './keySpec.ts';
import type { PadSymbol } from './keySpec.ts';

export interface CardRow {
  /** The screen; 'everywhere' for keys that do the same on every screen without a key of its own for them. */
  readonly where: string;
  /** What is printed on the number pad's key. */
  readonly pad: string;
  readonly does: string;
}

/** Typing a size: the pad's own meaning of the keys, on every screen where a size is typed. */
const TYPING: readonly (readonly [PadSymbol | 'digits', string])[] = [
  ['digits', 'whole inches, then the top of the fraction'], ['+', 'and, between inches and fraction; the point of millimetres'], ['.', 'the same as +'],
  ['/', 'over: then 2, 4, 8, 16, 32 or 64'], ['-', 'take back one press; leave when there is none'], ['*', 'inches or millimetres'], ['enter', 'OK'],
];

/** Every key of the number pad and what it does, from the one table that the screens are drawn from. */
export const CARD: readonly CardRow[] = [
  ...EVERYWHERE.map(({ pad, label }) => ({ where: 'everywhere', pad: padLabel(pad), does: label })),
  { where: 'large keys on the sheet', pad: '1 – 9', does: 'press the key with that figure' },
  ...TYPING.map(([pad, does]) => ({ where: 'typing a size', pad: pad === 'digits' ? '0 – 9' : padLabel(pad), does })),
  ...Object.entries(KEY_TABLE).flatMap(([where, keys]) => Object.entries<PadSymbol>(keys).filter(([label, pad]) => !isEverywhere(label, pad)).map(([label, pad]) => ({ where, pad: padLabel(pad), does: label }))),
];

function isEverywhere(label: string, pad: PadSymbol): boolean {
  return EVERYWHERE.some((each) => each.pad === pad && each.label === label);
}
