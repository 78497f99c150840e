import { LitElement, css, html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { GapSense } from '../../core/bench/request.ts';
import { nanometres, ZERO_LENGTH, type Length } from '../../core/length/length.ts';
import { sensesOf, SENSE_WORDS } from '../../core/respond/truingReading.ts';
import { sideToTrue } from '../../core/respond/truingSide.ts';
import { isOfBoard } from '../../core/true/readings.ts';
import { onPaper, questionOf, writeSide } from '../../core/respond/truingWords.ts';
import type { KioskView } from '../hostPort.ts';
import { ask } from '../hostPort.ts';
import '../keys/countPad.ts';
import '../keys/fractionPad.ts';
import { FitText } from '../look/fit.ts';
import { look } from '../look/look.ts';
import { choiceGrid, choiceStyles } from './choices.ts';
import type { Choice } from './choices.ts';
import { keySize, READING_TITLES, smallStep, usualReadings } from './truingView.ts';
import type { AskedReading } from './truingView.ts';

/** Half an inch of light under a straightedge is no reading any more. */
const MOST_SMALL = { inch: 500, millimetre: 1200 } as const;

/** A reading that the guide waits for: which way it goes, then how much, by one press where it is a usual gap. Lies on the truing screen, which draws its keys. */
@customElement('truing-asked')
export class TruingAsked extends LitElement {
  static override styles = [look, choiceStyles, css`
    :host { display: block; height: 100%; }
    .asking { display: grid; grid-template-rows: auto minmax(0, 1fr) calc(2 * var(--key) + var(--gap)); gap: 0.4rem; height: 100%; }
    .question { height: 100%; overflow: hidden; font-weight: 700; line-height: 1.12; align-content: safe center; }
    .head { display: flex; gap: 1.2rem; justify-content: space-between; align-items: baseline; white-space: nowrap; overflow: hidden; }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
  `];

  @property({ attribute: false }) view!: KioskView;
  @property({ attribute: false, hasChanged: (one, other) => JSON.stringify(one) !== JSON.stringify(other) }) asked!: AskedReading;
  @state() private sense: GapSense | null = null;
  @state() private typing: 'fractions' | 'small' | null = null;
  protected fitQuestion = new FitText(this, '.question', [3.6, 3.2, 2.8, 2.5, 2.2, 2, 1.8]);

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('asked')) return;
    this.sense = this.asked.sense ?? null;
    // Nothing to choose from: then it is typed.
    this.typing = sensesOf(this.asked.what) === undefined && usualReadings(this.view.bench.state, this.asked).length === 0 ? 'fractions' : null;
  }

  protected override updated(): void {
    this.dispatchEvent(new CustomEvent('asked-turned'));
  }

  get padShown(): boolean {
    return this.typing !== null;
  }

  /** There is something to go back to: the way that the gap goes. */
  get turned(): boolean {
    return this.sense !== null;
  }

  turnBack(): void {
    this.sense = null;
  }

  override render(): TemplateResult | typeof nothing {
    const { state: bench } = this.view.bench;
    const side = sideToTrue(bench, this.asked.of);
    if (!side) return nothing;
    const { unit } = bench.settings.rounding;
    const question = questionOf(side, this.asked, onPaper(bench));
    if (this.typing === 'fractions') return html`<fraction-pad .unit=${unit} @length-typed=${(event: CustomEvent<Length>) => this.#answer(event.detail)} @pad-left=${() => { this.typing = null; }}><p class="what">${question}</p></fraction-pad>`;
    const small = smallStep(unit);
    if (this.typing === 'small') return html`<count-pad .asked=${question} .unit=${small.label} .least=${0} .most=${MOST_SMALL[unit]} @count-typed=${(event: CustomEvent<number>) => this.#answer(nanometres(Math.round(event.detail * small.step)))} @pad-left=${() => { this.typing = null; }}></count-pad>`;
    return html`<div class="asking"><header class="head"><h1 class="title">${READING_TITLES[this.asked.what]}</h1><span class="caption">${writeSide(bench, this.asked.of)}</span></header>
      <p class="question"><span>${this.sense === null ? question : `${SENSE_WORDS[this.sense]}: by how much?`}</span></p>${choiceGrid(this.#choices(small.say), 0)}</div>`;
  }

  #choices(smallSay: string): readonly Choice[] {
    const { state: bench } = this.view.bench;
    const senses = sensesOf(this.asked.what);
    const nothingShows: Choice = { label: 'no gap', does: { here: () => this.#answer(ZERO_LENGTH) } };
    if (senses && this.sense === null) return [...senses.map((sense): Choice => ({ label: SENSE_WORDS[sense], does: { here: () => { this.sense = sense; } } })), nothingShows];
    return [
      ...(senses || isOfBoard(this.asked.what) ? [] : [nothingShows]),
      ...usualReadings(bench, this.asked).map((length): Choice => ({ label: keySize(bench, length), does: { here: () => this.#answer(length) } })),
      { label: bench.settings.rounding.unit === 'inch' ? 'in fractions' : 'type it', does: { here: () => { this.typing = 'fractions'; } } },
      ...(isOfBoard(this.asked.what) ? [] : [{ label: smallSay, does: { here: () => { this.typing = 'small'; } } } satisfies Choice]),
    ];
  }

  #answer(length: Length): void {
    const { sense } = this;
    this.typing = null;
    ask(this, { kind: 'answer reading', length, ...(sense === null ? {} : { sense }) });
  }
}

declare global {
  interface HTMLElementTagNameMap { 'truing-asked': TruingAsked }
}
