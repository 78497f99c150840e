import { LitElement, css, html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { Request } from '../../core/bench/request.ts';
import type { Screen } from '../../core/bench/screen.ts';
import type { Settings } from '../../core/journal/settings.ts';
import type { KioskView } from '../hostPort.ts';
import { ask } from '../hostPort.ts';
import '../keys/benchKey.ts';
import type { KeySpec, PadSymbol } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { pressWithin } from '../keys/pressWithin.ts';
import { FitText } from '../look/fit.ts';
import { look } from '../look/look.ts';
import { toldHere } from './toldHere.ts';

const HALF_SECOND_MS = 500;

/** The ear's level changes many times a second; a screen draws itself anew only for what it shows. */
function looksDifferent(view: KioskView, before: KioskView | undefined): boolean {
  if (before === undefined) return true;
  const [one, other] = [view.bench, before.bench];
  const tick = ({ now }: KioskView): number => Math.floor(now.monotonicMs / HALF_SECOND_MS);
  return one.state !== other.state || one.conversation !== other.conversation || one.records !== other.records || one.acts !== other.acts
    || tick(view) !== tick(before) || view.now.bootId !== before.now.bootId
    || view.notices.join('\n') !== before.notices.join('\n') || view.shelf !== before.shelf || view.microphones !== before.microphones;
}

/**
 * What every screen is: a sheet, the note of the last reply, and one row of large keys along its lower edge. A screen says what
 * lies on the sheet (`sheet()`) and which keys it has (`keys()`); keys that lie on the sheet itself are bench-keys too, and the
 * number pad finds them all the same.
 */
export abstract class BenchScreen extends LitElement {
  static override styles = [look, css`
    :host { display: grid; grid-template-rows: minmax(0, 1fr) auto auto; height: 100%; padding: 0.4rem; overflow: hidden; }
    .sheet { min-height: 0; min-width: 0; position: relative; overflow: hidden; margin-bottom: var(--gap); }
    .note { font-size: 2.2rem; line-height: 1.15; border-left: 0.6rem solid var(--now); padding: 0.2rem 0 0.2rem 0.8rem; margin: -0.8rem 0 0.8rem; max-height: 7.6rem; overflow: hidden; }
    :host([pad]) { padding: 0.1rem 0.4rem 0; }
    :host([pad]) .sheet { margin-bottom: 0; overflow: visible; }
    .row { display: grid; grid-auto-flow: column; grid-auto-columns: minmax(var(--key), 1fr); gap: var(--gap); }
  `];

  @property({ attribute: false, hasChanged: looksDifferent }) view!: KioskView;
  protected fitNote = new FitText(this, '.note', [2.2, 2, 1.8, 1.65, 1.5]);
  #toldPad: boolean | null = null;

  /** The fraction pad has the whole screen, and the status line makes room for it. */
  get padShown(): boolean {
    return false;
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (this.#toldPad === this.padShown) return;
    this.#toldPad = this.padShown;
    this.toggleAttribute('pad', this.padShown);
    this.dispatchEvent(new CustomEvent('pad-turned', { bubbles: true, composed: true }));
  }

  /** What is drawn on the sheet. */
  protected abstract sheet(): TemplateResult;
  /** The row of keys. */
  abstract keys(): readonly KeySpec[];

  override render(): TemplateResult {
    const keys = this.#keysNow();
    return html`<main class="sheet">${this.sheet()}</main>${this.note()}
      ${keys.length === 0 ? nothing : html`<nav class="row" aria-label="keys">${keys.map((spec) => html`<bench-key .spec=${spec}></bench-key>`)}</nav>`}`;
  }

  /** While marks are told one by one, the keys lead through them; what is only long stands on the screen, which keeps its own. */
  #keysNow(): readonly KeySpec[] {
    const { inTurn, item } = toldHere(this.view.bench.conversation) ?? {};
    if (inTurn === undefined || item?.note === undefined || this.padShown || this.inside !== null) return this.keys();
    const turn = (to: 'next' | 'back' | 'enough') => ({ request: { kind: 'tell in turn', to } }) as const;
    return keyRow('told in turn', {
      enough: turn('enough'),
      back: { does: turn('back'), disabled: inTurn.at === 0 },
      'say again': { request: { kind: 'say again', how: 'as before' } },
      listen: { act: { kind: 'listen' } },
      next: { does: turn('next'), tone: 'now', disabled: inTurn.at >= inTurn.items.length - 1 },
    });
  }

  /** Presses the key that bears this number-pad symbol, on a pad or form that lies open or on the screen; false when there is none. */
  pressSymbol(symbol: PadSymbol, atMs: number): boolean {
    const form = this.inside?.renderRoot;
    return (form !== undefined && pressWithin(form, symbol, atMs)) || pressWithin(this.renderRoot, symbol, atMs);
  }

  /** What lies on the sheet with keys of its own, which come first: a form. */
  protected get inside(): LitElement | null {
    return null;
  }

  protected get settings(): Settings {
    return this.view.bench.state.settings;
  }

  protected ask(request: Request): void {
    ask(this, request);
  }

  /** What the last reply adds for the eye; the fraction pad leaves it no room. */
  protected note(): TemplateResult | typeof nothing {
    const note = this.view.bench.conversation.lastReply?.note;
    return note === undefined || note === '' || this.padShown ? nothing : html`<p class="note" role="status">${note}</p>`;
  }
}

/** Goes to a screen. */
export const show = (screen: Screen): { readonly request: Request } => ({ request: { kind: 'show', screen } });
