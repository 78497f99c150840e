import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { careDue, type EdgeWear } from '../../core/edge/upkeep.ts';
import { countedUntil, EDGES, wearOf, type EdgeName } from '../../core/journal/edges.ts';
import { upkeepOf } from '../../core/respond/edgeUpkeep.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';

const WANTS = { stropped: 'wants the strop', honed: 'wants honing', ground: 'wants grinding' } as const;

/** Every edge with what it has cut since it was honed, and what it wants; one of them is chosen, and the keys act on it. */
@customElement('bench-edges')
export class EdgesScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles];

  @state() private chosen: EdgeName | null = null;

  protected sheet(): TemplateResult {
    const { cutting } = this.view.bench.state;
    return html`<div class="titled"><h1 class="title">${cutting === null ? 'Which edge?' : `The ${cutting.edge} is cutting.`}</h1>${choiceGrid(this.#choices(), this.page)}</div>`;
  }

  keys(): readonly KeySpec[] {
    const edge = this.#edge();
    const { cutting } = this.view.bench.state;
    return keyRow('edges', {
      step: show({ name: 'step' }),
      next: pagesOf(EDGES.length) === 1 ? null : { here: () => { this.page = (this.page + 1) % this.pages(); } },
      cutting: cutting === null ? { request: { kind: 'cutting begins', edge } } : null,
      stopped: cutting === null ? null : { request: { kind: 'cutting stops' } },
      stropped: { request: { kind: 'edge care', edge, care: 'stropped' } },
      honed: { request: { kind: 'edge care', edge, care: 'honed' } },
      ground: { request: { kind: 'edge care', edge, care: 'ground' } },
      menu: show({ name: 'menu' }),
    });
  }

  protected pages(): number {
    return pagesOf(EDGES.length);
  }

  #edge(): EdgeName {
    return this.chosen ?? this.view.bench.state.cutting?.edge ?? 'chisel';
  }

  #choices(): readonly Choice[] {
    const { state } = this.view.bench;
    const counted = countedUntil(state, this.view.now);
    return EDGES.map((edge) => {
      const wear = wearOf(counted, edge);
      const due = careDue(wear, upkeepOf(state));
      return { label: edge, detail: due === undefined ? cutWords(wear, state.edges.has(edge)) : WANTS[due], chosen: edge === this.#edge(), does: { here: () => { this.chosen = edge; } }, ...(due === undefined ? {} : { tone: 'due' as const }) };
    });
  }
}

function cutWords({ minutesSinceHoning, stropsSinceHoning }: EdgeWear, known: boolean): string {
  if (!known) return 'nothing told';
  const minutes = Math.round(minutesSinceHoning);
  return minutes === 0 && stropsSinceHoning === 0 ? 'fresh' : `${minutes} min since honed`;
}

declare global {
  interface HTMLElementTagNameMap { 'bench-edges': EdgesScreen }
}
