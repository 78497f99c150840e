import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import type { AirPlace } from '../../core/journal/craft.ts';
import { nanometres, type Length } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import { moistureAt, movingPart, shopMoisture, yearOfPart } from '../../core/respond/woodAsked.ts';
import { buttonFor, roomAt } from '../../core/wood/room.ts';
import { celsiusOf, writeTemperature } from '../../core/wood/temperature.ts';
import '../keys/countPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { choiceGrid, choiceStyles } from './choices.ts';
import type { Choice } from './choices.ts';
import './woodAtRest.ts';
import type { WoodAtRest } from './woodAtRest.ts';

interface Asked {
  readonly say: string;
  readonly unit: string;
  readonly most: number;
  readonly signed: boolean;
  readonly take: (count: number) => void;
}

/** What the air does to the wood: a year of the part that moves most; or parts that rest. */
@customElement('bench-wood')
export class WoodScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, choiceStyles, css`
    .year { display: grid; grid-template-rows: minmax(0, 1fr) calc(2 * var(--key) + var(--gap)); gap: 0.6rem; height: 100%; }
    .told { height: 100%; overflow: hidden; line-height: 1.2; align-content: safe center; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'wood' }>;
  @state() private asked: Asked | null = null;
  @state() private resting = false;
  protected fitTold = new FitText(this, '.told', [2.4, 2.1, 1.9, 1.7, 1.5, 1.35]);

  override get padShown(): boolean {
    return this.asked !== null || (this.inside?.padShown ?? false);
  }

  protected sheet(): TemplateResult {
    const { asked } = this;
    if (asked !== null) {
      return html`<count-pad .asked=${asked.say} .unit=${asked.unit} .least=${0} .most=${asked.most} .signed=${asked.signed} @count-typed=${(event: CustomEvent<number>) => { this.asked = null; asked.take(event.detail); }} @pad-left=${() => { this.asked = null; }}></count-pad>`;
    }
    if (this.resting) return html`<wood-at-rest .view=${this.view} @rest-turned=${() => this.requestUpdate()}></wood-at-rest>`;
    return html`<div class="year">${this.#told()}${choiceGrid(this.#choices(), 0)}</div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.padShown) return [];
    if (this.resting) {
      return keyRow('wood at rest', {
        step: show({ name: 'step' }), 'the year': { here: () => { this.resting = false; } }, settled: { here: () => this.inside?.askSettled() }, 'next part': { here: () => this.inside?.nextPart() },
        listen: { act: { kind: 'listen' } }, menu: show({ name: 'menu' }),
      });
    }
    const part = movingPart(this.view.bench.state, this.screen.part);
    return keyRow('wood', {
      step: show({ name: 'step' }), 'tell me': { request: { kind: 'top in a year', ...(part ? { part: part.id } : {}) } }, 'is it ready': { request: { kind: 'is the stock ready' } },
      'parts at rest': this.view.bench.state.piece ? { here: () => { this.resting = true; } } : null, listen: { act: { kind: 'listen' } }, menu: show({ name: 'menu' }),
    });
  }

  protected override get inside(): WoodAtRest | null {
    return this.renderRoot.querySelector('wood-at-rest');
  }

  #told(): TemplateResult {
    const { bench: { state: bench }, now } = this.view;
    const part = movingPart(bench, this.screen.part);
    const year = part && yearOfPart(bench, part);
    const shop = shopMoisture(bench, now);
    const inShop = shop === undefined ? nothing : html`<p>Wood comes to ${shop.toFixed(1)} % in the shop as it is now.</p>`;
    if (!part) return html`<div class="told"><p>No piece is on the bench.</p>${inShop}</div>`;
    if (year === 'wood') return html`<div class="told"><p>The table of woods has no ${part.species}.</p>${inShop}</div>`;
    if (year === undefined || year === 'house') return html`<div class="told"><p>What is the house like in its driest and its dampest month? Then it can be said what the ${part.name} will do.</p>${inShop}</div>`;
    const percent = (place: 'house dry' | 'house damp'): string => (moistureAt(bench, place) ?? 0).toFixed(1);
    const button = buttonFor(roomAt(year, nanometres(Math.round(year.widest / 2)), year.widest));
    return html`<div class="told"><p><strong>The ${part.name}: ${this.#size(year.shrinks)} narrower in the driest month, ${this.#size(year.swells)} wider in the dampest.</strong></p>
      <p>Buttons: gap ${this.#size(button.gapNow)}, tongue ${this.#size(button.tongue)}, groove ${this.#size(button.groove)}. Flat-sawn ${part.species}, the most that it may move: wood at ${percent('house dry')} % and ${percent('house damp')} %.</p></div>`;
  }

  #size(length: Length): string {
    return writeLength(length, this.settings.rounding);
  }

  #choices(): readonly Choice[] {
    const { airs, stockMoisture, piece, settings: { temperature: scale } } = this.view.bench.state;
    const degrees = (place: AirPlace, say: string): Choice => {
      const tempC = airs.get(place)?.tempC;
      return { label: say, detail: tempC === undefined ? 'how warm?' : writeTemperature(tempC, scale), does: this.#ask({ say: `How warm is the house in its ${say}?`, unit: scale === 'celsius' ? '°C' : '°F', most: scale === 'celsius' ? 50 : 120, signed: true, take: (count) => this.ask({ kind: 'air', place, by: 'said', tempC: celsiusOf(count, scale) }) }) };
    };
    const damp = (place: 'house dry' | 'house damp', say: string): Choice => {
      const percent = airs.get(place)?.humidityPercent;
      return { label: say, detail: percent === undefined ? 'how damp?' : `${Math.round(percent)} %`, does: this.#ask({ say: `How damp is the house in its ${say}?`, unit: '%', most: 95, signed: false, take: (humidityPercent) => this.ask({ kind: 'air', place, by: 'said', humidityPercent }) }) };
    };
    const parts = piece?.file.parts ?? [];
    const at = parts.findIndex(({ id }) => id === movingPart(this.view.bench.state, this.screen.part)?.id);
    const next = parts[(at + 1) % Math.max(1, parts.length)];
    return [
      degrees('house dry', 'driest month'), damp('house dry', 'driest month'), degrees('house damp', 'dampest month'), damp('house damp', 'dampest month'),
      { label: 'stock', detail: stockMoisture === null ? 'how moist?' : `${stockMoisture} %`, does: this.#ask({ say: 'What moisture has the stock?', unit: '%', most: 60, signed: false, take: (percent) => this.ask({ kind: 'stock moisture', percent }) }) },
      { label: 'shop', detail: 'air and glue', does: show({ name: 'air' }) },
      ...(next ? [{ label: 'other part', detail: next.name, does: show({ name: 'wood', part: next.id }) }] : []),
    ];
  }

  #ask(asked: Asked): Choice['does'] {
    return { here: () => { this.asked = asked; } };
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-wood': WoodScreen }
}
