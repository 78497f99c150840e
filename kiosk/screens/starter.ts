import { LitElement, css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { writeLength } from '../../core/length/write.ts';
import type { Length } from '../../core/length/length.ts';
import type { Settings } from '../../core/journal/settings.ts';
import { writePiece } from '../../core/piece/load.ts';
import { STARTER_DEFAULTS, STARTER_FIELDS, starterPiece } from '../../core/piece/starter.ts';
import type { StarterField, StarterInput } from '../../core/piece/starter.ts';
import { ask } from '../hostPort.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { look } from '../look/look.ts';
import { choiceGrid, choiceStyles } from './choices.ts';
import type { Choice } from './choices.ts';

type Answers = Partial<Record<StarterField['key'], StarterInput[StarterField['key']]>>;

/**
 * A new piece by questions, one a page: sizes on the fraction pad, all else on large keys; at the end everything on one page, and the
 * file is made. Lies on the files screen, which draws its keys. Dispatches `starter-left`.
 */
@customElement('bench-starter')
export class Starter extends LitElement {
  static override styles = [look, choiceStyles, css`
    :host { display: block; height: 100%; }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
    .beside { font-size: calc(1.8rem * var(--text)); color: var(--pencil); line-height: 1.05; }
    .beside fraction-text { font-size: 1.3em; }
    .name { font: inherit; font-size: 2.6rem; height: 4.8rem; width: 100%; border: 0.2rem solid var(--ink); background: var(--card); color: var(--ink); padding: 0 0.8rem; }
    .named { display: grid; grid-template-rows: auto auto minmax(0, 1fr); gap: 0.8rem; height: 100%; }
    .all { height: 100%; overflow: hidden; display: grid; grid-template-rows: auto minmax(0, 1fr); gap: 0.4rem; line-height: 1.2; }
    .answers { columns: 2; column-gap: 2.4rem; }
    .answers div { display: flex; justify-content: space-between; gap: 0.8rem; break-inside: avoid; border-bottom: 0.1rem solid var(--pencil); }
    dt { color: var(--pencil); }
    dd { text-align: right; }
    .fault { font-weight: 700; border-left: 0.6rem solid var(--now); padding-left: 0.8rem; }
  `];

  @property({ attribute: false }) settings!: Settings;
  @state() private answers: Answers = {};
  @state() private at = 0;
  @state() private faults: readonly string[] = [];
  protected fitAll = new FitText(this, '.all', [2.2, 2, 1.8, 1.65, 1.5, 1.35, 1.2]);

  override render(): TemplateResult {
    const field = this.#field();
    if (field === undefined) return this.#summary();
    switch (field.kind) {
      case 'length': return this.#askLength(field);
      case 'count': return this.#askChoice(field, Array.from({ length: field.max - field.min + 1 }, (_, index) => field.min + index));
      case 'choice': return this.#askChoice(field, field.choices);
      case 'text': return field.key === 'name' ? this.#askName(field) : this.#askChoice(field, field.suggestions.slice(0, 8));
    }
  }

  /** The files screen draws the keys, and must hear that they changed. */
  protected override updated(): void {
    this.dispatchEvent(new CustomEvent('starter-turned'));
  }

  /** Whether the fraction pad has the whole sheet, and so there is no room for a row of keys. */
  get padShown(): boolean {
    return this.#field()?.kind === 'length';
  }

  keys(): readonly KeySpec[] {
    if (this.padShown) return [];
    const last = this.#field() === undefined;
    return keyRow('starter', {
      leave: { here: () => this.#leave() },
      back: { does: { here: () => this.#back() }, disabled: this.at === 0 },
      next: last ? null : { here: () => this.#next() },
      'make it': last ? { does: { here: () => this.#make() }, tone: 'now' } : null,
    });
  }

  /** Fields that the answers so far call for. */
  #asked(): readonly StarterField[] {
    return STARTER_FIELDS.filter(({ when }) => when === undefined || this.#answer(when.key) === when.is);
  }

  #field(): StarterField | undefined {
    return this.#asked()[this.at];
  }

  #answer(key: StarterField['key']): StarterInput[StarterField['key']] {
    return this.answers[key] ?? STARTER_DEFAULTS[key];
  }

  #askLength(field: Extract<StarterField, { kind: 'length' }>): TemplateResult {
    const usual = this.#answer(field.key) as Length;
    return html`<fraction-pad .unit=${this.settings.rounding.unit} .usual=${usual} @length-typed=${(event: CustomEvent<Length>) => this.#take(field, event.detail)} @pad-left=${() => this.#back()}>
      <p class="what">${field.say}</p>
      <p class="beside" slot="beside">${field.help === undefined ? nothing : html`${field.help} `}OK takes <fraction-text .length=${usual} .rounding=${this.settings.rounding}></fraction-text></p></fraction-pad>`;
  }

  #askChoice(field: StarterField, values: readonly (string | number)[]): TemplateResult {
    const chosen = this.#answer(field.key);
    const choices = values.map((value): Choice => ({ label: String(value), ...(typeof value === 'number' ? { figure: value } : {}), does: { here: () => this.#take(field, value) }, ...(value === chosen ? { chosen: true } : {}) }));
    return html`<div class="titled"><h1 class="title">${field.say}</h1>${choiceGrid(choices, 0)}</div>`;
  }

  #askName(field: Extract<StarterField, { kind: 'text' }>): TemplateResult {
    const name = String(this.#answer(field.key));
    return html`<div class="named"><h1 class="title">${field.say}</h1>
      <input class="name" aria-label=${field.say} .value=${name} maxlength=${field.max} @change=${(event: Event) => this.#take(field, (event.currentTarget as HTMLInputElement).value)}>
      <p class="beside">Type it on a keyboard, or press next to take this one.</p></div>`;
  }

  #summary(): TemplateResult {
    return html`<div class="all"><h1>${this.faults.length === 0 ? 'Is this the piece?' : html`<span class="fault">${this.faults.join(' ')}</span>`}</h1>
      <dl class="answers">${this.#asked().map((field) => html`<div><dt>${field.say}</dt><dd>${this.#written(field)}</dd></div>`)}</dl></div>`;
  }

  #written(field: StarterField): string {
    const answer = this.#answer(field.key);
    return field.kind === 'length' ? writeLength(answer as Length, this.settings.rounding) : String(answer);
  }

  #take(field: StarterField, value: Length | number | string): void {
    this.answers = { ...this.answers, [field.key]: value };
    this.#next();
  }

  #next(): void {
    this.faults = [];
    this.at += 1;
  }

  #back(): void {
    if (this.at === 0) {
      this.#leave();
      return;
    }
    this.at -= 1;
    this.faults = [];
  }

  #leave(): void {
    this.dispatchEvent(new CustomEvent('starter-left'));
  }

  #make(): void {
    const made = starterPiece(this.answers as Partial<StarterInput>);
    if (made.ok) ask(this, { kind: 'load piece', text: writePiece(made.value), from: 'the starter' });
    else this.faults = made.fault.map(({ message }) => message);
    if (made.ok) this.#leave();
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-starter': Starter }
}
