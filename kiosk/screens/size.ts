import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import type { SizeDescription } from '../../core/piece/describe.ts';
import type { SizeValue } from '../../core/piece/evaluate.ts';
import '../draw/jointDrawing.ts';
import '../draw/partDrawing.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { captionOf, descriptionOf, jointShapeOf, partOf, shapeOf, valueOf } from './pieceView.ts';

/** One size, as large as the screen allows, with what it is measured from and where it lies on the part. */
@customElement('bench-size')
export class SizeScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .size { display: grid; grid-template: auto minmax(0, 1fr) auto / minmax(0, 1fr) minmax(0, 1.15fr); grid-template-areas: 'head head' 'hero drawing' 'basis drawing'; gap: 0.4rem 1.6rem; height: 100%; }
    .size.alone { grid-template-columns: minmax(0, 1fr) 0; }
    .head { grid-area: head; display: flex; gap: 1.2rem; align-items: baseline; flex-wrap: nowrap; white-space: nowrap; overflow: hidden; height: 4.4rem; border-bottom: 0.1rem solid var(--pencil); }
    .head h1 { font-size: inherit; }
    .hero { grid-area: hero; min-height: 0; overflow: hidden; display: flex; align-items: safe center; justify-content: safe center; line-height: 1; }
    .drawing { grid-area: drawing; min-height: 0; }
    .basis { grid-area: basis; font-size: calc(2.2rem * var(--text)); line-height: 1.2; }
    .basis fraction-text { font-size: 1.4em; }
    .critical { border: 0.2rem solid var(--ink); padding: 0 0.6rem; font-weight: 700; font-size: 0.8em; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'size' }>;
  protected fitHead = new FitText(this, '.head', [3.4, 3, 2.7, 2.4, 2.1, 1.9, 1.7]);
  protected fitHero = new FitText(this, '.hero', [20, 18, 16, 14.4, 13, 11.6, 10.4, 9.2, 8, 6.8]);

  protected sheet(): TemplateResult {
    const { state } = this.view.bench;
    const value = valueOf(state, this.screen);
    const description = descriptionOf(state, this.screen.size);
    if (value === undefined || description === undefined) return html`<p class="title">This piece has no size called ${this.screen.size}.</p>`;
    const { owner, say, from } = captionOf(state, this.screen);
    const drawing = this.#drawing(description, owner);
    return html`<div class="size ${drawing === nothing ? 'alone' : ''}">
      <header class="head">${owner === '' ? html`<h1>${say}</h1>` : html`<h1>${owner}</h1><span>${say}</span>`}
        ${from === '' ? nothing : html`<span class="now">${from}</span>`}${description.critical ? html`<span class="critical">must hold</span>` : nothing}</header>
      <div class="hero"><fraction-text .length=${value.length} .rounding=${this.settings.rounding}></fraction-text></div>
      <p class="basis">${this.#basis(value)}</p>
      ${drawing}
    </div>`;
  }

  keys(): readonly KeySpec[] {
    const { state } = this.view.bench;
    const { size, copy } = this.screen;
    const about = { size, ...(copy === undefined ? {} : { copy }) };
    const owner = descriptionOf(state, size)?.owner;
    const part = owner?.kind === 'part' && partOf(state, owner.id) !== undefined ? owner.id : undefined;
    return keyRow('size', {
      part: part === undefined ? { does: show({ name: 'parts' }) } : show({ name: 'part', part, ...(copy === undefined ? {} : { copy }) }),
      why: { request: { kind: 'why', ...about } },
      record: show({ name: 'record', ...about }),
      'digit by digit': { request: { kind: 'say again', how: 'digit by digit' } },
      'say again': { request: { kind: 'size', ...about } },
      listen: { act: { kind: 'listen' } },
      step: show({ name: 'step' }),
    });
  }

  /** Where the size lies, on its part or in its joint. */
  #drawing({ owner, sizeKey }: SizeDescription, name: string): TemplateResult | typeof nothing {
    const { state } = this.view.bench;
    const part = owner.kind === 'part' ? shapeOf(state, owner.id, this.screen.copy) : undefined;
    const joint = owner.kind === 'joint' ? jointShapeOf(state, owner.id) : undefined;
    const { rounding } = this.settings;
    if (part !== undefined) return html`<part-drawing class="drawing" .shape=${part} .rounding=${rounding} .picked=${sizeKey} .name=${name} .units=${[420, 260]} .letter=${20}></part-drawing>`;
    return joint === undefined ? nothing : html`<joint-drawing class="drawing" .shape=${joint} .rounding=${rounding} .picked=${sizeKey} .name=${name}></joint-drawing>`;
  }

  #basis(value: SizeValue): TemplateResult | typeof nothing {
    const plan = html`plan <fraction-text .length=${value.planned} .rounding=${this.settings.rounding}></fraction-text>`;
    switch (value.basis) {
      case 'planned': return nothing;
      case 'measured': return html`as measured · ${plan}`;
      case 'follows': return html`after what was measured · ${plan}`;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-size': SizeScreen }
}
