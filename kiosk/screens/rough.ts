import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import type { Length } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import { partsRough } from '../../core/respond/cuttingState.ts';
import { cutName, partsInTheRough, type InTheRough } from '../../core/respond/rough.ts';
import { roughSize, type PartRough } from '../../core/stock/rough.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';

type More = 'longer' | 'wider' | 'thicker';

/** A part a page as it is cut: every rough size with what it is made of, what is left on this part besides, and whether it may hide a knot. */
@customElement('bench-rough')
export class RoughScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .rough { height: 100%; overflow: hidden; line-height: 1.2; display: grid; align-content: safe start; gap: 0.5em; }
    .head { display: flex; justify-content: space-between; gap: 1.2rem; }
    .side { border-top: 0.1rem solid var(--pencil); padding-top: 0.2em; display: grid; grid-template-columns: 5.4em 7.4em 1fr; gap: 0.6em; }
    .side b { white-space: nowrap; }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
    .beside { font-size: calc(1.8rem * var(--text)); color: var(--pencil); line-height: 1.05; }
  `];

  @property({ attribute: false }) screen: Extract<Screen, { name: 'rough' }> = { name: 'rough' };
  @state() private asking: More | null = null;
  protected fitRough = new FitText(this, '.rough', [2.6, 2.4, 2.2, 2, 1.8, 1.65, 1.5]);

  protected sheet(): TemplateResult {
    const parts = this.#parts();
    const at = this.#at(parts);
    const shown = parts[at];
    if (shown === undefined) return html`<div class="rough"><h1>No piece is on the bench.</h1><p>Open the menu and choose files.</p></div>`;
    if (this.asking !== null) return this.#pad(shown, this.asking);
    return html`<div class="rough"><header class="head"><h1 class="title">${cutName(shown.part)}, in the rough</h1><span class="caption">${at + 1} of ${parts.length} parts</span></header>
      ${shown.sides.map((side) => this.#drawSide(side))}
      <p class="side"><span>faces</span><b>${shown.mayHideDefect ? 'one is hidden' : 'clear on both'}</b><span>${shown.mayHideDefect ? 'what shows on one face of the board may lie in it, and goes to its hidden face' : 'nothing that is told of a board lies in it'}</span></p></div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.asking !== null) return [];
    const parts = this.#parts();
    const at = this.#at(parts);
    const shown = parts[at];
    const turn = (to: InTheRough | undefined) => ({ does: show(to === undefined ? { name: 'rough' } : { name: 'rough', part: to.part.id }), disabled: to === undefined });
    const more = (asking: More) => (shown === undefined ? null : { here: () => { this.asking = asking; } });
    return keyRow('rough parts', {
      'all sizes': show({ name: 'cutting', sizes: true }),
      back: turn(parts[at - 1]), next: turn(parts[at + 1]),
      longer: more('longer'), wider: more('wider'), thicker: more('thicker'),
      'hide a knot': shown === undefined ? null : { does: { request: { kind: 'part rough', part: shown.part.id, rough: { mayHideDefect: !shown.mayHideDefect } } }, chosen: shown.mayHideDefect },
      step: parts.length === 0 ? show({ name: 'step' }) : null,
    });
  }

  override get padShown(): boolean {
    return this.asking !== null;
  }

  /** What was told stands on the sheet already. */
  protected override note(): typeof nothing {
    return nothing;
  }

  #parts(): readonly InTheRough[] {
    return partsInTheRough(this.view.bench.state);
  }

  #at(parts: readonly InTheRough[]): number {
    return Math.max(0, parts.findIndex(({ part }) => part.id === this.screen.part));
  }

  #drawSide({ side, terms }: InTheRough['sides'][number]): TemplateResult {
    const made = terms.map(({ what, length }) => `${this.#write(length)} ${what}`).join(' + ');
    return html`<p class="side"><span>${side}</span><b>${this.#write(roughSize(terms))}</b><span>${made}</span></p>`;
  }

  #pad({ part }: InTheRough, asking: More): TemplateResult {
    const now = partsRough(this.view.bench.state).get(part.id)?.[asking];
    return html`<fraction-pad .unit=${this.settings.rounding.unit} @length-typed=${(event: CustomEvent<Length>) => this.#tell(part.id, { [asking]: event.detail })} @pad-left=${() => { this.asking = null; }}>
      <p class="what">${cutName(part)}: ${asking} still, by</p><p class="beside" slot="beside">now ${now === undefined ? 'as the others' : this.#write(now)}</p></fraction-pad>`;
  }

  #write(length: Length): string {
    return writeLength(length, this.settings.rounding);
  }

  #tell(part: string, rough: PartRough): void {
    this.asking = null;
    this.ask({ kind: 'part rough', part, rough });
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-rough': RoughScreen }
}
