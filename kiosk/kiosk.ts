import { LitElement, css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { assertNever } from '../core/result.ts';
import type { Screen } from '../core/bench/screen.ts';
import { ask, tellHost } from './hostPort.ts';
import type { KioskView } from './hostPort.ts';
import { padLabel } from './keys/keySpec.ts';
import type { PadSymbol } from './keys/keySpec.ts';
import { EVERYWHERE } from './keys/keyTable.ts';
import { NumberPad } from './keys/numberPad.ts';
import { pressGuard } from './keys/pressGuard.ts';
import { look, themes } from './look/look.ts';
import type { BenchScreen } from './screens/benchScreen.ts';
import './screens/first.ts';
import './screens/statusLine.ts';
import { runningTimers } from './screens/timerStrip.ts';

/**
 * The whole of what is seen: the status line, and one screen; over it a question that waits for its answer, or the clocks that are
 * due. Everything shown is in `view`; everything done goes up as `bench-request` and `bench-act`.
 */
@customElement('bench-kiosk')
export class BenchKiosk extends LitElement {
  static override styles = [themes, look, css`
    :host { display: grid; grid-template-rows: auto minmax(0, 1fr); background: var(--paper); font-size: calc(2rem * var(--text)); overflow: hidden; }
    .place { position: relative; min-height: 0; overflow: hidden; }
    .place > * { position: absolute; inset: 0; }
    .under { visibility: hidden; }
    .over { background: var(--paper); }
    .starting { display: grid; place-content: center; font-size: 3rem; }
  `];

  @property({ attribute: false }) view: KioskView | null = null;
  @state() private padShown = false;
  #over: string | null = null;

  readonly #numberPad = new NumberPad({
    pressed: (symbol, atMs) => this.#pressed(symbol, atMs),
    read: (text) => ask(this, { kind: 'reading', text }),
    stuck: (symbol) => tellHost(this, { kind: 'key stuck', label: padLabel(symbol) }),
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.#numberPad.attach(window);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#numberPad.detach(window);
  }

  override willUpdate(): void {
    if (this.view === null) return;
    this.setAttribute('theme', this.view.theme);
    this.toggleAttribute('larger', this.view.bench.state.settings.textPercent === 125);
  }

  override render(): TemplateResult {
    const view = this.view;
    if (view === null) return html`<p class="starting">Starting.</p>`;
    const over = this.#overlay(view);
    return html`<status-line .view=${view} ?narrow=${this.padShown && over === null}></status-line>
      <div class="place" @pad-turned=${this.#padTurned}><div class=${over === null ? '' : 'under'} ?inert=${over !== null}>${drawScreen(view, shownScreen(view))}</div>
      ${over === null ? nothing : html`<div class="over">${over.drawn}</div>`}</div>`;
  }

  protected override updated(): void {
    const over = this.view === null ? null : (this.#overlay(this.view)?.name ?? null);
    // What comes up by itself must not catch the press that was meant for the screen below.
    if (over !== null && over !== this.#over) pressGuard.holdOff(performance.now());
    this.#over = over;
  }

  /** What lies over the screen: clocks that are due come first, then a question that is open. */
  #overlay(view: KioskView): { readonly name: string; readonly drawn: TemplateResult } | null {
    if (runningTimers(view).some(({ calls }) => calls)) return { name: 'due', drawn: html`<bench-due .view=${view}></bench-due>` };
    const { question } = view.bench.conversation;
    if (question !== null && question.kind !== 'length' && question.kind !== 'surface reading') return { name: 'question', drawn: html`<bench-question .view=${view}></bench-question>` };
    return null;
  }

  #padTurned(): void {
    const screen = this.renderRoot.querySelector('.place > div')?.firstElementChild as BenchScreen | null | undefined;
    this.padShown = screen?.padShown ?? false;
  }

  #pressed(symbol: PadSymbol, atMs: number): void {
    const place = this.renderRoot.querySelector('.over') ?? this.renderRoot.querySelector('.place > div');
    const screen = place?.firstElementChild as BenchScreen | null | undefined;
    if (screen?.pressSymbol(symbol, atMs) === true) return;
    const everywhere = EVERYWHERE.find(({ pad }) => pad === symbol);
    if (everywhere === undefined || !pressGuard.allows(everywhere.label, atMs, false)) return;
    if ('request' in everywhere.does) ask(this, everywhere.does.request);
    else if ('act' in everywhere.does) tellHost(this, everywhere.does.act);
  }
}

/** The screen of the conversation; a length that was asked for is answered on the fraction pad. */
function shownScreen(view: KioskView): Screen {
  const { question, screen } = view.bench.conversation;
  if (question?.kind === 'surface reading') return { name: 'truing', of: question.of };
  if (question?.kind !== 'length') return screen;
  return { name: 'record', size: question.size, ...(question.copy === undefined ? {} : { copy: question.copy }) };
}

function drawScreen(view: KioskView, screen: Screen): TemplateResult {
  switch (screen.name) {
    case 'menu': return html`<bench-menu .view=${view}></bench-menu>`;
    case 'step': return screen.inFull === true ? html`<bench-step-in-full .view=${view} .screen=${screen}></bench-step-in-full>` : html`<bench-step .view=${view} .screen=${screen}></bench-step>`;
    case 'steps': return html`<bench-steps .view=${view}></bench-steps>`;
    case 'parts': return html`<bench-parts .view=${view}></bench-parts>`;
    case 'part': return html`<bench-part .view=${view} .screen=${screen}></bench-part>`;
    case 'size': return html`<bench-size .view=${view} .screen=${screen}></bench-size>`;
    case 'why': return html`<bench-why .view=${view} .screen=${screen}></bench-why>`;
    case 'moved': return html`<bench-moved .view=${view}></bench-moved>`;
    case 'record': return html`<bench-record .view=${view} .screen=${screen}></bench-record>`;
    case 'reckoning': return html`<bench-reckoning .view=${view} .screen=${screen}></bench-reckoning>`;
    case 'chopping': return html`<bench-chopping .view=${view} .screen=${screen}></bench-chopping>`;
    case 'layout': return html`<bench-layout .view=${view} .screen=${screen}></bench-layout>`;
    case 'paper': return html`<bench-paper .view=${view} .screen=${screen}></bench-paper>`;
    case 'air': return html`<bench-air .view=${view}></bench-air>`;
    case 'wood': return html`<bench-wood .view=${view} .screen=${screen}></bench-wood>`;
    case 'gluing': return html`<bench-gluing .view=${view}></bench-gluing>`;
    case 'truing': return html`<bench-truing .view=${view} .screen=${screen}></bench-truing>`;
    case 'faces': return html`<bench-faces .view=${view} .screen=${screen}></bench-faces>`;
    case 'boards': return html`<bench-boards .view=${view} .screen=${screen}></bench-boards>`;
    case 'cutting': return html`<bench-cutting .view=${view} .screen=${screen}></bench-cutting>`;
    case 'rough': return html`<bench-rough .view=${view} .screen=${screen}></bench-rough>`;
    case 'buying': return html`<bench-buying .view=${view} .screen=${screen}></bench-buying>`;
    case 'clocks': return html`<bench-clocks .view=${view}></bench-clocks>`;
    case 'edges': return html`<bench-edges .view=${view}></bench-edges>`;
    case 'journal': return html`<bench-journal .view=${view}></bench-journal>`;
    case 'settings': return html`<bench-settings .view=${view}></bench-settings>`;
    case 'files': return html`<bench-files .view=${view}></bench-files>`;
    case 'help': return html`<bench-help .view=${view}></bench-help>`;
    case 'microphone': return html`<bench-microphone .view=${view}></bench-microphone>`;
    default: return assertNever(screen);
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-kiosk': BenchKiosk }
}
