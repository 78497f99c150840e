import { LitElement, css, html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { EarView, KeepingView, KioskView } from '../hostPort.ts';
import { tellHost } from '../hostPort.ts';
import { FitText } from '../look/fit.ts';
import { look } from '../look/look.ts';
import { CAUTION_MARK, markIcon } from '../look/marks.ts';

const QUIETEST_DB = -60;
const BARS = 6;

/** The line on top of every screen: the ear, the words last heard or being said, whether all is kept, and the time. */
@customElement('status-line')
export class StatusLine extends LitElement {
  static override styles = [look, css`
    :host { display: grid; grid-template-columns: auto minmax(0, 1fr) auto; gap: 1.2rem; align-items: center; height: 4.4rem; padding: 0 0.8rem; border-bottom: 0.2rem solid var(--ink); font-size: calc(1.8rem * min(var(--text), 1.12)); line-height: 1.1; white-space: nowrap; }
    :host([narrow]) { height: 3.1rem; }
    .ear, .right { display: flex; gap: 0.6rem; align-items: center; }
    .ear.listening { color: var(--onNow); background: var(--now); padding: 0.3rem 0.8rem; font-weight: 700; }
    svg { height: 2.2rem; width: 2.2rem; flex: none; }
    .meter { width: 3.6rem; }
    .meter rect { fill: none; stroke: currentColor; stroke-width: 1.2; }
    .meter rect.on { fill: currentColor; }
    .words { height: 100%; overflow: hidden; white-space: normal; display: flex; align-items: safe center; min-width: 0; }
    .words p { max-height: 100%; overflow: hidden; display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; }
    :host([narrow]) .words p { -webkit-line-clamp: 1; }
    .words, .words p { text-overflow: ellipsis; }
    .words button { font: inherit; color: inherit; background: none; border: 0; padding: 0; text-align: left; width: 100%; height: 100%; display: flex; gap: 1.2rem; align-items: center; justify-content: space-between; }
    .away { border: 0.2rem solid currentColor; border-radius: 0.6rem; padding: 0.5rem 0.8rem; font-size: 1.7rem; white-space: nowrap; }
    .words .speaker { color: var(--pencil); }
    .fault { font-weight: 700; }
    .clock { font-family: var(--figures); }
  `];

  @property({ attribute: false }) view!: KioskView;
  protected fitWords = new FitText(this, '.words p', [1.9, 1.75, 1.6]);

  override render(): TemplateResult {
    const { ear, keeping, now } = this.view;
    return html`<span class="ear ${ear.state}">${meter(ear)}<span>${earWord(ear, this.view.bench.state.settings.addressWord)}</span></span>
      <div class="words" role="status">${this.#words()}</div>
      <span class="right">${keepingMark(keeping)}${now.wallTrusted ? html`<span class="clock">${timeOfDay(now.wallMs)}</span>` : nothing}</span>`;
  }

  /** Faults first, for nothing else can be trusted with them; then what is being said; then what was heard. */
  #words(): TemplateResult | typeof nothing {
    const { ear, mouth, keeping, notices, bench } = this.view;
    const faults = [keeping.state === 'kept' || keeping.state === 'writing' ? '' : keeping.sentence, ear.state === 'fault' ? ear.sentence : '', mouth.state === 'fault' ? mouth.sentence : ''].filter((text) => text !== '');
    if (mouth.state === 'speaking' && mouth.words !== '') return html`<p>${mouth.words}</p>`;
    const [first] = [...faults, ...notices];
    if (first !== undefined) {
      const count = faults.length + notices.length;
      const text = html`<p class="fault">${count > 1 ? `1 of ${count}: ` : ''}${first}</p>`;
      return faults.length > 0 || this.hasAttribute('narrow') ? text : html`<button type="button" @click=${() => tellHost(this, { kind: 'put away notice', index: 0 })}>${text}<span class="away">put away</span></button>`;
    }
    // Nobody hears it, so it stays to be read.
    const unheard = mouth.state === 'muted' ? (bench.conversation.lastReply?.say ?? '') : '';
    if (unheard !== '') return html`<p>${unheard}</p>`;
    return ear.heard === '' ? nothing : html`<p><span class="speaker">heard</span> ${ear.heard}</p>`;
  }
}

/** What the ear is doing, in a word or two. */
function earWord(ear: EarView, addressWord: string): string {
  switch (ear.state) {
    case 'off': return 'not listening';
    case 'starting': return 'ear starts';
    case 'waiting': return `say “${addressWord}”`;
    case 'listening': return 'listening';
    case 'deaf': return 'speaking';
    case 'fault': return 'no ear';
  }
}

/** How loud it is: bars that fill, so that a dead microphone is seen at once. */
function meter({ levelDb, state }: EarView): TemplateResult {
  const on = levelDb === null || state === 'deaf' ? 0 : Math.round(Math.max(0, 1 - levelDb / QUIETEST_DB) * BARS);
  return html`<svg class="meter" viewBox="0 0 36 22" aria-hidden="true">${Array.from({ length: BARS }, (_, index) =>
    svg`<rect class=${index < on ? 'on' : ''} x=${index * 6 + 1} y=${14 - index * 2.4} width="4" height=${7 + index * 2.4}></rect>`)}</svg>`;
}

function keepingMark({ state }: KeepingView): TemplateResult | typeof nothing {
  switch (state) {
    case 'kept': return html`<span>kept</span>`;
    case 'writing': return html`<span>writing</span>`;
    case 'one copy': return html`<svg viewBox="0 0 24 24" aria-hidden="true">${markIcon(CAUTION_MARK)}</svg><span>one copy</span>`;
    case 'read only': return html`<svg viewBox="0 0 24 24" aria-hidden="true">${markIcon(CAUTION_MARK)}</svg><span>read only</span>`;
    case 'fault': return html`<svg viewBox="0 0 24 24" aria-hidden="true">${markIcon(CAUTION_MARK)}</svg><span class="fault">not kept</span>`;
  }
}

function timeOfDay(wallMs: number): string {
  return new Date(wallMs).toLocaleTimeString('en-US', { hour: 'numeric', minute: '2-digit' });
}

declare global {
  interface HTMLElementTagNameMap { 'status-line': StatusLine }
}
