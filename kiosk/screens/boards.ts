import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { newBoard } from '../../core/respond/rack.ts';
import { nanometres, NANOMETRES_PER_INCH } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import type { Board } from '../../core/stock/board.ts';
import { quarterName } from '../../core/stock/rack.ts';
import '../draw/boardDrawing.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import './boardForm.ts';
import type { BoardForm } from './boardForm.ts';
import './defectForm.ts';
import type { DefectForm } from './defectForm.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';

/** What a stack is mostly of, for a first board: 8 ft by 8 in (common practice, no source). */
const FIRST = { length: nanometres(96 * NANOMETRES_PER_INCH), width: nanometres(8 * NANOMETRES_PER_INCH) };

/** The rack, a key a board; of one board, its drawing and what can be told of it. Boards are put there and put right by questions. */
@customElement('bench-boards')
export class BoardsScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .one { display: grid; grid-template-rows: auto minmax(0, 1fr) auto; gap: 0.6rem; height: 100%; }
    .facts { height: 5.2rem; overflow: hidden; line-height: 1.15; }
    .empty { height: 100%; overflow: hidden; display: grid; align-content: safe center; gap: 1.2rem; line-height: 1.2; }
  `];

  @property({ attribute: false }) screen: Extract<Screen, { name: 'boards' }> = { name: 'boards' };
  @state() private form: 'new' | 'put right' | 'defect' | null = null;
  /** What the form began from: the same for as long as it lies open. */
  #begun: { readonly board: Board; readonly woods: readonly string[] } | null = null;
  protected fitFacts = new FitText(this, '.facts', [2.2, 2, 1.8, 1.6, 1.4]);
  protected fitEmpty = new FitText(this, '.empty', [3, 2.6, 2.3, 2]);

  protected sheet(): TemplateResult {
    const board = this.#board();
    if (this.form !== null) return this.#drawForm(this.form);
    if (board !== undefined) return this.#one(board);
    const choices = this.#choices();
    if (choices.length === 0) return html`<div class="empty"><h1>The rack is empty.</h1><p>Press new board, or say: new board, ninety six by eight, eight quarter.</p><p>Knots and checks are told after that: knot from thirty to thirty four.</p></div>`;
    return html`<div class="titled"><h1 class="title">${choices.length === 1 ? 'One board' : `${choices.length} boards`} on the rack ${this.pageText()}</h1>${choiceGrid(choices, this.page)}</div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.form !== null) return this.inside?.keys() ?? [];
    const board = this.#board();
    if (board === undefined) return keyRow('boards', { step: show({ name: 'step' }), ...this.leafKeys(), 'new board': { does: { here: () => this.#open('new') }, tone: 'now' }, 'cutting plan': show({ name: 'cutting' }), listen: { act: { kind: 'listen' } }, menu: show({ name: 'menu' }) });
    return keyRow('board', {
      rack: show({ name: 'boards' }),
      'add defect': { here: () => this.#open('defect') },
      'put right': { here: () => this.#open('put right') },
      'used up': { request: { kind: 'board used up', board: board.number } },
      'tell me': { request: { kind: 'tell board', board: board.number } },
      listen: { act: { kind: 'listen' } },
      'new board': { does: { here: () => this.#open('new') }, tone: 'now' },
    });
  }

  override get padShown(): boolean {
    return this.inside?.padShown ?? false;
  }

  protected pages(): number {
    return pagesOf(this.view.bench.state.rack.size);
  }

  protected override note(): TemplateResult | typeof nothing {
    return this.form === null && this.#board() === undefined ? super.note() : nothing;
  }

  #board(): Board | undefined {
    return this.screen.board === undefined ? undefined : this.view.bench.state.rack.get(this.screen.board);
  }

  protected override get inside(): BoardForm | DefectForm | null {
    return this.form !== null && this.hasUpdated ? this.renderRoot.querySelector<BoardForm | DefectForm>('bench-board-form, bench-defect-form') : null;
  }

  #open(form: 'new' | 'put right' | 'defect'): void {
    const { state } = this.view.bench;
    const board = form === 'new' ? newBoard(state, { kind: 'new board', ...FIRST }) : this.#board();
    if (board === undefined) return;
    this.#begun = { board, woods: [...new Set([board.species, ...(state.piece?.file.parts.map(({ species }) => species) ?? []), ...COMMON])] };
    this.form = form;
  }

  #drawForm(form: 'new' | 'put right' | 'defect'): TemplateResult {
    const left = (): void => { this.form = null; };
    const turned = (): void => this.requestUpdate();
    if (this.#begun === null) return html``;
    const { board, woods } = this.#begun;
    if (form === 'defect') return html`<bench-defect-form .settings=${this.settings} .board=${board} @form-left=${left} @form-turned=${turned}></bench-defect-form>`;
    return html`<bench-board-form .settings=${this.settings} .board=${board} .woods=${woods} .fresh=${form === 'new'} @form-left=${left} @form-turned=${turned}></bench-board-form>`;
  }

  #one(board: Board): TemplateResult {
    const write = this.#write;
    const { farWidth, width, defects, sapwood, grain, colour, pithSide, cents, cutFrom } = board;
    const facts = [
      cutFrom === undefined ? '' : `off-cut of board ${cutFrom}`, sapwood === 0 ? '' : `sapwood ${write(sapwood)}`, grain === undefined ? '' : `${grain} grain`, colour === undefined ? '' : `colour group ${colour}`, pithSide === undefined ? '' : `pith towards the ${pithSide}`, cents === undefined ? '' : `cost ${(cents / 100).toFixed(2)}`,
      ...defects.map(({ what, from, to, face }) => `${what} ${write(from)} to ${write(to)}${face === 'through' ? '' : `, ${face}`}`),
    ].filter(Boolean);
    return html`<div class="one"><h1 class="title">Board ${board.number}: ${write(board.length)} × ${write(width)}${farWidth === width ? '' : ` to ${write(farWidth)}`}, ${quarterName(board.thickness) ?? write(board.thickness)} ${board.species}</h1>
      <board-drawing .shape=${{ board }} .rounding=${this.settings.rounding}></board-drawing>
      <p class="facts">${facts.length === 0 ? 'No defects told. Lengths run from the marked end, widths from the reference edge below.' : `${facts.join(' · ')}. From the marked end.`}</p></div>`;
  }

  readonly #write = (length: Board['length']): string => writeLength(length, this.settings.rounding);

  #choices(): readonly Choice[] {
    return [...this.view.bench.state.rack.values()].sort((a, b) => a.number - b.number).map((board): Choice => ({
      label: `board ${board.number}`, detail: `${this.#write(board.length)} × ${this.#write(board.width)}, ${quarterName(board.thickness) ?? this.#write(board.thickness)} ${board.species}${board.defects.length === 0 ? '' : ' · defects'}`,
      does: show({ name: 'boards', board: board.number }),
    }));
  }
}

const COMMON = ['hard maple', 'red oak', 'white oak', 'black cherry', 'black walnut', 'white ash', 'yellow poplar'] as const;

declare global {
  interface HTMLElementTagNameMap { 'bench-boards': BoardsScreen }
}
