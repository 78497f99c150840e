import { LitElement, css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Settings } from '../../core/journal/settings.ts';
import type { Length } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import type { Board } from '../../core/stock/board.ts';
import { boardFault, GRAINS, quarterName } from '../../core/stock/rack.ts';
import { QUARTERS } from '../../core/wood/lumber/quarters.ts';
import { ask } from '../hostPort.ts';
import '../keys/countPad.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { look } from '../look/look.ts';
import { choiceGrid, choiceStyles } from './choices.ts';
import type { Choice } from './choices.ts';

type Field = 'length' | 'width' | 'farWidth' | 'thickness' | 'species' | 'sapwood' | 'grain' | 'colour';
const LENGTHS = ['length', 'width', 'farWidth', 'sapwood'] as const;
const SAY: Readonly<Record<Field, string>> = { length: 'how long', width: 'how wide at the marked end', farWidth: 'how wide at the far end', thickness: 'how thick', species: 'which wood', sapwood: 'sapwood along the far edge', grain: 'which grain', colour: 'colour group' };
/** Quarters that have a key of their own, one page of them. */
const SOLD = QUARTERS.filter(({ name }) => ['3/4', '4/4', '5/4', '6/4', '8/4', '10/4', '12/4', '16/4'].includes(name));

/** A board by a few questions: how long and how wide, then all of it on one page, each on a key. Lies on the rack's screen, which draws its keys. */
@customElement('bench-board-form')
export class BoardForm extends LitElement {
  static override styles = [look, choiceStyles, css`
    :host { display: block; height: 100%; }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
    .beside { font-size: calc(1.8rem * var(--text)); color: var(--pencil); line-height: 1.05; }
    .beside fraction-text { font-size: 1.3em; }
    .fault { font-weight: 700; }
  `];

  @property({ attribute: false }) settings!: Settings;
  /** What it begins from: a board of the rack, or the one to be put there, with the sizes of the last. */
  @property({ attribute: false }) board!: Board;
  @property({ attribute: false }) woods: readonly string[] = [];
  /** New boards are asked for length and width first. */
  @property({ type: Boolean }) fresh = false;
  @state() private told: Partial<Board> = {};
  @state() private asking: Field | null | undefined = undefined;
  @state() private fault = '';

  override render(): TemplateResult {
    const field = this.#asking();
    if (field === null) return this.#all();
    if (isLength(field)) return this.#askLength(field);
    return field === 'colour' ? this.#askGroup() : html`<div class="titled"><h1 class="title">Board ${this.board.number}: ${SAY[field]}?</h1>${choiceGrid(this.#choices(field), 0)}</div>`;
  }

  /** The rack's screen draws the keys, and must hear that they changed. */
  protected override updated(): void {
    this.dispatchEvent(new CustomEvent('form-turned'));
  }

  get padShown(): boolean {
    const field = this.#asking();
    return field !== null && isLength(field);
  }

  /** The pad that takes the number pad's keys, if one lies open. */
  get pad(): { pressSymbol(symbol: NonNullable<KeySpec['pad']>, atMs: number): boolean } | null {
    return this.renderRoot.querySelector('fraction-pad') ?? this.renderRoot.querySelector('count-pad');
  }

  keys(): readonly KeySpec[] {
    const field = this.#asking();
    if (field === 'colour' || (field !== null && isLength(field))) return [];
    return keyRow('board form', {
      leave: { here: () => this.#leave() },
      'on the rack': field === null ? { does: { here: () => this.#put() }, tone: 'now' } : null,
    });
  }

  #asking(): Field | null {
    return this.asking === undefined ? (this.fresh ? 'length' : null) : this.asking;
  }

  #now(): Board {
    const board = { ...this.board, ...this.told };
    // Until a taper is told the far end is as wide.
    return this.told.width !== undefined && this.told.farWidth === undefined && this.board.farWidth === this.board.width ? { ...board, farWidth: this.told.width } : board;
  }

  #askLength(field: (typeof LENGTHS)[number]): TemplateResult {
    const usual = this.#now()[field];
    return html`<fraction-pad .unit=${this.settings.rounding.unit} .usual=${usual} @length-typed=${(event: CustomEvent<Length>) => this.#take(field, event.detail)} @pad-left=${() => this.#leave()}>
      <p class="what">board ${this.board.number}: ${SAY[field]}</p><p class="beside" slot="beside">OK takes <fraction-text .length=${usual} .rounding=${this.settings.rounding}></fraction-text></p></fraction-pad>`;
  }

  #askGroup(): TemplateResult {
    return html`<count-pad asked="Board ${this.board.number}: which colour group?" .least=${1} .most=${99} @count-typed=${(event: CustomEvent<number>) => this.#take('colour', String(event.detail))} @pad-left=${() => this.#leave()}></count-pad>`;
  }

  #choices(field: 'thickness' | 'species' | 'grain'): readonly Choice[] {
    const board = this.#now();
    const choice = (label: string, value: Board['thickness'] | string, chosen: boolean): Choice => ({ label, chosen, does: { here: () => this.#take(field, value) } });
    switch (field) {
      case 'thickness': return SOLD.map(({ name, rough }) => choice(name, rough, rough === board.thickness));
      case 'species': return this.woods.slice(0, 8).map((name) => choice(name, name, name === board.species));
      case 'grain': return GRAINS.map((grain) => choice(grain, grain, grain === board.grain));
    }
  }

  #all(): TemplateResult {
    const board = this.#now();
    const write = (length: Length): string => writeLength(length, this.settings.rounding);
    const key = (field: Field, label: string, detail: string): Choice => ({ label, detail, does: { here: () => { this.asking = field; } } });
    return html`<div class="titled"><h1 class="title ${this.fault === '' ? '' : 'fault'}">${this.fault === '' ? `Board ${board.number}: write its number on the marked end.` : this.fault}</h1>${choiceGrid([
      key('length', 'length', write(board.length)), key('width', 'width', write(board.width)), key('farWidth', 'far end', board.farWidth === board.width ? 'as wide' : write(board.farWidth)),
      key('thickness', 'thickness', quarterName(board.thickness) ?? write(board.thickness)), key('species', 'wood', board.species), key('sapwood', 'sapwood', board.sapwood === 0 ? 'none' : write(board.sapwood)),
      key('grain', 'grain', board.grain ?? 'not told'), key('colour', 'colour', board.colour === undefined ? 'no group' : `group ${board.colour}`),
    ], 0)}</div>`;
  }

  #take(field: Field, value: Length | string): void {
    this.told = { ...this.told, [field]: value };
    this.fault = '';
    this.asking = this.fresh && field === 'length' && this.told.width === undefined ? 'width' : null;
  }

  #leave(): void {
    const begun = this.told.length !== undefined || !this.fresh;
    if (this.#asking() !== null && begun) this.asking = null;
    else this.dispatchEvent(new CustomEvent('form-left'));
  }

  #put(): void {
    const board = this.#now();
    const fault = boardFault(board);
    if (fault !== undefined) {
      this.fault = `That cannot be: ${fault}.`;
      return;
    }
    ask(this, { kind: 'put board', board });
    this.dispatchEvent(new CustomEvent('form-left'));
  }
}

function isLength(field: Field): field is (typeof LENGTHS)[number] {
  return LENGTHS.some((one) => one === field);
}

declare global {
  interface HTMLElementTagNameMap { 'bench-board-form': BoardForm }
}
