import { css, html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { KioskView, TrialView } from '../hostPort.ts';
import type { KeySpec, PadSymbol } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { CAUTION_MARK, CHECK_MARK, markIcon } from '../look/marks.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { nextModel } from './nextModel.ts';

const QUIETEST_DB = -72;
/** Clear speech has its loudest moments about here. */
const [CLEAR_FROM_DB, CLEAR_TO_DB] = [-36, -6];
const WIDTH = 760;
const WORDS_SHOWN = 6;

/** To try the microphone: how loud it is, what is wrong with it, what was heard and what that would do. Nothing is done here. */
@customElement('bench-microphone')
export class MicrophoneScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .trial { display: grid; grid-template-rows: auto auto minmax(0, 1fr) auto; gap: 0.5rem; height: 100%; }
    .meter { width: 100%; height: 6.6rem; display: block; }
    .frame { fill: none; stroke: var(--ink); stroke-width: 2; }
    .clear { fill: none; stroke: var(--pencil); stroke-width: 2; stroke-dasharray: 6 5; }
    .level { fill: var(--now); }
    .mark { stroke: var(--ink); stroke-width: 4; }
    .shop { fill: var(--ink); }
    .meter text { font-family: var(--words); font-size: 16px; fill: var(--ink); }
    .state { display: flex; gap: 0.8rem; align-items: center; height: 4.6rem; overflow: hidden; line-height: 1.1; font-weight: 700; }
    .state svg { height: 2.6rem; width: 2.6rem; flex: none; }
    .heard { overflow: hidden; line-height: 1.15; border-top: 0.2rem solid var(--ink); padding-top: 0.4rem; }
    .heard li { padding-bottom: 0.25em; }
    .heard b.nobody { font-weight: 400; text-decoration: underline; text-decoration-style: dotted; }
    .facts { height: 4.6rem; overflow: hidden; line-height: 1.15; color: var(--pencil); }
  `];

  /** The meter moves ten times a second; this screen is drawn anew each time. */
  @property({ attribute: false }) override view!: KioskView;
  protected fitState = new FitText(this, '.state', [2.1, 1.9, 1.7, 1.5, 1.35]);
  protected fitHeard = new FitText(this, '.heard', [2, 1.8, 1.6, 1.45, 1.3, 1.2]);
  protected fitFacts = new FitText(this, '.facts', [1.8, 1.65, 1.5, 1.35]);

  protected sheet(): TemplateResult {
    const { trial } = this.view.hearing;
    return html`<div class="trial">${this.#meter(trial)}${this.#state(trial)}${this.#heard(trial)}<p class="facts">${this.#facts()}</p></div>`;
  }

  keys(): readonly KeySpec[] {
    const { microphones, hearing: { models, trial } } = this.view;
    const usable = models.filter((model) => model.usable).length;
    return keyRow('microphone', {
      leave: show({ name: 'settings' }),
      'play back': { does: { act: { kind: 'play back' } }, disabled: (trial?.playableSeconds ?? 0) === 0 || trial?.playing === true },
      'next microphone': { does: { request: { kind: 'set', setting: { microphone: this.#nextMicrophone() } } }, disabled: microphones.length < 2 },
      'next model': { does: { act: { kind: 'choose model', name: nextModel(models) } }, disabled: usable < 2 },
      listen: { does: { act: { kind: 'listen' } }, tone: 'now' },
    });
  }

  /** A key that takes back would write something down, and nothing is written from here. */
  override pressSymbol(symbol: PadSymbol, atMs: number): boolean {
    return symbol === 'take back' || super.pressSymbol(symbol, atMs);
  }

  /** What would be answered is in the list; the answer before is of no use here. */
  protected override note(): typeof nothing {
    return nothing;
  }

  #nextMicrophone(): string {
    const { microphones } = this.view;
    return microphones[(microphones.findIndex(({ chosen }) => chosen) + 1) % Math.max(1, microphones.length)]?.label ?? '';
  }

  #meter(trial: TrialView | null): TemplateResult {
    const { levelDb, ambientDb } = this.view.ear;
    const peak = trial === null || levelDb === null ? null : trial.peakDb;
    return html`<svg class="meter" viewBox="0 0 ${WIDTH} 66" role="img" aria-label=${`Level ${inDb(levelDb)}, shop ${inDb(ambientDb)}, loudest ${inDb(peak)}`}>
      ${levelDb === null ? nothing : svg`<rect class="level" x="2" y="4" width=${place(levelDb)} height="30"></rect>`}
      ${svg`<rect class="clear" x=${place(CLEAR_FROM_DB)} y="8" width=${place(CLEAR_TO_DB) - place(CLEAR_FROM_DB)} height="22"></rect><rect class="frame" x="2" y="4" width=${WIDTH - 4} height="30"></rect>`}
      ${ambientDb === null ? nothing : triangle(2 + place(ambientDb), 34)}${peak === null ? nothing : stroke(2 + place(peak), 0, 38)}
      <text x="2" y="60">now ${inDb(levelDb)}</text>${triangle(152, 46)}<text x="166" y="60">shop ${inDb(ambientDb)}</text>
      ${stroke(330, 44)}<text x="340" y="60">loudest ${inDb(peak)}</text><text x=${WIDTH - 4} y="60" text-anchor="end">speak within the dashes</text></svg>`;
  }

  /** What is wrong first; else how it stands. */
  #state(trial: TrialView | null): TemplateResult {
    const { ear, bench } = this.view;
    const [fault] = [...(ear.state === 'fault' ? [ear.sentence] : []), ...(trial?.faults ?? [])];
    if (fault !== undefined) return html`<p class="state" role="status"><svg viewBox="0 0 24 24" aria-hidden="true">${markIcon(CAUTION_MARK)}</svg><span>${fault}</span></p>`;
    const calls = trial?.calls ?? 0;
    const word = `“${bench.state.settings.addressWord}”`;
    const called = calls === 0 ? `Say ${word} and something. Nothing is done here, only shown.` : `Heard ${word} ${calls === 1 ? 'once' : `${calls} times`}. Nothing is done here, only shown.`;
    return html`<p class="state" role="status">${calls === 0 ? nothing : html`<svg viewBox="0 0 24 24" aria-hidden="true">${markIcon(CHECK_MARK)}</svg>`}<span>${trial?.playing === true ? 'Playing back what you said.' : called}</span></p>`;
  }

  #heard(trial: TrialView | null): TemplateResult {
    const heard = trial?.heard ?? [];
    return html`<ul class="heard">${heard.length === 0 ? html`<li>Nothing was heard yet. What is heard stands here, with what it would do.</li>` : nothing}
      ${heard.map(({ words, would, addressed }) => html`<li><b class=${addressed ? '' : 'nobody'}>${words}</b>: ${would}</li>`)}</ul>`;
  }

  #facts(): string {
    const { microphones, hearing: { model, cannotHear, guessed } } = this.view;
    return [
      microphones.find(({ chosen }) => chosen)?.label ?? (microphones.length === 0 ? 'No microphone' : 'The system’s microphone'),
      model === null ? 'no speech model loaded' : `speech model ${model.name}, loaded in ${(model.loadMs / 1000).toFixed(1)} s`,
      ...(cannotHear.length > 0 ? [`cannot hear ${some(cannotHear)}`] : []),
      ...(guessed.length > 0 ? [`guesses how ${some(guessed)} ${guessed.length === 1 ? 'is' : 'are'} said`] : []),
    ].join(' · ');
  }
}

/** Where on the meter a loudness stands. */
function place(db: number): number {
  return Math.round((1 - Math.min(0, Math.max(QUIETEST_DB, db)) / QUIETEST_DB) * (WIDTH - 4));
}

/** The mark of the shop's own loudness; its point is at x. */
function triangle(x: number, y: number): SVGTemplateResult {
  return svg`<path class="shop" d=${`M${x} ${y} l8 14 h-16 z`}></path>`;
}

/** The mark of the loudest moment. */
function stroke(x: number, y: number, length = 20): SVGTemplateResult {
  return svg`<line class="mark" x1=${x} x2=${x} y1=${y} y2=${y + length}></line>`;
}

function inDb(db: number | null): string {
  return db === null ? '—' : `${Math.round(db).toString().replace('-', '−')} dB`;
}

function some(words: readonly string[]): string {
  return words.length > WORDS_SHOWN ? `${words.slice(0, WORDS_SHOWN).join(', ')} and ${words.length - WORDS_SHOWN} more` : words.join(', ');
}

declare global {
  interface HTMLElementTagNameMap { 'bench-microphone': MicrophoneScreen }
}
