import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { gaugesToSet, gaugeWarning } from '../../core/respond/layoutGauges.ts';
import { boardsAtStep } from '../../core/respond/stepBoards.ts';
import { facesAtStep } from '../../core/respond/stepFaces.ts';
import { stepsOf } from '../../core/respond/views.ts';
import { currentStep, stepCalled } from '../../core/work/progress.ts';
import { isTruing } from '../../core/work/truing.ts';
import { timersStarting } from '../../core/work/step.ts';
import type { SizeMention, Step } from '../../core/work/step.ts';
import { sayingOf, titleOf, writeTolerance } from '../../core/work/wording.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { CAUTION_MARK, CHECK_MARK, GAUGE_MARK, markIcon } from '../look/marks.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { captionOf, sizeText, wordingText } from './pieceView.ts';
import { timerStrip, timerStripStyles } from './timerStrip.ts';

/** As many sizes as can be read from across the bench at once; of more, the first two. */
const MOST_SIZES = 3;
const FIRST_SIZES = 2;

/** The step the maker is on: one sentence, its sizes, its check, its cautions. */
@customElement('bench-step')
export class StepScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, timerStripStyles, css`
    .step { container-type: size; display: grid; grid-template-rows: auto auto minmax(0, 1fr) auto; gap: 0.4rem; height: 100%; }
    .head { display: flex; gap: 1.2rem; justify-content: space-between; align-items: baseline; border-bottom: 0.1rem solid var(--pencil); }
    .head .title { white-space: nowrap; overflow: hidden; height: 3.2rem; flex: 1; }
    .body { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 1.6rem; min-height: 0; }
    .sentence { min-height: 0; height: 100%; line-height: 1.12; overflow: hidden; display: flex; flex-direction: column; justify-content: safe center; }
    .sizes { width: 34rem; height: 100%; overflow: hidden; display: grid; align-content: safe space-evenly; gap: 0.4rem; border-left: 0.1rem solid var(--pencil); padding: 0 0 0.5rem 1.2rem; line-height: 1; }
    .size { display: grid; gap: 0.4rem 1.2rem; align-items: center; }
    .several .size { grid-template-columns: minmax(0, 1fr) auto; }
    .caption { line-height: 1.05; }
    .sizes .caption { font-size: clamp(1.4rem, 0.4em, calc(1.8rem * var(--text))); }
    .foot { display: grid; gap: 0.3rem; border-top: 0.1rem solid var(--pencil); padding-top: 0.4rem; line-height: 1.12; max-height: 43cqh; overflow: hidden; }
    .sized .foot { max-height: 33cqh; }
    .foot p { display: flex; gap: 0.8rem; align-items: flex-start; }
    .foot svg { flex: none; width: 1.1em; height: 1.1em; }
    .caution { font-weight: 700; }
    .none { display: grid; align-content: safe center; gap: 1.6rem; font-size: calc(3.4rem * var(--text)); height: 100%; }
  `];

  @property({ attribute: false }) screen: Extract<Screen, { name: 'step' }> = { name: 'step' };
  protected fitTitle = new FitText(this, '.title', [2.6, 2.4, 2.2, 2, 1.8, 1.6]);
  protected fitSentence = new FitText(this, '.sentence', [5.2, 4.6, 4.2, 3.8, 3.4, 3, 2.7, 2.4, 2.1]);
  protected fitSizes = new FitText(this, '.sizes', [12, 10.6, 9.4, 8.2, 7.2, 6.4, 5.6, 5, 4.4, 3.8, 3.2, 2.8, 2.4]);
  protected fitFoot = new FitText(this, '.foot', [2.1, 1.9, 1.7, 1.5, 1.35]);

  protected get step(): Step | undefined {
    const { state } = this.view.bench;
    const steps = stepsOf(state);
    return (this.screen.step === undefined ? undefined : stepCalled(this.screen.step, steps)) ?? currentStep(steps, state);
  }

  protected sheet(): TemplateResult {
    const { state } = this.view.bench;
    const step = this.step;
    if (step === undefined) return this.#noStep();
    const steps = stepsOf(state);
    return html`<div class="step ${step.sizes.length > 0 ? 'sized' : ''}">
      <header class="head"><h1 class="title">${titleOf(step, state.places)}</h1><span class="caption">${this.#standing(step)}${steps.indexOf(step) + 1} of ${steps.length}</span></header>
      ${timerStrip(this.view)}
      <div class="body"><div class="sentence"><p>${wordingText(state, sayingOf(step, state.places))} ${facesAtStep(state, step)} ${boardsAtStep(state, step)}</p></div>${this.#sizes(step.sizes)}</div>
      <footer class="foot">${this.#cautions(step)}${this.#gauges(step)}${this.#check(step)}${this.#tools(step)}</footer></div>`;
  }

  keys(): readonly KeySpec[] {
    const step = this.step;
    if (step === undefined) return keyRow('no step', { files: show({ name: 'files' }), listen: { act: { kind: 'listen' } }, menu: show({ name: 'menu' }) });
    const clockWaits = this.#clockWaits(step);
    const chops = step.operation === 'chop mortises' ? step.joint : undefined;
    const laidOut = step.operation === 'joint layout' && !clockWaits;
    const glues = step.operation.endsWith('glue-up');
    // What is held against the board and what to plane has a screen of its own; the sizes stand here or behind 'more'.
    const trues = !clockWaits && isTruing(step);
    // Where each copy goes is chosen here; there is no size to be looked up.
    const facing = step.operation === 'orient and mark' && step.sizes.length === 0 && this.view.bench.state.piece?.file.parts.find(({ id }) => id === step.part)?.places !== undefined;
    // What a board gives is told by the plan, as soon as there are boards.
    const planned = step.operation === 'rough crosscut' && this.view.bench.state.rack.size > 0;
    return keyRow('step', {
      back: { request: { kind: 'step back' } },
      'start clock': clockWaits ? { request: { kind: 'start step timer' } } : null,
      faces: facing ? show({ name: 'faces', ...(step.part === undefined ? {} : { part: step.part }) }) : null,
      stages: chops ? { request: { kind: 'chop stage', to: 'here', joint: chops } } : null,
      'cutting plan': planned ? show({ name: 'cutting' }) : null,
      layout: laidOut ? { request: { kind: 'layout face' } } : null,
      readings: trues ? show({ name: 'truing' }) : null,
      sizes: trues || clockWaits || facing || chops || laidOut || planned ? null : step.part === undefined ? { does: show({ name: 'step', step: step.id, inFull: true }), disabled: step.sizes.length === 0 } : show({ name: 'part', part: step.part, ...(step.copy === undefined ? {} : { copy: step.copy }) }),
      more: show({ name: 'step', step: step.id, inFull: true }),
      'glue-up': glues ? show({ name: 'gluing' }) : null,
      // Where something is glued there is no room for it; the number pad and the voice have it all the same.
      'say again': glues ? null : { request: { kind: 'say again', how: 'as before' } },
      listen: { act: { kind: 'listen' } },
      next: { request: { kind: 'next step' } },
      done: { does: { request: { kind: 'step done' } }, tone: 'now' },
    });
  }

  /** The step has a clock of its own that is not running yet: with the glue on, it is what the maker needs first. */
  #clockWaits(step: Step): boolean {
    const { state } = this.view.bench;
    return this.isNow(step) && step.sizes.length === 0
      && timersStarting(step, 'when asked').some(({ name }) => !state.timers.some((running) => running.name === name));
  }

  /** The maker is on this step, and does not only look at it. */
  protected isNow(step: Step): boolean {
    const { state } = this.view.bench;
    return currentStep(stepsOf(state), state)?.id === step.id;
  }

  #standing(step: Step): string {
    const { done, skipped } = this.view.bench.state;
    return done.has(step.id) ? 'done · ' : skipped.has(step.id) ? 'skipped · ' : '';
  }

  #sizes(sizes: readonly SizeMention[]): TemplateResult | typeof nothing {
    if (sizes.length === 0) return nothing;
    const { state } = this.view.bench;
    const shown = sizes.length > MOST_SIZES ? sizes.slice(0, FIRST_SIZES) : sizes;
    const more = sizes.length - shown.length;
    const captions = sizes.map((mention) => captionOf(state, mention));
    const oneOwner = captions.every(({ owner }) => owner === captions[0]?.owner);
    return html`<div class="sizes ${sizes.length > 1 ? 'several' : ''}">${shown.map((mention, index) => {
      const { owner, say, from } = captions[index] ?? captionOf(state, mention);
      return html`<div class="size"><span class="caption">${[oneOwner && sizes.length > 1 ? '' : owner, say, from].filter(Boolean).join(', ')}</span>${sizeText(state, mention)}</div>`;
    })}${more > 0 ? html`<span class="caption">and ${more} more: press more</span>` : nothing}</div>`;
  }

  #cautions(step: Step): readonly TemplateResult[] {
    return step.cautions.map(({ say }) => html`<p class="caution"><svg viewBox="0 0 24 24" role="img" aria-label="Caution">${markIcon(CAUTION_MARK)}</svg><span>${say}</span></p>`);
  }

  /** Which gauge is set to what before the step begins, and what would be lost by it. */
  #gauges(step: Step): readonly TemplateResult[] {
    const { bench } = this.view;
    const warning = gaugeWarning(bench, step);
    const set = gaugesToSet(bench, step);
    return [
      ...(warning === '' ? [] : [html`<p class="caution"><svg viewBox="0 0 24 24" role="img" aria-label="Caution">${markIcon(CAUTION_MARK)}</svg><span>${warning}</span></p>`]),
      ...(set === '' ? [] : [html`<p class="gauges"><svg viewBox="0 0 24 24" role="img" aria-label="Gauges">${markIcon(GAUGE_MARK)}</svg><span>${set}</span></p>`]),
    ];
  }

  #check({ check }: Step): TemplateResult {
    const { state } = this.view.bench;
    const within = check.tolerance === undefined ? '' : ` Within ${writeTolerance(check.tolerance, state.settings.rounding.unit)}.`;
    return html`<p><svg viewBox="0 0 24 24" role="img" aria-label="Check">${markIcon(CHECK_MARK)}</svg><span>${wordingText(state, check.say)}${within}</span></p>`;
  }

  #tools(step: Step): TemplateResult | typeof nothing {
    return step.tools.length === 0 ? nothing : html`<p class="tools">Tools: ${step.tools.join(', ')}.</p>`;
  }

  #noStep(): TemplateResult {
    return this.view.bench.state.piece === null
      ? html`<div class="none"><h1>No piece is on the bench.</h1><p>Open the menu and choose files.</p></div>`
      : html`<div class="none"><h1>Every step is done.</h1><p>The piece is finished.</p></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-step': StepScreen }
}
