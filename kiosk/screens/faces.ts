import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { FACES, type End, type Face } from '../../core/faces/face.ts';
import type { Level } from '../../core/faces/levels.ts';
import { QUALITIES, told, type CopyLikes, type Quality } from '../../core/faces/likes.ts';
import { sayLikes, writeFaceTold } from '../../core/faces/sayLikes.ts';
import { facedPart } from '../../core/respond/facesState.ts';
import '../draw/cornersDrawing.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { FitText } from '../look/fit.ts';
import { show } from './benchScreen.ts';
import { choiceGrid, choiceStyles, pagesOf } from './choices.ts';
import type { Choice } from './choices.ts';
import { shownFaces, type Shown } from './facesView.ts';
import { LeafingScreen } from './leafing.ts';

type FacesScreenOf = Extract<Screen, { name: 'faces' }>;

/** In as few words as go on a key. */
const LEVEL_KEYS: Readonly<Record<Level, string>> = {
  hidden: 'faces to hide', best: 'best to the front', shown: 'faces to show', 'glue lines': 'glue lines off the front', pairs: 'faces side by side match', arches: 'arches up', 'face marks': 'face side, face edge outside',
};

/** The corners from above; behind 'choose faces' each copy, and behind each of its faces what can be told of it. */
@customElement('bench-faces')
export class FacesScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, choiceStyles, css`
    .faces { display: grid; grid-template: auto minmax(0, 1fr) / minmax(0, 1.55fr) minmax(0, 1fr); grid-template-areas: 'head head' 'drawing told'; gap: 0.2rem 1.6rem; height: 100%; }
    .faces > .head { grid-area: head; }
    .head { display: flex; gap: 1.2rem; align-items: baseline; justify-content: space-between; white-space: nowrap; overflow: hidden; border-bottom: 0.1rem solid var(--pencil); }
    .head .title { flex: 1; min-width: 0; overflow: hidden; height: 3.2rem; }
    .legend { font-size: 1.45rem; color: var(--pencil); }
    .drawing { grid-area: drawing; min-height: 0; }
    .told { grid-area: told; min-height: 0; height: 100%; overflow: hidden; line-height: 1.15; display: grid; align-content: safe center; gap: 0.5em; border-left: 0.1rem solid var(--pencil); padding-left: 1.2rem; }
    .told b { color: var(--now); }
    .none { display: grid; align-content: safe center; height: 100%; font-size: 2.8rem; }
  `];

  @property({ attribute: false }) screen: FacesScreenOf = { name: 'faces' };
  /** Choosing among copies, or what counts first: nobody's business but the screen's own. */
  @state() private choosing: 'copy' | 'order' | null = null;
  protected fitTold = new FitText(this, '.told', [2.4, 2.2, 2, 1.8, 1.6, 1.45, 1.3]);
  protected fitHead = new FitText(this, '.head .title', [2.6, 2.3, 2, 1.8, 1.6]);

  override willUpdate(changed?: Map<PropertyKey, unknown>): void {
    if (changed?.has('screen')) {
      this.page = 0;
      if (this.screen.shows !== undefined || this.screen.copy !== undefined) this.choosing = null;
    }
    super.willUpdate();
  }

  protected sheet(): TemplateResult {
    const shown = shownFaces(this.view.bench, this.screen);
    if (shown === undefined) return html`<p class="none">No part of this piece has places by which its faces could be chosen.</p>`;
    const choices = this.#choices(shown);
    if (choices === null) return this.#corners(shown);
    return html`<div class="titled"><header class="head"><h1 class="title">${this.#title(shown)}</h1><span class="caption">${this.pageText()}</span></header>${choiceGrid(choices, this.page)}</div>`;
  }

  keys(): readonly KeySpec[] {
    const shown = shownFaces(this.view.bench, this.screen);
    const part = shown?.faced.part.id;
    if (shown === undefined || part === undefined || this.#choices(shown) !== null) {
      const { copy, face } = this.screen;
      const back = face !== undefined && copy !== undefined && part !== undefined ? show({ name: 'faces', part, copy }) : this.choosing !== null ? { here: () => { this.choosing = null; } } : show({ name: 'faces', ...(part === undefined ? {} : { part }) });
      return keyRow('faces of one', { corners: shown === undefined ? null : { does: back }, next: this.#leaf(), listen: { act: { kind: 'listen' } }, menu: show({ name: 'menu' }), step: show({ name: 'step' }) });
    }
    return keyRow('faces', {
      step: show({ name: 'step' }),
      'choose faces': { here: () => { this.choosing = 'copy'; this.page = 0; } },
      'place them': { request: { kind: 'place them', part } },
      'second best': { request: { kind: 'second best', part } },
      'what counts': { here: () => { this.choosing = 'order'; this.page = 0; } },
      listen: { act: { kind: 'listen' } },
      'take it': { does: { request: { kind: 'take placing', part } }, tone: 'now', disabled: this.screen.shows === undefined },
    });
  }

  protected pages(): number {
    const shown = shownFaces(this.view.bench, this.screen);
    return pagesOf((shown && this.#choices(shown))?.length ?? 1);
  }

  #leaf(): { readonly here: () => void } | null {
    const pages = this.pages();
    return pages === 1 ? null : { here: () => { this.page = (this.page + 1) % pages; } };
  }

  #corners({ faced: { part, names, problem }, copies, what }: Shown): TemplateResult {
    const lines = problem.likes.map((likes, index) => ({ copy: index + 1, said: sayLikes(likes).join('; ') })).filter(({ said }) => said !== '');
    return html`<div class="faces"><header class="head"><h1 class="title">${names.many} ${what}</h1><span class="legend">○ show · ● best · ╱ hide · heavy line: in sight · hatched: mortise</span></header>
      ${copies.length === 0 ? html`<p class="drawing none">No ${part.name} has its place yet. Tell which faces are to show and which to hide, then place them.</p>` : html`<corners-drawing class="drawing" .copies=${copies} .name=${names.many}></corners-drawing>`}
      <div class="told">${lines.length === 0 ? html`<p>Looking at the numbered end, A, B, C and D go round clockwise. Nothing is told of them yet.</p>` : lines.map(({ copy, said }) => html`<p><b>${copy}</b> ${said}</p>`)}</div></div>`;
  }

  #title({ faced: { part, problem } }: Shown): string {
    const { copy, face } = this.screen;
    if (copy !== undefined && face !== undefined) return `${part.name} ${copy}, face ${face}: ${writeFaceTold(problem.likes[copy - 1] ?? { faces: {} }, face) || 'nothing told'}`;
    if (copy !== undefined) return `${part.name} ${copy}${this.#where(part.id, copy)}`;
    return this.choosing === 'order' ? 'What counts first? The one pressed comes first.' : `Which ${part.name}?`;
  }

  #where(part: string, copy: number): string {
    const { places, turns } = this.view.bench.state;
    const [place, turn] = [places.get(`${part}/${copy}`), turns.get(`${part}/${copy}`)];
    return place === undefined ? '' : `, ${place}${turn === undefined ? '' : `, face ${turn.front} to the front`}`;
  }

  /** What is to be chosen from, or null when the corners are shown. */
  #choices({ faced }: Shown): readonly Choice[] | null {
    const { copy, face } = this.screen;
    const likes = copy === undefined ? undefined : faced.problem.likes[copy - 1];
    if (copy !== undefined && likes !== undefined) return face === undefined ? this.#facesOf(faced.part.id, copy, likes, faced.problem.stand.kind === 'upright') : this.#qualities(faced.part.id, copy, face, likes);
    if (this.choosing === 'order') return this.#order(faced.part.id, faced.problem.order);
    return this.choosing === 'copy' ? this.#copies(faced.part.id) : null;
  }

  #copies(id: string): readonly Choice[] {
    const { state } = this.view.bench;
    const parts = (state.piece?.file.parts ?? []).flatMap((part) => {
      const faced = facedPart(state, part);
      return faced.ok ? [faced.value] : [];
    });
    const own = parts.find(({ part }) => part.id === id);
    return [
      ...(own?.problem.likes ?? []).map((likes, index): Choice => ({ label: `${own?.part.name ?? ''} ${index + 1}`, figure: index + 1, detail: sayLikes(likes).join('; '), does: show({ name: 'faces', part: id, copy: index + 1 }) })),
      ...parts.filter(({ part }) => part.id !== id).map(({ part, names }): Choice => ({ label: names.many, does: show({ name: 'faces', part: part.id }) })),
    ];
  }

  #facesOf(part: string, copy: number, likes: CopyLikes, upright: boolean): readonly Choice[] {
    const end = (what: 'up' | 'arch', end: End, label: string): Choice => ({
      label, chosen: likes[what] === end, does: { request: { kind: 'like end', part, copy, what, end: likes[what] === end ? 'either' : end } },
    });
    const over = this.#changeOver(part, copy);
    const faces = FACES.map((face): Choice => ({ label: `face ${face}`, detail: writeFaceTold(likes, face), does: show({ name: 'faces', part, copy, face }) }));
    if (!upright) return [...faces, ...over];
    return [...faces, end('up', 'numbered', 'numbered end up'), end('up', 'other', 'numbered end down'), end('arch', 'numbered', 'arch up'), end('arch', 'other', 'arch down'), ...over];
  }

  /** The other copies that stand somewhere, to change places with. */
  #changeOver(part: string, copy: number): readonly Choice[] {
    const { places, piece } = this.view.bench.state;
    const { name = part, count = 0 } = piece?.file.parts.find(({ id }) => id === part) ?? {};
    if (!places.has(`${part}/${copy}`)) return [];
    return Array.from({ length: count }, (_, index) => index + 1).flatMap((other): readonly Choice[] => {
      const place = places.get(`${part}/${other}`);
      return other === copy || place === undefined ? [] : [{ label: `change over with ${name} ${other}`, detail: place, does: { request: { kind: 'change over', part, copy, with: other } } }];
    });
  }

  #qualities(part: string, copy: number, face: Face, likes: CopyLikes): readonly Choice[] {
    const { wish, mark, figure, glueLines } = told(likes, face);
    const is = (quality: Quality): boolean => [wish, mark, figure, glueLines ? 'glue lines' : undefined].includes(quality);
    return QUALITIES.map((as): Choice => ({
      label: as === 'straight' || as === 'flat' ? `${as} grain` : as === 'plain' ? 'none of these' : as, ...(as === 'plain' ? {} : { chosen: is(as) }),
      does: { request: { kind: 'like faces', part, copy, likings: [{ faces: [face], as }] } },
    }));
  }

  #order(part: string, order: Shown['faced']['problem']['order']): readonly Choice[] {
    return [
      ...order.map((level, index): Choice => ({ label: LEVEL_KEYS[level], detail: `counts no. ${index + 1} now`, does: { request: { kind: 'what counts', part, change: { level } } } })),
      { label: 'the usual order', does: { request: { kind: 'what counts', part, change: 'usual' } } },
    ];
  }

  /** While something is chosen, the corners' note would be in the way. */
  protected override note(): TemplateResult | typeof nothing {
    return this.choosing === 'copy' ? nothing : super.note();
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-faces': FacesScreen }
}
