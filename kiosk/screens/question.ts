import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { BenchScreen } from './benchScreen.ts';
import { choiceGrid, choiceStyles } from './choices.ts';

/** A question of the bench that waits for its answer: which of several, or yes or no. */
@customElement('bench-question')
export class QuestionScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, choiceStyles, css`
    .asked { height: 100%; overflow: hidden; display: flex; align-items: safe center; line-height: 1.15; font-weight: 700; }
    .titled .asked { height: 6.4rem; font-size: 2.4rem; }
  `];

  protected fitAsked = new FitText(this, '.asked', [4.8, 4.2, 3.6, 3.2, 2.8, 2.5, 2.2, 1.9, 1.7]);

  protected sheet(): TemplateResult {
    const { lastReply, question } = this.view.bench.conversation;
    const asked = html`<p class="asked"><span>${lastReply?.note ?? lastReply?.say ?? ''}</span></p>`;
    if (question?.kind !== 'which') return asked;
    const choices = question.choices.map(({ say }, index) => ({ label: say, does: { request: { kind: 'choose' as const, index } } }));
    return html`<div class="titled">${asked}${choiceGrid(choices, 0)}</div>`;
  }

  keys(): readonly KeySpec[] {
    const yes = this.view.bench.conversation.question?.kind === 'yes or no';
    return keyRow('question', { no: { request: { kind: 'no' } }, listen: { act: { kind: 'listen' } }, yes: yes ? { does: { request: { kind: 'yes' } }, tone: 'now' } : null });
  }

  protected override note(): typeof nothing {
    return nothing;
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-question': QuestionScreen }
}
