import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { lengthFigure } from '../../core/length/figure.ts';
import type { Length } from '../../core/length/length.ts';
import type { Rounding } from '../../core/length/rounding.ts';

/** Advance of a B612 digit over its size: its digits are all as wide. */
const DIGIT_EM = 0.64;
const FRACTION = 0.64;

/** The parts of a size set in a drawing, with their places relative to the middle of the whole; sizes in drawing units. */
export interface SetFigure {
  readonly width: number;
  readonly whole: { readonly text: string; readonly x: number } | null;
  readonly fraction: { readonly top: string; readonly bottom: string; readonly x: number; readonly width: number } | null;
  readonly unit: { readonly text: string; readonly x: number };
}

/** Sets a size at a letter height of `size`: whole inches, stacked fraction, inch mark; what rounding hid as a trailing word. */
export function setFigure(length: Length, rounding: Rounding, size: number): SetFigure {
  const figure = lengthFigure(length, rounding);
  const sign = figure.negative ? '−' : '';
  const metric = figure.unit === 'millimetre';
  const wholeText = metric ? `${sign}${figure.whole}${figure.decimals === undefined ? '' : `.${figure.decimals}`}`
    : figure.whole === 0 && figure.numerator > 0 ? sign : `${sign}${figure.whole}`;
  const wholeWidth = wholeText.length * DIGIT_EM * size;
  const hasFraction = figure.numerator > 0;
  const fractionWidth = hasFraction ? String(figure.denominator).length * DIGIT_EM * FRACTION * size + 0.12 * size : 0;
  const lost = figure.lost === 'exact' ? '' : ` ${figure.lost}`;
  const unitText = `${metric ? ' mm' : '″'}${lost}`;
  const unitWidth = (metric ? 2 : 0.4) * size * 0.8 + lost.length * 0.5 * size;
  const gap = hasFraction && wholeText !== '' ? 0.08 * size : 0;
  const width = wholeWidth + gap + fractionWidth + unitWidth;
  const left = -width / 2;
  return {
    width,
    whole: wholeText === '' ? null : { text: wholeText, x: left },
    fraction: hasFraction ? { top: String(figure.numerator), bottom: String(figure.denominator), x: left + wholeWidth + gap + fractionWidth / 2, width: fractionWidth } : null,
    unit: { text: unitText, x: left + wholeWidth + gap + fractionWidth },
  };
}

/** Draws a size centred on (x, y). */
export function drawFigure(length: Length, rounding: Rounding, x: number, y: number, size: number): SVGTemplateResult {
  const set = setFigure(length, rounding, size);
  const small = size * FRACTION;
  return svg`<g class="figure" transform="translate(${x} ${y})">
    ${set.whole === null ? nothing : svg`<text x=${set.whole.x} y=${size * 0.36} font-size=${size}>${set.whole.text}</text>`}
    ${set.fraction === null ? nothing : svg`
      <text x=${set.fraction.x} y=${-size * 0.09} font-size=${small} text-anchor="middle">${set.fraction.top}</text>
      <path d="M${set.fraction.x - set.fraction.width / 2} 0 h${set.fraction.width}" stroke-width=${Math.max(1.4, size * 0.05)}></path>
      <text x=${set.fraction.x} y=${size * 0.58} font-size=${small} text-anchor="middle">${set.fraction.bottom}</text>`}
    <text x=${set.unit.x} y=${size * 0.36} font-size=${size * 0.8}>${set.unit.text}</text></g>`;
}
