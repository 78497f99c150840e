import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Request } from '../../core/bench/request.ts';
import { sayDuration } from '../../core/clock/sayDuration.ts';
import type { Label } from '../../core/glue/adhesive.ts';
import { sayReasons, sayRemedy, sayVerdict } from '../../core/glue/telling.ts';
import type { AirPlace } from '../../core/journal/craft.ts';
import { adhesiveOf, tonightOf } from '../../core/respond/evening.ts';
import { celsiusOf, writeTemperature } from '../../core/wood/temperature.ts';
import '../keys/countPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { choiceGrid, choiceStyles } from './choices.ts';
import type { Choice } from './choices.ts';

/** What is asked for on the pad: its sentence, unit and limits, and the request that a number makes. */
interface Asked {
  readonly say: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly signed: boolean;
  readonly request: (count: number) => Request;
}

/** Whether this glue will work tonight: the verdict and its reasons, what is known of shop, wood, glue and label, each on a key that asks for it anew. */
@customElement('bench-air')
export class AirScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, choiceStyles, css`
    .tonight { display: grid; grid-template-rows: minmax(0, 1fr) calc(2 * var(--key) + var(--gap)); gap: 0.6rem; height: 100%; }
    .verdict { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 1.6rem; align-items: center; overflow: hidden; }
    .mark { font-size: 3.2rem; line-height: 1.05; font-weight: 700; border: 0.3rem solid currentColor; padding: 0.4rem 1rem; max-width: 22rem; text-align: center; }
    .mark.go { color: var(--onNow); background: var(--now); border-color: var(--now); }
    .why { height: 100%; overflow: hidden; line-height: 1.15; align-content: safe center; }
  `];

  @state() private asked: Asked | null = null;
  protected fitWhy = new FitText(this, '.why', [2.2, 2, 1.8, 1.6, 1.45, 1.3]);

  override get padShown(): boolean {
    return this.asked !== null;
  }

  protected sheet(): TemplateResult {
    const { asked } = this;
    if (asked !== null) {
      return html`<count-pad .asked=${asked.say} .unit=${asked.unit} .least=${asked.least} .most=${asked.most} .signed=${asked.signed} @count-typed=${(event: CustomEvent<number>) => { this.asked = null; this.ask(asked.request(event.detail)); }} @pad-left=${() => { this.asked = null; }}></count-pad>`;
    }
    return html`<div class="tonight">${this.#verdict()}${choiceGrid(this.#choices(), 0)}</div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.padShown) return [];
    return keyRow('air', {
      step: show({ name: 'step' }), why: { request: { kind: 'glue tonight' } }, 'warm up': { request: { kind: 'how long to warm' } }, 'glue-up': show({ name: 'gluing' }),
      listen: { act: { kind: 'listen' } }, menu: show({ name: 'menu' }),
    });
  }

  #verdict(): TemplateResult {
    const { bench, now } = this.view;
    const found = tonightOf(bench.state, now);
    const { kind } = adhesiveOf(bench.state);
    if (!found) return html`<div class="verdict"><p class="mark">?</p><p class="why">How warm is the shop? Press its key, or say: the shop is twelve degrees, sixty percent. Glue: ${kind}.</p></div>`;
    const scale = this.settings.temperature;
    const remedy = sayRemedy(found, scale);
    const times = found.verdict === 'do not' ? [] : [`open ${sayDuration(found.times.openMs)}, clamps ${sayDuration(found.times.clampMs)}, safe to work in ${sayDuration(found.times.workMs)}`];
    const lines = [...sayReasons(found.reasons, scale), ...(remedy === '' ? [] : [remedy]), ...times];
    return html`<div class="verdict"><p class="mark ${found.verdict === 'do not' ? 'due' : found.verdict === 'go' ? 'go' : ''}">${sayVerdict(found)}</p>
      <ul class="why">${lines.map((line) => html`<li>${line.charAt(0).toUpperCase()}${line.slice(1)}.</li>`)}</ul></div>`;
  }

  #choices(): readonly Choice[] {
    const { airs, settings: { temperature: scale } } = this.view.bench.state;
    const { label, basis } = adhesiveOf(this.view.bench.state);
    const degrees = (place: AirPlace, say: string): Choice => {
      const tempC = airs.get(place)?.tempC;
      return { label: say, detail: tempC === undefined ? (place === 'shop' ? 'not told' : 'as the shop') : writeTemperature(tempC, scale), does: this.#askDegrees(`How warm is the ${say}?`, (value) => ({ kind: 'air', place, by: 'said', tempC: value })) };
    };
    const humidity = airs.get('shop')?.humidityPercent;
    return [
      degrees('shop', 'shop'),
      { label: 'humidity', detail: humidity === undefined ? 'not told' : `${Math.round(humidity)} %`, does: this.#askCount({ say: 'How damp is the shop?', unit: '%', least: 0, most: 100, signed: false, request: (humidityPercent) => ({ kind: 'air', place: 'shop', by: 'said', humidityPercent }) }) },
      degrees('wood', 'wood'), degrees('glue', 'glue'),
      this.#labelChoice('open time', 'openMinutes', `${label.openMinutes} min, ${basis.openMinutes}`), this.#labelChoice('clamp time', 'clampMinutes', `${label.clampMinutes} min, ${basis.clampMinutes}`),
      { label: 'not under', detail: `${writeTemperature(label.lowestC, scale)}, ${basis.lowestC}`, does: this.#askDegrees('What lowest temperature does the label give?', (lowestC) => ({ kind: 'label', label: { lowestC } })) },
      { label: 'degrees', detail: scale === 'celsius' ? '°C' : '°F', does: { request: { kind: 'set', setting: { temperature: scale === 'celsius' ? 'fahrenheit' : 'celsius' } } } },
    ];
  }

  #labelChoice(say: string, key: 'openMinutes' | 'clampMinutes', detail: string): Choice {
    const label = (minutes: number): Partial<Label> => (key === 'openMinutes' ? { openMinutes: minutes } : { clampMinutes: minutes });
    return { label: say, detail, does: this.#askCount({ say: `What ${say} does the label give?`, unit: 'min', least: 1, most: key === 'openMinutes' ? 600 : 6000, signed: false, request: (minutes) => ({ kind: 'label', label: label(minutes) }) }) };
  }

  #askDegrees(say: string, request: (tempC: number) => Request): Choice['does'] {
    const scale = this.settings.temperature;
    return this.#askCount({ say, unit: scale === 'celsius' ? '°C' : '°F', least: 0, most: scale === 'celsius' ? 60 : 140, signed: true, request: (value) => request(celsiusOf(value, scale)) });
  }

  #askCount(asked: Asked): Choice['does'] {
    return { here: () => { this.asked = asked; } };
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-air': AirScreen }
}
