import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { tellHost } from '../hostPort.ts';
import type { HostAct } from '../hostPort.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';

/** Pieces to load, everything to save and to take in again. */
@customElement('bench-files')
export class FilesScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .faults { height: 100%; overflow: hidden; white-space: pre-line; line-height: 1.2; }
    input { display: none; }
  `];

  protected fitFaults = new FitText(this, '.faults', [2.4, 2.1, 1.9, 1.7, 1.5]);

  protected sheet(): TemplateResult {
    return html`${choiceGrid(this.#choices(), this.page)}
      <input type="file" class="piece" accept=".json,application/json" aria-label="piece file" @change=${(event: Event) => this.#picked(event, (file) => ({ kind: 'open piece file', file }))}>
      <input type="file" class="everything" accept=".json,application/json" aria-label="saved file" @change=${(event: Event) => this.#picked(event, (file) => ({ kind: 'take in everything', file }))}>`;
  }

  keys(): readonly KeySpec[] {
    return keyRow('files', { step: show({ name: 'step' }), ...this.leafKeys(), 'look again': { act: { kind: 'look for pieces' } }, menu: show({ name: 'menu' }) });
  }

  protected pages(): number {
    return pagesOf(this.#choices().length);
  }

  #choices(): readonly Choice[] {
    const on = this.view.bench.state.piece?.file.name;
    return [
      { label: 'open a file', detail: 'a piece from anywhere', does: { here: () => this.#pick('.piece') } },
      { label: 'save everything', detail: 'piece, journal, settings', does: { act: { kind: 'save everything' } } },
      { label: 'take in', detail: 'what was saved', does: { here: () => this.#pick('.everything') } },
      { label: 'demo piece', does: { act: { kind: 'load demo' } } },
      ...this.view.shelf.map(({ name, from, address }): Choice => ({ label: name, detail: from, does: { act: { kind: 'open from shelf', address } }, ...(name === on ? { chosen: true } : {}) })),
    ];
  }

  #pick(selector: string): void {
    this.renderRoot.querySelector<HTMLInputElement>(selector)?.click();
  }

  #picked(event: Event, act: (file: File) => HostAct): void {
    const input = event.currentTarget as HTMLInputElement;
    const file = input.files?.[0];
    if (file !== undefined) tellHost(this, act(file));
    // So that the same file can be picked again after it was mended.
    input.value = '';
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-files': FilesScreen }
}
