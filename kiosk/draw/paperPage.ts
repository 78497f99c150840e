import { html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import type { Item, Page, Stroke, Words } from '../../core/layout/paper/sheet.ts';
import { FRACTION_TYPE, runsOf } from '../../core/layout/paper/sizeText.ts';
import { PAPER_LOOKS } from './paperLooks.ts';

/** Nanometres to millimetres, the drawing's unit: six decimals keep every one of them. */
function mm(nanometres: number): number {
  return nanometres / 1_000_000;
}

/** A sheet as it is printed, one unit to the millimetre: on paper at its true size, on the screen as large as there is room. */
export function drawPage({ width, height, window, drawn, furniture }: Page, name: string): TemplateResult {
  return html`<svg class="sheet" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" aria-label=${name}>
    <svg x=${mm(window.x)} y=${mm(window.y)} width=${mm(window.width)} height=${mm(window.height)} viewBox="${mm(window.x)} ${mm(window.y)} ${mm(window.width)} ${mm(window.height)}" overflow="hidden">${drawn.map(drawItem)}</svg>
    ${furniture.map(drawItem)}</svg>`;
}

function drawItem(item: Item): SVGTemplateResult {
  return item.kind === 'stroke' ? drawStroke(item) : drawWords(item);
}

function drawStroke({ look, points, of }: Stroke): SVGTemplateResult {
  const { widthMm, dashesMm } = PAPER_LOOKS[look];
  return svg`<path d="M${points.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join(' L')}" fill="none" stroke="black" stroke-width=${widthMm} stroke-dasharray=${dashesMm === undefined ? nothing : dashesMm.join(' ')} data-of=${of ?? nothing}></path>`;
}

function drawWords({ text, at, size, anchor, bold, turned }: Words): SVGTemplateResult {
  const [x, y] = [mm(at.x), mm(at.y)];
  return svg`<text x=${x} y=${y} font-size=${mm(size)} font-family="Atkinson Hyperlegible Next, DejaVu Sans, sans-serif" font-weight=${bold ? 700 : 400} text-anchor=${anchor} fill="black" xml:space="preserve" transform=${turned ? `rotate(-90 ${x} ${y})` : nothing}>${runsOf(text).map((run, index, runs) => {
    const raise = run.as === 'numerator' ? -FRACTION_TYPE.raised * mm(size) : runs[index - 1]?.as === 'numerator' ? FRACTION_TYPE.raised * mm(size) : 0;
    return svg`<tspan dy=${raise} font-size=${run.as === 'plain' ? mm(size) : mm(size) * FRACTION_TYPE.size}>${run.text}</tspan>`;
  })}</text>`;
}
