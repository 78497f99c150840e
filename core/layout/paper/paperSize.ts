import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../length/length.ts';
import { mm, type Box } from './sheet.ts';

/** A4: ISO 216 (2007). Letter: ANSI/ASME Y14.1 (2012), size A. */
export const PAPERS = {
  a4: { say: 'A4', short: mm(210), long: mm(297) },
  letter: { say: 'letter', short: nanometres(8.5 * NANOMETRES_PER_INCH), long: nanometres(11 * NANOMETRES_PER_INCH) },
} as const;
export type PaperName = keyof typeof PAPERS;

/** How far neighbouring sheets show the same. */
export const OVERLAP = mm(15);

export type Way = 'upright' | 'lying';

/** Where printers leave off, and the room for the titles above and the bars below and at the right. Common practice, no source. */
export const EDGES = { side: mm(10), top: mm(10), bottom: mm(14), head: mm(8), foot: mm(22), bars: mm(10) } as const;

export interface PageForm {
  readonly width: Length;
  readonly height: Length;
  /** What is left for the drawing. */
  readonly window: Box;
}

export function pageForm(paper: PaperName, way: Way): PageForm {
  const { short, long } = PAPERS[paper];
  const [width, height] = way === 'upright' ? [short, long] : [long, short];
  const { side, top, bottom, head, foot, bars } = EDGES;
  return {
    width, height,
    window: { x: side, y: nanometres(top + head), width: nanometres(width - 2 * side - bars), height: nanometres(height - top - head - foot - bottom) },
  };
}
