import { LitElement, css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Length } from '../../core/length/length.ts';
import { success } from '../../core/result.ts';
import { FitText } from '../look/fit.ts';
import { look } from '../look/look.ts';
import './benchKey.ts';
import type { BenchKey } from './benchKey.ts';
import { DENOMINATORS, denominatorOf, emptyEntry, entryLength, press, takeBack, typedSoFar } from './fractionEntry.ts';
import type { Denominator, FractionEntry, Press, Typed } from './fractionEntry.ts';
import type { KeySpec, PadSymbol } from './keySpec.ts';

/**
 * The pad on which a size is typed as it is said: thirty-one · and · five · eighths. Whole inches to 240 and any fraction to
 * sixty-fourths in seven presses with OK, millimetres to a tenth. Dispatches `length-typed` (detail: Length) and `pad-left`.
 * What goes beside the number (what is being measured, what was planned) is slotted in.
 */
@customElement('fraction-pad')
export class FractionPad extends LitElement {
  static override styles = [look, css`
    :host { display: grid; grid-template-columns: repeat(7, minmax(var(--key), 1fr)); grid-template-rows: repeat(4, minmax(var(--key), 1fr)); gap: var(--gap); height: 100%; }
    .display { grid-area: 1 / 1 / span 2 / span 3; display: flex; flex-direction: column; min-height: 0; border: 0.1rem solid var(--pencil); background: var(--card); padding: 0.4rem 0.8rem; overflow: hidden; }
    .number { flex: 1; padding: 0.4rem 0; min-height: 5.6rem; display: flex; align-items: safe center; justify-content: safe center; font-family: var(--figures); line-height: 1; white-space: nowrap; }
    .fraction { display: inline-flex; flex-direction: column; text-align: center; font-size: 0.66em; margin-left: 0.1em; }
    .fraction .line { height: 0.07em; background: currentColor; }
    .fraction span { padding: 0.02em 0.06em; }
    .unit { font-size: 0.45em; margin-left: 0.12em; }
    .next { outline: 0.2rem dashed var(--now); outline-offset: -0.1rem; min-width: 0.68em; min-height: 1em; display: inline-block; color: var(--now); }
    .trouble { border-top: 0.2rem solid var(--ink); font-weight: 700; padding-top: 0.2rem; max-height: 8.2rem; overflow: hidden; line-height: 1.15; }
  `];

  @property({ attribute: false }) unit: FractionEntry['unit'] = 'inch';
  @property() okLabel = 'OK';
  /** What OK means while nothing is typed, if anything. */
  @property({ attribute: false }) usual: Length | null = null;
  @state() private entry: FractionEntry = emptyEntry('inch');
  @state() private trouble = '';
  protected fitNumber = new FitText(this, '.number', [10, 8.6, 7.4, 6.4, 5.4, 4.6, 3.8, 3.2]);
  protected fitTrouble = new FitText(this, '.trouble', [2, 1.8, 1.6, 1.5]);

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('unit') && this.entry.presses.length === 0) this.entry = emptyEntry(this.unit);
  }

  override render(): TemplateResult {
    return html`
      <div class="display">
        <slot></slot>
        <div class="number" role="status" aria-label=${this.#aloud()}>${drawTyped(typedSoFar(this.entry), this.entry.unit)}</div>
        ${this.trouble === '' ? html`<slot name="beside"></slot>` : html`<p class="trouble" role="alert">${this.trouble}</p>`}
      </div>
      ${this.keys().map((each) => html`<bench-key .spec=${each}></bench-key>`)}`;
  }

  protected override updated(): void {
    const keys = [...this.renderRoot.querySelectorAll<BenchKey>('bench-key')];
    PLACES.forEach((place, index) => keys[index]?.style.setProperty('grid-area', place));
  }

  /** Presses a key as the number pad would. */
  pressSymbol(symbol: PadSymbol, atMs: number): boolean {
    const label = this.#labelFor(symbol);
    // With nothing typed there is nothing to put over: then it is the menu's key, as everywhere.
    if (label === null) return this.#type('over') || this.entry.presses.length > 0;
    const keys = [...this.renderRoot.querySelectorAll<BenchKey>('bench-key')];
    keys.find((each) => each.spec?.label === label)?.press(atMs);
    return true;
  }

  clear(): void {
    this.entry = emptyEntry(this.entry.unit);
    this.trouble = '';
  }

  /** In the order of PLACES. */
  keys(): readonly KeySpec[] {
    const inch = this.entry.unit === 'inch';
    const empty = this.entry.presses.length === 0;
    const typed = typedSoFar(this.entry);
    const digit = (value: number): KeySpec => ({ label: String(value), face: html`<span class="digit">${value}</span>`, typing: true, does: { here: () => this.#type({ digit: value }) } });
    const over = (value: Denominator): KeySpec => ({
      label: OVER_NAMES[value], name: `${OVER_NAMES[value]}, over ${value}`, face: html`<span class="over"><span class="box"></span><span class="foot">${value}</span></span>`, typing: true,
      disabled: !inch || typed.denominator !== '', does: { here: () => this.#type({ over: value }) },
    });
    return [
      ...DENOMINATORS.map(over),
      ...[7, 8, 9, 4, 5, 6, 1, 2, 3].map(digit),
      { label: inch ? 'and' : 'point', pad: '+', typing: true, does: { here: () => this.#type('and') } },
      digit(0),
      { label: 'take back', ...(empty ? {} : { pad: '-' as const }), typing: true, disabled: empty, does: { here: () => this.#takeBack() } },
      { label: 'leave', ...(empty ? { pad: '-' as const } : {}), does: { here: () => this.#leave() } },
      { label: inch ? 'in mm' : 'in inches', pad: '*', does: { here: () => this.#otherUnit() } },
      empty ? { label: 'listen', does: { act: { kind: 'listen' } } } : { label: 'clear', does: { here: () => this.clear() } },
      { label: this.okLabel, pad: 'enter', tone: 'now', does: { here: () => this.#accept() } },
    ];
  }

  #labelFor(symbol: PadSymbol): string | null {
    const inch = this.entry.unit === 'inch';
    switch (symbol) {
      case '/': return null;
      case '+': case '.': return inch ? 'and' : 'point';
      case '-': case 'take back': return this.entry.presses.length === 0 ? 'leave' : 'take back';
      case '*': return inch ? 'in mm' : 'in inches';
      case 'enter': return this.okLabel;
      default: return symbol;
    }
  }

  #type(next: Press): boolean {
    const outcome = press(this.entry, next);
    this.trouble = outcome.ok ? '' : outcome.fault;
    if (outcome.ok) this.entry = outcome.value;
    return outcome.ok;
  }

  #takeBack(): void {
    this.entry = takeBack(this.entry);
    this.trouble = '';
  }

  #otherUnit(): void {
    this.entry = emptyEntry(this.entry.unit === 'inch' ? 'millimetre' : 'inch');
    this.trouble = '';
  }

  #accept(): void {
    const outcome = this.entry.presses.length === 0 && this.usual !== null ? success(this.usual) : entryLength(this.entry);
    if (!outcome.ok) {
      this.trouble = outcome.fault;
      return;
    }
    this.clear();
    this.dispatchEvent(new CustomEvent<Length>('length-typed', { detail: outcome.value }));
  }

  #leave(): void {
    this.dispatchEvent(new CustomEvent('pad-left'));
  }

  #aloud(): string {
    const { whole, numerator, over } = typedSoFar(this.entry);
    const denominator = denominatorOf(typedSoFar(this.entry));
    const fraction = numerator === '' ? '' : ` ${numerator}${over ? ` over ${denominator ?? ''}` : ''}`;
    return `typed so far: ${whole}${fraction} ${this.entry.unit === 'inch' ? 'inches' : 'millimetres'}`;
  }
}

const OVER_NAMES: Readonly<Record<Denominator, string>> = { 2: 'half', 4: 'quarters', 8: 'eighths', 16: 'sixteenths', 32: 'thirty-seconds', 64: 'sixty-fourths' };

/** grid-area of every key: denominators under the number, digits as on a number pad, the acts in the last column. */
const PLACES: readonly string[] = [
  ...[0, 1, 2, 3, 4, 5].map((index) => `${Math.floor(index / 3) + 3} / ${(index % 3) + 1}`),
  ...Array.from({ length: 12 }, (_, index) => `${Math.floor(index / 3) + 1} / ${(index % 3) + 4}`),
  ...[1, 2, 3, 4].map((row) => `${row} / 7`),
];

function drawTyped(typed: Typed, unit: FractionEntry['unit']): TemplateResult {
  if (unit === 'millimetre') {
    return html`<span class=${typed.and ? '' : 'next'}>${typed.whole}</span>${typed.and ? html`.<span class="next">${typed.numerator}</span>` : nothing}<span class="unit">mm</span>`;
  }
  const fraction = typed.and || typed.over;
  const denominator = denominatorOf(typed);
  return html`${typed.and || !typed.over ? html`<span class=${fraction ? '' : 'next'}>${typed.whole}</span>` : nothing}${fraction ? html`
    <span class="fraction"><span class=${typed.over ? '' : 'next'}>${typed.numerator || '\u00a0'}</span><span class="line"></span>
    <span class=${denominator === undefined && typed.over ? 'next' : ''}>${denominator ?? '\u00a0'}</span></span>` : nothing}<span class="unit">″</span>`;
}

declare global {
  interface HTMLElementTagNameMap { 'fraction-pad': FractionPad }
}
