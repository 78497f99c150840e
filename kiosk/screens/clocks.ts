import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { sayDuration } from '../../core/clock/sayDuration.ts';
import type { TimerKind } from '../../core/clock/timer.ts';
import '../keys/countPad.ts';
import type { KeySpec, PadSymbol } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { leftText, runningTimers } from './timerStrip.ts';
import type { RunningTimer } from './timerStrip.ts';

const MINUTE_MS = 60_000;
const CLOCKS_SHOWN = 4;
const MOST_MINUTES = 9999;
const LENGTHS_MINUTES = [1, 2, 3, 5, 10, 15, 20, 30, 45, 60, 90, 120, 240, 480, 720, 1440] as const;

/** Every running clock, large; one of them is chosen, and the keys act on it. */
@customElement('bench-clocks')
export class ClocksScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, choiceStyles, css`
    .clocks { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); grid-template-rows: repeat(2, minmax(0, 1fr)); gap: var(--gap); height: 100%; }
    .clocks.one { grid-template-columns: minmax(0, 1fr); grid-template-rows: minmax(0, 1fr); }
    .none { height: 100%; display: grid; place-content: center; font-size: calc(3.4rem * var(--text)); }
  `];

  @state() private chosen: number | null = null;
  @state() private choosing = false;
  @state() private page = 0;
  @state() private typing = false;
  protected fitNone = new FitText(this, '.none', [3.4, 3, 2.6]);

  override get padShown(): boolean {
    return this.typing;
  }

  protected sheet(): TemplateResult {
    if (this.typing) {
      return html`<count-pad asked="How many minutes?" unit="min" .most=${MOST_MINUTES} @count-typed=${this.#minutesTyped} @pad-left=${() => { this.typing = false; }}></count-pad>`;
    }
    if (this.choosing) return html`<div class="titled"><h1 class="title">How long?</h1>${choiceGrid(this.#newClocks(), this.page)}</div>`;
    const running = runningTimers(this.view).slice(0, CLOCKS_SHOWN);
    if (running.length === 0) return html`<p class="none">No clock is running.</p>`;
    return html`<div class="clocks ${running.length === 1 ? 'one' : ''}">${running.map((each, index) => html`<bench-key wide ?large=${running.length === 1} .spec=${this.#clockKey(each, index)}></bench-key>`)}</div>`;
  }

  keys(): readonly KeySpec[] {
    if (this.typing) return [];
    if (this.choosing) {
      const pages = pagesOf(this.#newClocks().length);
      return keyRow('new clock', { leave: { here: () => { this.choosing = false; } }, next: { here: () => { this.page = (this.page + 1) % pages; } }, 'type it': { here: () => { this.typing = true; } } });
    }
    const timer = this.#chosenTimer()?.timer;
    const about = timer === undefined ? null : { timer: timer.id };
    return keyRow('clocks', {
      step: show({ name: 'step' }),
      'five less': about && { request: { kind: 'change timer', addMs: -5 * MINUTE_MS, ...about } },
      'five more': about && { request: { kind: 'change timer', addMs: 5 * MINUTE_MS, ...about } },
      hold: timer?.heldLeftMs === undefined && about ? { request: { kind: 'hold timer', ...about } } : null,
      'go on': timer?.heldLeftMs === undefined ? null : { request: { kind: 'resume timer', timer: timer.id } },
      stop: about && { request: { kind: 'stop timer', ...about } },
      'new clock': { here: () => { this.choosing = true; this.page = 0; } },
      menu: show({ name: 'menu' }),
    });
  }

  #minutesTyped(event: CustomEvent<number>): void {
    this.typing = false;
    this.choosing = false;
    this.ask({ kind: 'start timer', timer: 'plain', durationMs: event.detail * MINUTE_MS });
  }

  #chosenTimer(): RunningTimer | undefined {
    const running = runningTimers(this.view);
    return running.find(({ timer }) => timer.id === this.chosen) ?? running[0];
  }

  #clockKey(running: RunningTimer, index: number): KeySpec {
    const { timer } = running;
    const several = runningTimers(this.view).length > 1;
    return {
      label: timer.name, pad: String(index + 1) as PadSymbol, does: { here: () => { this.chosen = timer.id; } },
      ...(several ? { chosen: this.#chosenTimer()?.timer.id === timer.id } : {}), ...(running.calls ? { tone: 'due' as const } : {}),
      face: html`<span>${timer.name}</span><span class="figures huge">${leftText(running)}</span>${running.reading.certainty === 'unknown' ? html`<span class="detail">the power was off, for how long is not known</span>` : nothing}`,
    };
  }

  #newClocks(): readonly Choice[] {
    const { state } = this.view.bench;
    const start = (timer: TimerKind, durationMs: number): Choice['does'] => ({ here: () => {
      this.choosing = false;
      this.ask({ kind: 'start timer', timer, durationMs });
    } });
    return [
      ...LENGTHS_MINUTES.map((minutes) => ({ label: shortDuration(minutes), figure: minutes < 60 ? minutes : minutes / 60, does: start('plain', minutes * MINUTE_MS) })),
      { label: 'break', detail: `every ${sayDuration(state.settings.breakSeconds * 1000)}`, does: start('break', state.settings.breakSeconds * 1000) },
      { label: 'this step’s clock', does: { here: () => { this.choosing = false; this.ask({ kind: 'start step timer' }); } } },
    ];
  }
}

const shortDuration = (minutes: number): string => (minutes < 60 ? `${minutes} min` : minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`);

declare global {
  interface HTMLElementTagNameMap { 'bench-clocks': ClocksScreen }
}
