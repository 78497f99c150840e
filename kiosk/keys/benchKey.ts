import { LitElement, css, html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { ask, tellHost } from '../hostPort.ts';
import { FitText } from '../look/fit.ts';
import { look } from '../look/look.ts';
import '../look/fractionText.ts';
import { padLabel } from './keySpec.ts';
import type { KeySpec } from './keySpec.ts';
import { STUCK_MS, pressGuard } from './pressGuard.ts';

const INSIDE_REM = 8.7;
/** Under the number pad's figure in the corner. */
const BELOW_CORNER_REM = 7;
const LETTER_EM = 0.56;
const LINE_EM = 1.1;

/**
 * A key for a gloved finger: at least 19 mm square. It bears what can be said for it, and in its corner the number-pad key that
 * presses it. One press is one act, however long it is held; a key that stays down is reported as stuck.
 */
@customElement('bench-key')
export class BenchKey extends LitElement {
  static override styles = [look, css`
    :host { display: block; min-width: var(--key); min-height: var(--key); }
    button { position: relative; width: 100%; height: 100%; min-height: var(--key); padding: 0.5rem 0.4rem; border: 0.2rem solid var(--ink); border-radius: 0.8rem;
      background: var(--card); color: var(--ink); font-family: inherit; font-weight: 700; font-size: var(--label, 2.2rem); line-height: 1.1; text-align: center;
      display: flex; align-items: center; justify-content: center; touch-action: manipulation; user-select: none; -webkit-tap-highlight-color: transparent; }
    button:focus { outline: none; }
    button:focus-visible { outline: 0.5rem solid var(--now); outline-offset: 0.2rem; }
    button.now { border-width: 0.4rem; border-color: var(--now); background: var(--now); color: var(--onNow); }
    button.due { background: repeating-linear-gradient(-45deg, var(--due) 0 1.2rem, var(--dueStripe) 1.2rem 2.4rem); color: var(--onDue); }
    button.chosen { border-width: 0.5rem; border-color: var(--now); color: var(--now); }
    button.pressed, button:active { background: var(--pressed); color: var(--ink); border-color: var(--now); }
    button[disabled] { border-style: dashed; border-width: 0.1rem; background: none; color: var(--pencil); font-weight: 400; }
    button[data-pad]::after { content: attr(data-pad) / ''; position: absolute; right: 0.6rem; top: 0.4rem; font-family: var(--figures); font-weight: 400; font-size: 1.6rem; line-height: 1; }
    .label { overflow-wrap: normal; max-width: 100%; max-height: 100%; overflow: hidden; }
    .label.fitted, .label.large { display: grid; align-content: safe center; gap: 0.4rem; width: 100%; height: 100%; padding: 0 1.4rem 0 0.2rem; line-height: 1.1; }
    .detail { font-size: 0.8em; font-weight: 400; }
    .number { font-size: 1.7em; font-weight: 400; }
    .digit { font-family: var(--figures); font-size: 4.4rem; font-weight: 400; }
    .over { display: inline-flex; flex-direction: column; align-items: stretch; font-family: var(--figures); font-size: 3.2rem; line-height: 1; font-weight: 400; }
    .over .box { align-self: center; width: 2rem; height: 2rem; border: 0.2rem dotted currentColor; margin-bottom: 0.5rem; }
    .over .foot { border-top: 0.3rem solid currentColor; padding: 0.5rem 0.8rem 0; }
    .huge { font-size: 2.8em; font-weight: 400; line-height: 1; font-family: var(--figures); }
  `];

  @property({ attribute: false }) spec: KeySpec | null = null;
  /** A key as large as a card: its face may be much larger. */
  @property({ type: Boolean }) large = false;
  /** A key wider than a finger: its face is fitted to the room it has, not to the longest word. */
  @property({ type: Boolean, reflect: true }) wide = false;
  @state() private pressed = false;
  protected fitFace = new FitText(this, '.label.fitted', [2.6, 2.3, 2, 1.8, 1.6, 1.4, 1.25]);
  protected fitLarge = new FitText(this, '.label.large', [5.6, 4.8, 4, 3.4, 2.8, 2.4, 2]);
  #stuck: ReturnType<typeof setTimeout> | undefined;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#stuck);
  }

  override render(): TemplateResult | typeof nothing {
    const spec = this.spec;
    if (spec === null) return nothing;
    const kinds = [spec.tone ?? '', spec.chosen === true ? 'chosen' : '', this.pressed ? 'pressed' : ''].join(' ');
    return html`<button class=${kinds} type="button" ?disabled=${spec.disabled === true} aria-label=${spec.name ?? nothing} aria-keyshortcuts=${spec.pad ?? nothing} data-pad=${spec.pad === undefined ? nothing : padLabel(spec.pad)} aria-pressed=${spec.chosen === undefined ? nothing : String(spec.chosen)}
      @click=${this.#clicked} @pointerdown=${this.#down} @pointerup=${this.#up} @pointercancel=${this.#up} @pointerleave=${this.#up} @keydown=${ignoreRepeat}>
      <span class="label ${this.large ? 'large' : this.wide ? 'fitted' : ''}">${spec.face ?? spec.label}</span>
    </button>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('spec') || this.spec === null || this.wide || this.large) return;
    const words = this.spec.label.split(/[\s-]/);
    const widest = INSIDE_REM / (Math.max(...words.map((word) => word.length)) * LETTER_EM);
    const highest = BELOW_CORNER_REM / (words.length * LINE_EM);
    this.style.setProperty('--label', `min(calc(2.4rem * var(--text, 1)), ${Math.min(widest, highest).toFixed(2)}rem)`);
  }

  /** Presses the key as a finger would; `atMs` defaults to now. For the number pad and the keyboard. */
  press(atMs = performance.now()): void {
    const spec = this.spec;
    if (spec === null || spec.disabled === true) return;
    if (!pressGuard.allows(spec.label, atMs, spec.typing === true)) return;
    this.#flash();
    if ('request' in spec.does) ask(this, spec.does.request);
    else if ('act' in spec.does) tellHost(this, spec.does.act);
    else spec.does.here();
  }

  #clicked(): void {
    this.press();
  }

  #down(): void {
    clearTimeout(this.#stuck);
    this.#stuck = setTimeout(() => tellHost(this, { kind: 'key stuck', label: this.spec?.label ?? '' }), STUCK_MS);
  }

  #up(): void {
    clearTimeout(this.#stuck);
  }

  #flash(): void {
    this.pressed = true;
    setTimeout(() => { this.pressed = false; }, 120);
  }
}

/** A held Enter or Space would click again and again. */
function ignoreRepeat(event: KeyboardEvent): void {
  if (event.repeat) event.preventDefault();
}

declare global {
  interface HTMLElementTagNameMap { 'bench-key': BenchKey }
}
