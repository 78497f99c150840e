import { LitElement, css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Request } from '../../core/bench/request.ts';
import type { Length } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import { craftOf } from '../../core/respond/evening.ts';
import { restReadings, sayRest } from '../../core/respond/woodAsked.ts';
import { restVerdict } from '../../core/wood/rest.ts';
import type { PartCopy } from '../../core/work/step.ts';
import type { KioskView } from '../hostPort.ts';
import { ask } from '../hostPort.ts';
import '../keys/countPad.ts';
import '../keys/fractionPad.ts';
import { look } from '../look/look.ts';
import { choiceGrid, choiceStyles } from './choices.ts';

const HEAVIEST_GRAMS = 99_999;

/** Parts that rest after the saw: bow, wind and weight of each, and whether it has settled. Lies on the wood screen, which draws its keys. */
@customElement('wood-at-rest')
export class WoodAtRest extends LitElement {
  static override styles = [look, choiceStyles, css`
    :host { display: block; height: 100%; }
    .rest { display: grid; grid-template-rows: auto minmax(0, 1fr) calc(2 * var(--key) + var(--gap)); gap: 0.6rem; height: 100%; }
    .verdict { font-size: calc(2.4rem * var(--text)); font-weight: 700; line-height: 1.15; }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
  `];

  @property({ attribute: false }) view!: KioskView;
  @state() private at = 0;
  @state() private asking: 'bow' | 'wind' | 'weight' | null = null;

  get padShown(): boolean {
    return this.asking !== null;
  }

  nextPart(): void {
    this.at += 1;
  }

  askSettled(): void {
    const { part, copy } = this.#copy();
    if (part !== '') ask(this, { kind: 'is it settled', part, copy });
  }

  override render(): TemplateResult {
    const { settings } = this.view.bench.state;
    const { part, copy } = this.#copy();
    const name = `${this.view.bench.state.piece?.file.parts.find(({ id }) => id === part)?.name ?? part} ${copy}`;
    if (this.asking === 'weight') {
      return html`<count-pad .asked=${`What does ${name} weigh?`} unit="g" .most=${HEAVIEST_GRAMS} @count-typed=${(event: CustomEvent<number>) => this.#take({ grams: event.detail })} @pad-left=${() => this.#turn(null)}></count-pad>`;
    }
    if (this.asking !== null) {
      const what = this.asking;
      return html`<fraction-pad .unit=${settings.rounding.unit} @length-typed=${(event: CustomEvent<Length>) => this.#take({ [what]: event.detail })} @pad-left=${() => this.#turn(null)}><p class="what">${what} of ${name}</p></fraction-pad>`;
    }
    const last = craftOf(this.view.bench.state).rests.findLast((one) => one.part === part && (one.copy ?? 1) === copy);
    const written = (length: Length | undefined): string => (length === undefined ? 'not measured' : writeLength(length, settings.rounding));
    return html`<div class="rest"><h1 class="title">${name} at rest</h1><p class="verdict">${sayRest(restVerdict(restReadings(this.view.bench.state, part, copy)))}</p>
      ${choiceGrid([
        { label: 'bow', detail: written(last?.bow), does: { here: () => this.#turn('bow') } }, { label: 'wind', detail: written(last?.wind), does: { here: () => this.#turn('wind') } },
        { label: 'weight', detail: last?.grams === undefined ? 'not weighed' : `${last.grams} g`, does: { here: () => this.#turn('weight') } },
      ], 0)}</div>`;
  }

  #turn(asking: WoodAtRest['asking']): void {
    this.asking = asking;
    void this.updateComplete.then(() => this.dispatchEvent(new CustomEvent('rest-turned')));
  }

  #take(seen: Pick<Extract<Request, { kind: 'rest seen' }>, 'bow' | 'wind' | 'grams'>): void {
    const { part, copy } = this.#copy();
    this.#turn(null);
    if (part !== '') ask(this, { kind: 'rest seen', part, copy, ...seen });
  }

  /** Every copy of every part, round and round. */
  #copy(): PartCopy {
    const copies = (this.view.bench.state.piece?.file.parts ?? []).flatMap(({ id, count }) => Array.from({ length: count }, (_, index): PartCopy => ({ part: id, copy: index + 1 })));
    return copies[this.at % Math.max(1, copies.length)] ?? { part: '', copy: 1 };
  }
}

declare global {
  interface HTMLElementTagNameMap { 'wood-at-rest': WoodAtRest }
}
