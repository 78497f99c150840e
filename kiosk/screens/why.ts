import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Screen } from '../../core/bench/screen.ts';
import { explain } from '../../core/piece/why.ts';
import type { WhyLink } from '../../core/piece/why.ts';
import type { KeySpec } from '../keys/keySpec.ts';
import { keyRow } from '../keys/keyTable.ts';
import { show } from './benchScreen.ts';
import { LeafingScreen } from './leafing.ts';
import { captionOf } from './pieceView.ts';

const LINKS_PER_PAGE = 5;

/** Why a size is what it is: each link of the chain a line, what it stands on below it and further in. */
@customElement('bench-why')
export class WhyScreen extends LeafingScreen {
  static override styles = [...LeafingScreen.styles, css`
    .why { display: grid; grid-template-rows: repeat(${LINKS_PER_PAGE}, minmax(0, 1fr)); height: 100%; }
    .link { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 1.2rem; align-items: center; border-bottom: 0.1rem solid var(--pencil); overflow: hidden; }
    .link .name { font-size: calc(2.2rem * var(--text)); line-height: 1.1; }
    .link.first .name { font-weight: 700; }
    .link fraction-text { font-size: 3.6rem; }
    .d1 { padding-left: 2.4rem; } .d2 { padding-left: 4.8rem; } .d3 { padding-left: 7.2rem; }
    .reason { color: var(--pencil); font-size: calc(1.7rem * var(--text)); overflow-wrap: anywhere; }
  `];

  @property({ attribute: false }) screen!: Extract<Screen, { name: 'why' }>;

  protected sheet(): TemplateResult {
    const links = this.#links();
    if (links.length === 0) return html`<p class="title">This piece has no size called ${this.screen.size}.</p>`;
    return html`<ol class="why">${links.slice(this.page * LINKS_PER_PAGE, (this.page + 1) * LINKS_PER_PAGE).map((link) => this.#link(link))}</ol>`;
  }

  keys(): readonly KeySpec[] {
    const { size, copy } = this.screen;
    const pages = this.pages();
    return keyRow('why', {
      size: show({ name: 'size', size, ...(copy === undefined ? {} : { copy }) }),
      next: pages === 1 ? null : { here: () => { this.page = (this.page + 1) % pages; } },
      'what moved': { request: { kind: 'what moved' } },
      'say again': { request: { kind: 'say again', how: 'as before' } },
      listen: { act: { kind: 'listen' } },
      menu: show({ name: 'menu' }),
      step: show({ name: 'step' }),
    });
  }

  protected pages(): number {
    return Math.max(1, Math.ceil(this.#links().length / LINKS_PER_PAGE));
  }

  #links(): readonly WhyLink[] {
    const { piece, measurements } = this.view.bench.state;
    return piece === null ? [] : explain(piece, measurements, this.screen.size, this.screen.copy);
  }

  #link(link: WhyLink): TemplateResult {
    const { owner, say } = captionOf(this.view.bench.state, link);
    return html`<li class="link d${Math.min(3, link.depth)} ${link.depth === 0 ? 'first' : ''}"><span class="name">${[owner, say].filter(Boolean).join(', ')}
      <span class="reason">${this.#reason(link)}</span></span>
      <fraction-text .length=${link.value.length} .rounding=${this.settings.rounding}></fraction-text></li>`;
  }

  #reason(link: WhyLink): string {
    switch (link.reason) {
      case 'given': return 'as the piece file gives it';
      case 'measured': return 'as measured';
      case 'largest made': return 'the largest of those made';
      case 'worked out': return `= ${this.#inWords(link)}`;
    }
  }

  /** The expression with the sizes' own names in place of those of the file. */
  #inWords(link: WhyLink): string {
    return [...link.standsOn].sort((a, b) => b.size.length - a.size.length)
      .reduce((text, mention) => text.replaceAll(mention.size, captionOf(this.view.bench.state, mention).say), link.is).replaceAll('*', '×');
  }
}

declare global {
  interface HTMLElementTagNameMap { 'bench-why': WhyScreen }
}
