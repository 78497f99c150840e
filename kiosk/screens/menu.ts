import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';

/** Every other screen on one key; and, in full, what is wrong. */
@customElement('bench-menu')
export class MenuScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .titled.plain { grid-template-rows: minmax(0, 1fr); }
    .notices { height: 5.4rem; overflow: hidden; font-weight: 700; line-height: 1.15; }
  `];

  protected fitNotices = new FitText(this, '.notices', [2.2, 2, 1.8, 1.6, 1.4, 1.2]);

  protected sheet(): TemplateResult {
    const { notices } = this.view;
    return html`<div class="titled ${notices.length === 0 ? 'plain' : ''}">${notices.length === 0 ? nothing : html`<ul class="notices">${notices.map((notice) => html`<li>${notice}</li>`)}</ul>`}
      ${choiceGrid(SCREENS, this.page)}</div>`;
  }

  protected pages(): number {
    return pagesOf(SCREENS.length);
  }

  /** The notices have its room. */
  protected override note(): TemplateResult | typeof nothing {
    return this.view.notices.length === 0 ? super.note() : nothing;
  }

  keys(): readonly KeySpec[] {
    return keyRow('menu', {
      step: show({ name: 'step' }),
      ...this.leafKeys(),
      listen: { act: { kind: 'listen' } },
      'put away': this.view.notices.length === 0 ? null : { act: { kind: 'put away notice', index: 0 } },
    });
  }
}

const SCREENS: readonly Choice[] = [
  { label: 'what is left', does: show({ name: 'steps' }) },
  { label: 'parts', does: show({ name: 'parts' }) },
  { label: 'clocks', does: show({ name: 'clocks' }) },
  { label: 'reckoning', does: show({ name: 'reckoning' }) },
  { label: 'journal', does: show({ name: 'journal' }) },
  { label: 'settings', does: show({ name: 'settings' }) },
  { label: 'files', does: show({ name: 'files' }) },
  { label: 'what can I say', does: show({ name: 'help' }) },
  // On the second page: what one goes to at certain steps, from the step itself or by voice.
  { label: 'glue tonight', does: show({ name: 'air' }) },
  { label: 'wood', does: show({ name: 'wood' }) },
  { label: 'readings', does: show({ name: 'truing' }) },
  { label: 'sharpening', does: show({ name: 'edges' }) },
  { label: 'paper', does: show({ name: 'paper' }) },
  { label: 'boards', does: show({ name: 'boards' }) },
  { label: 'cutting plan', does: show({ name: 'cutting' }) },
  { label: 'rough sizes', does: show({ name: 'cutting', sizes: true }) },
];

declare global {
  interface HTMLElementTagNameMap { 'bench-menu': MenuScreen }
}
