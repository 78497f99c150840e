import { LitElement, css, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { EDGE_MARK, FACE_MARK } from '../look/marks.ts';
import { drawBreak, drawDimension, drawingStyles } from './dimension.ts';
import { layPart } from './partLayout.ts';
import type { Box, PartFaces, PartLayout, PartShape } from './partLayout.ts';

/**
 * A part as a workshop drawing: seen on its reference face, and from its end. The face mark and the edge mark stand where the maker
 * has pencilled them; everything is measured from them. One size may be picked out; then the others go without figures.
 */
@customElement('part-drawing')
export class PartDrawing extends LitElement {
  static override styles = [look, drawingStyles, css`
    .letter { font-family: var(--figures); fill: var(--now); text-anchor: middle; }
    .outer { stroke: var(--ink); stroke-width: 5; stroke-linecap: square; }
    .takes { fill: none; stroke: var(--now); stroke-width: 1.6; }
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
      ${drawOutline(layout)}${layout.dimensions.map((each) => drawDimension(each, this))}${this.shape.faces === undefined ? nothing : drawLetters(layout, this.shape.faces)}${drawMarks(layout, this.shape.faces)}</svg>`;
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
function drawMarks({ front, end }: PartLayout, faces: PartFaces | undefined): SVGTemplateResult {
  const below = faces?.edge === 'lower';
  const size = Math.min(30, front.height * 0.7);
  const scale = size / 24;
  const x = front.x + front.width * 0.5 - Math.min(front.width * 0.23, 120);
  return svg`<g class="marks"><path class="mark" data-mark="face" transform="translate(${x - size / 2} ${front.y + Math.min(front.height - size * 1.05, front.height * 0.55 - size / 2 + 6)}) scale(${scale})" d=${FACE_MARK}></path>
    ${edgeMark(x - size * 0.1, front, scale * 0.6, below)}${faces === undefined ? edgeMark(end.x + end.width / 2 - scale * 8.4, end, scale * 0.7, false) : nothing}</g>`;
}

/** Its point on the edge, above or below. */
function edgeMark(x: number, { y, height }: Box, scale: number, below: boolean): SVGTemplateResult {
  return svg`<path class="mark" data-mark="edge" transform="translate(${x} ${below ? y + height : y}) scale(${scale} ${below ? -scale : scale})" d=${EDGE_MARK}></path>`;
}

/** The letter of the face towards the eye, and in the end view that of each face at its side: the drawn one on the left. A face that shows is drawn heavy, one that takes mortises has its letter boxed. */
function drawLetters({ front, end }: PartLayout, { drawn, upper, lower, behind, outer, mortised }: PartFaces): SVGTemplateResult {
  const [left, top, right, foot] = [end.x, end.y, end.x + end.width, end.y + end.height];
  const [middle, level] = [(left + right) / 2, (top + foot) / 2];
  const sides = [
    { face: drawn, line: [left, top, left, foot], at: [left + 11, level] }, { face: upper, line: [left, top, right, top], at: [middle, top + 13] },
    { face: behind, line: [right, top, right, foot], at: [right - 11, level] }, { face: lower, line: [left, foot, right, foot], at: [middle, foot - 11] },
  ] as const;
  return svg`${sides.filter(({ face }) => outer.includes(face)).map(({ line: [x1, y1, x2, y2] }) => svg`<line class="outer" x1=${x1} y1=${y1} x2=${x2} y2=${y2}></line>`)}
    ${sides.map(({ face, at: [x, y] }) => svg`${mortised.includes(face) ? svg`<rect class="takes" data-face=${face} x=${x - 9} y=${y - 10} width="18" height="20"></rect>` : nothing}<text class="letter" x=${x} y=${y + 6} font-size="17">${face}</text>`)}
    <text class="letter" x=${front.x + 22} y=${front.y + front.height / 2 + 10} font-size="28">${drawn}</text>`;
}

declare global {
  interface HTMLElementTagNameMap { 'part-drawing': PartDrawing }
}
