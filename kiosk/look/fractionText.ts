import { LitElement, css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { lengthFigure } from '../../core/length/figure.ts';
import type { LengthFigure } from '../../core/length/figure.ts';
import type { Length } from '../../core/length/length.ts';
import type { Rounding } from '../../core/length/rounding.ts';
import { sayLength } from '../../core/length/say.ts';

/**
 * A size as the maker reads it: whole inches, the fraction stacked over a drawn line and nearly as large, the inch mark;
 * or millimetres. What rounding hid stands beside it in words, 'full' or 'scant'. As large as the font size around it.
 */
@customElement('fraction-text')
export class FractionText extends LitElement {
  static override styles = css`
    :host { display: inline-flex; align-items: center; font-family: var(--figures); white-space: nowrap; line-height: 1; vertical-align: middle; }
    .whole { line-height: 1; }
    .fraction { display: inline-flex; flex-direction: column; align-items: stretch; text-align: center; font-size: 0.64em; line-height: 1; margin-left: 0.1em; }
    .fraction.alone { margin-left: 0; }
    .line { height: 0.07em; min-height: 2px; background: currentColor; }
    .top, .bottom { padding: 0 0.06em; line-height: 1.06; }
    .unit { font-size: 0.42em; margin-left: 0.14em; align-self: center; }
    .unit.inch { font-size: 0.7em; margin-left: 0.06em; align-self: flex-start; }
    .lost { font-family: var(--words); font-size: 0.36em; margin-left: 0.3em; align-self: center; }
  `;

  @property({ attribute: false }) length: Length | null = null;
  @property({ attribute: false }) rounding: Rounding = { unit: 'inch', denominator: 32 };

  override render(): TemplateResult | typeof nothing {
    if (this.length === null) return nothing;
    const figure = lengthFigure(this.length, this.rounding);
    return drawFigure(figure);
  }

  protected override updated(): void {
    if (this.length === null) return;
    this.setAttribute('role', 'img');
    this.setAttribute('aria-label', sayLength(this.length, this.rounding));
  }
}

function drawFigure(figure: LengthFigure): TemplateResult {
  const sign = figure.negative ? '−' : '';
  const lost = figure.lost === 'exact' ? nothing : html`<span class="lost">${figure.lost}</span>`;
  if (figure.unit === 'millimetre') {
    return html`<span class="whole">${sign}${figure.whole}${figure.decimals === undefined ? '' : `.${figure.decimals}`}</span><span class="unit">mm</span>${lost}`;
  }
  const alone = figure.whole === 0 && figure.numerator !== 0;
  return html`
    ${alone && sign === '' ? nothing : html`<span class="whole">${sign}${alone ? '' : figure.whole}</span>`}${figure.numerator === 0 ? nothing : html`
    <span class="fraction ${alone ? 'alone' : ''}"><span class="top">${figure.numerator}</span><span class="line"></span><span class="bottom">${figure.denominator}</span></span>`}<span class="unit inch">″</span>${lost}`;
}

declare global {
  interface HTMLElementTagNameMap { 'fraction-text': FractionText }
}
