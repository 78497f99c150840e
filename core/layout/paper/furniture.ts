import { nanometres, NANOMETRES_PER_INCH, type Length } from '../../length/length.ts';
import { EDGES, type PageForm } from './paperSize.ts';
import { line, mm, spot, words, type Item, type Spot } from './sheet.ts';

/** The two bars that stand on every sheet, across and upright. */
export const BARS = { millimetres: mm(100), inches: nanometres(4 * NANOMETRES_PER_INCH) } as const;

const TICK = mm(3);
const SMALL = mm(2.6);
const TITLE = mm(4);

export interface Heading {
  /** What it is, of what: 'Baker's work table · layout of the leg'. */
  readonly title: string;
  /** 'sheet 3 of 8 · row 1, column 3' */
  readonly sheet: string;
  /** When it was drawn, and how its sizes are rounded. */
  readonly drawn: string;
}

/** What every sheet has besides its drawing: its heading, the bars, and what to do with them. */
export function furniture(form: PageForm, { title, sheet, drawn }: Heading): readonly Item[] {
  const { window } = form;
  const right = window.x + window.width + EDGES.bars;
  const foot = window.y + window.height;
  const base = EDGES.top + mm(4.5);
  return [
    words(title, spot(window.x, base), TITLE, { bold: true }),
    words(sheet, spot(right, base), mm(3.2), { anchor: 'end' }),
    ...barAcross(spot(window.x, foot + mm(7)), BARS.millimetres, 10, '100 mm', 'bar across, millimetres'),
    ...barAcross(spot(window.x, foot + mm(17)), BARS.inches, 4, '4 in', 'bar across, inches'),
    ...barUpright(spot(right - mm(5.5), foot), BARS.millimetres, 10, '100 mm', 'bar upright, millimetres'),
    ...barUpright(spot(right, foot), BARS.inches, 4, '4 in', 'bar upright, inches'),
    ...advice(drawn).map((text, index) => words(text, spot(window.x + mm(116), foot + mm(5 + index * 4)), mm(2.9))),
  ];
}

function advice(drawn: string): readonly string[] {
  return [drawn, 'Print at 100 %, not fitted to the page.', 'Measure a bar across and one upright,', 'and tell the bench what they measure.'];
}

function barAcross(start: Spot, length: Length, parts: number, say: string, of: string): readonly Item[] {
  const ticks = Array.from({ length: parts + 1 }, (_, index) => start.x + (length * index) / parts);
  return [
    line('bar', start, spot(start.x + length, start.y), of),
    ...ticks.map((x, index) => line('bar', spot(Math.round(x), start.y), spot(Math.round(x), start.y - (index % parts === 0 ? TICK : TICK / 2)), `${of}, tick`)),
    words(say, spot(start.x + length + mm(2), start.y), SMALL),
  ];
}

/** From its foot upwards. */
function barUpright(foot: Spot, length: Length, parts: number, say: string, of: string): readonly Item[] {
  const ticks = Array.from({ length: parts + 1 }, (_, index) => foot.y - (length * index) / parts);
  return [
    line('bar', foot, spot(foot.x, foot.y - length), of),
    ...ticks.map((y, index) => line('bar', spot(foot.x, Math.round(y)), spot(foot.x - (index % parts === 0 ? TICK : TICK / 2), Math.round(y)), `${of}, tick`)),
    words(say, spot(foot.x - mm(1), foot.y - length - mm(2)), SMALL, { turned: true }),
  ];
}
