import type { Look } from '../../core/layout/paper/sheet.ts';

/** How each kind of line is printed: width and dashes in millimetres, all in black. */
export const PAPER_LOOKS: Readonly<Record<Look, { readonly widthMm: number; readonly dashesMm?: readonly [number, number] }>> = {
  outline: { widthMm: 0.35 },
  mark: { widthMm: 0.25 },
  gauge: { widthMm: 0.2 },
  thin: { widthMm: 0.12 },
  hatch: { widthMm: 0.12 },
  trim: { widthMm: 0.15, dashesMm: [2, 1.5] },
  bar: { widthMm: 0.2 },
};
