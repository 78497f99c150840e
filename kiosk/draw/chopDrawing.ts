import { LitElement, css, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ChopDrawing } from '../../core/joint/chopStages.ts';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { layChop } from './chopLayout.ts';
import type { ChopLayout } from './chopLayout.ts';
import { drawBreak, drawWaste, drawingStyles } from './dimension.ts';
import { drawFigure } from './figure.ts';
import type { Line } from './partLayout.ts';

/** One stage of chopping a mortise, the part cut open along it: what is out, what is taken now, where the chisel stands and which way its bevel looks. */
@customElement('chop-drawing')
export class ChopDrawingElement extends LitElement {
  static override styles = [look, drawingStyles, css`
    .void { fill: var(--paper); stroke: var(--ink); stroke-width: 1.6; }
    .chisel { fill: var(--card); stroke: var(--now); stroke-width: 2.4; stroke-linejoin: round; }
    .flag { fill: var(--now); }
    .lever { fill: none; stroke: var(--now); stroke-width: 3; }
    .sawn { fill: var(--pressed); stroke: var(--now); stroke-width: 2.4; }
    .knife { stroke: var(--ink); stroke-width: 1.6; stroke-dasharray: 7 4; }
    .named { font-family: var(--words); font-size: 17px; fill: var(--ink); }
  `];

  @property({ attribute: false }) stage: ChopDrawing | null = null;
  @property({ attribute: false }) rounding: Rounding = { unit: 'inch', denominator: 32 };
  /** What is drawn, for those who cannot see it. */
  @property() name = '';
  @property({ attribute: false }) units: readonly [number, number] = [468, 288];
  @property({ attribute: false }) letter = 24;

  override render(): TemplateResult | typeof nothing {
    if (this.stage === null) return nothing;
    const [width, height] = this.units;
    const laid = layChop(this.stage, width, height, this.letter);
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${`Drawing of ${this.name}`} preserveAspectRatio="xMidYMid meet">
      ${drawWood(laid)}
      ${laid.marks.map(({ line, length, figure }) => svg`<line class="knife" x1=${line.x1} y1=${line.y1} x2=${line.x2} y2=${line.y2}></line><g class="dimension">${drawFigure(length, this.rounding, figure.x, figure.y, this.letter * 0.8)}</g>`)}
      ${laid.chisels.map(({ outline, flag }) => svg`<path class="chisel" d="M${outline.map(({ x, y }) => `${x} ${y}`).join(' L')} Z"></path>
        ${flag === null ? nothing : svg`<rect class="flag" x=${flag.x} y=${flag.y} width=${flag.width} height=${flag.height}></rect>`}`)}
      ${laid.lever === null ? nothing : drawLever(laid.lever)}
      ${laid.depth === null ? nothing : this.#depth(laid.depth)}
      <text class="named" x=${laid.wood.x} y=${height - 6}>${this.#from()}</text></svg>`;
  }

  #from(): string {
    const { face, slot } = this.stage ?? { face: 'first' };
    return `from the ${slot?.end ?? 'top'} end${face === 'second' ? `, second ${slot === undefined ? 'face' : 'edge'} up` : ''}${slot !== undefined && slot.sawn.length > 0 ? '; shaded: sawn' : ''}`;
  }

  #depth({ line, length, figure }: NonNullable<ChopLayout['depth']>): SVGTemplateResult {
    const tick = (y: number): string => `M${line.x1 - 6} ${y + 6} L${line.x1 + 6} ${y - 6}`;
    return svg`<g class="dimension"><path d="M${line.x1} ${line.y1} L${line.x2} ${line.y2}"></path><path class="tick" d="${tick(line.y1)} ${tick(line.y2)}"></path>
      ${drawFigure(length, this.rounding, figure.x, figure.y, this.letter)}</g>`;
  }
}

function drawWood({ wood, ends, cut, waste, sawn }: ChopLayout): SVGTemplateResult {
  return svg`<rect class="outline" x=${wood.x} y=${wood.y} width=${wood.width} height=${wood.height}></rect>
    ${cut === null ? nothing : svg`<rect class="void" x=${cut.x} y=${cut.y} width=${cut.width} height=${cut.height}></rect>`}
    ${sawn.length === 0 ? nothing : svg`<path class="sawn" d="M${sawn.map(({ x, y }) => `${x} ${y}`).join(' L')} Z"></path>`}
    ${waste === null ? nothing : drawWaste(waste)}
    ${ends ? nothing : drawBreak(wood, wood.x + 10, 'upright')}${drawBreak(wood, wood.x + wood.width - 10, 'upright')}`;
}

/** A bow with a head at both ends: to and fro, between these. */
function drawLever({ x1, x2, y1 }: Line): SVGTemplateResult {
  const middle = (x1 + x2) / 2;
  return svg`<path class="lever" d="M${x1 + 14} ${y1} Q${middle} ${y1 - 16} ${x2 - 14} ${y1} M${x1 + 26} ${y1 - 12} L${x1 + 14} ${y1} L${x1 + 28} ${y1 + 4} M${x2 - 26} ${y1 - 12} L${x2 - 14} ${y1} L${x2 - 28} ${y1 + 4}"></path>
    <text class="named" x=${middle} y=${y1 - 16} text-anchor="middle">lever here only</text>`;
}

declare global {
  interface HTMLElementTagNameMap { 'chop-drawing': ChopDrawingElement }
}
