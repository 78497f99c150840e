import { LitElement, css, html } from 'lit';
import type { TemplateResult } from 'lit';
import type { Rounding } from '../../core/length/rounding.ts';
import type { Length } from '../../core/length/length.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { look } from '../look/look.ts';
import { choiceStyles } from './choices.ts';

/** What a length is asked for with: what is said over the pad and beside it, and what becomes of it. */
export interface AskedLength {
  readonly what: string;
  readonly beside: string | TemplateResult;
  readonly unit: Rounding['unit'];
  readonly usual?: Length;
  readonly take: (length: Length) => void;
}

/**
 * Questions on keys, one after the other, that lie on a screen's sheet: the screen draws the form's row of keys (`keys()`) and is told when they change
 * (`form-turned`) and when the form is put away (`form-left`).
 */
export abstract class BenchForm extends LitElement {
  static override styles = [look, choiceStyles, css`
    :host { display: block; height: 100%; }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
    .beside { font-size: calc(1.8rem * var(--text)); color: var(--pencil); line-height: 1.05; }
    .beside fraction-text { font-size: 1.3em; }
    .fault { font-weight: 700; }
  `];

  /** A fraction pad lies open: it has the whole sheet, and no row of keys. */
  abstract get padShown(): boolean;
  abstract keys(): readonly KeySpec[];

  protected override updated(): void {
    this.dispatchEvent(new CustomEvent('form-turned'));
  }

  /** Nothing is asked any more. */
  protected left(): void {
    this.dispatchEvent(new CustomEvent('form-left'));
  }

  protected abstract leave(): void;

  protected askLength({ what, beside, unit, usual, take }: AskedLength): TemplateResult {
    return html`<fraction-pad .unit=${unit} .usual=${usual ?? null} @length-typed=${(event: CustomEvent<Length>) => { take(event.detail); }} @pad-left=${() => { this.leave(); }}>
      <p class="what">${what}</p><p class="beside" slot="beside">${beside}</p></fraction-pad>`;
  }
}
