import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import type { ChopStage } from '../../core/joint/chopStages.ts';
import { hollowOf, mateOf } from '../../core/joint/mates.ts';
import { stagesFor } from '../../core/joint/ofPiece.ts';
import { writeLength } from '../../core/length/write.ts';
import { renderTelling } from '../../core/reckoning/telling.ts';
import { copyAtStep } from '../../core/respond/legMaps.ts';
import { sizesOf, stepsOf } from '../../core/respond/views.ts';
import { CAUTIONS } from '../../core/work/cautions.ts';
import { currentStep } from '../../core/work/progress.ts';
import '../draw/chopDrawing.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen, show } from './benchScreen.ts';

/** A mortise being chopped, one stage at a time: its drawing, what to do, and whether to lever. */
@customElement('bench-chopping')
export class ChoppingScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .chopping { display: grid; grid-template: auto minmax(0, 1fr) auto / 46.8rem minmax(0, 1fr); gap: 0.3rem 1.2rem; height: 100%; }
    .head { grid-column: 1 / -1; display: flex; gap: 1.2rem; justify-content: space-between; align-items: baseline; white-space: nowrap; overflow: hidden; }
    .drawing { grid-row: 2 / 4; min-height: 0; }
    .say { min-height: 0; height: 100%; overflow: hidden; line-height: 1.15; }
    .foot { font-weight: 700; font-size: calc(1.5rem * var(--text)); line-height: 1.12; max-height: 9rem; overflow: hidden; border-top: 0.1rem solid var(--pencil); padding-top: 0.4rem; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'chopping' }>;
  protected fitSay = new FitText(this, '.say', [2.8, 2.6, 2.4, 2.2, 2, 1.85, 1.7, 1.55, 1.4, 1.25]);
  protected fitFoot = new FitText(this, '.foot', [1.6, 1.4, 1.25, 1.1]);

  protected sheet(): TemplateResult {
    const { state } = this.view.bench;
    const { rounding } = this.settings;
    const found = this.#stages();
    const stage = found?.stages[this.screen.stage - 1];
    if (found === undefined || stage === undefined) return html`<p class="title">There is no such mortise on the bench any more.</p>`;
    const step = currentStep(stepsOf(state), state);
    const place = step?.copy === undefined ? undefined : state.places.get(`${step.part ?? ''}/${step.copy}`);
    return html`<div class="chopping">
      <header class="head"><h1 class="title">${found.name}${place === undefined ? '' : `, ${place}`}: ${nameOf(stage)}</h1><span class="caption">stage ${this.screen.stage} of ${found.stages.length}</span></header>
      <chop-drawing class="drawing" .stage=${stage.drawing} .rounding=${rounding} .name=${`stage ${this.screen.stage}, ${nameOf(stage)}`}></chop-drawing>
      <p class="say"><span>${renderTelling(stage.show, (length) => writeLength(length, rounding))}</span></p>
      <p class="foot">${cautionOf(stage)}</p></div>`;
  }

  keys(): readonly KeySpec[] {
    const count = this.#stages()?.stages.length ?? 0;
    const { joint, stage } = this.screen;
    return keyRow('chopping', {
      step: show({ name: 'step' }),
      back: { does: { request: { kind: 'chop stage', to: 'back', joint } }, disabled: stage <= 1 },
      layout: { request: { kind: 'layout face', ...this.#mortised() } },
      'say again': { request: { kind: 'say again', how: 'as before' } },
      listen: { act: { kind: 'listen' } },
      next: { does: { request: { kind: 'chop stage', to: 'next', joint } }, tone: 'now', disabled: stage >= count },
    });
  }

  /** The part that is chopped, and the copy at hand. */
  #mortised(): { readonly part?: string; readonly copy?: number } {
    const { state } = this.view.bench;
    const joint = state.piece?.file.joints.find(({ id }) => id === this.screen.joint);
    const step = currentStep(stepsOf(state), state);
    if (joint?.kind !== 'mortise and tenon') return {};
    const copy = step?.part === joint.mortiseIn ? copyAtStep(state, step) : undefined;
    return { part: joint.mortiseIn, ...(copy === undefined ? {} : { copy }) };
  }

  #stages(): { readonly stages: readonly ChopStage[]; readonly name: string } | undefined {
    const { state } = this.view.bench;
    const sizes = sizesOf(state);
    const joint = state.piece?.file.joints.find(({ id }) => id === this.screen.joint);
    if (!state.piece || !sizes || joint?.kind !== 'mortise and tenon') return undefined;
    const step = currentStep(stepsOf(state), state);
    const planned = stagesFor(state.piece, sizes, joint, step?.joint === joint.id && step.part === joint.mortiseIn ? step.copy : undefined);
    return planned.ok ? { stages: planned.value, name: `${mateOf(state.piece.file, joint)} ${hollowOf(joint)}` } : undefined;
  }
}

/** What it hurts with, shown always; and whether to lever. */
function cautionOf({ kind, drawing: { slot, lever } }: ChopStage): string {
  if (kind === 'saw') return CAUTIONS.saw.say;
  return `${lever === undefined && slot === undefined ? 'No levering. ' : ''}${CAUTIONS.chisel.say} ${CAUTIONS.mallet.say}`;
}

function nameOf({ kind, pass }: ChopStage): string {
  return pass === undefined ? kind : `${kind} ${pass}`;
}

declare global {
  interface HTMLElementTagNameMap { 'bench-chopping': ChoppingScreen }
}
