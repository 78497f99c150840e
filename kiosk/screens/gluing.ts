import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { between } from '../../core/clock/between.ts';
import { sayDuration } from '../../core/clock/sayDuration.ts';
import { onTheClock } from '../../core/glue/glueUp.ts';
import { glueTimesNow, glueUpOf, gluingNow, rehearsalOf, type GlueUpNow, type GluingNow } from '../../core/respond/gluingState.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { runningTimers, leftText, timerStrip, timerStripStyles, writeLeft } from './timerStrip.ts';

/** The glue-up of the step: its rehearsal and the real thing, one move at a time, with its clock. */
@customElement('bench-gluing')
export class GluingScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, timerStripStyles, css`
    .going { display: grid; grid-template-rows: auto minmax(0, 1fr) auto; gap: 0.8rem; height: 100%; }
    .top { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 1.6rem; align-items: start; }
    .clock { font-family: var(--figures); font-size: 6.4rem; line-height: 1; text-align: right; }
    .clock .under { display: block; font-family: var(--words); font-size: 1.8rem; color: var(--pencil); }
    .move { height: 100%; overflow: hidden; font-weight: 700; line-height: 1.1; align-content: safe center; }
    .plan { height: 100%; overflow: hidden; line-height: 1.2; align-content: start; }
    .plan li { border-bottom: 0.1rem solid var(--pencil); padding: 0.2rem 0; }
    .plan .now { font-weight: 700; }
    .plan .done { color: var(--pencil); }
    .told { font-weight: 700; border-left: 0.6rem solid var(--now); padding-left: 0.8rem; }
  `];

  protected fitMove = new FitText(this, '.move', [5.2, 4.6, 4, 3.4, 2.9, 2.5]);
  protected fitPlan = new FitText(this, '.plan', [2.4, 2.1, 1.9, 1.7, 1.5, 1.35]);

  protected sheet(): TemplateResult {
    const going = gluingNow(this.view.bench.state);
    if (going?.move) return this.#going(going, going.move.say);
    const glueUp = glueUpOf(this.view.bench.state);
    return glueUp ? this.#before(glueUp) : html`<p class="move">This step glues nothing. Go to a glue-up first.</p>`;
  }

  keys(): readonly KeySpec[] {
    const { state } = this.view.bench;
    if (gluingNow(state)) {
      return keyRow('gluing', {
        leave: { request: { kind: 'leave gluing' } }, 'how long': { request: { kind: 'time left' } }, 'say again': { request: { kind: 'say again', how: 'as before' } },
        listen: { act: { kind: 'listen' } }, next: { does: { request: { kind: 'next move' } }, tone: 'now' },
      });
    }
    const glueUp = glueUpOf(state);
    const ready = glueUp !== undefined && glueUp.stage < glueUp.stages.length;
    const tooLong = glueUp && rehearsalOf(state, glueUp, this.view.now)?.split !== undefined;
    return keyRow('glue-up', {
      step: show({ name: 'step' }), air: show({ name: 'air' }), clamps: glueUp && glueUp.plan.kind !== 'frame' ? { request: { kind: 'how many clamps' } } : null,
      rehearse: ready ? { request: { kind: 'begin gluing', mode: 'rehearsal' } } : null, divide: ready && tooLong ? { request: { kind: 'divide gluing' } } : null,
      listen: { act: { kind: 'listen' } }, 'start gluing': ready ? { does: { request: { kind: 'begin gluing', mode: 'glue' } }, tone: 'now' } : null,
    });
  }

  /** What is said is what stands here already. */
  protected override note(): TemplateResult | typeof nothing {
    return gluingNow(this.view.bench.state) ? nothing : super.note();
  }

  #going(going: GluingNow, say: string): TemplateResult {
    const part = going.stages.length > 1 ? `, part ${going.stage + 1} of ${going.stages.length}` : '';
    return html`<div class="going"><div class="top"><div><h1 class="title">${going.gluing.mode === 'glue' ? 'Glue-up' : 'Rehearsal, dry'}: ${going.plan.name}${part}</h1>
      <p class="caption">move ${going.at + 1} of ${going.moves.length}</p></div>${this.#clock(going)}</div>
      <p class="move" role="status">${say}</p>
      <p class="caption">${going.moves[going.at + 1] ? html`then: ${going.moves[going.at + 1]?.say}` : nothing}</p></div>`;
  }

  /** With glue: the open time that is left, or the clamps. Dry: the time since the first glue would have gone on. */
  #clock(going: GluingNow): TemplateResult {
    const { now } = this.view;
    if (going.gluing.mode === 'glue') {
      const running = runningTimers(this.view).find(({ timer }) => timer.kind === 'open time') ?? runningTimers(this.view).find(({ timer }) => timer.kind === 'clamp');
      return running ? html`<p class="clock">${leftText(running)}<span class="under">${running.timer.name}</span></p>` : html`<p class="clock">${writeLeft(glueTimesNow(this.view.bench.state, now).openMs)}<span class="under">open time, not yet running</span></p>`;
    }
    const first = going.moves.findIndex(onTheClock);
    const over = going.gluing.doneAt[going.moves.findLastIndex(onTheClock)];
    const since = going.at < first ? undefined : between(going.gluing.doneAt[first - 1] ?? going.gluing.begunAt, over ?? now);
    return html`<p class="clock">${since === undefined || since.by === 'unknown' ? '0:00' : writeLeft(Math.max(0, since.ms))}<span class="under">of ${writeLeft(glueTimesNow(this.view.bench.state, now).openMs)} open time</span></p>`;
  }

  #before(glueUp: GlueUpNow): TemplateResult {
    const { bench: { state }, now } = this.view;
    const rehearsal = rehearsalOf(state, glueUp, now);
    const times = glueTimesNow(state, now);
    const say = (id: string): string => glueUp.plan.joints.find((joint) => joint.id === id)?.say ?? id;
    const judged = rehearsal === undefined ? 'Not rehearsed yet.' : `Rehearsed in ${sayDuration(rehearsal.judged.totalMs)}: ${rehearsal.judged.verdict === 'fits' ? 'it fits' : rehearsal.split ? `too long; it can be divided in ${rehearsal.split.stages.length}` : 'too long'}.`;
    return html`<div class="going"><div><h1 class="title">${glueUp.stage >= glueUp.stages.length ? 'Glued: ' : ''}${glueUp.plan.name}</h1><p class="told">${judged}</p>
      <p class="caption">Open time ${sayDuration(times.openMs)}, clamps ${sayDuration(times.clampMs)}, safe to work in ${sayDuration(times.workMs)}.</p></div>
      <ul class="plan">${glueUp.stages.map((joints, index) => html`${glueUp.stages.length > 1 ? html`<li class=${index === glueUp.stage ? 'now' : ''}>Part ${index + 1}${index < glueUp.stage ? ', glued' : ''}</li>` : nothing}${joints.map((id) => html`<li class=${index < glueUp.stage ? 'done' : ''}>${say(id)}</li>`)}`)}</ul>
      ${timerStrip(this.view)}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-gluing': GluingScreen }
}
