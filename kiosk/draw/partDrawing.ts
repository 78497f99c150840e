import { LitElement, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { EDGE_MARK, FACE_MARK } from '../look/marks.ts';
import { drawBreak, drawDimension, drawingStyles } from './dimension.ts';
import { layPart } from './partLayout.ts';
import type { Box, PartLayout, PartShape } from './partLayout.ts';

/**
 * A part as a workshop drawing: seen on its reference face, and from its end. The face mark and the edge mark stand where the maker
 * has pencilled them; everything is measured from them. One size may be picked out; then the others go without figures.
 */
@customElement('part-drawing')
export class PartDrawing extends LitElement {
  static override styles = [look, drawingStyles];

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
      ${drawOutline(layout)}${layout.dimensions.map((each) => drawDimension(each, this))}${drawMarks(layout)}</svg>`;
  }
}

function drawOutline({ front, end, broken, tenons, glueLines }: PartLayout): SVGTemplateResult {
  const body = tenons.length === 2 ? between(front, tenons) : front;
  return svg`
    ${tenons.map((tenon) => svg`<rect class="outline tenon" x=${tenon.x} y=${tenon.y} width=${tenon.width} height=${tenon.height}></rect>`)}
    <rect class="outline" x=${body.x} y=${body.y} width=${body.width} height=${body.height}></rect>
    <rect class="outline" x=${end.x} y=${end.y} width=${end.width} height=${end.height}></rect>
    ${glueLines.map((line) => svg`<line class="glue" x1=${line.x1} y1=${line.y1} x2=${line.x2} y2=${line.y2}></line>`)}
    ${broken ? drawBreak(front, front.x + front.width / 2, 'upright') : nothing}`;
}

function between(front: Box, tenons: readonly Box[]): Box {
  const long = tenons[0]?.width ?? 0;
  return { ...front, x: front.x + long, width: front.width - 2 * long };
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
