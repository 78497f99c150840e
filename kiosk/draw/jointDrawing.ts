import { LitElement, css, html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { drawBreak, drawDimension, drawWaste, drawingStyles } from './dimension.ts';
import { layJoint } from './jointLayout.ts';
import type { JointShape } from './jointLayout.ts';

/** One half of a mortise and tenon with one size picked out: what is cut away is hatched. */
@customElement('joint-drawing')
export class JointDrawing extends LitElement {
  static override styles = [look, drawingStyles, css`.open { stroke: var(--paper); stroke-width: 3.2; }`];

  @property({ attribute: false }) shape: JointShape | null = null;
  @property({ attribute: false }) rounding: Rounding = { unit: 'inch', denominator: 32 };
  @property() picked = '';
  @property() name = '';
  @property({ attribute: false }) units: readonly [number, number] = [420, 260];
  @property({ attribute: false }) letter = 20;

  override render(): TemplateResult | typeof nothing {
    if (this.shape === null) return nothing;
    const [width, height] = this.units;
    const { outlines, waste, openings, shadow, slopes, breaks, dimensions } = layJoint(this.shape, this.picked, width, height, this.letter);
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${`Drawing of ${this.name}`} preserveAspectRatio="xMidYMid meet">
      ${outlines.map((box) => svg`<rect class="outline" x=${box.x} y=${box.y} width=${box.width} height=${box.height}></rect>`)}
      ${shadow === null ? nothing : svg`<rect class="glue" fill="none" x=${shadow.x} y=${shadow.y} width=${shadow.width} height=${shadow.height}></rect>`}
      ${slopes.map(({ from, to }) => svg`<line class="outline" x1=${from.x} y1=${from.y} x2=${to.x} y2=${to.y}></line>`)}
      ${waste.map(drawWaste)}${openings.map(({ from, to }) => svg`<line class="open" x1=${from.x} y1=${from.y} x2=${to.x} y2=${to.y}></line>`)}${breaks.map(({ box, at, lies }) => drawBreak(box, at, lies))}
      ${dimensions.filter(({ key }) => key === this.picked).map((each) => drawDimension(each, this))}</svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap { 'joint-drawing': JointDrawing }
}
