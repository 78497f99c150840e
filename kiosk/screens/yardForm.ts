import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { writeLength } from '../../core/length/write.ts';
import { GRADE_YIELDS, type Grade } from '../../core/stock/buying.ts';
import '../keys/countPad.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { choiceGrid } from './choices.ts';
import type { Choice } from './choices.ts';
import { SettingForm } from './settingForm.ts';

const GRADES = Object.keys(GRADE_YIELDS) as readonly Grade[];

/** What is bought at the yard, and for how much: the grade, the price of a board foot, how wide boards are there. Lies on the buying screen. */
@customElement('bench-yard-form')
export class YardForm extends SettingForm {
  @state() protected override asking: 'grade' | 'price' | 'width' | null = null;

  override render(): TemplateResult {
    const { sawing: { yardWidth, grade }, settings: { rounding } } = this.bench;
    switch (this.asking) {
      case null: return html`<div class="titled"><h1 class="title">What you buy at the yard</h1>${choiceGrid(this.#all(), 0)}</div>`;
      case 'grade': return html`<div class="titled"><h1 class="title">Which grade do you buy?</h1>${choiceGrid(GRADES.map((one): Choice => ({ label: one, detail: `${Math.round(100 * GRADE_YIELDS[one])} % clear`, chosen: one === grade, does: { here: () => { this.tell({ grade: one }); } } })), 0)}</div>`;
      case 'price': return html`<count-pad asked="What does a board foot cost?" .hundredths=${true} .least=${0} .most=${9_999} @count-typed=${({ detail }: CustomEvent<number>) => { this.tell({ centsPerBoardFoot: Math.round(100 * detail) }); }} @pad-left=${() => { this.leave(); }}></count-pad>`;
      case 'width': return this.askLength({ what: 'boards at the yard: about how wide', beside: `now ${writeLength(yardWidth, rounding)}`, unit: rounding.unit, usual: yardWidth, take: (length) => { this.tell({ yardWidth: length }); } });
    }
  }

  get padShown(): boolean {
    return this.asking === 'width';
  }

  keys(): readonly KeySpec[] {
    return this.asking === 'width' || this.asking === 'price' ? [] : keyRow('form', { leave: { here: () => { this.leave(); } } });
  }

  #all(): readonly Choice[] {
    const { sawing: { grade, centsPerBoardFoot, yardWidth }, settings: { rounding } } = this.bench;
    const key = (asking: NonNullable<typeof this.asking>, label: string, detail: string): Choice => ({ label, detail, does: { here: () => { this.asking = asking; } } });
    return [
      key('grade', 'grade', grade), key('price', 'a board foot costs', centsPerBoardFoot === 0 ? 'not told' : (centsPerBoardFoot / 100).toFixed(2)),
      key('width', 'boards are about', `${writeLength(yardWidth, rounding)} wide`),
    ];
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-yard-form': YardForm }
}
