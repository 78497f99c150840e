import { LitElement, css, nothing, svg, html } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { EDGE_MARK, FACE_MARK } from '../look/marks.ts';
import { drawFigure } from './figure.ts';
import { layPart } from './partLayout.ts';
import type { Box, Dimension, PartLayout, PartShape } from './partLayout.ts';

/**
 * A part as a workshop drawing: seen on its reference face, and from its end. The face mark and the edge mark stand where the maker
 * has pencilled them; everything is measured from them. One size may be picked out; then the others go without figures.
 */
@customElement('part-drawing')
export class PartDrawing extends LitElement {
  static override styles = [look, css`
    :host { display: block; width: 100%; height: 100%; }
    svg { width: 100%; height: 100%; display: block; overflow: visible; }
    .outline { fill: var(--card); stroke: var(--ink); stroke-width: 2; }
    .tenon { fill: none; stroke: var(--ink); stroke-width: 2; }
    .cut { fill: var(--paper); stroke: none; }
    .glue { stroke: var(--ink); stroke-width: 1.2; stroke-dasharray: 10 4 2 4; }
    .dimension { stroke: var(--pencil); stroke-width: 1.2; fill: none; }
    .dimension text { stroke: none; fill: var(--ink); font-family: var(--figures); }
    .dimension .figure path { stroke: var(--ink); }
    .tick { stroke-width: 2.4; }
    .picked { stroke: var(--now); stroke-width: 3; }
    .picked text { fill: var(--now); }
    .picked .figure path { stroke: var(--now); }
    .mark { stroke: var(--ink); stroke-width: 2.2; fill: none; stroke-linecap: round; }
  `];

  @property({ attribute: false }) shape: PartShape | null = null;
  @property({ attribute: false }) rounding: Rounding = { unit: 'inch', denominator: 32 };
  /** Key of the size that is picked out, if any. */
  @property() picked = '';
  /** What is drawn, for those who cannot see it. */
  @property() name = '';
  /** The drawing's own units, in pixels of the 800 × 480 screen. */
  @property({ attribute: false }) units: readonly [number, number] = [780, 206];
  @property({ attribute: false }) letter = 26;

  override render(): TemplateResult | typeof nothing {
    if (this.shape === null) return nothing;
    const [width, height] = this.units;
    const layout = layPart(this.shape, width, height, this.letter, this.picked);
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${`Drawing of ${this.name}`} preserveAspectRatio="xMidYMid meet">
      ${drawOutline(layout)}${layout.dimensions.map((each) => this.#dimension(each))}${drawMarks(layout)}</svg>`;
  }

  #dimension(dimension: Dimension): SVGTemplateResult {
    const { from, to, foot, figure } = dimension;
    const quiet = this.picked !== '' && this.picked !== dimension.key;
    const line = (a: { x: number; y: number }, b: { x: number; y: number }): string => `M${a.x} ${a.y} L${b.x} ${b.y}`;
    const tick = (at: { x: number; y: number }): string => `M${at.x - 6} ${at.y + 6} L${at.x + 6} ${at.y - 6}`;
    return svg`<g class="dimension ${this.picked === dimension.key ? 'picked' : ''}" data-key=${dimension.key}>
      <path d="${line(foot.from, from)} ${line(foot.to, to)} ${line(from, to)}"></path>
      <path class="tick" d="${tick(from)} ${tick(to)}"></path>
      ${quiet ? nothing : drawFigure(dimension.length, this.rounding, figure.x, figure.y, this.letter)}</g>`;
  }
}

function drawOutline({ front, end, broken, tenons, glueLines }: PartLayout): SVGTemplateResult {
  const body = tenons.length === 2 ? between(front, tenons) : front;
  return svg`
    ${tenons.map((tenon) => svg`<rect class="outline tenon" x=${tenon.x} y=${tenon.y} width=${tenon.width} height=${tenon.height}></rect>`)}
    <rect class="outline" x=${body.x} y=${body.y} width=${body.width} height=${body.height}></rect>
    <rect class="outline" x=${end.x} y=${end.y} width=${end.width} height=${end.height}></rect>
    ${glueLines.map((line) => svg`<line class="glue" x1=${line.x1} y1=${line.y1} x2=${line.x2} y2=${line.y2}></line>`)}
    ${broken ? drawBreak(front) : nothing}`;
}

function between(front: Box, tenons: readonly Box[]): Box {
  const long = tenons[0]?.width ?? 0;
  return { ...front, x: front.x + long, width: front.width - 2 * long };
}

/** The zigzag of a part drawn shorter than it is. */
function drawBreak(front: Box): SVGTemplateResult {
  const middle = front.x + front.width / 2;
  const [top, bottom] = [front.y - 6, front.y + front.height + 6];
  const zigzag = (x: number): string => {
    const [a, b] = [top + (bottom - top) * 0.4, top + (bottom - top) * 0.6];
    return `M${x} ${top} L${x} ${a} L${x + 8} ${a + 4} L${x - 8} ${b - 4} L${x} ${b} L${x} ${bottom}`;
  };
  return svg`<rect class="cut" x=${middle - 8} y=${top} width="16" height=${bottom - top}></rect>
    <path class="mark" d="${zigzag(middle - 8)} ${zigzag(middle + 8)}"></path>`;
}

/** The face mark on the face, its tail running to the reference edge, where the edge mark stands. */
function drawMarks({ front, end }: PartLayout): SVGTemplateResult {
  const size = Math.min(30, front.height * 0.7);
  const scale = size / 24;
  const x = front.x + front.width * 0.5 - Math.min(front.width * 0.23, 120);
  return svg`<g class="marks"><path class="mark" data-mark="face" transform="translate(${x - size / 2} ${front.y + Math.min(front.height - size * 1.05, front.height * 0.55 - size / 2 + 6)}) scale(${scale})" d=${FACE_MARK}></path>
    <path class="mark" data-mark="edge" transform="translate(${x - size * 0.1} ${front.y}) scale(${scale * 0.6})" d=${EDGE_MARK}></path>
    <path class="mark" data-mark="edge" transform="translate(${end.x + end.width / 2 - scale * 8.4} ${end.y}) scale(${scale * 0.7})" d=${EDGE_MARK}></path></g>`;
}

declare global {
  interface HTMLElementTagNameMap { 'part-drawing': PartDrawing }
}
