import type { Blank, SawSettings } from '../board.ts';

/** One way of laying a blank, or blanks that stay together, on a board: an outline, and how the blanks lie in it. */
export interface Shape {
  /** Index of the blank in the problem. */
  readonly blank: number;
  readonly length: number;
  readonly width: number;
  /** Blanks in it, side by side across the board, or end to end along it. */
  readonly beside: number;
  readonly inLine: number;
  /** And one behind the other, resawn from the thickness of the board. */
  readonly deep: number;
  readonly mayHideDefect: boolean;
}

/** What is needed of each blank, in whole outlines: four legs of three layers need four of their shape. */
export function shapesOf(blanks: readonly Blank[], saw: SawSettings): Shape[] {
  return blanks.flatMap((blank, index) => {
    const shape = (beside: number, inLine: number): Shape => ({
      blank: index, beside, inLine, deep: blank.deep ?? 1, mayHideDefect: blank.mayHideDefect,
      length: inLine * blank.length + (inLine - 1) * saw.kerf,
      width: beside * blank.width + (beside - 1) * saw.kerf,
    });
    const outlines = blank.together / (blank.deep ?? 1);
    const ways = Array.from({ length: outlines }, (_, at) => at + 1).filter((beside) => outlines % beside === 0);
    return ways.map((beside) => shape(beside, outlines / beside));
  });
}

/** Most lengths of sections that are tried: those of one shape, then of two in line. */
const MOST_SECTIONS = 40;

/** How long a section may be that is crosscut from a board before it is ripped: one shape, or two in line where strips are cut again. */
export function sectionLengths(shapes: readonly Shape[], saw: SawSettings, longest: number): number[] {
  const single = [...new Set(shapes.map(({ length }) => length))].filter((length) => length <= longest).sort((a, b) => b - a);
  const double = saw.cutAgain ? single.flatMap((a, at) => single.slice(at).map((b) => a + b + saw.kerf)).filter((length) => length <= longest) : [];
  return [...new Set([...single, ...double.sort((a, b) => b - a)])].slice(0, Math.max(MOST_SECTIONS, single.length)).sort((a, b) => a - b);
}
