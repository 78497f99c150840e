import { LitElement, css, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { NANOMETRES_PER_MILLIMETRE, type Length } from '../../core/length/length.ts';
import { roundLength } from '../../core/length/round.ts';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { drawingStyles } from './dimension.ts';
import { layPlaning } from './planingLayout.ts';
import type { PlaningDrawing } from './planingLayout.ts';
import { drawFigure } from './figure.ts';

/** More figures than that along the foot would run into each other. */
const MOST_FIGURES = 3;

/** One side of a board with what is to be planed off: contours where one stage ends, hatched where the first one is, and shavings in figures. */
@customElement('planing-drawing')
export class PlaningDrawingElement extends LitElement {
  static override styles = [look, drawingStyles, css`
    .contour { fill: none; stroke: var(--now); stroke-width: 2.4; stroke-linecap: round; }
    .high { fill: url(#planed); stroke: none; }
    .ruled { stroke: var(--now); stroke-width: 1.4; fill: none; }
    .count { font-family: var(--figures); fill: var(--ink); text-anchor: middle; paint-order: stroke; stroke: var(--card); stroke-width: 9; stroke-linejoin: round; }
    .count.highest { font-weight: 700; fill: var(--now); }
  `];

  @property({ attribute: false }) face: PlaningDrawing | null = null;
  @property({ attribute: false }) rounding: Rounding = { unit: 'inch', denominator: 32 };
  /** What is drawn, for those who cannot see it. */
  @property() name = '';
  @property({ attribute: false }) units: readonly [number, number] = [456, 250];

  override render(): TemplateResult | typeof nothing {
    if (this.face === null) return nothing;
    const [width, height] = this.units;
    const { board, bands, counts, stations, letter } = layPlaning(this.face, width, height);
    const step = Math.max(1, Math.ceil((stations.length - 1) / (MOST_FIGURES - 1)));
    const shown = stations.filter((_, index) => index % step === 0);
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${`Drawing of ${this.name}`} preserveAspectRatio="xMidYMid meet">
      <defs><pattern id="planed" width="9" height="9" patternUnits="userSpaceOnUse"><path class="ruled" d="M-1 10 L10 -1"></path></pattern></defs>
      <rect class="outline" x=${board.x} y=${board.y} width=${board.width} height=${board.height}></rect>
      ${bands.map(({ area, contour }, index) => svg`${index === 0 && bands.length > 1 ? svg`<path class="high" d=${area}></path>` : nothing}<path class="contour" d=${contour}></path>`)}
      ${counts.map(({ x, y, count, highest }) => svg`<text class=${highest ? 'count highest' : 'count'} x=${x} y=${y + letter * 0.36} font-size=${letter}>${count}</text>`)}
      ${shown.map(({ at, x }) => svg`<g class="dimension"><path d="M${x} ${board.y + board.height} v7"></path>${this.#figure(at, Math.min(Math.max(x, FIGURE_ROOM), width - FIGURE_ROOM), height - 14)}</g>`)}</svg>`;
  }

  /** Places along the board are said to the nearest sixteenth or millimetre. */
  #figure(at: Length, x: number, y: number): SVGTemplateResult {
    if (this.rounding.unit === 'inch') return drawFigure(roundLength(at, SIXTEENTHS).rounded, SIXTEENTHS, x, y, 19);
    return svg`<text x=${x} y=${y + 7} font-size="19" text-anchor="middle">${Math.round(at / NANOMETRES_PER_MILLIMETRE)} mm</text>`;
  }
}

/** Half of what a figure along the foot takes. */
const FIGURE_ROOM = 36;
const SIXTEENTHS: Rounding = { unit: 'inch', denominator: 16 };

declare global {
  interface HTMLElementTagNameMap { 'planing-drawing': PlaningDrawingElement }
}
