import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Length } from '../../core/length/length.ts';
import { whatMoved, type Moved } from '../../core/piece/moved.ts';
import { sayHeld, sortedMoves } from '../../core/respond/consequences.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { show } from './benchScreen.ts';
import { LeafingScreen } from './leafing.ts';
import { captionOf } from './pieceView.ts';

const ROWS_PER_PAGE = 4;

interface Row {
  readonly move: Moved;
  /** What it means at the bench. */
  readonly means: 'measured' | 'cut it so' | 'cut already' | 'now';
}

/** What stands off the plan as made: what is still to be cut differently first, with old and new size from its reference, then what is cut already, then what was measured. */
@customElement('bench-moved')
export class MovedScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, css`
    .head { display: flex; gap: 1.2rem; align-items: baseline; justify-content: space-between; }
    .held { font-size: calc(2rem * var(--text)); line-height: 1.1; }
    .moved { display: grid; grid-auto-rows: minmax(0, max-content); align-content: start; min-height: 0; list-style: none; }
    li { display: grid; grid-template-columns: minmax(0, 1fr) auto auto auto; gap: 1.4rem; align-items: center; border-top: 0.1rem solid var(--pencil); line-height: 1.05; padding: 0.4rem 0; }
    .what { font-size: calc(2.5rem * var(--text)); font-weight: 700; }
    .from { display: block; font-size: calc(1.8rem * var(--text)); font-weight: 400; color: var(--pencil); }
    .means { font-size: calc(2rem * var(--text)); white-space: nowrap; }
    .cut { border: 0.25rem solid var(--ink); padding: 0.2rem 0.6rem; font-weight: 700; }
    .old { font-size: calc(2rem * var(--text)); color: var(--pencil); white-space: nowrap; }
    .new { font-size: calc(3.6rem * var(--text)); min-width: 11rem; text-align: right; }
  `];

  protected sheet(): TemplateResult {
    const rows = this.#rows();
    if (rows.length === 0) return html`<p class="title">Nothing has moved. All is as planned.</p>`;
    const page = rows.slice(this.page * ROWS_PER_PAGE, (this.page + 1) * ROWS_PER_PAGE);
    return html`<div class="titled"><header class="head"><span class="held">${sayHeld(this.view.bench.state)}</span><span class="caption">${this.pageText()}</span></header>
      <ol class="moved">${page.map((row) => this.#drawn(row))}</ol></div>`;
  }

  keys(): readonly KeySpec[] {
    return keyRow('moved', {
      step: show({ name: 'step' }),
      ...this.leafKeys(),
      'what fits': { request: { kind: 'what no longer fits' } },
      listen: { act: { kind: 'listen' } },
      menu: show({ name: 'menu' }),
    });
  }

  protected pages(): number {
    return Math.max(1, Math.ceil(this.#rows().length / ROWS_PER_PAGE));
  }

  #drawn({ move, means }: Row): TemplateResult {
    const { owner, say, from } = captionOf(this.view.bench.state, move);
    return html`<li><span class="what">${[owner, say].filter(Boolean).join(', ')}${from === '' ? nothing : html`<span class="from">${from}</span>`}</span>
      <span class="means ${means === 'cut already' ? 'cut' : ''}">${means}</span><span class="old">was ${this.#size(move.from)}</span><span class="new">${this.#size(move.to)}</span></li>`;
  }

  #size(length: Length): TemplateResult {
    return html`<fraction-text .length=${length} .rounding=${this.settings.rounding}></fraction-text>`;
  }

  #rows(): readonly Row[] {
    const { state } = this.view.bench;
    if (state.piece === null) return [];
    const { toCut, cut, named } = sortedMoves(state, []);
    const measured = whatMoved(state.piece, [], state.measurements).filter(({ basis }) => basis === 'measured');
    return ([['cut it so', toCut], ['cut already', cut], ['now', named], ['measured', measured]] as const).flatMap(([means, moves]) => moves.map((move): Row => ({ move, means })));
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-moved': MovedScreen }
}
