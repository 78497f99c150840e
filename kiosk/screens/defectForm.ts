import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { RackRequest } from '../../core/bench/request.ts';
import type { Settings } from '../../core/journal/settings.ts';
import type { Length } from '../../core/length/length.ts';
import type { Board, Defect } from '../../core/stock/board.ts';
import { DEFECT_KINDS, type DefectKind } from '../../core/stock/rack.ts';
import { ask } from '../hostPort.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { BenchForm } from './benchForm.ts';
import { choiceGrid } from './choices.ts';
import type { Choice } from './choices.ts';

const ASKED = ['from', 'to', 'fromEdge', 'toEdge'] as const;
type Place = (typeof ASKED)[number];
const SAY: Readonly<Record<Place, string>> = { from: 'where it begins, from the marked end', to: 'where it ends, from the marked end', fromEdge: 'where it begins, from the reference edge', toEdge: 'where it ends, from the reference edge' };

/** What is wrong with a board: what, from where to where along it, and across it unless it goes right across. Lies on the rack's screen. */
@customElement('bench-defect-form')
export class DefectForm extends BenchForm {
  @property({ attribute: false }) settings!: Settings;
  @property({ attribute: false }) board!: Board;
  @state() private what: DefectKind | null = null;
  @state() private places: Partial<Record<Place, Length>> = {};
  /** Told that it does not go right across. */
  @state() private across = false;
  @state() private trouble = '';

  override render(): TemplateResult {
    if (this.what === null) return html`<div class="titled"><h1 class="title">Board ${this.board.number}: what is wrong with it?</h1>${choiceGrid(DEFECT_KINDS.map((kind): Choice => ({ label: kind, does: { here: () => { this.what = kind; } } })), 0)}</div>`;
    const place = this.#asked();
    if (place === undefined) return html`<div class="titled"><h1 class="title">${this.what}: where does it show, and does it go right across?</h1>${choiceGrid(this.#sides(), 0)}</div>`;
    return this.askLength({ what: `${this.what}: ${SAY[place]}`, beside: this.trouble === '' ? `board ${this.board.number}` : this.trouble, unit: this.settings.rounding.unit, take: (length) => { this.#take(place, length); } });
  }

  get padShown(): boolean {
    return this.what !== null && this.#asked() !== undefined;
  }

  keys(): readonly KeySpec[] {
    return this.padShown ? [] : keyRow('form', { leave: { here: () => { this.leave(); } } });
  }

  /** The next place to be told: along the board, then across where it matters. */
  #asked(): Place | undefined {
    return ASKED.slice(0, this.across ? 4 : 2).find((place) => this.places[place] === undefined);
  }

  #sides(): readonly Choice[] {
    const choice = (label: string, detail: string, face: Defect['face']): Choice => ({ label, detail, does: { here: () => this.#tell(face) } });
    const whole = choice('right across', 'on both faces', 'through');
    const part: Choice = { label: 'not right across', detail: 'tell from where to where', does: { here: () => { this.across = true; } } };
    return [whole, ...(this.across ? [] : [part]), choice('marked face', 'on that face alone', 'marked face'), choice('other face', 'on that face alone', 'other face')].map((one) => (this.across && one === whole ? { ...one, label: 'both faces', detail: 'right through' } : one));
  }

  #take(place: Place, length: Length): void {
    const before = place === 'to' ? this.places.from : place === 'toEdge' ? this.places.fromEdge : undefined;
    this.trouble = before !== undefined && length <= before ? 'It must end beyond where it begins.' : '';
    if (this.trouble === '') this.places = { ...this.places, [place]: length };
  }

  protected override leave(): void {
    this.left();
  }

  #tell(face: Defect['face']): void {
    const { from, to, fromEdge, toEdge } = this.places;
    if (this.what === null || from === undefined || to === undefined) return;
    const across = fromEdge === undefined || toEdge === undefined ? {} : { fromEdge, toEdge };
    const request: RackRequest = { kind: 'board defect', board: this.board.number, what: this.what, from, to, face, ...across };
    ask(this, request);
    this.left();
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-defect-form': DefectForm }
}
