import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Reply } from '../../core/bench/reply.ts';
import { takenPlan } from '../../core/respond/cuttingState.ts';
import { tellHost } from '../hostPort.ts';
import type { HostAct } from '../hostPort.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';
import './starter.ts';
import type { Starter } from './starter.ts';

const FAULTS_PER_PAGE = 4;

/** Pieces to load, everything to save and to take in again. */
@customElement('bench-files')
export class FilesScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    input { display: none; }
    .head { display: flex; justify-content: space-between; align-items: baseline; }
    .faults { height: 100%; overflow: hidden; line-height: 1.2; display: grid; align-content: safe start; gap: 0.5em; }
    .faults li { border-bottom: 0.1rem solid var(--pencil); padding-bottom: 0.3em; }
  `];

  /** A new piece is being asked for. */
  @state() private making = false;
  /** The answer whose faults were read. */
  @state() private read: Reply | null = null;
  protected fitFaults = new FitText(this, '.faults', [2.4, 2.2, 2, 1.8, 1.6]);

  protected sheet(): TemplateResult {
    if (this.making) return html`<bench-starter .settings=${this.settings} @starter-turned=${() => this.requestUpdate()} @starter-left=${() => { this.making = false; }}></bench-starter>`;
    const faults = this.#faults();
    if (faults.length > 0) return this.#faultList(faults);
    return html`${choiceGrid(this.#choices(), this.page)}
      <input type="file" class="piece" accept=".json,.csv,application/json,text/csv" aria-label="piece file" @change=${(event: Event) => this.#picked(event, (file) => ({ kind: 'open piece file', file }))}>
      <input type="file" class="everything" accept=".json,application/json" aria-label="saved file" @change=${(event: Event) => this.#picked(event, (file) => ({ kind: 'take in everything', file }))}>`;
  }

  keys(): readonly KeySpec[] {
    if (this.making) return this.inside?.keys() ?? [];
    const reading = this.#faults().length > 0;
    return keyRow('files', {
      step: show({ name: 'step' }), ...this.leafKeys(),
      'look again': reading ? null : { act: { kind: 'look for pieces' } },
      'put away': reading ? { does: { here: () => { this.read = this.view.bench.conversation.lastReply; this.page = 0; } }, tone: 'now' } : null,
      menu: show({ name: 'menu' }),
    });
  }

  override get padShown(): boolean {
    return this.inside?.padShown ?? false;
  }

  protected override get inside(): Starter | null {
    return this.making && this.hasUpdated ? this.renderRoot.querySelector('bench-starter') : null;
  }

  protected pages(): number {
    const faults = this.#faults().length;
    return faults > 0 ? Math.ceil(faults / FAULTS_PER_PAGE) : pagesOf(this.#choices().length);
  }

  /** They have the sheet to themselves. */
  protected override note(): TemplateResult | typeof nothing {
    return this.#faults().length > 0 ? nothing : super.note();
  }

  /** What is wrong with the file that was chosen last, until it is put away. */
  #faults(): readonly string[] {
    const { lastReply } = this.view.bench.conversation;
    return lastReply?.signal === 'wrong' && lastReply !== this.read ? (lastReply.note ?? '').split('\n').filter((line) => /^line \d/.test(line)) : [];
  }

  #faultList(faults: readonly string[]): TemplateResult {
    const shown = faults.slice(this.page * FAULTS_PER_PAGE, (this.page + 1) * FAULTS_PER_PAGE);
    return html`<div class="titled"><header class="head"><h1 class="title">The file is not taken.</h1><span class="caption">${this.pageText()}</span></header><ul class="faults">${shown.map((fault) => html`<li>${fault}</li>`)}</ul></div>`;
  }

  #choices(): readonly Choice[] {
    const on = this.view.bench.state.piece?.file.name;
    return [
      { label: 'open a file', detail: 'a piece, or a table of boards', does: { here: () => this.#pick('.piece') } },
      { label: 'save everything', detail: 'piece, journal, settings', does: { act: { kind: 'save everything' } } },
      ...(on === undefined ? [] : [{ label: 'save the piece', detail: 'with boards and plan', does: { request: { kind: 'save piece' } } } satisfies Choice]),
      { label: 'take in', detail: 'what was saved', does: { here: () => this.#pick('.everything') } },
      ...(this.view.bench.state.rack.size === 0 ? [] : [{ label: 'save boards', detail: 'the rack as a table', does: { request: { kind: 'save boards' } } } satisfies Choice]),
      ...(takenPlan(this.view.bench.state) === undefined ? [] : [{ label: 'save the plan', detail: 'the cutting plan as a table', does: { request: { kind: 'save plan' } } } satisfies Choice]),
      { label: 'new piece', detail: 'by questions', does: { here: () => { this.making = true; } } },
      { label: 'demo piece', does: { act: { kind: 'load demo' } } },
      ...this.view.shelf.map(({ name, address }): Choice => ({ label: name, detail: name.startsWith('benchcall backup') ? 'saved everything' : name.endsWith('.csv') ? 'boards for the rack' : 'a piece', does: { act: { kind: 'open from shelf', address } }, ...(name === on ? { chosen: true } : {}) })),
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
