import { LitElement, css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { look } from '../look/look.ts';
import './benchKey.ts';
import type { BenchKey } from './benchKey.ts';
import type { KeySpec, PadSymbol } from './keySpec.ts';

const DIGITS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 0] as const;

/** The pad on which a count is typed: parts, spaces, minutes. Dispatches `count-typed` (detail: number) and `pad-left`. */
@customElement('count-pad')
export class CountPad extends LitElement {
  static override styles = [look, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: minmax(0, 1fr) auto; gap: 0.8rem; height: 100%; }
    .display { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 1.6rem; align-items: center; border: 0.1rem solid var(--pencil); background: var(--card); padding: 0.4rem 1.2rem; min-height: 0; overflow: hidden; }
    .asked { font-size: calc(2.4rem * var(--text)); font-weight: 700; line-height: 1.15; }
    .trouble { font-size: calc(2rem * var(--text)); font-weight: 700; line-height: 1.15; }
    .number { font-family: var(--figures); font-size: 8rem; line-height: 1; white-space: nowrap; }
    .unit { font-size: 0.4em; margin-left: 0.2em; }
    .next { outline: 0.2rem dashed var(--now); min-width: 0.68em; min-height: 1em; display: inline-block; color: var(--now); }
    .keys { display: grid; grid-template-columns: repeat(7, minmax(var(--key), 1fr)); gap: var(--gap); }
  `];

  @property() asked = '';
  /** Written behind the number. */
  @property() unit = '';
  @property({ type: Number }) least = 1;
  @property({ type: Number }) most = 99;
  /** Below zero too: a key for the sign takes the place of listen. */
  @property({ type: Boolean }) signed = false;
  /** With hundredths, as prices have them: a key for the point takes the place of listen. */
  @property({ type: Boolean }) hundredths = false;
  @state() private typed = '';
  @state() private trouble = '';
  @state() private below = false;

  override render(): TemplateResult {
    return html`<div class="display"><div><p class="asked">${this.asked}</p>${this.trouble === '' ? nothing : html`<p class="trouble" role="alert">${this.trouble}</p>`}</div>
      <p class="number" role="status"><span class="next">${this.below ? '−' : ''}${this.typed}</span><span class="unit">${this.unit}</span></p></div>
      <div class="keys">${this.keys().map((spec) => html`<bench-key .spec=${spec}></bench-key>`)}</div>`;
  }

  keys(): readonly KeySpec[] {
    const empty = this.typed === '';
    const digit = (value: number): KeySpec => ({ label: String(value), pad: String(value) as PadSymbol, face: html`<span class="digit">${value}</span>`, typing: true, does: { here: () => this.#type(value) } });
    return [
      ...DIGITS.slice(0, 5).map(digit),
      { label: 'take back', ...(empty ? {} : { pad: '-' as const }), typing: true, disabled: empty, does: { here: () => { this.typed = this.typed.slice(0, -1); this.trouble = ''; } } },
      { label: 'leave', ...(empty ? { pad: '-' as const } : {}), does: { here: () => this.dispatchEvent(new CustomEvent('pad-left')) } },
      ...DIGITS.slice(5).map(digit),
      this.#beside(),
      { label: 'OK', pad: 'enter', tone: 'now', does: { here: () => this.#accept() } },
    ];
  }

  #beside(): KeySpec {
    if (this.hundredths) return { label: 'point', pad: '.', face: html`<span class="digit">.</span>`, typing: true, disabled: this.typed.includes('.'), does: { here: () => this.#point() } };
    return this.signed ? { label: 'below zero', pad: '*', typing: true, does: { here: () => { this.below = !this.below; } } } : { label: 'listen', pad: '*', does: { act: { kind: 'listen' } } };
  }

  #point(): void {
    if (!this.typed.includes('.')) this.typed = `${this.typed === '' ? '0' : this.typed}.`;
  }

  /** Presses a key as the number pad would; false when the pad has none for it. */
  pressSymbol(symbol: PadSymbol, atMs: number): boolean {
    const wanted = symbol === 'take back' ? '-' : symbol;
    const key = [...this.renderRoot.querySelectorAll<BenchKey>('bench-key')].find(({ spec }) => spec?.pad === wanted);
    key?.press(atMs);
    return key !== undefined;
  }

  #type(digit: number): void {
    const next = `${this.typed}${digit}`.replace(/^0+(?=\d)/, '');
    this.trouble = Number(next) > this.most ? `${this.most} at most.` : /\.\d{3}/.test(next) ? 'Two figures after the point at most.' : '';
    if (this.trouble === '') this.typed = next;
  }

  #accept(): void {
    const count = Number(this.typed);
    if (this.typed === '' || count < this.least) {
      this.trouble = `Type a number from ${this.least} to ${this.most}.`;
      return;
    }
    this.dispatchEvent(new CustomEvent<number>('count-typed', { detail: this.below ? -count : count }));
  }
}

declare global {
  interface HTMLElementTagNameMap { 'count-pad': CountPad }
}
