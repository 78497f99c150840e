import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { listFaces } from '../../core/faces/likes.ts';
import { marksFor } from '../../core/joint/marks.ts';
import { sizesOf } from '../../core/respond/views.ts';
import type { SizeName } from '../../core/piece/measurement.ts';
import '../draw/partDrawing.ts';
import type { KeySpec, PadSymbol } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { captionOf, partOf, shapeOf, sizeText, sizesOfPart } from './pieceView.ts';

const SIZES_PER_PAGE = 4;

/** A part: its drawing with the reference marks, and its sizes as keys. */
@customElement('bench-part')
export class PartScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .part { display: grid; grid-template-rows: auto minmax(0, 1fr) auto; gap: 0.4rem; height: 100%; }
    .head { display: flex; gap: 1.2rem; align-items: baseline; white-space: nowrap; overflow: hidden; }
    .sizes { display: grid; grid-template-columns: repeat(${SIZES_PER_PAGE}, minmax(var(--key), 1fr)); gap: var(--gap); grid-auto-rows: 11.2rem; }
    .drawing { min-height: 0; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'part' }>;
  @state() private page = 0;

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('screen')) this.page = 0;
  }

  protected sheet(): TemplateResult {
    const { state } = this.view.bench;
    const { part: id, copy } = this.screen;
    const part = partOf(state, id);
    const shape = shapeOf(state, id, copy);
    if (part === undefined || shape === undefined) return html`<p class="title">This piece has no part called ${id}.</p>`;
    const place = copy === undefined ? undefined : state.places.get(`${id}/${copy}`);
    const which = copy === undefined ? (part.count === 1 ? '' : `${part.count} of them`) : `${copy} of ${part.count}${place === undefined ? '' : `, ${place}`}`;
    return html`<div class="part">
      <header class="head"><h1 class="title">${part.name}</h1><span class="caption">${[which, part.species, madeOf(part.made), shape.faces === undefined ? '' : `mortises in ${listFaces(shape.faces.mortised)}`].filter(Boolean).join(' · ')}</span></header>
      <part-drawing class="drawing" .shape=${shape} .rounding=${this.settings.rounding} .name=${part.name} .units=${[784, 154]} .letter=${26}></part-drawing>
      <div class="sizes">${this.#shown().map((name, index) => html`<bench-key wide .spec=${this.#sizeKey(name, index)}></bench-key>`)}</div></div>`;
  }

  keys(): readonly KeySpec[] {
    const all = sizesOfPart(this.view.bench.state, this.screen.part);
    const pages = Math.max(1, Math.ceil(all.length / SIZES_PER_PAGE));
    return keyRow('part', {
      parts: show({ name: 'parts' }),
      faces: partOf(this.view.bench.state, this.screen.part)?.places === undefined ? null : show({ name: 'faces', part: this.screen.part, ...(this.screen.copy === undefined ? {} : { copy: this.screen.copy }) }),
      layout: this.#isMarked() ? { request: { kind: 'layout face', part: this.screen.part, ...(this.screen.copy === undefined ? {} : { copy: this.screen.copy }) } } : null,
      'other sizes': pages === 1 ? null : { here: () => { this.page = (this.page + 1) % pages; } },
      listen: { act: { kind: 'listen' } },
      menu: show({ name: 'menu' }),
      step: show({ name: 'step' }),
    });
  }

  #isMarked(): boolean {
    const { piece } = this.view.bench.state;
    const sizes = sizesOf(this.view.bench.state);
    return piece !== null && sizes !== null && marksFor(piece, sizes, this.screen.part).length > 0;
  }

  #shown(): readonly SizeName[] {
    return sizesOfPart(this.view.bench.state, this.screen.part).slice(this.page * SIZES_PER_PAGE, (this.page + 1) * SIZES_PER_PAGE);
  }

  #sizeKey(size: SizeName, index: number): KeySpec {
    const { state } = this.view.bench;
    const mention = { size, ...(this.screen.copy === undefined ? {} : { copy: this.screen.copy }) };
    const { owner, say } = captionOf(state, mention);
    const label = size.startsWith(`${this.screen.part}.`) ? say : `${owner}, ${say}`;
    return { label, pad: String(index + 1) as PadSymbol, does: { request: { kind: 'size', ...mention } }, face: html`<span class="detail">${label}</span><span class="number">${sizeText(state, mention)}</span>` };
  }
}

function madeOf(made: { readonly kind: string; readonly layers?: number; readonly boards?: number }): string {
  if (made.layers !== undefined) return `laminated, ${made.layers} layers`;
  return made.boards === undefined ? '' : `panel of ${made.boards} boards`;
}

declare global {
  interface HTMLElementTagNameMap { 'bench-part': PartScreen }
}
