import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { stepsOf } from '../../core/respond/views.ts';
import { currentStep, isOpen } from '../../core/work/progress.ts';
import type { Operation, Step } from '../../core/work/step.ts';
import { titleOf } from '../../core/work/wording.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { LeafingScreen } from './leafing.ts';

/** What is left: the operations with how many of their steps are open; behind each, its steps. */
@customElement('bench-steps')
export class StepsScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .head { display: flex; gap: 1.2rem; align-items: baseline; justify-content: space-between; white-space: nowrap; overflow: hidden; }
  `];

  @state() private operation: Operation | null = null;

  protected sheet(): TemplateResult {
    const steps = stepsOf(this.view.bench.state);
    const open = steps.filter((step) => isOpen(step, this.view.bench.state)).length;
    const title = this.operation ?? (steps.length === 0 ? 'No piece is on the bench' : open === 0 ? 'Every step is done' : `${open} of ${steps.length} steps are left`);
    return html`<div class="titled"><header class="head"><h1 class="title">${title}</h1><span class="caption">${this.pageText()}</span></header>${choiceGrid(this.#choices(), this.page)}</div>`;
  }

  keys(): readonly KeySpec[] {
    const leaf = this.leafKeys();
    const up = { does: { here: () => { this.operation = null; this.page = 0; } } };
    return keyRow('steps', {
      step: show({ name: 'step' }),
      back: this.operation !== null && this.page === 0 ? up : leaf.back,
      next: leaf.next,
      listen: { act: { kind: 'listen' } },
      menu: show({ name: 'menu' }),
    });
  }

  protected pages(): number {
    return pagesOf(this.#choices().length);
  }

  #choices(): readonly Choice[] {
    const { state } = this.view.bench;
    const steps = stepsOf(state);
    const current = currentStep(steps, state);
    return this.operation === null ? this.#operations(steps, current) : steps.filter((step) => step.operation === this.operation).map((step): Choice => ({
      label: withoutOperation(titleOf(step, state.places), step.operation), detail: state.done.has(step.id) ? 'done' : state.skipped.has(step.id) ? 'skipped' : 'open',
      does: { request: { kind: 'go to step', step: step.id } }, ...(step === current ? { chosen: true } : {}),
    }));
  }

  #operations(steps: readonly Step[], current: Step | undefined): readonly Choice[] {
    const groups = new Map<Operation, Step[]>();
    for (const step of steps) groups.set(step.operation, [...(groups.get(step.operation) ?? []), step]);
    return [...groups].map(([operation, group]): Choice => {
      const open = group.filter((step) => isOpen(step, this.view.bench.state)).length;
      return {
        label: operation, detail: open === 0 ? 'done' : `${open} of ${group.length} left`,
        does: { here: () => { this.operation = operation; this.page = 0; } }, ...(current?.operation === operation ? { chosen: true } : {}),
      };
    });
  }
}

/** 'Face, leg 3 of 4' under the heading 'face' is 'leg 3 of 4'. */
function withoutOperation(title: string, operation: Operation): string {
  return title.toLowerCase().startsWith(`${operation}, `) ? title.slice(operation.length + 2) : title;
}

declare global {
  interface HTMLElementTagNameMap { 'bench-steps': StepsScreen }
}
