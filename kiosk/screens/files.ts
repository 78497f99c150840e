import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { tellHost } from '../hostPort.ts';
import type { HostAct } from '../hostPort.ts';
import type { KeySpec, PadSymbol } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';
import './starter.ts';
import type { Starter } from './starter.ts';

/** Pieces to load, everything to save and to take in again. */
@customElement('bench-files')
export class FilesScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    input { display: none; }
  `];

  /** A new piece is being asked for. */
  @state() private making = false;

  protected sheet(): TemplateResult {
    if (this.making) return html`<bench-starter .settings=${this.settings} @starter-turned=${() => this.requestUpdate()} @starter-left=${() => { this.making = false; }}></bench-starter>`;
    return html`${choiceGrid(this.#choices(), this.page)}
      <input type="file" class="piece" accept=".json,application/json" aria-label="piece file" @change=${(event: Event) => this.#picked(event, (file) => ({ kind: 'open piece file', file }))}>
      <input type="file" class="everything" accept=".json,application/json" aria-label="saved file" @change=${(event: Event) => this.#picked(event, (file) => ({ kind: 'take in everything', file }))}>`;
  }

  keys(): readonly KeySpec[] {
    if (this.making) return this.#starter()?.keys() ?? [];
    return keyRow('files', { step: show({ name: 'step' }), ...this.leafKeys(), 'look again': { act: { kind: 'look for pieces' } }, menu: show({ name: 'menu' }) });
  }

  override get padShown(): boolean {
    return this.#starter()?.padShown ?? false;
  }

  override pressSymbol(symbol: PadSymbol, atMs: number): boolean {
    const pad = this.#starter()?.renderRoot.querySelector('fraction-pad');
    if (pad) return pad.pressSymbol(symbol, atMs);
    const below = [...this.#starter()?.renderRoot.querySelectorAll('bench-key') ?? []].find((key) => key.spec?.pad === symbol);
    below?.press(atMs);
    return below !== undefined || super.pressSymbol(symbol, atMs);
  }

  #starter(): Starter | null {
    return this.making && this.hasUpdated ? this.renderRoot.querySelector('bench-starter') : null;
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
      { label: 'new piece', detail: 'by questions', does: { here: () => { this.making = true; } } },
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
