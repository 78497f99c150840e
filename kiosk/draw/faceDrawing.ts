import { LitElement, css, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FaceView } from '../../core/layout/paper/faceView.ts';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { EDGE_MARK } from '../look/marks.ts';
import { drawBreak, drawWaste, drawingStyles } from './dimension.ts';
import { captionOf, layFace } from './faceLayout.ts';
import type { FaceLayout, Figure } from './faceLayout.ts';
import { drawFigure, setFigure } from './figure.ts';

const SMALL = 17;

/** One face of a part with its marks: knife lines from the end, gauge lines from the edge that bears the mark, the waste hatched. */
@customElement('face-drawing')
export class FaceDrawing extends LitElement {
  static override styles = [look, drawingStyles, css`
    .knife { stroke: var(--ink); stroke-width: 2.4; }
    .gauged { stroke: var(--ink); stroke-width: 1.4; }
    .leader { fill: none; stroke: var(--pencil); stroke-width: 1.2; }
    .named { font-family: var(--words); font-size: ${SMALL}px; fill: var(--ink); }
    .reference { stroke: var(--now); stroke-width: 5; }
    .reference-name { fill: var(--now); font-weight: 700; }
    .open { stroke: var(--paper); stroke-width: 3.2; }
    .edge { fill: none; stroke: var(--now); stroke-width: 2.4; }
  `];

  @property({ attribute: false }) view: FaceView | null = null;
  @property({ attribute: false }) rounding: Rounding = { unit: 'inch', denominator: 32 };
  /** What a joint is called on this part: 'long rail'. */
  @property({ attribute: false }) jointName: (joint: string) => string = (joint) => joint;
  @property() name = '';
  @property({ attribute: false }) units: readonly [number, number] = [784, 262];
  @property({ attribute: false }) letter = 27;

  override render(): TemplateResult | typeof nothing {
    if (this.view === null) return nothing;
    const [width, height] = this.units;
    const laid = layFace(this.view, width, height, this.letter, (length, letter) => setFigure(length, this.rounding, letter).width);
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${`Drawing of ${this.name}`} preserveAspectRatio="xMidYMid meet">
      ${drawFace(laid, this.view)}
      ${laid.names.map(({ joint, at }) => svg`<text class="named" x=${at.x} y=${at.y} text-anchor="middle">${this.jointName(joint)}</text>`)}
      ${laid.along.map((each) => this.#figure(each, true))}${laid.across.map((each) => this.#figure(each, false))}
      ${drawEdges(laid, this.view)}</svg>`;
  }

  #figure({ of: { mark }, figure, letter, leader }: Figure, captioned: boolean): SVGTemplateResult {
    return svg`<g class="dimension" data-mark=${`${mark.joint ?? ''}/${mark.kind}`}><path class="leader" d="M${leader.map(({ x, y }) => `${x} ${y}`).join(' L')}"></path>
      ${drawFigure(mark.at, this.rounding, figure.x, figure.y, letter)}
      ${captioned ? svg`<text class="named" text-anchor="middle" y=${figure.y + letter * 1.2}>${captionOf(mark).map((line, index) => svg`<tspan x=${figure.x} dy=${index === 0 ? 0 : SMALL}>${line}</tspan>`)}</text>` : nothing}</g>`;
  }
}

function drawFace({ face, waste, lines }: FaceLayout, { open }: FaceView): SVGTemplateResult {
  const at = open === 'left' ? face.x : face.x + face.width;
  return svg`<rect class="outline" x=${face.x} y=${face.y} width=${face.width} height=${face.height}></rect>
    ${waste.map(drawWaste)}
    ${open === undefined ? nothing : waste.filter(({ x, width }) => Math.abs((open === 'left' ? x : x + width) - at) < 0.5).map(({ y, height }) => svg`<line class="open" x1=${at} x2=${at} y1=${y + 1} y2=${y + height - 1}></line>`)}
    ${lines.map(({ of, line }) => svg`<line class=${of.lies === 'across' ? 'knife' : 'gauged'} data-line=${`${of.mark.joint ?? ''}/${of.mark.kind}`} x1=${line.x1} y1=${line.y1} x2=${line.x2} y2=${line.y2}></line>`)}`;
}

/** What the ends and edges are; the one that the gauge runs on heavy, with the edge mark. */
function drawEdges({ face, breaks }: FaceLayout, { leftIs, topIs, bottomIs, gaugeFrom }: FaceView): SVGTemplateResult {
  const [left, right, foot, middle] = [face.x, face.x + face.width, face.y + face.height, face.y + face.height / 2];
  const at = gaugeFrom === 'top' ? face.y : foot;
  const mark = `translate(${right + 76} ${gaugeFrom === 'top' ? at - 4 : at + 4}) scale(1 ${gaugeFrom === 'top' ? 1 : -1})`;
  return svg`<line class="reference" x1=${left} x2=${right} y1=${at} y2=${at}></line>${breaks.map((place) => drawBreak(face, place, 'upright'))}<path class="edge" transform=${mark} d=${EDGE_MARK}></path>
    <text class="named" transform="translate(${left - 9} ${middle}) rotate(-90)" text-anchor="middle">${leftIs}</text>
    ${edgeName(topIs, right + 8, face.y + 12, gaugeFrom === 'top')}${bottomIs === undefined ? nothing : edgeName(bottomIs, right + 8, foot - 20, gaugeFrom === 'bottom')}`;
}

/** In two lines beside the face: 'face B,' 'outer'. */
function edgeName(text: string, x: number, y: number, isReference: boolean): SVGTemplateResult {
  const [first = '', ...rest] = text.split(/(?<=,) | (?=face$|edge$)/);
  return svg`<text class="named ${isReference ? 'reference-name' : ''}" x=${x} y=${y}>${first}${rest.length === 0 ? nothing : svg`<tspan x=${x} dy=${SMALL + 2}>${rest.join(' ')}</tspan>`}</text>`;
}

declare global {
  interface HTMLElementTagNameMap { 'face-drawing': FaceDrawing }
}
