import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import type { Length } from '../../core/length/length.ts';
import { nanometres } from '../../core/length/length.ts';
import { renderTelling } from '../../core/reckoning/telling.ts';
import { thicknessWords } from '../../core/respond/truing.ts';
import { meetingsOf, meetingWords } from '../../core/respond/truingMating.ts';
import { readingsCome, sideHere, sideToTrue } from '../../core/respond/truingSide.ts';
import { stageWords } from '../../core/respond/truingStages.ts';
import { onPaper, verdictWords, writeSide } from '../../core/respond/truingWords.ts';
import type { SideAsRead, SideToTrue } from '../../core/true/asRead.ts';
import { isEdge, type BoardFace } from '../../core/true/readings.ts';
import '../draw/planingDrawing.ts';
import '../keys/countPad.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';
import './truingAsked.ts';
import type { TruingAsked } from './truingAsked.ts';
import type { AskedReading } from './truingView.ts';
import { allBoards, boardLabel, planingDrawingOf, smallStep } from './truingView.ts';

const THICKEST_SHAVING = { inch: 30, millimetre: 75 } as const;

/** One side of a board: what was read of it, how true it is, and what to plane where. */
@customElement('bench-truing')
export class TruingScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .truing { display: grid; grid-template: auto minmax(0, 1fr) / 45.6rem minmax(0, 1fr); gap: 0.3rem 1.2rem; height: 100%; }
    .head { grid-column: 1 / -1; display: flex; gap: 1.2rem; justify-content: space-between; align-items: baseline; white-space: nowrap; overflow: hidden; }
    .drawn { display: grid; grid-template-rows: minmax(0, 1fr) auto; min-height: 0; }
    .told { min-height: 0; height: 100%; overflow: hidden; line-height: 1.15; }
    .told p { margin-bottom: 0.25em; }
    .told li { padding-left: 1.2em; text-indent: -1.2em; margin-bottom: 0.15em; }
    .empty { height: 100%; overflow: hidden; line-height: 1.2; align-content: safe center; }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'truing' }>;
  @state() private mode: 'side' | 'more' | 'boards' | 'shaving' | 'sticks' = 'side';
  protected fitTold = new FitText(this, '.told', [3, 2.7, 2.4, 2.2, 2, 1.8, 1.65, 1.5, 1.35, 1.2, 1.1]);
  protected fitEmpty = new FitText(this, '.empty', [3, 2.6, 2.3, 2]);

  override get padShown(): boolean {
    return this.inside?.padShown ?? (this.mode === 'shaving' || this.mode === 'sticks');
  }

  protected sheet(): TemplateResult {
    const question = this.#question();
    if (question) return html`<truing-asked .view=${this.view} .asked=${question} @asked-turned=${() => this.requestUpdate()}></truing-asked>`;
    const of = this.#side();
    if (this.mode === 'shaving' || this.mode === 'sticks') return this.#pad();
    if (of === undefined || this.mode === 'boards') return this.#boards();
    if (this.mode === 'more') return html`<div class="titled"><h1 class="title">${writeSide(this.view.bench.state, of)}</h1>${choiceGrid(this.#more(of), 0)}</div>`;
    return this.#oneSide(of);
  }

  keys(): readonly KeySpec[] {
    if (this.padShown) return [];
    const listen = { act: { kind: 'listen' } } as const;
    if (this.#question()) {
      const turned = this.inside?.turned ?? false;
      return keyRow('reading asked', {
        leave: { request: { kind: 'no' } }, back: turned ? { here: () => this.inside?.turnBack() } : null, 'say again': { request: { kind: 'say again', how: 'as before' } }, listen, 'leave out': { request: { kind: 'leave out reading' } },
      });
    }
    const of = this.#side();
    if (of === undefined || this.mode === 'boards') return keyRow('boards to true', { step: show({ name: 'step' }), ...this.leafKeys(), listen, menu: show({ name: 'menu' }) });
    if (this.mode === 'more') return keyRow('truing, more', { back: { here: () => this.#turn('side') }, step: show({ name: 'step' }), listen, menu: show({ name: 'menu' }) });
    return keyRow('truing', {
      step: show({ name: 'step' }), 'other side': { request: { kind: 'other side', of } }, 'how is it': { request: { kind: 'is it flat', of } }, 'what to plane': { request: { kind: 'what to plane', of } },
      more: { here: () => this.#turn('more') }, listen, read: { does: { request: { kind: 'read side', of } }, tone: 'now' },
    });
  }

  protected pages(): number {
    return this.mode === 'boards' || this.#side() === undefined ? pagesOf(allBoards(this.view.bench.state).length) : 1;
  }

  /** What is asked stands on the sheet, and so does what was found. */
  protected override note(): TemplateResult | typeof nothing {
    const { lastReply, question } = this.view.bench.conversation;
    return lastReply?.signal === 'wrong' && question === null ? super.note() : nothing;
  }

  /** What lies on the sheet while the guide waits; what lay there before is no part of it any more. */
  protected override get inside(): TruingAsked | null {
    return !this.#question() ? null : this.renderRoot.querySelector('truing-asked');
  }

  #question(): AskedReading | undefined {
    const { question } = this.view.bench.conversation;
    return question?.kind === 'surface reading' ? question : undefined;
  }

  #side(): BoardFace | undefined {
    return this.screen.of ?? sideHere(this.view.bench);
  }

  #turn(mode: TruingScreen['mode']): void {
    this.mode = mode;
    this.page = 0;
  }

  #oneSide(of: BoardFace): TemplateResult {
    const { state: bench } = this.view.bench;
    const side = sideToTrue(bench, of);
    const found = readingsCome(bench, of);
    const telling = onPaper(bench);
    if (!side || !found) return html`<p class="empty">The piece on the bench has no such board.</p>`;
    const head = (more: string): TemplateResult => html`<header class="head"><h1 class="title">${writeSide(bench, of)}</h1><span class="caption">${more}</span></header>`;
    if (!found.ok) return html`<div class="truing">${head('')}<p class="empty">${renderTelling(found.fault.message, telling.size)}</p></div>`;
    if (side.taken.length === 0) return html`<div class="titled">${head(`${telling.size(side.size.length)} × ${telling.size(side.size.width)}`)}<div class="empty"><p>Nothing was read of this side yet. Press read: the bench asks for one reading after the other, ${found.value.wanted} in all. Answer by voice or key.</p><p>The marked end lies before you, this side up.</p></div></div>`;
    const read = `${found.value.read} of ${found.value.wanted} read`;
    if (this.screen.shows === 'shape') return html`<div class="titled">${head(read)}${this.#shape(of, side, found.value)}</div>`;
    return html`<div class="truing">${head(read)}${this.#drawn(of, side, found.value)}${this.#stages(side, found.value)}</div>`;
  }

  #drawn(of: BoardFace, side: SideToTrue, found: SideAsRead): TemplateResult {
    const { state: bench } = this.view.bench;
    const edge = isEdge(of.face);
    const [upper, lower] = edge ? ['the arris at the face', 'the far arris'] : ['the left side', 'the right side'];
    return html`<div class="drawn"><planing-drawing .face=${planingDrawingOf(found, side.shaving)} .rounding=${bench.settings.rounding} .units=${[456, 250]} .name=${`${writeSide(bench, of)}, shavings to plane off`}></planing-drawing>
      <p class="caption">Shavings of ${onPaper(bench).gap(side.shaving)}; the marked end to the left, ${upper} above, ${lower} below. Not to scale across.</p></div>`;
  }

  #stages(side: SideToTrue, found: SideAsRead): TemplateResult {
    const telling = onPaper(this.view.bench.state);
    const [verdict] = verdictWords(side, found, telling);
    return html`<div class="told"><p><strong>${verdict}</strong></p>${found.trueEnough ? html`<p>Nothing more to plane.</p>` : html`<ol>${stageWords(side, found, telling).map((stage, index) => html`<li>${index + 1}. ${stage}</li>`)}</ol>`}</div>`;
  }

  /** Wind, hollow and crown, thickness, diagonals, and how it meets the side that it is glued to: in words alone, and large. */
  #shape(of: BoardFace, side: SideToTrue, found: SideAsRead): TemplateResult {
    const { state: bench } = this.view.bench;
    const telling = onPaper(bench);
    const [verdict, ...shape] = verdictWords(side, found, telling);
    const thickness = found.board.thickness ? [thicknessWords(bench, side, found, telling)] : [];
    const meets = meetingsOf(bench, of).filter(({ mating, sides }) => mating && sides.some(({ board, face }) => board === of.board && face === of.face)).map((meeting) => meetingWords(meeting, telling));
    return html`<div class="told"><p><strong>${verdict}</strong></p>${[...shape, ...thickness, ...meets, `What is allowed: ${side.limit.source}.`].map((line) => html`<p>${line}</p>`)}</div>`;
  }

  #more(of: BoardFace): readonly Choice[] {
    const { settings } = this.view.bench.state;
    const telling = onPaper(this.view.bench.state);
    const glued = meetingsOf(this.view.bench.state, of).length > 0;
    const asks = (request: Parameters<TruingScreen['ask']>[0]): Choice['does'] => ({ here: () => { this.#turn('side'); this.ask(request); } });
    return [
      { label: 'which board', does: { here: () => this.#turn('boards') } },
      { label: 'take thickness', does: asks({ kind: 'read side', of, about: 'thickness' }) },
      { label: 'take diagonals', does: asks({ kind: 'read side', of, about: 'diagonals' }) },
      { label: 'how thick', does: asks({ kind: 'thickness left', of }) },
      { label: 'I planed it', does: asks({ kind: 'surface planed', of }) },
      { label: 'one shaving', detail: telling.gap(settings.shaving), does: { here: () => this.#turn('shaving') } },
      { label: 'winding sticks', detail: telling.size(settings.stick), does: { here: () => this.#turn('sticks') } },
      ...(glued ? [{ label: 'will they close', does: asks({ kind: 'will they close', of }) }] : []),
    ];
  }

  #boards(): TemplateResult {
    const { state: bench } = this.view.bench;
    const choices = allBoards(bench).map((of): Choice => ({ ...boardLabel(bench, of), does: { here: () => { this.#turn('side'); this.ask({ kind: 'show', screen: { name: 'truing', of } }); } } }));
    return html`<div class="titled"><h1 class="title">${choices.length === 0 ? 'No piece is on the bench.' : `Which board? ${this.pageText()}`}</h1>${choiceGrid(choices, this.page)}</div>`;
  }

  #pad(): TemplateResult {
    const { unit } = this.settings.rounding;
    const { step, label } = smallStep(unit);
    const back = (): void => this.#turn('more');
    const set = (setting: { readonly shaving: Length } | { readonly stick: Length }): void => {
      back();
      this.ask({ kind: 'set', setting });
    };
    return this.mode === 'shaving'
      ? html`<count-pad .asked=${'How thick is one shaving of the plane as it is set?'} .unit=${label} .least=${1} .most=${THICKEST_SHAVING[unit]} @count-typed=${(event: CustomEvent<number>) => set({ shaving: nanometres(Math.round(event.detail * step)) })} @pad-left=${back}></count-pad>`
      : html`<fraction-pad .unit=${unit} @length-typed=${(event: CustomEvent<Length>) => set({ stick: event.detail })} @pad-left=${back}><p class="what">length of the winding sticks</p></fraction-pad>`;
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-truing': TruingScreen }
}
