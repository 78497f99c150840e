import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { whatCanBeSaid } from '../../core/talk/sayable.ts';
import { CARD } from '../keys/keyCard.ts';
import { printKeyCard } from '../keys/keyCardSheet.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { LeafingScreen } from './leafing.ts';

const PHRASES_PER_PAGE = 10;
const ROWS_PER_PAGE = 10;

/** What can be said here, and the card of the number pad's keys, which can be printed. */
@customElement('bench-help')
export class HelpScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, css`
    .help { display: grid; grid-template-rows: auto minmax(0, 1fr); height: 100%; gap: 0.4rem; }
    .head { display: flex; justify-content: space-between; align-items: baseline; }
    .phrases, .card { display: grid; grid-template: repeat(5, auto) / repeat(2, minmax(0, 1fr)); grid-auto-flow: column; gap: 0 2.4rem; min-height: 0; height: 100%; overflow: hidden; }
    li { display: flex; align-items: center; border-bottom: 0.1rem solid var(--pencil); line-height: 1.05; gap: 1.2rem; }
    kbd { font-family: var(--figures); border: 0.2rem solid var(--ink); border-radius: 0.4rem; padding: 0.2rem 1rem; font-size: 0.9em; white-space: nowrap; }
    .where { color: var(--pencil); }
  `];

  @state() private card = false;
  protected fitList = new FitText(this, '.phrases, .card', [2.1, 1.9, 1.7, 1.55, 1.4, 1.25]);

  protected sheet(): TemplateResult {
    return html`<div class="help"><header class="head"><h1 class="title">${this.card ? 'Number pad' : 'What can be said'}</h1><span class="caption">${this.pageText()}</span></header>
      ${this.card ? html`<ul class="card">${CARD.slice(this.page * ROWS_PER_PAGE, (this.page + 1) * ROWS_PER_PAGE).map(({ where, pad, does }) => html`<li><kbd>${pad}</kbd><span>${does} <span class="where">${where}</span></span></li>`)}</ul>`
        : html`<ul class="phrases">${this.#phrases().slice(this.page * PHRASES_PER_PAGE, (this.page + 1) * PHRASES_PER_PAGE).map((phrase) => html`<li>${phrase}</li>`)}</ul>`}</div>`;
  }

  keys(): readonly KeySpec[] {
    const turn = { here: () => { this.card = !this.card; this.page = 0; } };
    const pages = this.pages();
    if (this.card) {
      return keyRow('card', { help: turn, next: { here: () => { this.page = (this.page + 1) % pages; } }, print: { here: printKeyCard }, step: show({ name: 'step' }) });
    }
    return keyRow('help', { step: show({ name: 'step' }), ...this.leafKeys(), 'key card': turn, menu: show({ name: 'menu' }) });
  }

  protected pages(): number {
    return Math.max(1, Math.ceil((this.card ? CARD.length : this.#phrases().length) / PHRASES_PER_PAGE));
  }

  #phrases(): readonly string[] {
    return whatCanBeSaid(this.view.bench);
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-help': HelpScreen }
}
