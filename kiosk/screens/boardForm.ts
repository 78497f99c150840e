import { html } from 'lit';
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
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { BenchForm } from './benchForm.ts';
import { choiceGrid } from './choices.ts';
import type { Choice } from './choices.ts';

type Field = 'length' | 'width' | 'farWidth' | 'thickness' | 'species' | 'sapwood' | 'grain' | 'colour' | 'pithSide' | 'cents';
const LENGTHS = ['length', 'width', 'farWidth', 'sapwood'] as const;
const SAY: Readonly<Record<Field, string>> = { length: 'how long', width: 'how wide at the marked end', farWidth: 'how wide at the far end', thickness: 'how thick', species: 'which wood', sapwood: 'sapwood along the far edge', grain: 'which grain', colour: 'which colour group', pithSide: 'which face was nearer the pith', cents: 'what did it cost' };
const COUNTED: Readonly<Record<'colour' | 'cents', { readonly least: number; readonly most: number }>> = { colour: { least: 1, most: 99 }, cents: { least: 0, most: 99_999 } };
/** Quarters that have a key of their own, one page of them. */
const SOLD = QUARTERS.filter(({ name }) => ['3/4', '4/4', '5/4', '6/4', '8/4', '10/4', '12/4', '16/4'].includes(name));

/** A board by a few questions: how long and how wide, then all of it, each on a key. Lies on the rack's screen, which draws its keys. */
@customElement('bench-board-form')
export class BoardForm extends BenchForm {
  @property({ attribute: false }) settings!: Settings;
  /** What it begins from: a board of the rack, or the one to be put there, with the sizes of the last. */
  @property({ attribute: false }) board!: Board;
  @property({ attribute: false }) woods: readonly string[] = [];
  /** New boards are asked for length and width first. */
  @property({ type: Boolean }) fresh = false;
  @state() private told: Partial<Board> = {};
  @state() private asking: Field | null | undefined = undefined;
  @state() private fault = '';
  @state() private page = 0;

  override render(): TemplateResult {
    const field = this.#asking();
    if (field === null) return this.#all();
    if (isLength(field)) return this.#askLength(field);
    return isCounted(field) ? this.#askCount(field) : html`<div class="titled"><h1 class="title">Board ${this.board.number}: ${SAY[field]}?</h1>${choiceGrid(this.#choices(field), 0)}</div>`;
  }

  get padShown(): boolean {
    const field = this.#asking();
    return field !== null && isLength(field);
  }

  keys(): readonly KeySpec[] {
    const field = this.#asking();
    if ((field !== null && isCounted(field)) || (field !== null && isLength(field))) return [];
    return keyRow('board form', {
      leave: { here: () => { this.leave(); } },
      more: field === null ? { here: () => { this.page = 1 - this.page; } } : null,
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
    return this.askLength({
      what: `board ${this.board.number}: ${SAY[field]}`, unit: this.settings.rounding.unit, usual, take: (length) => { this.#take(field, length); },
      beside: html`OK takes <fraction-text .length=${usual} .rounding=${this.settings.rounding}></fraction-text>`,
    });
  }

  #askCount(field: 'colour' | 'cents'): TemplateResult {
    const { least, most } = COUNTED[field];
    return html`<count-pad .asked=${`Board ${this.board.number}: ${SAY[field]}?`} .hundredths=${field === 'cents'} .least=${least} .most=${most} @count-typed=${({ detail }: CustomEvent<number>) => { this.#take(field, field === 'cents' ? Math.round(100 * detail) : String(detail)); }} @pad-left=${() => { this.leave(); }}></count-pad>`;
  }

  #choices(field: 'thickness' | 'species' | 'grain' | 'pithSide'): readonly Choice[] {
    const board = this.#now();
    const choice = (label: string, value: Board['thickness'] | string, chosen: boolean): Choice => ({ label, chosen, does: { here: () => this.#take(field, value) } });
    switch (field) {
      case 'thickness': return SOLD.map(({ name, rough }) => choice(name, rough, rough === board.thickness));
      case 'species': return this.woods.slice(0, 8).map((name) => choice(name, name, name === board.species));
      case 'grain': return GRAINS.map((grain) => choice(grain, grain, grain === board.grain));
      case 'pithSide': return (['marked face', 'other face'] as const).map((face) => choice(face, face, face === board.pithSide));
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
      key('pithSide', 'pith side', board.pithSide ?? 'not told'), key('cents', 'price', board.cents === undefined ? 'not told' : (board.cents / 100).toFixed(2)),
    ], this.page)}</div>`;
  }

  #take(field: Field, value: Length | string | number): void {
    this.told = { ...this.told, [field]: value };
    this.fault = '';
    this.asking = this.fresh && field === 'length' && this.told.width === undefined ? 'width' : null;
  }

  protected override leave(): void {
    const begun = this.told.length !== undefined || !this.fresh;
    if (this.#asking() !== null && begun) this.asking = null;
    else this.left();
  }

  #put(): void {
    const board = this.#now();
    const fault = boardFault(board);
    if (fault !== undefined) {
      this.fault = `That cannot be: ${fault}.`;
      return;
    }
    ask(this, { kind: 'put board', board });
    this.left();
  }
}

function isCounted(field: Field): field is keyof typeof COUNTED {
  return field in COUNTED;
}

function isLength(field: Field): field is (typeof LENGTHS)[number] {
  return LENGTHS.some((one) => one === field);
}

declare global {
  interface HTMLElementTagNameMap { 'bench-board-form': BoardForm }
}
