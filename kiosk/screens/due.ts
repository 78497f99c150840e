import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen } from './benchScreen.ts';
import { leftText, runningTimers } from './timerStrip.ts';
import type { RunningTimer } from './timerStrip.ts';

const FIVE_MINUTES_MS = 5 * 60_000;

/** A clock that is due, over everything else until it is acknowledged: words, stripes and (by the mouth) a signal. */
@customElement('bench-due')
export class DueNotice extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .due-notice { height: 100%; display: grid; grid-template-rows: minmax(0, 1fr) auto; padding: 2rem; border: 0.4rem solid var(--onDue); }
    .what { min-height: 0; height: 100%; overflow: hidden; display: flex; flex-direction: column; justify-content: safe center; font-weight: 700; line-height: 1.1; padding-bottom: 0.12em; }
    .what .when { font-family: var(--figures); font-weight: 400; }
    .others { font-size: calc(2.4rem * var(--text)); }
  `];

  protected fitWhat = new FitText(this, '.what', [8, 7, 6, 5.2, 4.4, 3.8, 3.2]);

  protected sheet(): TemplateResult {
    const [first, ...others] = this.#due();
    if (first === undefined) return html``;
    return html`<section class="due due-notice" role="alert"><div class="what"><p>${first.timer.name}</p><p class="when">${leftText(first)}</p></div>
      ${others.length === 0 ? nothing : html`<p class="others">Also due: ${others.map(({ timer }) => timer.name).join(', ')}.</p>`}</section>`;
  }

  keys(): readonly KeySpec[] {
    const timer = this.#due()[0]?.timer.id;
    if (timer === undefined) return [];
    return keyRow('due', {
      stop: { request: { kind: 'stop timer', timer } },
      'five more': { request: { kind: 'change timer', timer, addMs: FIVE_MINUTES_MS } },
      listen: { act: { kind: 'listen' } },
      'got it': { does: { request: { kind: 'acknowledge', timer } }, tone: 'now' },
    });
  }

  protected override note(): typeof nothing {
    return nothing;
  }

  #due(): readonly RunningTimer[] {
    return runningTimers(this.view).filter(({ calls }) => calls);
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-due': DueNotice }
}
