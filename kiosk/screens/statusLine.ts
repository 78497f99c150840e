import { LitElement, css, html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { EarView, KeepingView, KioskView } from '../hostPort.ts';
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
    .words p { max-height: 100%; }
    .words .speaker { color: var(--pencil); }
    .fault { font-weight: 700; }
    .clock { font-family: var(--figures); }
  `];

  @property({ attribute: false }) view!: KioskView;
  protected fitWords = new FitText(this, '.words', [1.9, 1.7, 1.5, 1.35, 1.2]);

  override render(): TemplateResult {
    const { ear, keeping, now } = this.view;
    return html`<span class="ear ${ear.state}">${meter(ear)}<span>${earWord(ear, this.view.bench.state.settings.addressWord)}</span></span>
      <div class="words" role="status">${this.#words()}</div>
      <span class="right">${keepingMark(keeping)}<span class="clock">${now.wallTrusted ? timeOfDay(now.wallMs) : 'no time'}</span></span>`;
  }

  /** Faults first, for nothing else can be trusted with them; then what is being said; then what was heard. */
  #words(): TemplateResult | typeof nothing {
    const { ear, mouth, keeping, notices } = this.view;
    const faults = [keeping.state === 'kept' || keeping.state === 'writing' ? '' : keeping.sentence, ear.state === 'fault' ? ear.sentence : '', mouth.state === 'fault' ? mouth.sentence : '', ...notices].filter((text) => text !== '');
    if (mouth.state === 'speaking' && mouth.words !== '') return html`<p>${mouth.words}</p>`;
    if (faults.length > 0) return html`<p class="fault">${faults.length > 1 ? `${faults.length}: ` : ''}${faults[0]}</p>`;
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
