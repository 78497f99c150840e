import { css, nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import type { Rounding } from '../../core/length/rounding.ts';
import { drawFigure } from './figure.ts';
import type { Box, Dimension, Point } from './partLayout.ts';

/** Lines and letters of every drawing. */
export const drawingStyles = css`
  :host { display: block; width: 100%; height: 100%; }
  svg { width: 100%; height: 100%; display: block; overflow: visible; }
  .outline { fill: var(--card); stroke: var(--ink); stroke-width: 2; }
  .cut { fill: var(--paper); stroke: none; }
  .glue { stroke: var(--ink); stroke-width: 1.2; stroke-dasharray: 10 4 2 4; }
  .hatch { fill: none; stroke: var(--ink); stroke-width: 1.2; }
  .waste { stroke: var(--ink); stroke-width: 2; }
  .dimension { stroke: var(--pencil); stroke-width: 1.2; fill: none; }
  .dimension text { stroke: none; fill: var(--ink); font-family: var(--figures); }
  .dimension .figure path { stroke: var(--ink); }
  .tick { stroke-width: 2.4; }
  .picked { stroke: var(--now); stroke-width: 3; }
  .picked text { fill: var(--now); }
  .picked .figure path { stroke: var(--now); }
  .mark { stroke: var(--ink); stroke-width: 2.2; fill: none; stroke-linecap: round; }
`;

export interface DimensionLook {
  readonly rounding: Rounding;
  readonly letter: number;
  /** The key of the size that is picked out; then the others go without figures. */
  readonly picked: string;
}

/** Extension lines, dimension line, ticks, and the figure. */
export function drawDimension({ key, length, from, to, foot, figure }: Dimension, { rounding, letter, picked }: DimensionLook): SVGTemplateResult {
  const quiet = picked !== '' && picked !== key;
  const line = (a: Point, b: Point): string => `M${a.x} ${a.y} L${b.x} ${b.y}`;
  const tick = (at: Point): string => `M${at.x - 6} ${at.y + 6} L${at.x + 6} ${at.y - 6}`;
  return svg`<g class="dimension ${picked === key ? 'picked' : ''}" data-key=${key}>
    <path d="${line(foot.from, from)} ${line(foot.to, to)} ${line(from, to)}"></path><path class="tick" d="${tick(from)} ${tick(to)}"></path>
    ${quiet ? nothing : drawFigure(length, rounding, figure.x, figure.y, letter)}</g>`;
}

/** A zigzag across what is drawn shorter than it is: upright through `box`, or lying across it. */
export function drawBreak(box: Box, at: number, lies: 'upright' | 'across'): SVGTemplateResult {
  const zigzag = (along: number): string => {
    const [start, end] = lies === 'upright' ? [box.y - 6, box.y + box.height + 6] : [box.x - 6, box.x + box.width + 6];
    const [a, b] = [start + (end - start) * 0.4, start + (end - start) * 0.6];
    const points: [number, number][] = [[along, start], [along, a], [along + 8, a + 4], [along - 8, b - 4], [along, b], [along, end]];
    return `M${points.map(([across, down]) => (lies === 'upright' ? `${across} ${down}` : `${down} ${across}`)).join(' L')}`;
  };
  const cut = lies === 'upright' ? { x: at - 8, y: box.y - 6, width: 16, height: box.height + 12 } : { x: box.x - 6, y: at - 8, width: box.width + 12, height: 16 };
  return svg`<rect class="cut" x=${cut.x} y=${cut.y} width=${cut.width} height=${cut.height}></rect><path class="mark" d="${zigzag(at - 8)} ${zigzag(at + 8)}"></path>`;
}

const HATCH = 9;

/** Waste: the box outlined and hatched from lower left to upper right. */
export function drawWaste({ x, y, width, height }: Box): SVGTemplateResult {
  const lines: string[] = [];
  for (let offset = HATCH; offset < width + height; offset += HATCH) {
    const [x1, y1] = offset < height ? [x, y + offset] : [x + offset - height, y + height];
    const [x2, y2] = offset < width ? [x + offset, y] : [x + width, y + offset - width];
    lines.push(`M${x1} ${y1} L${x2} ${y2}`);
  }
  return svg`<rect class="waste" fill="none" x=${x} y=${y} width=${width} height=${height}></rect><path class="hatch" d=${lines.join(' ')}></path>`;
}
