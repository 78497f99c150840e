import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { allowancesOf, boardAtSaw, problemOf, takenPlan } from '../../core/respond/cuttingState.ts';
import { sayOutOfDate } from '../../core/respond/outOfDate.ts';
import { writeMissing, writeStanding } from '../../core/respond/sayPlan.ts';
import { planFrom } from '../../core/respond/takePlan.ts';
import { writeLength } from '../../core/length/write.ts';
import { isFinished, type TakenBoard } from '../../core/stock/cutting.ts';
import { quarterName } from '../../core/stock/rack.ts';
import { tellCut, tellHeart } from '../../core/stock/telling.ts';
import { CAUTIONS } from '../../core/work/cautions.ts';
import type { TakenPlan } from '../../core/journal/cutting.ts';
import '../draw/boardDrawing.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';
import './sawingForm.ts';
import type { SawingForm } from './sawingForm.ts';
import { toldHere } from './toldHere.ts';

const DRAWING = [780, 176] as const;

/** The cutting plan, a board at a time, with its cuts in their order: one that is being looked for or offered, or the one that was taken. */
@customElement('bench-cutting')
export class CuttingScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .plan { display: grid; grid-template-rows: auto auto minmax(0, 1fr) auto; gap: 0.4rem; height: 100%; }
    .standing { font-size: calc(2rem * var(--text)); font-weight: 700; line-height: 1.15; border-bottom: 0.1rem solid var(--pencil); padding-bottom: 0.2rem; max-height: 5rem; overflow: hidden; }
    .head { display: flex; justify-content: space-between; gap: 1.2rem; white-space: nowrap; }
    .next { height: 6.4rem; overflow: hidden; line-height: 1.15; }
    .none { height: 100%; overflow: hidden; display: grid; align-content: safe center; gap: 1.2rem; line-height: 1.2; }
  `];

  @property({ attribute: false }) screen: Extract<Screen, { name: 'cutting' }> = { name: 'cutting' };
  protected fitStanding = new FitText(this, '.standing', [2, 1.8, 1.6, 1.4]);
  protected fitNext = new FitText(this, '.next', [2.6, 2.3, 2.1, 1.9, 1.7, 1.5]);
  protected fitNone = new FitText(this, '.none', [3, 2.6, 2.3, 2]);

  protected sheet(): TemplateResult {
    if (this.screen.sizes === true) return html`<bench-sawing-form .bench=${this.view.bench.state} @form-left=${() => this.ask({ kind: 'show', screen: { name: 'cutting' } })} @form-turned=${() => this.requestUpdate()}></bench-sawing-form>`;
    const plan = this.#plan();
    const board = this.#board();
    if (plan === undefined) return this.#none();
    const boards = plan.boards;
    const shown = board === undefined ? '' : `${boards.findIndex((one) => one.board === board.board) + 1} of ${boards.length} boards`;
    return html`<div class="plan"><p class="standing">${this.#standing(plan)}</p>
      <header class="head"><h1 class="title">${board === undefined ? 'No board is needed.' : this.#title(board)}</h1><span class="caption">${shown}</span></header>
      ${board === undefined ? html`<p></p>` : html`<board-drawing .units=${DRAWING} .shape=${{ board: board.stood, plan: board }} .rounding=${this.settings.rounding}></board-drawing>`}
      <p class="next">${board === undefined ? '' : this.#next(board)}</p></div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.screen.sizes === true) return this.inside?.keys() ?? [];
    const { offer } = this.view.bench.conversation;
    const boards = this.#plan()?.boards ?? [];
    const at = boards.findIndex(({ board }) => board === this.#board()?.board);
    const turn = (by: number) => ({ does: show({ name: 'cutting', ...(boards[at + by] === undefined ? {} : { board: boards[at + by]?.board ?? 0 }) }), disabled: boards[at + by] === undefined });
    const board = this.#board();
    const taken = offer === undefined && board !== undefined;
    return keyRow('cutting', {
      boards: show({ name: 'boards' }),
      back: boards.length < 2 ? null : turn(-1),
      next: boards.length < 2 ? null : turn(1),
      'read the cuts': taken ? { request: { kind: 'read cuts', board: board.board } } : null,
      plan: offer?.looking === true ? null : { does: { request: { kind: 'plan cutting' } }, ...(boards.length === 0 || (taken && sayOutOfDate(this.view.bench.state) !== '') ? { tone: 'now' as const } : {}) },
      stop: offer?.looking === true ? { request: { kind: 'stop planning' } } : null,
      buy: { request: { kind: 'what to buy' } },
      sizes: boards.length === 0 ? show({ name: 'cutting', sizes: true }) : null,
      step: boards.length < 2 ? show({ name: 'step' }) : null,
      'take the plan': offer?.plan ? { does: { request: { kind: 'take plan' } }, tone: 'now' } : null,
      cut: taken ? { does: { request: { kind: 'cut made', board: board.board } }, tone: 'now', disabled: isFinished(board) } : null,
    });
  }

  override get padShown(): boolean {
    return this.inside?.padShown ?? false;
  }

  protected override get inside(): SawingForm | null {
    return this.screen.sizes === true && this.hasUpdated ? this.renderRoot.querySelector('bench-sawing-form') : null;
  }

  /** The drawing has its room. */
  protected override note(): typeof nothing {
    return nothing;
  }

  /** What is offered, as it would be taken; else what was taken. */
  #plan(): Pick<TakenPlan, 'boards' | 'missing' | 'bound' | 'boundIn' | 'proven' | 'cents'> | undefined {
    const { state, conversation: { offer } } = this.view.bench;
    return offer?.plan ? planFrom(state, offer.plan) : takenPlan(state);
  }

  #board(): TakenBoard | undefined {
    const { state, conversation: { offer } } = this.view.bench;
    const boards = this.#plan()?.boards ?? [];
    const asked = boards.find(({ board }) => board === this.screen.board);
    return asked ?? (offer?.plan ? boards[0] : boardAtSaw(state, undefined, undefined) ?? boards[0]);
  }

  #standing(plan: Parameters<typeof writeStanding>[0]): string {
    const { state, conversation: { offer } } = this.view.bench;
    const stands = writeStanding(plan) || writeMissing(state, plan.missing);
    const stale = sayOutOfDate(state);
    if (stale !== '' && !offer?.plan) return offer?.looking === true ? `${stale} Planning anew.` : stale;
    if (offer === undefined) return stands;
    return offer.looking ? `${stale === '' ? 'Looking for a better one' : 'Planned anew'}. So far: ${stands}` : `Offered: ${stands}`;
  }

  #title({ stood }: TakenBoard): string {
    const write = (length: typeof stood.length): string => writeLength(length, this.settings.rounding);
    return `Board ${stood.number}: ${quarterName(stood.thickness) ?? write(stood.thickness)} ${stood.species}, ${write(stood.length)} × ${write(stood.width)}`;
  }

  #next(board: TakenBoard): TemplateResult {
    const { conversation } = this.view.bench;
    if (toldHere(conversation)?.item.note !== undefined) return html`${conversation.lastReply?.note ?? ''}`;
    const cut = board.cuts[board.made];
    const write = (length: typeof board.stood.length): string => writeLength(length, this.settings.rounding);
    const heart = tellHeart(board.stood);
    if (cut === undefined) return html`<b>All cut.</b>`;
    return html`<b>Cut ${board.made + 1} of ${board.cuts.length}:</b> ${tellCut(cut, write)}.${cut.kind === 'resaw' ? ` ${CAUTIONS.resaw.say}` : heart === undefined ? '' : ` Of this board, ${heart}.`}`;
  }

  #none(): TemplateResult {
    const { state, conversation: { offer } } = this.view.bench;
    if (offer?.looking === true) return html`<div class="none"><h1>Planning.</h1><p>A first plan comes in a moment; it gets better for as long as you let it.</p></div>`;
    const problem = problemOf(state);
    const parts = problem?.blanks.reduce((sum, { count }) => sum + count, 0) ?? 0;
    if (problem === undefined) return html`<div class="none"><h1>No piece is on the bench.</h1><p>Open the menu and choose files.</p></div>`;
    return html`<div class="none"><h1>There is no cutting plan yet.</h1><p>${parts} rough parts, ${problem.boards.length} boards on the rack.</p>
      <p>Rough sizes have ${this.#allowances()} over the finished ones; the saw takes ${writeLength(state.sawing.kerf, this.settings.rounding)}, and ${writeLength(state.sawing.endTrim, this.settings.rounding)} is trimmed off each end.</p></div>`;
  }

  /** Each can be told otherwise: the sizes called rough length allowance and so on. */
  #allowances(): string {
    return allowancesOf(this.view.bench.state).map(({ say, length }) => `${writeLength(length, this.settings.rounding)} of ${say}`).join(', ');
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-cutting': CuttingScreen }
}
