import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Length } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import { allowancesOf } from '../../core/respond/cuttingState.ts';
import { sayOutOfDate } from '../../core/respond/outOfDate.ts';
import { OBJECTIVES } from '../../core/stock/objectives.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { choiceGrid } from './choices.ts';
import type { Choice } from './choices.ts';
import { SettingForm } from './settingForm.ts';

const BY_KIND = ['layerExtra', 'layerWider', 'layerThicker', 'panelExtra', 'panelWider', 'panelThicker', 'resaw'] as const;
type Told = 'kerf' | 'endTrim' | (typeof BY_KIND)[number];
const SAY: Readonly<Record<Told, string>> = {
  kerf: 'what the saw takes', endTrim: 'trimmed off each end', layerExtra: 'layers longer by', layerWider: 'layers wider by', layerThicker: 'layers thicker by',
  panelExtra: 'panel boards longer by', panelWider: 'panel boards wider by', panelThicker: 'panel boards thicker by', resaw: 'a resaw takes (0: none)',
};

/** What is left on the rough sizes, and how it is sawn: each on a key, to see and to change. Lies on the cutting plan's screen. */
@customElement('bench-sawing-form')
export class SawingForm extends SettingForm {
  @state() protected override asking: Told | 'first' | 'by kind' | null = null;

  override render(): TemplateResult {
    const { asking } = this;
    if (asking === null) return html`<div class="titled"><h1 class="title">${sayOutOfDate(this.bench) || 'What is left on rough parts, and how it is sawn'}</h1>${choiceGrid(this.#all(), 0)}</div>`;
    if (asking === 'by kind') return html`<div class="titled"><h1 class="title">Left on besides, by how a part is made; and resawing</h1>${choiceGrid(BY_KIND.map((told) => this.#own(told)), 0)}</div>`;
    if (asking === 'first') return html`<div class="titled"><h1 class="title">What counts first in the plan?</h1>${choiceGrid(OBJECTIVES.map((first): Choice => ({ label: first, chosen: first === this.bench.sawing.first, does: { here: () => this.tell({ first }) } })), 0)}</div>`;
    return this.askLength({ what: SAY[asking], beside: `now ${this.#write(this.bench.sawing[asking])}`, unit: this.bench.settings.rounding.unit, usual: this.bench.sawing[asking], take: (length) => { this.tell({ [asking]: length }); } });
  }

  get padShown(): boolean {
    return this.asking !== null && this.asking !== 'first' && this.asking !== 'by kind';
  }

  keys(): readonly KeySpec[] {
    return this.padShown ? [] : keyRow('form', { leave: { here: () => { this.leave(); } } });
  }

  /** The allowances are sizes of the piece: they are told as every size is. */
  #all(): readonly Choice[] {
    const sizes = allowancesOf(this.bench).filter(({ size }) => size !== 'allowance.afterRest');
    return [
      ...sizes.map(({ size, say, length }): Choice => ({ label: `over the ${say}`, detail: this.#write(length), does: { request: { kind: 'show', screen: { name: 'record', size } } } })),
      this.#own('kerf'), this.#own('endTrim'),
      { label: 'layers, panels', detail: 'and resawing', does: { here: () => { this.asking = 'by kind'; } } },
      { label: 'part by part', detail: 'made up, and hidden faces', does: { request: { kind: 'show', screen: { name: 'rough' } } } },
      { label: 'what counts first', detail: this.bench.sawing.first, does: { here: () => { this.asking = 'first'; } } },
    ];
  }

  #own(told: Told): Choice {
    return { label: SAY[told], detail: this.#write(this.bench.sawing[told]), does: { here: () => { this.asking = told; } } };
  }

  #write(length: Length): string {
    return writeLength(length, this.bench.settings.rounding);
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-sawing-form': SawingForm }
}
