import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Does, KeySpec, PadSymbol } from '../keys/keySpec.ts';

/** Eight large keys a page, four by two, on the number pad's 1 to 9; more are leafed through. */
export const CHOICES_PER_PAGE = 8;
const PADS: readonly PadSymbol[] = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];

export interface Choice {
  readonly label: string;
  /** A second line, in smaller letters. */
  readonly detail?: string | TemplateResult;
  /** The choice is this figure. */
  readonly figure?: number;
  readonly does: Does;
  readonly tone?: NonNullable<KeySpec['tone']>;
  readonly chosen?: boolean;
  readonly disabled?: boolean;
}

export const choiceStyles = css`
  .choices { display: grid; grid-template-columns: repeat(4, minmax(var(--key), 1fr)); grid-template-rows: repeat(2, minmax(var(--key), 1fr)); gap: var(--gap); height: 100%; }
  .choices bench-key { min-width: 0; min-height: 0; }
  .titled { display: grid; grid-template-rows: auto minmax(0, 1fr); gap: 0.4rem; height: 100%; }
`;

export const pagesOf = (count: number): number => Math.max(1, Math.ceil(count / CHOICES_PER_PAGE));

/** One page of choices as keys. */
export function choiceKeys(choices: readonly Choice[], page: number): readonly KeySpec[] {
  const shown = choices.slice(page * CHOICES_PER_PAGE, (page + 1) * CHOICES_PER_PAGE);
  const pads = padsFor(shown);
  return shown.map((choice, index): KeySpec => ({
    label: choice.label, pad: pads[index] ?? '8', does: choice.does,
    face: html`<span class="choice">${choice.label}</span>${choice.detail === undefined ? nothing : html`<span class="detail">${choice.detail}</span>`}`,
    ...(choice.tone === undefined ? {} : { tone: choice.tone }), ...(choice.chosen === undefined ? {} : { chosen: choice.chosen }), ...(choice.disabled === undefined ? {} : { disabled: choice.disabled }),
  }));
}

/** A choice that is a figure has that figure's key: 7 spaces are on the 7, 5 minutes on the 5. The others take what is left, in order. */
function padsFor(choices: readonly Choice[]): readonly PadSymbol[] {
  const own = choices.map(({ figure }) => PADS.find((pad) => pad === String(figure)));
  const left = PADS.filter((pad) => !own.includes(pad));
  return own.map((pad, index) => (pad !== undefined && own.indexOf(pad) === index ? pad : (left.shift() ?? '8')));
}

export function choiceGrid(choices: readonly Choice[], page: number): TemplateResult {
  return html`<div class="choices">${choiceKeys(choices, page).map((spec) => html`<bench-key wide .spec=${spec}></bench-key>`)}</div>`;
}
