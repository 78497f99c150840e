import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import type { Length } from '../../core/length/length.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { BenchScreen } from './benchScreen.ts';
import { captionOf, valueOf } from './pieceView.ts';

/** Typing in what was measured. What was planned stands beside it; what moved is told by the reply and the size screen after it. */
@customElement('bench-record')
export class RecordScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
    .planned { font-size: calc(1.8rem * var(--text)); color: var(--pencil); line-height: 1; }
    .planned fraction-text { font-size: 1.3em; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'record' }>;

  protected sheet(): TemplateResult {
    const { size, copy } = this.screen;
    const { state, conversation } = this.view.bench;
    const mention = size === undefined ? undefined : { size, ...(copy === undefined ? {} : { copy }) };
    const caption = mention === undefined ? undefined : captionOf(state, mention);
    const value = mention === undefined ? undefined : valueOf(state, mention);
    return html`<fraction-pad .unit=${state.settings.rounding.unit} @length-typed=${this.#typed} @pad-left=${this.#left}>
      <p class="what">${caption === undefined ? 'a size' : [caption.owner, caption.say, caption.from].filter(Boolean).join(', ')}</p>
      ${value === undefined ? nothing : html`<p class="planned" slot="beside">${value.basis === 'measured' ? 'noted' : 'planned'} <fraction-text .length=${value.length} .rounding=${state.settings.rounding}></fraction-text></p>`}
      ${value === undefined && conversation.lastReply?.note !== undefined ? html`<p class="planned" slot="beside">${conversation.lastReply.note}</p>` : nothing}
    </fraction-pad>`;
  }

  keys(): readonly KeySpec[] {
    return [];
  }

  override get padShown(): boolean {
    return true;
  }

  protected override note(): typeof nothing {
    return nothing;
  }

  #typed(event: CustomEvent<Length>): void {
    const { size, copy } = this.screen;
    if (size === undefined) this.ask({ kind: 'answer length', length: event.detail });
    else this.ask({ kind: 'record', size, length: event.detail, ...(copy === undefined ? {} : { copy }) });
  }

  #left(): void {
    const { size, copy } = this.screen;
    this.ask({ kind: 'show', screen: size === undefined ? { name: 'step' } : { name: 'size', size, ...(copy === undefined ? {} : { copy }) } });
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-record': RecordScreen }
}
