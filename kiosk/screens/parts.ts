import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { pluralOf } from '../../core/piece/describe.ts';
import type { Part } from '../../core/piece/file.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';
import { partOf, sizeText } from './pieceView.ts';

/** Finding a part: a key for each, then a key for each of its copies. */
@customElement('bench-parts')
export class PartsScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .head { display: flex; gap: 1.2rem; align-items: baseline; justify-content: space-between; white-space: nowrap; overflow: hidden; }
  `];

  @state() private whose: string | null = null;

  protected sheet(): TemplateResult {
    const part = this.whose === null ? undefined : partOf(this.view.bench.state, this.whose);
    const name = part === undefined ? (this.view.bench.state.piece?.file.name ?? 'No piece is on the bench') : `Which ${part.name}?`;
    return html`<div class="titled"><header class="head"><h1 class="title">${name}</h1><span class="caption">${this.pageText()}</span></header>${choiceGrid(this.#choices(), this.page)}</div>`;
  }

  keys(): readonly KeySpec[] {
    const leaf = this.leafKeys();
    return keyRow('parts', {
      step: show({ name: 'step' }),
      back: this.whose !== null && this.page === 0 ? { here: () => { this.whose = null; } } : leaf.back,
      next: leaf.next,
      listen: { act: { kind: 'listen' } },
      menu: show({ name: 'menu' }),
    });
  }

  protected pages(): number {
    return pagesOf(this.#choices().length);
  }

  #choices(): readonly Choice[] {
    const { state } = this.view.bench;
    const part = this.whose === null ? undefined : partOf(state, this.whose);
    return part === undefined ? (state.piece?.file.parts ?? []).map((each) => this.#partChoice(each)) : this.#copies(part);
  }

  #partChoice(part: Part): Choice {
    const { state } = this.view.bench;
    const measured = state.measurements.some(({ size, copy }) => copy !== undefined && size.startsWith(`${part.id}.`));
    return {
      label: part.count === 1 ? part.name : `${part.count} ${part.plural ?? pluralOf(part.name)}`,
      detail: html`${sizeText(state, { size: `${part.id}.length` })}`,
      // Copies matter once they differ: as soon as one of them was measured.
      does: measured && part.count > 1 ? { here: () => { this.whose = part.id; this.page = 0; } } : show({ name: 'part', part: part.id }),
    };
  }

  #copies(part: Part): readonly Choice[] {
    const { places } = this.view.bench.state;
    return [
      { label: 'all of them', does: show({ name: 'part', part: part.id }) },
      ...Array.from({ length: part.count }, (_, index): Choice => {
        const place = places.get(`${part.id}/${index + 1}`);
        return { label: `${part.name} ${index + 1}`, figure: index + 1, ...(place === undefined ? {} : { detail: place }), does: show({ name: 'part', part: part.id, copy: index + 1 }) };
      }),
    ];
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-parts': PartsScreen }
}
