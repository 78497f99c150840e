import { LitElement, css, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Rounding } from '../../core/length/rounding.ts';
import { look } from '../look/look.ts';
import { layBoard, type BoardLayout, type BoardShape, type CutMark } from './boardLayout.ts';
import { drawingStyles } from './dimension.ts';
import { drawFigure } from './figure.ts';

/** A board from above: its marked end with the number to the left, its reference edge below, what is wrong with it, and what the plan has on it with the cuts in their order. */
@customElement('board-drawing')
export class BoardDrawing extends LitElement {
  static override styles = [look, drawingStyles, css`
    .board { fill: var(--paper); stroke: var(--ink); stroke-width: 2.4; }
    .sapwood { fill: none; stroke: var(--pencil); stroke-width: 1.4; stroke-dasharray: 2 5; }
    .part { fill: var(--card); stroke: var(--ink); stroke-width: 1.6; }
    .offcut { fill: none; stroke: var(--pencil); stroke-width: 1.4; stroke-dasharray: 8 5; }
    .defect { fill: var(--ink); fill-opacity: 0.16; stroke: var(--ink); stroke-width: 1.6; }
    .cross { stroke: var(--ink); stroke-width: 1.6; }
    .made { stroke: var(--pencil); stroke-width: 1.4; stroke-dasharray: 3 4; }
    .come { stroke: var(--ink); stroke-width: 1.8; }
    .next { stroke: var(--now); stroke-width: 4.5; }
    .dot { fill: var(--paper); stroke: var(--ink); stroke-width: 1.4; }
    .dot.on { fill: var(--now); stroke: var(--now); }
    .dot.off { stroke: var(--pencil); stroke-dasharray: 3 3; }
    text { font-family: var(--words); fill: var(--ink); }
    .number { font-family: var(--figures); font-size: 15px; text-anchor: middle; }
    .number.on { fill: var(--onNow); font-weight: 700; }
    .number.off { fill: var(--pencil); }
    .name { text-anchor: middle; }
    .end { fill: var(--ink); }
    .numbered { fill: var(--paper); font-family: var(--figures); text-anchor: middle; font-weight: 700; }
  `];

  @property({ attribute: false }) shape: BoardShape | null = null;
  @property({ attribute: false }) rounding: Rounding = { unit: 'inch', denominator: 32 };
  @property({ attribute: false }) units: readonly [number, number] = [780, 210];

  override render(): TemplateResult | typeof nothing {
    if (this.shape === null) return nothing;
    const [width, height] = this.units;
    const laid = layBoard(this.shape, width, height);
    const { number } = this.shape.board;
    return html`<svg viewBox="0 0 ${width} ${height}" role="img" aria-label=${`Drawing of board ${number}`} preserveAspectRatio="xMidYMid meet">
      ${drawWood(laid, number)}${drawParts(laid)}${laid.defects.map(drawDefect)}${laid.cuts.map(drawCut)}
      ${laid.ticks.map(({ x, length }) => svg`<g class="dimension">${drawFigure(length, this.rounding, Math.min(x, width - 34), 20, 21)}</g>`)}</svg>`;
  }
}

const path = (points: BoardLayout['outline']): string => `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join(' L')} Z`;

function drawWood({ outline, sapwood, end }: BoardLayout, number: number): SVGTemplateResult {
  return svg`<path class="board" d=${path(outline)}></path>${sapwood.length === 0 ? nothing : svg`<path class="sapwood" d=${path(sapwood)}></path>`}
    <rect class="end" x=${end.x} y=${end.y} width=${end.width} height=${end.height}></rect>
    <text class="numbered" x=${end.x + end.width / 2} y=${end.y + end.height / 2 + 9} font-size=${number > 99 ? 16 : 24}>${number}</text>`;
}

function drawParts({ parts, offcuts }: BoardLayout): SVGTemplateResult {
  return svg`${offcuts.map((box) => svg`<rect class="offcut" x=${box.x} y=${box.y} width=${box.width} height=${box.height}></rect>`)}
    ${parts.map((part) => svg`<rect class="part" x=${part.x} y=${part.y} width=${part.width} height=${part.height}></rect>
      ${part.name === '' ? nothing : svg`<text class="name" x=${part.x + part.width / 2} y=${part.y + part.height / 2 + part.size * 0.36} font-size=${part.size}>${part.name}</text>`}`)}`;
}

function drawDefect({ x, y, width, height }: BoardLayout['defects'][number]): SVGTemplateResult {
  return svg`<rect class="defect" x=${x} y=${y} width=${width} height=${height}></rect><path class="cross" d="M${x} ${y} L${x + width} ${y + height} M${x + width} ${y} L${x} ${y + height}"></path>`;
}

function drawCut({ number, line, at, standing }: CutMark): SVGTemplateResult {
  const [stroke, tone] = standing === 'next' ? ['next', 'on'] : standing === 'made' ? ['made', 'off'] : ['come', ''];
  return svg`<line class=${stroke} x1=${line.x1} y1=${line.y1} x2=${line.x2} y2=${line.y2}></line>
    <circle class="dot ${tone}" cx=${at.x} cy=${at.y} r="11"></circle><text class="number ${tone}" x=${at.x} y=${at.y + 5.5}>${number}</text>`;
}

declare global {
  interface HTMLElementTagNameMap { 'board-drawing': BoardDrawing }
}
