import { LitElement, css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Page, SheetSet } from '../../core/layout/paper/sheet.ts';
import { drawPage } from './paperPage.ts';

/** Sheets on the page for as long as they are printed, each at its true size; the page forms are named in kiosk.css. */
@customElement('paper-sheets')
export class PaperSheets extends LitElement {
  static override styles = css`
    div { break-after: page; overflow: hidden; }
    div:last-child { break-after: auto; }
    svg { display: block; }
    .a4-upright { page: a4-upright; } .a4-lying { page: a4-lying; } .letter-upright { page: letter-upright; } .letter-lying { page: letter-lying; }
  `;

  @property({ attribute: false }) sheets: SheetSet | null = null;

  override render(): TemplateResult {
    const { name = '', pages = [] } = this.sheets ?? {};
    return html`${pages.map((page, index) => html`<div class=${formOf(page)}>${drawPage(page, `Sheet ${index + 1} of the ${name}`)}</div>`)}`;
  }
}

function formOf({ width, height }: Page): string {
  const short = Math.min(width, height);
  return `${short === 210_000_000 ? 'a4' : 'letter'}-${width > height ? 'lying' : 'upright'}`;
}

/** Puts the sheets on the page while they are printed, and takes them away after. */
export function printSheets(sheets: SheetSet): void {
  const element = document.createElement('paper-sheets');
  element.sheets = sheets;
  document.body.append(element);
  window.addEventListener('afterprint', () => element.remove(), { once: true });
  void element.updateComplete.then(() => window.print());
}

declare global {
  interface HTMLElementTagNameMap { 'paper-sheets': PaperSheets }
}
