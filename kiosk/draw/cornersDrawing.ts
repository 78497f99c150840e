import { LitElement, css, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { look } from '../look/look.ts';
import { EDGE_MARK, FACE_MARK } from '../look/marks.ts';
import { layCorners } from './cornersLayout.ts';
import type { LaidCopy, LaidFace, StandingCopy } from './cornersLayout.ts';
import { drawWaste, drawingStyles } from './dimension.ts';

const MARK_BOX = 24;

/**
 * The piece from above, the front below: the section of each copy in its place, its lettered faces, which show and which take mortises. A face to be shown is
 * ringed, the best one filled, one to be hidden crossed out; the trade's marks stand at face side and face edge.
 */
@customElement('corners-drawing')
export class CornersDrawing extends LitElement {
  static override styles = [look, drawingStyles, css`
    .outer { stroke: var(--ink); stroke-width: 6; stroke-linecap: square; }
    .rail { stroke: var(--pencil); stroke-width: 1.2; stroke-dasharray: 6 5; fill: none; }
    .letter { font-family: var(--figures); fill: var(--ink); text-anchor: middle; }
    .ring { fill: none; stroke: var(--ink); stroke-width: 2.4; }
    .ring.best { fill: var(--ink); }
    .letter.best { fill: var(--paper); }
    .cross { stroke: var(--ink); stroke-width: 2.6; }
    .number { font-family: var(--figures); fill: var(--now); text-anchor: middle; }
    .place { fill: var(--ink); font-family: var(--words); }
    .wrong { stroke: var(--now); stroke-width: 3; fill: none; }
  `];

  @property({ attribute: false }) copies: readonly StandingCopy[] = [];
  @property() name = '';
  @property({ attribute: false }) units: readonly [number, number] = [470, 296];

  override render(): TemplateResult | typeof nothing {
    if (this.copies.length === 0) return nothing;
    const [width, height] = this.units;
    const laid = layCorners(this.copies, width, height);
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${`${this.name} from above: ${this.copies.map(describe).join('; ')}`} preserveAspectRatio="xMidYMid meet">
      ${drawFrame(laid)}${laid.map(drawCopy)}<text class="place" x=${width / 2} y=${height - 8} text-anchor="middle" font-size="20">front</text></svg>`;
  }
}

function describe({ copy, place, towards }: StandingCopy): string {
  return `${copy} ${place}${towards?.front === undefined ? '' : `, face ${towards.front} to the front`}`;
}

/** What joins them, thin: through the middles of the corners. */
function drawFrame(laid: readonly LaidCopy[]): SVGTemplateResult | typeof nothing {
  const xs = laid.map(({ middle }) => middle.x);
  const ys = laid.map(({ middle }) => middle.y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return svg`<rect class="rail" x=${left} y=${top} width=${Math.max(...xs) - left} height=${Math.max(...ys) - top}></rect>`;
}

function drawCopy({ copy, box, middle, name, faces, outer, mortises }: LaidCopy): SVGTemplateResult {
  const size = box.width;
  return svg`<g data-copy=${copy.copy}><rect class="outline" x=${box.x} y=${box.y} width=${box.width} height=${box.height}></rect>
    ${mortises.map(drawWaste)}${outer.map(({ from, to }) => svg`<line class="outer" x1=${from.x} y1=${from.y} x2=${to.x} y2=${to.y}></line>`)}
    <text class="number" x=${middle.x} y=${middle.y + size * 0.11} font-size=${size * 0.3}>${copy.copy}</text>
    ${copy.numberedEndDown ? svg`<path class="wrong" data-end="down" d="M${middle.x - 9} ${middle.y + size * 0.17} h18 M${middle.x} ${middle.y + size * 0.17} l-6 -6 M${middle.x} ${middle.y + size * 0.17} l6 -6"></path>` : nothing}
    ${faces.map((face) => drawFace(face, copy, size))}
    <text class="place" x=${name.x} y=${name.y} text-anchor=${name.anchor} font-size=${name.anchor === 'middle' ? 17 : 20}>${copy.place}${copy.remark === undefined ? '' : ` · ${copy.remark}`}</text></g>`;
}

function drawFace({ face, side, letter, mark, shows }: LaidFace, { told }: StandingCopy, size: number): SVGTemplateResult {
  const { wish, mark: marked, glueLines } = told[face] ?? {};
  const radius = size * 0.14;
  const best = wish === 'best';
  return svg`<g data-face=${face} data-side=${side} data-shows=${String(shows)} data-wish=${wish ?? ''}>
    ${wish === 'show' || best ? svg`<circle class="ring ${best ? 'best' : ''}" cx=${letter.x} cy=${letter.y} r=${radius}></circle>` : nothing}
    <text class="letter ${best ? 'best' : ''}" x=${letter.x} y=${letter.y + size * 0.08} font-size=${size * 0.22}>${face}</text>
    ${wish === 'hide' ? svg`<path class="cross" d="M${letter.x - radius} ${letter.y + radius} L${letter.x + radius} ${letter.y - radius}"></path>` : nothing}
    ${glueLines ? svg`<path class="glue" d="M${letter.x - radius} ${letter.y + radius * 1.1} h${radius * 2}"></path>` : nothing}
    ${marked === undefined ? nothing : svg`<path class="mark" data-mark=${marked === 'face side' ? 'face' : 'edge'} transform="translate(${mark.x - MARK_BOX / 2} ${mark.y - MARK_BOX / 2})" d=${marked === 'face side' ? FACE_MARK : EDGE_MARK}></path>`}</g>`;
}

declare global {
  interface HTMLElementTagNameMap { 'corners-drawing': CornersDrawing }
}
