import { LitElement, css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { CARD } from './keyCard.ts';

/** The key card for the wall: every key of the number pad, screen by screen, in two columns on one sheet of paper. */
@customElement('key-card')
export class KeyCardSheet extends LitElement {
  static override styles = css`
    :host { font-family: 'Atkinson Hyperlegible Next', 'DejaVu Sans', sans-serif; font-size: 11pt; line-height: 1.25; color: #000; }
    h1 { font-size: 18pt; margin: 0 0 6pt; }
    h2 { font-size: 11pt; margin: 0; padding-top: 4pt; border-top: 0.5pt solid #000; }
    .columns { columns: 3; column-gap: 14pt; }
    section { break-inside: avoid; padding-bottom: 5pt; }
    ul { list-style: none; margin: 0; padding: 0; }
    li { display: grid; grid-template-columns: 36pt 1fr; gap: 6pt; align-items: baseline; }
    kbd { font-family: 'B612', 'DejaVu Sans', sans-serif; border: 0.5pt solid #000; border-radius: 2pt; text-align: center; }
  `;

  override render(): TemplateResult {
    const places = [...new Set(CARD.map(({ where }) => where))];
    return html`<h1>Number pad</h1><div class="columns">${places.map((place) => html`<section><h2>${place}</h2><ul>${CARD.filter(({ where }) => where === place).map(({ pad, does }) => html`<li><kbd>${pad}</kbd><span>${does}</span></li>`)}</ul></section>`)}</div>`;
  }
}

/** Puts the card on the page while it is printed, and takes it away after. */
export function printKeyCard(): void {
  const card = document.createElement('key-card');
  document.body.append(card);
  window.addEventListener('afterprint', () => card.remove(), { once: true });
  void card.updateComplete.then(() => window.print());
}

declare global {
  interface HTMLElementTagNameMap { 'key-card': KeyCardSheet }
}
