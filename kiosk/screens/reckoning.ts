import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Operand, ReckonRequest } from '../../core/bench/request.ts';
import type { Screen } from '../../core/bench/screen.ts';
import { nanometres } from '../../core/length/length.ts';
import type { Length } from '../../core/length/length.ts';
import type { Rounding } from '../../core/length/rounding.ts';
import '../keys/countPad.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { toldHere } from './toldHere.ts';

const HALF_MILLIMETRE: Rounding = { unit: 'millimetre', step: nanometres(500_000) };
const THIRTY_SECONDS: Rounding = { unit: 'inch', denominator: 32 };
const MOST_COUNTED = 99;
/** More could not be read from the bench; they are told. */
const MOST_SHOWN = 12;

/** What is still wanted before the bench can be asked. */
type Wanted =
  | { readonly kind: 'size'; readonly asked: string; readonly then: (length: Length) => void }
  | { readonly kind: 'count'; readonly asked: string; readonly then: (count: number) => void };

/** Arithmetic by keys: a size, what to do with it, and the answer large. The answer is what the next key works on. */
@customElement('bench-reckoning')
export class ReckoningScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .reckoning { display: grid; grid-template-rows: minmax(0, 1fr) auto; gap: 0.8rem; height: 100%; }
    .answer { min-height: 0; height: 100%; overflow: hidden; display: grid; align-content: safe center; justify-items: center; line-height: 1; gap: 0.1em; text-align: center; }
    .answer ul { display: flex; flex-wrap: wrap; gap: 0.1em 0.8em; justify-content: center; align-items: end; }
    .answer li { display: grid; justify-items: center; white-space: nowrap; }
    .asked { font-size: calc(2.4rem * var(--text)); line-height: 1.15; }
    .above { display: grid; grid-auto-flow: column; grid-auto-columns: minmax(var(--key), 1fr); gap: var(--gap); }
    .hint { font-size: calc(3rem * var(--text)); line-height: 1.2; }
    fraction-pad .asked { font-weight: 700; font-size: calc(1.9rem * var(--text)); line-height: 1.1; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'reckoning' }>;
  /** A size typed here that nothing was asked of yet. */
  @state() private typed: Length | null = null;
  @state() private wanted: Wanted | null = null;
  protected fitAnswer = new FitText(this, '.answer', [14, 12, 10.4, 9, 7.8, 6.6, 5.6, 4.8, 4, 3.4, 2.8]);

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('screen') && this.screen.result !== undefined) this.typed = null;
  }

  protected sheet(): TemplateResult {
    const { wanted } = this;
    if (wanted?.kind === 'size') {
      return html`<fraction-pad .unit=${this.settings.rounding.unit} @length-typed=${(event: CustomEvent<Length>) => this.#got(() => wanted.then(event.detail))} @pad-left=${() => { this.wanted = null; }}><p class="asked">${wanted.asked}</p></fraction-pad>`;
    }
    if (wanted?.kind === 'count') {
      return html`<count-pad .asked=${wanted.asked} .least=${2} .most=${MOST_COUNTED} @count-typed=${(event: CustomEvent<number>) => this.#got(() => wanted.then(event.detail))} @pad-left=${() => { this.wanted = null; }}></count-pad>`;
    }
    return html`<div class="reckoning"><div class="answer">${this.#answer()}</div><nav class="above" aria-label="more keys">${this.#above().map((spec) => html`<bench-key .spec=${spec}></bench-key>`)}</nav></div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.wanted !== null) return [];
    const none = this.#operand() === null;
    const on = (ask: (of: Operand) => ReckonRequest): { readonly does: { readonly here: () => void }; readonly disabled: boolean } => ({ does: { here: () => this.#reckon(ask) }, disabled: none });
    return keyRow('reckoning', {
      half: on((of) => ({ kind: 'fraction of', numerator: 1, denominator: 2, of })),
      third: on((of) => ({ kind: 'fraction of', numerator: 1, denominator: 3, of })),
      times: { does: { here: () => this.#wantCount('Times how many?', (factor) => this.#reckon((of) => ({ kind: 'times', factor, of }))) }, disabled: none },
      spaces: { does: { here: () => this.#wantCount('How many equal spaces?', (spaces) => this.#reckon((of) => ({ kind: 'equal spaces', of, spaces }))) }, disabled: none },
      plus: { does: { here: () => this.#wantSize('plus', (length) => this.#reckon((left) => ({ kind: 'plus', left, right: { length } }))) }, disabled: none },
      less: { does: { here: () => this.#wantSize('less', (length) => this.#reckon((left) => ({ kind: 'less', left, right: { length } }))) }, disabled: none },
      'new size': { does: { here: () => this.#wantSize('a size to reckon with', (length) => { this.typed = length; }) }, ...(none ? { tone: 'now' as const } : {}) },
    });
  }

  override get padShown(): boolean {
    return this.wanted !== null;
  }

  #above(): readonly KeySpec[] {
    const none = this.#operand() === null;
    const other = this.settings.rounding.unit === 'inch' ? 'millimetre' : 'inch';
    return keyRow('reckoning, above', {
      step: show({ name: 'step' }),
      quarter: { does: { here: () => this.#reckon((of) => ({ kind: 'fraction of', numerator: 1, denominator: 4, of })) }, disabled: none },
      gaps: { does: { here: () => this.#wantCount('How many parts, with equal gaps between?', (parts) => this.#wantSize('each part', (length) => this.#reckon((of) => ({ kind: 'equal gaps', of, parts, each: { length } })))) }, disabled: none },
      'other unit': { does: { here: () => this.#reckon((of) => ({ kind: 'in other unit', of, unit: other })) }, disabled: none },
      menu: show({ name: 'menu' }),
    });
  }

  #answer(): TemplateResult {
    const { rounding } = this.settings;
    const { result } = this.screen;
    if (this.typed !== null) return html`<fraction-text .length=${this.typed} .rounding=${rounding}></fraction-text>`;
    if (result === undefined) return html`<p class="hint">Press new size, then what to do with it.</p>`;
    const told = this.#told();
    if (told.length > 0) return html`<p class="asked">${result.question}</p><ul>${told.map((length) => html`<li><fraction-text .length=${length} .rounding=${rounding}></fraction-text></li>`)}</ul>`;
    const shown = result.unit === undefined || result.unit === rounding.unit ? rounding : result.unit === 'inch' ? THIRTY_SECONDS : HALF_MILLIMETRE;
    const more = result.answers.length > MOST_SHOWN ? result.answers.length - MOST_SHOWN + 1 : 0;
    return html`<p class="asked">${result.question}</p><ul>${result.answers.slice(0, result.answers.length - more).map(({ label, length }) => html`<li><fraction-text .length=${length} .rounding=${shown}></fraction-text>${result.answers.length === 1 ? nothing : html`<span class="asked">${label}</span>`}</li>`)}${more === 0 ? nothing : html`<li class="asked">and ${more} more</li>`}</ul>
      ${result.note === undefined ? nothing : html`<p class="asked">${result.note}</p>`}`;
  }

  /** Of marks that are told one by one, those that are told now: they alone are looked at from the bench. */
  #told(): readonly Length[] {
    return toldHere(this.view.bench.conversation)?.item.lengths ?? [];
  }

  #operand(): Operand | null {
    const length = this.typed ?? this.#told()[0] ?? this.screen.result?.answers[0]?.length;
    return length === undefined ? null : { length };
  }

  #reckon(asking: (of: Operand) => ReckonRequest): void {
    const operand = this.#operand();
    if (operand !== null) this.ask(asking(operand));
  }

  #wantSize(asked: string, then: (length: Length) => void): void {
    this.wanted = { kind: 'size', asked, then };
  }

  #wantCount(asked: string, then: (count: number) => void): void {
    this.wanted = { kind: 'count', asked, then };
  }

  /** What was wanted is there: first put the pad away, for what follows may want something else. */
  #got(then: () => void): void {
    this.wanted = null;
    then();
  }

}

declare global {
  interface HTMLElementTagNameMap { 'bench-reckoning': ReckoningScreen }
}
