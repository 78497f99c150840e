import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { mateOf } from '../../core/joint/mates.ts';
import type { FaceView } from '../../core/layout/paper/faceView.ts';
import { facesOf } from '../../core/layout/paper/faces.ts';
import type { Mark } from '../../core/joint/marks.ts';
import { sizesOf } from '../../core/respond/views.ts';
import type { Result } from '../../core/result.ts';
import '../draw/faceDrawing.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import '../look/fractionText.ts';
import { BenchScreen, show } from './benchScreen.ts';
import { partOf } from './pieceView.ts';

/** The layout of a part, or of one copy of it as it stands: one face at a time, with every mark from its reference. */
@customElement('bench-layout')
export class LayoutScreen extends BenchScreen {
  static override styles = [...BenchScreen.styles, css`
    .layout { display: grid; grid-template-rows: auto auto minmax(0, 1fr); gap: 0.2rem; height: 100%; }
    .head { display: flex; gap: 1.2rem; justify-content: space-between; align-items: baseline; white-space: nowrap; overflow: hidden; }
    .head .title { flex: 1; min-width: 0; overflow: hidden; height: 3.2rem; }
    .about { display: flex; gap: 2rem; justify-content: space-between; white-space: nowrap; overflow: hidden; height: 3rem; line-height: 3rem; }
    .depths { display: flex; gap: 2rem; }
    .drawing { min-height: 0; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'layout' }>;
  protected fitTitle = new FitText(this, '.head .title', [2.6, 2.3, 2, 1.8, 1.6]);
  protected fitAbout = new FitText(this, '.about', [2.2, 2, 1.8, 1.6, 1.4]);

  protected sheet(): TemplateResult {
    const views = this.#views();
    if (views === undefined) return html`<p class="title">No piece is on the bench. Open the menu and choose files.</p>`;
    if (!views.ok) return html`<p class="title">${views.fault}</p>`;
    const view = views.value[this.screen.face - 1] ?? views.value[0];
    if (view === undefined) return html`<p class="title">Nothing is marked here.</p>`;
    const name = `${this.#copyName()}: ${view.name}`;
    return html`<div class="layout">
      <header class="head"><h1 class="title">${name}</h1><span class="caption">face ${views.value.indexOf(view) + 1} of ${views.value.length}</span></header>
      <p class="about"><span class="depths">${depthsOf(view).map((mark) => this.#depth(mark))}</span><span>${view.note ?? nothing}</span></p>
      <face-drawing class="drawing" .view=${view} .rounding=${this.settings.rounding} .name=${name} .jointName=${(joint: string) => this.#mate(joint)}></face-drawing></div>`;
  }

  keys(): readonly KeySpec[] {
    const views = this.#views();
    const several = views?.ok === true && views.value.length > 1;
    const sound = views?.ok === true;
    const { part, copy } = this.screen;
    const own = { part, ...(copy === undefined ? {} : { copy }) };
    return keyRow('layout', {
      step: show({ name: 'step' }),
      'previous face': several ? { request: { kind: 'layout face', ...own, to: 'back' } } : null,
      'next face': several ? { request: { kind: 'layout face', ...own, to: 'next' } } : null,
      'next copy': (partOf(this.view.bench.state, part)?.count ?? 1) > 1 ? { request: { kind: 'layout face', to: 'next copy' } } : null,
      paper: { does: { request: { kind: 'sheets', sheet: { what: 'layout', ...own } } }, disabled: !sound },
      listen: { act: { kind: 'listen' } },
      menu: show({ name: 'menu' }),
    });
  }

  #views(): Result<readonly FaceView[], string> | undefined {
    const { state } = this.view.bench;
    const sizes = sizesOf(state);
    return state.piece === null || sizes === null ? undefined : facesOf({ piece: state.piece, sizes, places: state.places, turns: state.turns }, this.screen.part, this.screen.copy);
  }

  /** 'leg 2, front right', 'all 4 legs' */
  #copyName(): string {
    const { state } = this.view.bench;
    const { part: id, copy } = this.screen;
    const part = partOf(state, id);
    if (copy === undefined || part?.count === 1) return part?.name ?? id;
    const place = state.places.get(`${id}/${copy}`);
    return `${part?.name ?? id} ${copy}${place === undefined ? '' : `, ${place}`}`;
  }

  #mate(id: string): string {
    const file = this.view.bench.state.piece?.file;
    const joint = file?.joints.find((one) => one.id === id);
    if (file === undefined || joint === undefined) return '';
    return joint.kind === 'fixing' ? joint.name : joint.mortiseIn === this.screen.part ? mateOf(file, joint) : 'tenon';
  }

  #depth({ kinds, at }: DepthOf): TemplateResult {
    return html`<span>${kinds.map((kind) => DEPTHS[kind] ?? kind).join(', ')} <fraction-text .length=${at} .rounding=${this.settings.rounding}></fraction-text> deep</span>`;
  }
}

interface DepthOf { readonly kinds: readonly Mark['kind'][]; readonly at: Mark['at'] }

const DEPTHS: Readonly<Partial<Record<Mark['kind'], string>>> = { 'mortise depth': 'mortise', 'haunch depth': 'haunch socket', 'groove depth': 'groove' };

/** Each depth once, with what is that deep. */
function depthsOf({ depths }: FaceView): readonly DepthOf[] {
  return [...new Set(depths.map(({ at }) => at))].map((at) => ({ at, kinds: [...new Set(depths.filter((mark) => mark.at === at).map(({ kind }) => kind))] }));
}

declare global {
  interface HTMLElementTagNameMap { 'bench-layout': LayoutScreen }
}
