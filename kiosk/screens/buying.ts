import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { shortageOf, type Shortage } from '../../core/respond/buying.ts';
import type { Length } from '../../core/length/length.ts';
import { writeLength } from '../../core/length/write.ts';
import { cutNoun } from '../../core/stock/blanks.ts';
import { GRADE_YIELDS } from '../../core/stock/buying.ts';
import '../keys/fractionPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { LeafingScreen } from './leafing.ts';
import './yardForm.ts';
import type { YardForm } from './yardForm.ts';

/** What the rack lacks, a wood and thickness a page, as the yard sells it; and, board by board at the yard, whether it helps. */
@customElement('bench-buying')
export class BuyingScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, css`
    .list { height: 100%; overflow: hidden; line-height: 1.2; display: grid; align-content: safe start; gap: 0.4em; }
    .list h1 { font-size: 1.2em; }
    .list li { border-bottom: 0.1rem solid var(--pencil); }
    .what { font-size: calc(1.9rem * var(--text)); line-height: 1.1; font-weight: 700; }
    .answer { font-weight: 700; border-left: 0.6rem solid var(--now); padding-left: 0.8rem; }
  `];

  @property({ attribute: false }) screen: Extract<Screen, { name: 'buying' }> = { name: 'buying' };
  /** A board at the yard is being told: its length first. */
  @state() private asking: 'length' | 'width' | null = null;
  /** Grade, price and width at the yard lie open. */
  @state() private telling = false;
  #length: Length | null = null;
  protected fitList = new FitText(this, '.list', [2.4, 2.2, 2, 1.8, 1.65, 1.5, 1.35, 1.2]);

  protected sheet(): TemplateResult {
    if (this.telling) return html`<bench-yard-form .bench=${this.view.bench.state} @form-left=${() => { this.telling = false; }} @form-turned=${() => { this.requestUpdate(); }}></bench-yard-form>`;
    if (this.asking !== null) return html`<fraction-pad .unit=${this.settings.rounding.unit} @length-typed=${this.#typed} @pad-left=${() => { this.asking = null; }}><p class="what">a board at the yard: how ${this.asking === 'length' ? 'long' : 'wide'}</p></fraction-pad>`;
    const { lists } = shortageOf(this.view.bench);
    const list = lists[this.page];
    return html`<div class="list">${this.#answer()}${list === undefined ? html`<h1>Nothing is to be bought.</h1><p>The rack gives every part.</p>` : this.#drawList(list, lists.length)}</div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.telling) return this.inside?.keys() ?? [];
    if (this.asking !== null) return [];
    const { board } = this.screen;
    return keyRow('buying', {
      boards: show({ name: 'boards' }), ...this.leafKeys(),
      'read the list': { request: { kind: 'what to buy' } },
      'the yard': { here: () => { this.telling = true; } },
      'does it help': { does: { here: () => { this.asking = 'length'; } }, ...(board === undefined ? { tone: 'now' as const } : {}) },
      bought: board === undefined ? null : { does: { request: { kind: 'bought' } }, tone: 'now' },
    });
  }

  override get padShown(): boolean {
    return this.asking !== null || (this.inside?.padShown ?? false);
  }

  protected override get inside(): YardForm | null {
    return this.telling && this.hasUpdated ? this.renderRoot.querySelector('bench-yard-form') : null;
  }

  protected pages(): number {
    return Math.max(1, shortageOf(this.view.bench).lists.length);
  }

  protected override note(): typeof nothing {
    return nothing;
  }

  /** What was answered of the board at the yard, in the words that were said. */
  #answer(): TemplateResult | typeof nothing {
    const { lastReply } = this.view.bench.conversation;
    return this.screen.board === undefined || !lastReply ? nothing : html`<p class="answer">${lastReply.say}</p>`;
  }

  #drawList({ species, quarter, thickness, blanks, longest, widest, netBoardFeet, order }: Shortage['lists'][number], pages: number): TemplateResult {
    const write = (length: Length): string => writeLength(length, this.settings.rounding);
    const { grade } = this.view.bench.state.sawing;
    const cost = order.cents === 0 ? '' : `, about ${(order.cents / 100).toFixed(2)}`;
    return html`<h1>${quarter?.name ?? write(thickness)} ${species}: ${Math.ceil(order.boardFeet)} board feet${cost}${pages > 1 ? ` (${this.page + 1} of ${pages})` : ''}</h1>
      <p>${order.feet === undefined ? 'Longer than boards are sold as a rule.' : `${order.boards} boards of ${order.feet} ft about ${write(this.view.bench.state.sawing.yardWidth)} wide (${order.boardFeetEach.toFixed(1)} board feet each).`} Among them boards of ${write(longest)} × ${write(widest)} or more.</p>
      <p>${netBoardFeet.toFixed(1)} in the parts; ${order.sparePercent} % spare, for ${grade} need only yield ${Math.round(100 * GRADE_YIELDS[grade])} % clear.</p>
      <ul>${blanks.map(({ id, name, count, length, width }) => html`<li>${count} ${cutNoun(this.view.bench.state.piece?.file.parts ?? [], { id, name }, count)}: ${write(length)} × ${write(width)}</li>`)}</ul>`;
  }

  #typed(event: CustomEvent<Length>): void {
    if (this.asking === 'length') {
      this.#length = event.detail;
      this.asking = 'width';
      return;
    }
    const length = this.#length;
    this.asking = null;
    if (length !== null) this.ask({ kind: 'does it help', length, width: event.detail });
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-buying': BuyingScreen }
}
