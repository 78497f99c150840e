import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { facesAtStep } from '../../core/respond/stepFaces.ts';
import { timersStarting } from '../../core/work/step.ts';
import type { Step } from '../../core/work/step.ts';
import { usualTroubles } from '../../core/work/troubles.ts';
import { titleOf, writeTolerance } from '../../core/work/wording.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { CAUTION_MARK, markIcon } from '../look/marks.ts';
import { show } from './benchScreen.ts';
import { captionOf, sizeText, wordingText } from './pieceView.ts';
import { StepScreen } from './step.ts';

/** More than this many cannot be read even close by; they are leafed through. */
const SIZES_PER_PAGE = 5;
/** As many keys as have room side by side. */
const MOST_KEYS = 7;

/** Everything about the step, for reading close by: the fuller text, all sizes, tools, check and cautions. */
@customElement('bench-step-in-full')
export class StepInFullScreen extends StepScreen {
  static override styles = [...StepScreen.styles, css`
    .full { display: grid; grid-template-rows: auto minmax(0, 1fr); gap: 0.4rem; height: 100%; }
    .text { min-height: 0; height: 100%; overflow: hidden; display: grid; grid-template-columns: minmax(0, 1.3fr) minmax(0, 1fr); gap: 1.6rem; line-height: 1.2; }
    .text.alone { grid-template-columns: minmax(0, 1fr); }
    .text > div { display: grid; gap: 0.5em; align-content: start; }
    dl { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0.2em 0.8em; align-items: center; }
    dt { color: var(--pencil); }
    dd fraction-text { font-size: 1.5em; }
    .caution svg { width: 1.1em; height: 1.1em; vertical-align: -0.15em; }
    .label { color: var(--pencil); }
  `];

  @state() private page = 0;
  protected fitText = new FitText(this, '.text', [2.6, 2.4, 2.2, 2, 1.85, 1.7, 1.55, 1.4, 1.3, 1.2]);

  protected override sheet(): TemplateResult {
    const { state } = this.view.bench;
    const step = this.step;
    if (step === undefined) return super.sheet();
    const within = step.check.tolerance === undefined ? '' : ` Within ${writeTolerance(step.check.tolerance, state.settings.rounding.unit)}.`;
    return html`<div class="full"><header class="head"><h1 class="title">${titleOf(step, state.places)}</h1></header>
      <div class="text ${step.sizes.length === 0 ? 'alone' : ''}"><div><p>${wordingText(state, step.show)}</p>${facesAtStep(state, step) === '' ? nothing : html`<p>${facesAtStep(state, step)}</p>`}
        ${step.cautions.map(({ say }) => html`<p class="caution"><svg viewBox="0 0 24 24" role="img" aria-label="Caution">${markIcon(CAUTION_MARK)}</svg> ${say}</p>`)}
        <p><span class="label">Right when:</span> ${wordingText(state, step.check.say)}${within}</p>
        ${step.tools.length === 0 ? nothing : html`<p><span class="label">Tools:</span> ${step.tools.join(', ')}.</p>`}</div>
      ${step.sizes.length === 0 ? nothing : html`<div><dl>${this.#shown(step).map((mention) => {
        const { owner, say, from } = captionOf(state, mention);
        return html`<dt>${[owner, say, from].filter(Boolean).join(', ')}</dt><dd>${sizeText(state, mention)}</dd>`;
      })}</dl></div>`}</div></div>`;
  }

  override keys(): readonly KeySpec[] {
    const step = this.step;
    if (step === undefined) return super.keys();
    const { done, skipped } = this.view.bench.state;
    const closed = done.has(step.id) || skipped.has(step.id);
    const measure = step.record[0];
    const pages = Math.ceil(step.sizes.length / SIZES_PER_PAGE);
    const row = keyRow('step in full', {
      step: show({ name: 'step', step: step.id }),
      skip: closed ? null : { request: { kind: 'skip step' } },
      'start clock': timersStarting(step, 'when asked').length === 0 ? null : { request: { kind: 'start step timer' } },
      record: measure === undefined ? null : show({ name: 'record', ...measure }),
      'open again': closed ? { request: { kind: 'reopen step' } } : null,
      faces: step.part !== undefined && ['orient and mark', 'joint layout', 'chop mortises', 'fit'].includes(step.operation) ? show({ name: 'faces', part: step.part }) : null,
      'other sizes': pages <= 1 ? null : { here: () => { this.page = (this.page + 1) % pages; } },
      'went wrong': closed || usualTroubles(step.operation).length === 0 || !this.isNow(step) ? null : { request: { kind: 'what goes wrong' } },
      menu: show({ name: 'menu' }),
      done: closed ? null : { does: { request: { kind: 'step done' } }, tone: 'now' },
    });
    // The one that a voice can do as well gives way.
    return row.length > MOST_KEYS ? row.filter(({ label }) => label !== 'went wrong') : row;
  }

  #shown(step: Step): Step['sizes'] {
    const pages = Math.max(1, Math.ceil(step.sizes.length / SIZES_PER_PAGE));
    const page = this.page % pages;
    return step.sizes.slice(page * SIZES_PER_PAGE, (page + 1) * SIZES_PER_PAGE);
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-step-in-full': StepInFullScreen }
}
